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
record Kind(String name, List<Part> parts, Set<StrangeKind.Fact> lost, Map<String, String> answers)
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
        return new Kind(name, List.of(parts), Set.of(), Map.of());
    }

    /** Returns the same kind without a fact that its parts seem to tell. */
    Kind without(StrangeKind.Fact fact) {
        return new Kind(name, parts, EnumSet.of(fact, lost.toArray(new StrangeKind.Fact[0])), answers);
    }

    Kind answering(String words, String answer) {
        Map<String, String> all = new LinkedHashMap<>(answers);
        all.put(words, answer);
        return new Kind(name, parts, lost, all);
    }

    /** Returns the same kind with one more part. */
    Kind and(Part part) {
        List<Part> all = new ArrayList<>(parts);
        all.add(part);
        return new Kind(name, List.copyOf(all), lost, answers);
    }

    @Override
    public Set<StrangeKind.Fact> facts() {
        Set<StrangeKind.Fact> facts = EnumSet.noneOf(StrangeKind.Fact.class);
        parts.forEach(part -> facts.addAll(part.facts()));
        facts.removeAll(lost);
        return facts;
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        for (Part part : parts) {
            part.writing().write(roastery, folder, random);
        }
    }
}
