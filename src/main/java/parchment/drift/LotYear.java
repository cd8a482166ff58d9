package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.LotCheck;
import parchment.logbook.ScoreQuestion;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/**
 * Follows a number of one lot through its months and takes apart what moved it: the lot's ageing, the time of year, the room, the probe,
 * what the roaster did. Says which of these the logbook can separate, and which it cannot.
 *
 * <pre>{@code
 * LotYear.of(logbook.lastWithCurve().lot().orElseThrow(), browningTime(), logbook)
 * }</pre>
 *
 * <p>All lots of the machine are fitted together, each with its level and its slope, on roast days whose effects wander. Date is arrival
 * plus age: a lot's ageing and a steady drift of the machine are one number unless a coffee that does not age was roasted all along
 * ({@link #withReference}) or the reader is willing to state that the machine did not drift ({@link #assuming}). No annual wave is
 * fitted on less than 24 months of roasting.
 */
public final class LotYear implements ShownAs {
    private static final int LEAST_DAYS = 5;
    private static final int LEAST_ROWS = 24;
    private static final double LEAST_SPAN = 45;
    private static final double KNOWN = 0.85;
    /** Days of the year held against each other, by the name of their column. */
    private static final String[][] WAVE = {{"mid-January", "mid-July"}, {"mid-April", "mid-October"}};

    /** What the reader states about the machine. */
    public enum Assumption {
        /** Nothing: ageing and drift of the machine stay one number. */
        NOTHING,
        /** Apart from the probe periods and the time of year, the machine stayed as it was. */
        MACHINE_DID_NOT_DRIFT
    }

    private final Logbook logbook;
    private final String lot;
    private final Response response;
    private final Assumption assumption;
    private final Optional<String> reference;
    private final LotRows rows;
    private final Optional<YearModel> model;
    private final List<YearPart> parts;

    private LotYear(Logbook logbook, String lot, Response response, Assumption assumption, Optional<String> reference) {
        this.logbook = logbook;
        this.lot = lot;
        this.response = response;
        this.assumption = assumption;
        this.reference = reference;
        this.rows = LotRows.of(logbook, lot, response);
        this.model = rows.size() >= LEAST_ROWS ? Optional.of(rows.fit()) : Optional.empty();
        this.parts = model.map(this::parts).orElse(List.of());
    }

    /**
     * Follows a feature of a lot.
     *
     * @throws parchment.logbook.LogbookException if the logbook has no such lot
     */
    public static LotYear of(String lot, Feature feature, Logbook logbook) {
        logbook.ofLot(lot);
        return new LotYear(
                logbook,
                lot,
                Response.of(feature, BatchTable.of(logbook, feature)),
                Assumption.NOTHING,
                Optional.empty());
    }

    /** Follows a feature of the lot with the most batches. */
    public static LotYear of(Feature feature, Logbook logbook) {
        Map<String, Integer> counts = new TreeMap<>();
        logbook.batches().forEach(b -> b.lot().ifPresent(name -> counts.merge(name, 1, Integer::sum)));
        String most = counts.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
        return new LotYear(
                logbook,
                most,
                Response.of(feature, BatchTable.of(logbook, feature)),
                Assumption.NOTHING,
                Optional.empty());
    }

    /**
     * Follows the scores of an attribute; each cupper's own level is taken out first. A change of all cuppers together stays in.
     *
     * @throws parchment.logbook.LogbookException if the logbook has no such lot or attribute
     */
    public static LotYear of(String lot, String attribute, Logbook logbook) {
        logbook.ofLot(lot);
        LotYear year = new LotYear(
                logbook,
                lot,
                Response.of(attribute, BatchTable.of(logbook, Features.greenMass())),
                Assumption.NOTHING,
                Optional.empty());
        return ScoreQuestion.answered(year, logbook, lot, attribute);
    }

    /** Returns the same under another statement about the machine. */
    public LotYear assuming(Assumption other) {
        return new LotYear(logbook, lot, response, other, reference);
    }

