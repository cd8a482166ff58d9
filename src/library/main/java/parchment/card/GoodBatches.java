package parchment.card;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import parchment.align.score.ShrunkenScores;
import parchment.drift.OneCharge;
import parchment.drift.Usual;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Cupping;
import parchment.quantity.Mass;

/**
 * Chooses the last batches of a lot that went well, by what is known: blind scores, else other scores, else that they were as usual, else
 * simply the last.
 *
 * @param lot the lot
 * @param ground by what they went well
 * @param batches the batches, the earliest first; at most {@value #SHOWN}
 * @param held how many batches of the lot they were chosen from
 * @param good how many of those went well by the same ground
 * @param scored the scores, where those were the ground
 * @param among what they have in common, as in "on drum 1, recipe espresso"; empty if nothing was written or all have it
 * @param charge the charge they are of, where the lot was roasted in others too or a charge was asked for
 * @param asked the green mass that was asked for; empty if the charge is that of the lot's newest batches
 */
record GoodBatches(
        String lot,
        Ground ground,
        List<Batch> batches,
        int held,
        int good,
        Optional<ScoredLot> scored,
        String among,
        Optional<OneCharge> charge,
        Optional<Mass> asked) {
    /** How many batches stand side by side on a card. */
    static final int SHOWN = 5;

    /** How many of the last batches are held against the lot's others in search of usual ones. */
    private static final int SEARCHED = 30;

    /** By what batches are called good. */
    enum Ground {
        /** By scores of cuppings that were written down as blind. */
        BLIND_SCORES,
        /** By scores of which not all are known to be blind. */
        OTHER_SCORES,
        /** They were as usual; no scores tell which went well. */
        AS_USUAL,
        /** Nothing tells which went well. */
        THE_LAST
    }

    /** Copies the list. */
    GoodBatches {
        batches = List.copyOf(batches);
    }

    /**
     * Finds the last good batches of a lot: on the machine, by the recipe and of the charge of its newest batch.
     *
     * @throws parchment.logbook.contents.LogbookException if the logbook has no lot of that name
     */
    static GoodBatches of(String lot, Logbook logbook) {
        return of(lot, logbook, Optional.empty());
    }

    /**
     * Finds them of a charge.
     *
     * @param wanted the green mass; that of the lot's newest batches if empty
     * @throws parchment.logbook.contents.LogbookException if the logbook has no lot of that name, or no batch of it was charged with about as much
     */
    static GoodBatches of(String lot, Logbook logbook, Optional<Mass> wanted) {
        List<Batch> every = inTime(logbook.ofLot(lot).batches());
        Optional<OneCharge> asked = wanted.map(mass -> OneCharge.of(mass, lot, logbook));
        List<Batch> ofCharge = asked.map(one -> of(one, every)).orElse(every);
        if (ofCharge.isEmpty()) {
            return new GoodBatches(
                    lot, Ground.THE_LAST, ofCharge, 0, 0, Optional.empty(), "", Optional.empty(), wanted);
        }
        Batch newest = ofCharge.get(ofCharge.size() - 1);
        List<Batch> alike = every.stream()
                .filter(batch -> batch.machine().equals(newest.machine())
                        && batch.label(Batch.Label.RECIPE).equals(newest.label(Batch.Label.RECIPE)))
                .toList();
        List<String> among = new ArrayList<>();
        if (alike.size() < every.size()) {
            among.addAll(among(newest));
        }
        // Of those alike: the newest mass of all may be that of another recipe, where the newest batch has none.
        Optional<OneCharge> own = asked.or(() -> OneCharge.ofNewest(alike, lot, logbook));
        Optional<OneCharge> parts =
                own.filter(one -> asked.isPresent() || alike.stream().anyMatch(one::isNotThatOf));
        parts.ifPresent(one -> among.add("with about " + one.words() + " of green coffee"));
        return among(lot, logbook, parts.map(one -> of(one, alike)).orElse(alike), String.join(", ", among), parts)
                .withAsked(wanted);
    }

    private static GoodBatches among(
            String lot, Logbook logbook, List<Batch> like, String among, Optional<OneCharge> charge) {
        Optional<ScoredLot> scored = ScoredLot.of(like, logbook);
        if (scored.isPresent()) {
            List<Batch> best =
                    like.stream().filter(scored.get()::isAmongTheBest).toList();
            Ground ground = scored.get().blind() == Cupping.Said.YES ? Ground.BLIND_SCORES : Ground.OTHER_SCORES;
            int held = scored.get().scores().size();
            return new GoodBatches(lot, ground, last(best), held, best.size(), scored, among, charge, Optional.empty());
        }
        List<Batch> usual =
                lastFew(like, batch -> Usual.of(batch, logbook.whole()).verdict() == Usual.Verdict.LIKE_THE_OTHERS);
        boolean enough = usual.size() >= ScoredLot.ENOUGH;
        return new GoodBatches(
                lot,
                enough ? Ground.AS_USUAL : Ground.THE_LAST,
                enough ? usual : last(like),
                like.size(),
                enough ? usual.size() : like.size(),
                Optional.empty(),
                among,
                charge,
                Optional.empty());
    }

    private GoodBatches withAsked(Optional<Mass> mass) {
        return new GoodBatches(lot, ground, batches, held, good, scored, among, charge, mass);
    }

    /** Tells whether the scores set some of the scored batches above others. */
    boolean isParted() {
        return scored.isPresent() && good < held;
    }

    /** Returns the green mass that was asked for, in words, where the charge of the batches prints otherwise. */
    Optional<String> askedWords() {
        return charge.flatMap(
                one -> asked.map(mass -> mass.words(one.unit())).filter(words -> !words.equals(one.words())));
    }

    private static List<Batch> of(OneCharge charge, List<Batch> batches) {
        return batches.stream().filter(charge::holds).toList();
    }

    /** Returns batches without a date before all others: which is the newest is known of dated ones only. */
    private static List<Batch> inTime(List<Batch> batches) {
        List<Batch> sorted = new ArrayList<>(
                batches.stream().filter(batch -> batch.roastedAt().isEmpty()).toList());
        batches.stream().filter(batch -> batch.roastedAt().isPresent()).forEach(sorted::add);
        return sorted;
    }

    private static List<String> among(Batch newest) {
        List<String> words = new ArrayList<>();
        newest.machine().ifPresent(machine -> words.add("on " + machine));
        newest.label(Batch.Label.RECIPE).ifPresent(recipe -> words.add("by the recipe " + recipe));
        return words;
    }

    private static List<Batch> last(List<Batch> batches) {
        return batches.subList(Math.max(0, batches.size() - SHOWN), batches.size());
    }

    private static List<Batch> lastFew(List<Batch> batches, Predicate<Batch> condition) {
        List<Batch> found = new ArrayList<>();
        for (int i = batches.size() - 1; i >= Math.max(0, batches.size() - SEARCHED) && found.size() < SHOWN; i--) {
            if (condition.test(batches.get(i))) {
                found.add(batches.get(i));
            }
        }
        Collections.reverse(found);
        return found;
    }

    /** Returns what was scored of a batch; empty where scores were not the ground. */
    Optional<ShrunkenScores.Score> score(Batch batch) {
        return scored.flatMap(found -> Optional.ofNullable(found.scores().get(batch.name())));
    }
}
