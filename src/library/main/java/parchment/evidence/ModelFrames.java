package parchment.evidence;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.calendar.RoastCalendar;
import parchment.evidence.finding.Wording;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.period.ProbePeriods;

/**
 * Joins the scores of an attribute to the batches and to their measure.
 *
 * <p>Days and places in the day come from {@link RoastCalendar}, which counts every recorded batch, cupped or not; probe periods, written
 * and found, from {@link ProbePeriods}.
 */
final class ModelFrames {
    /** Why a batch without a lot is left out. */
    static final String NO_LOT = "no lot is written, so they cannot be compared inside a lot (write it and they count)";

    /** Why a batch without a date is left out. */
    static final String NO_DATE = "no date, so the roast day is unknown";

    private static final String NO_LOTS = "all batches";
    private static final String NOTHING_SCORED =
            "nothing is scored in this logbook (write scores into cuppings.csv: one row per cup and cupper)";

    private final Logbook logbook;
    private final String attribute;
    private final Map<String, Reading> readings;
    private final Map<Exclusion, Integer> reasons = new LinkedHashMap<>();
    private final Map<Exclusion, List<String>> names = new HashMap<>();
    private final List<String> remarks = new ArrayList<>();
    private final boolean severalMachines;

    /**
     * Holds a feature's value of one batch.
     *
     * @param error its standard error, NaN if not known
     * @param whyMissing why there is no value, empty if there is one
     * @param today the value as today's probe would read it, NaN if that is not known
     * @param sharedError the standard error of the difference, shared by all batches of the period
     * @param period the probe period, the same words for all its batches; empty for what is no matter of the probe
     */
    record Reading(double value, double error, String whyMissing, double today, double sharedError, String period) {
        static final Reading NONE = new Reading(Double.NaN, Double.NaN, "the measure is missing");

        Reading(double value, double error, String whyMissing) {
            this(value, error, whyMissing, value, 0, "");
        }

        Reading(double value, double error) {
            this(value, error, "");
        }

        /** Returns the same reading with what today's probe would read, and the error that all of its probe period share. */
        Reading onTodaysProbe(double there, double shared, String ofPeriod) {
            return new Reading(value, error, whyMissing, there, shared, ofPeriod);
        }
    }

    private ModelFrames(String attribute, Logbook logbook, Map<String, Reading> readings) {
        this.attribute = attribute;
        this.logbook = logbook;
        this.readings = readings;
        this.severalMachines = logbook.batches().stream()
                        .map(batch -> batch.machine().orElse(""))
                        .distinct()
                        .count()
                > 1;
    }

    static ModelFrame of(String attribute, Logbook logbook, Map<String, Reading> readings) {
        return new ModelFrames(attribute, logbook, readings).join();
    }

    private ModelFrame join() {
        Map<String, List<CupScores>> cups = new HashMap<>();
        for (CupScores cup : logbook.cups()) {
            if (!Double.isNaN(cup.score(attribute))) {
                cups.computeIfAbsent(cup.batch(), key -> new ArrayList<>()).add(cup);
            }
        }
        boolean lots = logbook.batches().stream().anyMatch(batch -> batch.lot().isPresent());
        if (!lots) {
            remarks.add("No lot is written, so the batches are compared as if they were all of one lot.");
        }
        RoastCalendar calendar = RoastCalendar.of(logbook);
        ProbePeriods periods = ProbePeriods.of(logbook);
        List<TastedBatch> kept = new ArrayList<>();
        List<Batch> onTheProbe = new ArrayList<>();
        List<ScoreRow> rows = new ArrayList<>();
        for (Batch batch : logbook.batches()) {
            List<CupScores> own = cups.remove(batch.name());
            Reading reading = readings.getOrDefault(batch.name(), Reading.NONE);
            if (own == null) {
                leave(batch, logbook.cups().isEmpty() ? NOTHING_SCORED : "no score of " + attribute);
            } else if (!Double.isFinite(reading.value())) {
                leave(batch, reading.whyMissing());
            } else if (batch.roastDay().isEmpty()) {
                leave(batch, NO_DATE);
            } else if (lots && batch.lot().isEmpty()) {
                leave(batch, NO_LOT);
            } else {
                TastedBatch tasted = tasted(kept.size(), batch, reading, periods, calendar);
                if (addScores(tasted, own, rows)) {
                    kept.add(tasted);
                    if (!reading.period().isEmpty()) {
                        onTheProbe.add(batch);
                    }
                }
            }
        }
        cups.values()
                .forEach(orphans -> leave(Exclusion.What.SCORES, "their batch is not in the logbook", orphans.size()));
        remarkOnMissing(kept);
        List<Exclusion> counted = reasons.entrySet().stream()
                .map(entry -> new Exclusion(
                        entry.getValue(),
                        entry.getKey().what(),
                        entry.getKey().reason(),
                        names.getOrDefault(entry.getKey(), List.of())))
                .toList();
        return new ModelFrame(kept, rows, counted, remarks).withDoubts(periods.doubts(onTheProbe));
    }