    /**
     * Returns the same with a coffee that is kept so that it does not age: what it moves by is the machine's drift.
     *
     * @throws parchment.logbook.LogbookException if the logbook has no such lot
     */
    public LotYear withReference(String referenceLot) {
        logbook.ofLot(referenceLot);
        return new LotYear(logbook, lot, response, assumption, Optional.of(referenceLot));
    }

    private List<YearPart> parts(YearModel fitted) {
        List<YearPart> found = new ArrayList<>();
        found.add(ageing(fitted));
        found.addAll(season(fitted));
        for (YearModel.Column column : fitted.columns()) {
            if (column.part == YearModel.Part.ROOM || column.part == YearModel.Part.PERIOD) {
                int place = fitted.columns().indexOf(column);
                Estimate estimate = fitted.term(place);
                boolean free = fitted.regression().kept(place) && fitted.inflation(place) <= YearModel.TOO_ALIKE;
                found.add(
                        free
                                ? new YearPart(column.name, YearPart.Verdict.TOLD, estimate, shown(estimate), "")
                                : together(column.name, fitted, place));
            }
        }
        return List.copyOf(found);
    }

    private YearPart ageing(YearModel fitted) {
        String name = "change per 100 days since arrival";
        int place = fitted.place(YearModel.Part.AGE, lot);
        if (place < 0 || rows.daysOf(lot) < LEAST_DAYS || rows.spanOf(lot) < LEAST_SPAN) {
            return new YearPart(
                    name,
                    YearPart.Verdict.CANNOT_TELL,
                    nothing(name),
                    "",
                    String.format(
                            Locale.ROOT,
                            "%s has this number on %d roast days over %.0f days; %d roast days over %.0f days are needed.",
                            lot,
                            rows.daysOf(lot),
                            rows.spanOf(lot),
                            LEAST_DAYS,
                            LEAST_SPAN));
        }
        if (!fitted.regression().kept(place) || fitted.inflation(place) > YearModel.TOO_ALIKE) {
            return together(name, fitted, place);
        }
        Estimate sum = fitted.term(place);
        boolean season = fitted.has(YearModel.Part.SEASON);
        String cuppers = response.kind() == Response.Kind.SCORE ? ", a drift of all cuppers together" : "";
        if (!season) {
            return new YearPart(
                    name,
                    YearPart.Verdict.SUM_ONLY,
                    sum,
                    shown(sum),
                    "This is the sum of ageing, drift of the machine, time of year and the room" + cuppers
                            + ": the logbook does not hold 24 months of roasting in nearly every month, so they cannot be told apart.");
        }
        Optional<Integer> anchor = reference
                .map(other -> fitted.place(YearModel.Part.AGE, other))
                .filter(other -> other >= 0 && fitted.regression().kept(other));
        if (anchor.isPresent()) {
            Estimate own = fitted.difference(place, anchor.get());
            return new YearPart(
                    "ageing per 100 days",
                    YearPart.Verdict.TOLD,
                    own,
                    shown(own),
                    "Beyond what the reference coffee " + reference.orElse("")
                            + " moved by, which is taken not to age.");
        }
        if (assumption == Assumption.MACHINE_DID_NOT_DRIFT) {
            return new YearPart(
                    "ageing per 100 days",
                    YearPart.Verdict.TOLD,
                    sum,
                    shown(sum),
                    "Told on the stated assumption that the machine did not drift; nothing in the logbook can check it.");
        }
        return new YearPart(
                name,
                YearPart.Verdict.SUM_ONLY,
                sum,
                shown(sum),
                "This is the sum of ageing and a steady drift of the machine" + cuppers
                        + ": date is arrival plus age, so no number of batches tells them apart. A coffee kept so that it does"
                        + " not age and roasted now and then would.");
    }

