package parchment.card;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import parchment.align.ShrunkenScores;
import parchment.drift.Usual;
import parchment.logbook.Batch;
import parchment.logbook.Cupping;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Holds the last batches of a lot that went well, by what is known: blind scores, else other scores, else that they were as usual, else simply the
 * last.
 *
 * @param lot the lot
 * @param ground by what they went well
 * @param batches the batches, the earliest first; at most {@value #SHOWN}
 * @param held how many batches of the lot they were chosen from
 * @param good how many of those went well by the same ground
 * @param scored the scores, where those were the ground
 * @param among what they have in common, as in "on drum 1, recipe espresso"; empty if nothing was written or all have it
 */
record GoodBatches(
        String lot, Ground ground, List<Batch> batches, int held, int good, Optional<ScoredLot> scored, String among) {
    /** How many batches stand side by side on a card. */
    static final int SHOWN = 5;

    /** How many of the last batches are held against the lot's others in search of usual ones. */
    private static final int SEARCHED = 30;

    /** By how much of the newest batch's mass others may differ from it; common practice, no source. */
    private static final double MASS_SHARE = 0.1;

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
     * Finds the last good batches of a lot: on the machine and by the recipe of its newest batch.
     *
     * @throws parchment.logbook.LogbookException if the logbook has no lot of that name
     */
    static GoodBatches of(String lot, Logbook logbook) {
        List<Batch> every = inTime(logbook.ofLot(lot).batches());
        if (every.isEmpty()) {
            return new GoodBatches(lot, Ground.THE_LAST, every, 0, 0, Optional.empty(), "");
        }
        Batch newest = every.get(every.size() - 1);
        List<Batch> like = every.stream()
                .filter(batch -> batch.machine().equals(newest.machine())
                        && batch.label(Batch.Label.RECIPE).equals(newest.label(Batch.Label.RECIPE)))
                .toList();
        String among = like.size() == every.size() ? "" : among(newest);
        Optional<ScoredLot> scored = ScoredLot.of(like, logbook);
        if (scored.isPresent()) {
            List<Batch> best =
                    like.stream().filter(scored.get()::isAmongTheBest).toList();
            Ground ground = scored.get().blind() == Cupping.Said.YES ? Ground.BLIND_SCORES : Ground.OTHER_SCORES;
            List<Batch> alike = ofLikeMass(best, newest);
            return new GoodBatches(
                    lot,
                    ground,
                    last(alike),
                    scored.get().scores().size(),
                    alike.size(),
                    scored,
                    narrowed(among, best, alike, newest));
        }
        List<Batch> alike = ofLikeMass(like, newest);
        String narrowed = narrowed(among, like, alike, newest);
        List<Batch> usual =
                lastFew(alike, batch -> Usual.of(batch, logbook.whole()).verdict() == Usual.Verdict.LIKE_THE_OTHERS);
        return usual.size() < ScoredLot.ENOUGH
                ? new GoodBatches(
                        lot, Ground.THE_LAST, last(alike), alike.size(), alike.size(), Optional.empty(), narrowed)
                : new GoodBatches(lot, Ground.AS_USUAL, usual, alike.size(), usual.size(), Optional.empty(), narrowed);
    }

    /** Returns those whose mass is within a tenth of the newest's, where there are enough of them: times and settings go with the mass. */
    private static List<Batch> ofLikeMass(List<Batch> batches, Batch newest) {
        double mass = kilograms(newest);
        List<Batch> alike = batches.stream()
                .filter(batch -> Math.abs(kilograms(batch) - mass) <= MASS_SHARE * mass)
                .toList();
        return alike.size() < ScoredLot.ENOUGH ? batches : alike;
    }

    private static double kilograms(Batch batch) {
        return batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
    }

    private static String narrowed(String among, List<Batch> before, List<Batch> alike, Batch newest) {
        return alike.size() == before.size() ? among : (among.isEmpty() ? "" : among + ", ") + about(newest);
    }

    private static String about(Batch newest) {
        return "with about " + Unit.KILOGRAMS.withDigits(1).format(kilograms(newest), TemperatureUnit.CELSIUS)
                + " of green coffee";
    }

    /** Returns batches without a date before all others: which is the newest is known of dated ones only. */
    private static List<Batch> inTime(List<Batch> batches) {
        List<Batch> sorted = new ArrayList<>(
                batches.stream().filter(batch -> batch.roastedAt().isEmpty()).toList());
        batches.stream().filter(batch -> batch.roastedAt().isPresent()).forEach(sorted::add);
        return sorted;
    }

    private static String among(Batch newest) {
        List<String> words = new ArrayList<>();
        newest.machine().ifPresent(machine -> words.add("on " + machine));
        newest.label(Batch.Label.RECIPE).ifPresent(recipe -> words.add("by the recipe " + recipe));
        return String.join(", ", words);
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