    private TastedBatch tasted(
            int position, Batch batch, Reading reading, ProbePeriods periods, RoastCalendar calendar) {
        String lot = batch.lot().orElse(NO_LOTS);
        String machine = batch.machine().orElse("");
        int period = periods.number(batch).orElse(1);
        return new TastedBatch(
                position,
                batch.name(),
                lot,
                TastedBatch.lotKey(lot, machine) + "\n" + period,
                batch.operator().orElse(""),
                batch.roastDay().orElseThrow(),
                calendar.batchOfTheDay(batch).orElse(1),
                batch.conditions().greenMass().map(mass -> mass.kilograms()).orElse(Double.NaN),
                batch.conditions().roomTemperature().map(room -> room.celsius()).orElse(Double.NaN),
                reading.value(),
                reading.error(),
                new TastedBatch.Today(
                        reading.today(),
                        severalMachines ? TastedBatch.lotKey(lot, machine) : lot,
                        reading.period(),
                        reading.sharedError(),
                        reading.period().isEmpty() ? "" : "probe of " + machine));
    }

    private boolean addScores(TastedBatch batch, List<CupScores> own, List<ScoreRow> rows) {
        int before = rows.size();
        for (CupScores cup : own) {
            long rest = ChronoUnit.DAYS.between(batch.day(), cup.tastedOn());
            if (rest < 0) {
                leave(Exclusion.What.SCORES, "tasted before the day their batch was roasted", 1);
            } else {
                rows.add(new ScoreRow(batch.position(), cup.cupping(), cup.cupper(), rest, cup.score(attribute)));
            }
        }
        return rows.size() > before;
    }

    private void remarkOnMissing(List<TastedBatch> kept) {
        long masses = kept.stream().filter(batch -> Double.isNaN(batch.mass())).count();
        if (masses > 0 && masses < kept.size()) {
            remarks.add("The green mass of " + Wording.count(masses, "batch is", "batches are")
                    + " not written; there the mean of the others stands in for it.");
        }
        Set<String> days = new HashSet<>();
        kept.forEach(batch -> days.add(batch.day().toString()));
        if (days.size() == kept.size() && kept.size() > 1) {
            remarks.add("No two scored batches share a roast day, so a bad day and a bad batch cannot be told apart.");
        }
    }

    private void leave(Batch batch, String reason) {
        names.computeIfAbsent(leave(Exclusion.What.BATCHES, reason, 1), key -> new ArrayList<>())
                .add(batch.name());
    }

    private Exclusion leave(Exclusion.What what, String reason, int count) {
        // The reasons stand in a list, so a full stop at their end would stand in its middle.
        String inList = reason.endsWith(".") ? reason.substring(0, reason.length() - 1) : reason;
        Exclusion key = new Exclusion(0, what, inList, List.of());
        reasons.merge(key, count, Integer::sum);
        return key;
    }
}