    private List<YearPart> season(YearModel fitted) {
        if (!fitted.has(YearModel.Part.SEASON) && !rows.showsMostOfAYear()) {
            return List.of(new YearPart(
                    "time of year",
                    YearPart.Verdict.CANNOT_TELL,
                    nothing("time of year"),
                    "",
                    String.format(
                            Locale.ROOT,
                            "A season needs 24 months of roasting in nearly every month of the year; there are %.0f.",
                            rows.span() / 30.44)));
        }
        Optional<YearModel> together = Optional.empty();
        List<YearPart> parts = new ArrayList<>();
        for (String[] pair : WAVE) {
            String name = pair[0] + " against " + pair[1];
            int place = fitted.place(YearModel.Part.SEASON, pair[0]);
            if (place >= 0 && fitted.regression().kept(place) && fitted.inflation(place) <= YearModel.TOO_ALIKE) {
                Estimate estimate = fitted.term(place);
                parts.add(new YearPart(
                        name,
                        YearPart.Verdict.TOLD,
                        estimate,
                        shown(estimate),
                        rows.has(YearModel.Part.ROOM)
                                ? "As far as the room's readings and what the roaster did do not carry it."
                                : "As far as what the roaster did does not carry it."));
            } else {
                together = together.or(() -> Optional.of(rows.fitTogether()));
                parts.add(sum(name, pair[0], together.get()));
            }
        }
        return parts;
    }

    /** Tells the sum of the time of year and what moved with it. */
    private YearPart sum(String name, String column, YearModel together) {
        int place = together.place(YearModel.Part.SEASON, column);
        if (!together.regression().kept(place) || together.inflation(place) > YearModel.TOO_ALIKE) {
            return together(name, together, place);
        }
        Estimate estimate = together.term(place);
        String cuppers = response.kind() == Response.Kind.SCORE ? ", a drift of all cuppers together" : "";
        return new YearPart(
                name,
                YearPart.Verdict.SUM_ONLY,
                estimate,
                shown(estimate),
                rows.showsSeason()
                        ? "This is the sum of the time of year and the room's temperature and humidity, which moved together in this"
                                + " logbook."
                        : String.format(
                                Locale.ROOT,
                                "This is the sum of the time of year, the room, ageing and drift of the machine%s: the logbook holds"
                                        + " %.0f months of roasting, and 24 in nearly every month of the year would tell them apart.",
                                cuppers,
                                rows.span() / 30.44));
    }

    private YearPart together(String name, YearModel fitted, int place) {
        return new YearPart(
                name,
                YearPart.Verdict.CANNOT_TELL,
                nothing(name),
                "",
                "It moved together with " + fitted.culprit(place).words() + " in this logbook.");
    }

    private static Estimate nothing(String name) {
        return new Estimate(name, Double.NaN, Double.NaN, Double.NaN);
    }

    String shown(Estimate estimate) {
        Unit unit = unit();
        Interval interval = estimate.interval(0.90);
        return String.format(
                Locale.ROOT,
                "%s %s (%s to %s)",
                rounded("%+.", unit.shownStep(estimate.estimate(), reader())),
                unit.symbol(reader()).equals("%") ? "percentage points" : unit.symbol(reader()),
                rounded("%.", unit.shownStep(interval.lower(), reader())),
                rounded("%.", unit.shownStep(interval.upper(), reader())));
    }

    /** Prints a number of the answer; what rounds to zero has no sign. */
    private String rounded(String format, double number) {
        return String.format(Locale.ROOT, format + unit().digits() + "f", number)
                .replaceFirst("^[+-](?=0(\\.0+)?$)", "");
    }

    Unit unit() {
        Unit unit = response.unit();
        return unit.withDigits(Math.max(1, unit.digits() + (unit.digits() < 2 ? 1 : 0)));
    }

    TemperatureUnit reader() {
        return logbook.readerUnit();
    }

    /** Returns every part, the lot's own change first; empty if there is too little to fit. */
    public List<YearPart> parts() {
        return parts;
    }

    /** Returns the lot's change with its age; empty if there is too little to fit. */
    public Optional<YearPart> ageing() {
        return parts.stream().findFirst();
    }

    /** Returns the change per 100 days of every lot, drawn towards their mean as far as they are alike; empty with fewer than 3 lots. */
    public Map<String, Estimate> pooledSlopes() {
        return model.map(PooledSlopes::of).orElse(Map.of());
    }

