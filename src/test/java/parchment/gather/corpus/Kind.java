package parchment.gather.corpus;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/** Is a kind of strange folder that is put together of parts: curves, a list, score sheets, whatever else lies there. */
record Kind(String name, List<Part> parts, Set<StrangeKind.Fact> lost, int gap, Map<String, String> answers)
        implements StrangeKind {

    /** Writes one part of a folder. */
    @FunctionalInterface
    interface Writing {
        void write(Roastery roastery, Path folder, Random random) throws IOException;
    }

    /** Holds one part of a folder and what it tells. */
    record Part(Set<StrangeKind.Fact> facts, Writing writing) {
        /** Returns a part that tells nothing. */
        static Part silent(Writing writing) {
            return new Part(Set.of(), writing);
        }
    }

    static Kind of(String name, Part... parts) {
        return new Kind(name, List.of(parts), Set.of(), -1, Map.of());
    }

    /** Returns the same kind with some facts missing of the roast in a place, counted from 0. */
    Kind lacking(int place, Set<StrangeKind.Fact> facts) {
        return new Kind(name, parts, facts, place, answers);
    }

    @Override
    public boolean tells(Roastery roastery, Roastery.Roast roast, StrangeKind.Fact fact) {
        return facts().contains(fact)
                && !(gap >= 0 && roastery.batches().get(gap).equals(roast) && lost.contains(fact));
    }

    Kind answering(String words, String answer) {
        Map<String, String> all = new LinkedHashMap<>(answers);
        all.put(words, answer);
        return new Kind(name, parts, lost, gap, all);
    }

    /** Returns the same kind with one more part. */
    Kind and(Part part) {
        List<Part> all = new ArrayList<>(parts);
        all.add(part);
        return new Kind(name, List.copyOf(all), lost, gap, answers);
    }

    @Override
    public Set<StrangeKind.Fact> facts() {
        Set<StrangeKind.Fact> facts = EnumSet.noneOf(StrangeKind.Fact.class);
        parts.forEach(part -> facts.addAll(part.facts()));
        return facts;
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        for (Part part : parts) {
            part.writing().write(roastery, folder, random);
        }
    }
}
