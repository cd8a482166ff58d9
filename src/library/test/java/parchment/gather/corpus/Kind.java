package parchment.gather.corpus;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/** Is a kind of strange folder that is put together of parts: curves, a list, score sheets, whatever else lies there. */
record Kind(
        String name,
        List<Part> parts,
        Set<StrangeKind.Fact> lost,
        int gap,
        UnaryOperator<Roastery> happening,
        Function<Roastery, Map<String, String>> answering)
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
        return new Kind(name, List.of(parts), Set.of(), -1, UnaryOperator.identity(), roastery -> Map.of());
    }

    /** Returns the same kind with some facts missing of the roast in a place, counted from 0. */
    Kind lacking(int place, Set<StrangeKind.Fact> facts) {
        return new Kind(name, parts, facts, place, happening, answering);
    }

    @Override
    public boolean tells(Roastery roastery, Roastery.Roast roast, StrangeKind.Fact fact) {
        return facts().contains(fact)
                && !(gap >= 0 && roastery.batches().get(gap).equals(roast) && lost.contains(fact));
    }

    /** Returns the same kind of a roastery in which what makes it did happen. */
    Kind happening(UnaryOperator<Roastery> other) {
        return new Kind(name, parts, lost, gap, other, answering);
    }

    /** Returns the same kind with the answer to a question that holds these words, or has this key. */
    Kind answering(String question, String answer) {
        return answering(roastery -> Map.of(question, answer));
    }

    /** Returns the same kind with answers that only who was there can give. */
    Kind answering(Function<Roastery, Map<String, String>> known) {
        return new Kind(name, parts, lost, gap, happening, known);
    }

    @Override
    public Roastery in(Roastery roastery) {
        return happening.apply(roastery);
    }

    @Override
    public Map<String, String> answers(Roastery roastery) {
        return answering.apply(roastery);
    }

    /** Returns the same kind with one more part. */
    Kind and(Part part) {
        List<Part> all = new ArrayList<>(parts);
        all.add(part);
        return new Kind(name, List.copyOf(all), lost, gap, happening, answering);
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