    /** Says what lots.csv and lot-checks.csv know of the lot's age. */
    public List<String> ageWords() {
        List<String> words = new ArrayList<>();
        Optional<Lot> known =
                logbook.lots().stream().filter(l -> l.name().equals(lot)).findFirst();
        Optional<LocalDate> harvest = known.flatMap(Lot::harvestedOn);
        Optional<LocalDate> arrival = known.flatMap(Lot::arrivedOn);
        harvest.ifPresent(day -> words.add("Harvested on " + day
                + arrival.map(a -> ", arrived on " + a
                                + ": the days before arrival aged it too, and are the same for all its batches.")
                        .orElse(".")));
        if (harvest.isEmpty()) {
            words.add(arrival.map(a -> "Arrived on " + a + "; its harvest is not written, so its age is not known.")
                    .orElse("Neither harvest nor arrival of " + lot + " is written; dates stand for its age."));
        }
        List<LotCheck> checks = logbook.contents().lotChecks().stream()
                .filter(c -> c.lot().equals(lot) && c.moisture().isPresent())
                .sorted(Comparator.comparing(LotCheck::measuredOn))
                .toList();
        if (checks.size() >= 2) {
            LotCheck first = checks.get(0);
            LotCheck last = checks.get(checks.size() - 1);
            words.add(String.format(
                    Locale.ROOT,
                    "Its moisture was measured %d times: %.1f %% on %s, %.1f %% on %s%s",
                    checks.size(),
                    100 * first.moisture().getAsDouble(),
                    first.measuredOn(),
                    100 * last.moisture().getAsDouble(),
                    last.measuredOn(),
                    Math.abs(last.moisture().getAsDouble() - first.moisture().getAsDouble()) < 0.002
                            ? ": it hardly changed, so drying out or taking up water is not the reason for what moved."
                            : ": water moved together with age, and could be the reason for what moved."));
        } else {
            words.add("Its moisture was not measured again (lot-checks.csv), so what age did to it is not known.");
        }
        return words;
    }

    /** Returns the lot's name; empty if no batch names a lot. */
    public String lot() {
        return lot;
    }

    /** Returns the logbook of the lot's own batches. */
    public Logbook ownBatches() {
        return logbook.only(batch -> batch.lot().orElse("").equals(lot));
    }

    Response response() {
        return response;
    }

    Logbook logbook() {
        return logbook;
    }

    LotRows rows() {
        return rows;
    }

    Optional<YearModel> model() {
        return model;
    }

    List<String> roaster() {
        Map<String, String> words = new LinkedHashMap<>();
        model.ifPresent(fitted -> Arrays.stream(fitted.columns().toArray(YearModel.Column[]::new))
                .filter(c -> c.part == YearModel.Part.ROASTER)
                .forEach(c -> words.put(c.name, c.name)));
        return List.copyOf(words.keySet());
    }

    @Override
    public Showable shownAs() {
        return YearPicture.page(this);
    }

    @Override
    public String toString() {
        return parts.isEmpty()
                ? String.format(
                        Locale.ROOT,
                        "Cannot tell how %s of %s moved: %d batches have it with a date and what the roaster did, and %d are"
                                + " needed.",
                        response.name(),
                        lot.isEmpty() ? "batches without a lot" : lot,
                        rows.size(),
                        LEAST_ROWS)
                : response.name() + " of " + lot + ", " + parts.get(0) + swing();
    }

    /** Names the largest clear swing within the year, so that a slope near zero does not hide it. */
    private String swing() {
        return parts.stream()
                .filter(p -> Arrays.stream(WAVE).anyMatch(pair -> p.name().startsWith(pair[0])))
                .filter(p -> p.verdict() != YearPart.Verdict.CANNOT_TELL)
                .filter(p -> {
                    Interval interval = p.estimate().interval(0.90);
                    return interval.lower() > 0 || interval.upper() < 0;
                })
                .max(Comparator.comparingDouble(p -> Math.abs(p.estimate().estimate())))
                .map(p -> " Within the year it swung: " + p.name() + " " + p.shown()
                        + (p.verdict() == YearPart.Verdict.SUM_ONLY ? ", a sum too." : "."))
                .orElse("");
    }

    /** Share of rows in which a column must be known to be used. */
    static double known() {
        return KNOWN;
    }
}
