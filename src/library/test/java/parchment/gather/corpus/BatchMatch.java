package parchment.gather.corpus;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import parchment.gather.corpus.Roastery.Roast;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;

/** Finds which gathered batch is which roast: by its number where the folder told numbers, else by its time or its course. */
final class BatchMatch {
    private static final Duration NEAR = Duration.ofMinutes(4);

    private final Map<Integer, Batch> found = new LinkedHashMap<>();
    private final List<Batch> extra = new ArrayList<>();

    private BatchMatch() {}

    static BatchMatch of(Roastery roastery, List<Batch> batches, boolean numbered) {
        BatchMatch match = new BatchMatch();
        Set<Batch> free = new HashSet<>(batches);
        for (Roast roast : roastery.batches()) {
            Optional<Batch> best = batches.stream()
                    .filter(free::contains)
                    .filter(batch -> numbered ? holds(batch.name(), roast.number()) : near(batch, roast))
                    .max(Comparator.comparingInt(batch -> fullness(batch, roast)));
            best.ifPresent(batch -> {
                match.found.put(roast.number(), batch);
                free.remove(batch);
            });
        }
        batches.stream().filter(free::contains).forEach(match.extra::add);
        return match;
    }

    /** Returns whether a name holds a number, with any zeros before it and no other digit beside it. */
    static boolean holds(String name, int number) {
        return Pattern.compile("(?<![0-9])0*" + number + "(?![0-9])")
                .matcher(name)
                .find();
    }

    private static boolean near(Batch batch, Roast roast) {
        boolean dated = batch.roastedAt().isPresent()
                && Duration.between(batch.roastedAt().get().toLocalDateTime(), roast.chargedAt())
                                .abs()
                                .compareTo(NEAR)
                        <= 0;
        return dated
                || CurveComparison.of(roast, Optional.of(batch), CurveComparison.BEAN)
                        .right();
    }

    /** Says how much a batch holds; of two batches of one name, the fuller one counts. */
    private static int fullness(Batch batch, Roast roast) {
        int full = batch.logged().size();
        full += batch.lot().isPresent() ? 1 : 0;
        full += batch.conditions().greenMass().isPresent() ? 1 : 0;
        full += batch.roastDay().equals(Optional.of(roast.chargedAt().toLocalDate())) ? 1 : 0;
        full += batch.writtenMark(MarkKind.DROP).isPresent() ? 1 : 0;
        return full;
    }

    Optional<Batch> of(Roast roast) {
        return of(roast.number());
    }

    Optional<Batch> of(int number) {
        return Optional.ofNullable(found.get(number));
    }

    /** Returns the batches that are no roast. */
    List<Batch> extra() {
        return extra;
    }
}
