package parchment.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.stats.linear.CannotFitException;

/**
 * Tells where each lot is best, as a reading on today's probe, and what to expect of the next lot.
 *
 * <p>One model of all scores: each lot has a level of its own and, where it has at least {@value #BATCHES_FOR_SLOPE} scored batches on
 * {@value #DAYS_FOR_SLOPE} roast days, a slope of its own; the bend is common. So a lot of noise moves its own answer and, but for the
 * bend, nobody else's. A lot's best is where its course turns, with Fieller's set. For the next lot the lots' slopes are taken as
 * draws from one distribution; its interval uses t with lots less two degrees of freedom (Higgins, Thompson and Spiegelhalter 2009, J. R.
 * Stat. Soc. A 172:137).
 */
public final class Bests implements Showable {
    /** A lot has a slope of its own from this many scored batches on. */
    static final int BATCHES_FOR_SLOPE = 8;

    /** And from this many roast days on. */
    static final int DAYS_FOR_SLOPE = 3;

    /** With fewer lots that have a slope of their own nothing is said of the next. */
    static final int LOTS_FOR_NEXT = 3;

    /** The lots' slopes are said to differ if chance alone would do as much in fewer than this share of logbooks. */
    static final double CHANCE_OF_DIFFERENCE = 0.05;

    private static final ModelForm FORM =
            ModelForm.STANDARD.with(ModelForm.Shape.ABSENT).with(ModelForm.Lots.FIXED);

    private final List<LotBest> lots;
    private final Peak next;
    private final double chanceOfDifference;
    private final List<Own> own;
    private final List<String> keys;
    private final Scale scale;

    /** Says whether the places of all lots are on one scale. */
    private enum Scale {
        ONE,
        ONE_PER_MACHINE
    }

    /** Holds a lot's own slope at a place common to all lots, so that with the common bend they can be compared. */
    record Own(String lot, Slope slope) {}

    private Bests(
            List<LotBest> lots, Peak next, double chanceOfDifference, List<Own> own, List<String> keys, Scale scale) {
        this.keys = List.copyOf(keys);
        this.scale = scale;
        this.own = List.copyOf(own);
        this.lots = List.copyOf(lots);
        this.next = next;
        this.chanceOfDifference = chanceOfDifference;
    }

    static Bests of(ModelFrame today, TriedRange range, double level) {
        Map<String, List<TastedBatch>> byLot = new TreeMap<>();
        today.batches()
                .forEach(batch -> byLot.computeIfAbsent(batch.lotPeriod(), key -> new ArrayList<>())
                        .add(batch));
        Set<String> own = new TreeSet<>();
        byLot.forEach((lot, batches) -> {
            if (batches.size() >= BATCHES_FOR_SLOPE && days(batches) >= DAYS_FOR_SLOPE) {
                own.add(lot);
            }
        });
        Optional<FittedScores> fitted = fit(today, own, range.center());
        List<LotBest> lots = new ArrayList<>();
        byLot.forEach((lot, batches) -> lots.add(best(lot, batches, own.contains(lot), fitted, range.center(), level)));
        Bests unpooled = new Bests(
                lots,
                Peak.unknown(range),
                1,
                List.of(),
                List.copyOf(byLot.keySet()),
                today.ofSeveralProbes() ? Scale.ONE_PER_MACHINE : Scale.ONE);
        // Slopes at one place can be compared only if that place is the same for all.
        return fitted.filter(found -> unpooled.scale == Scale.ONE)
                .map(found -> new Pooled(found, List.copyOf(own), range, level).bests(unpooled))
                .orElse(unpooled);
    }

    private static int days(List<TastedBatch> batches) {
        Set<LocalDate> days = new HashSet<>();
        batches.forEach(batch -> days.add(batch.day()));
        return days.size();
    }

    private static String column(String lot) {
        return "slope of lot " + lot;
    }

    /** Returns the column of the slope that lots with few batches share: those of one probe, as a place means the same for them only. */
    private static String shared(TastedBatch batch) {
        return "slope of the other lots" + batch.today().probe();
    }

    private static Optional<FittedScores> fit(ModelFrame today, Set<String> own, double center) {
        try {
            FittedScores fitted = FittedScores.of(design(today, own, center));
            Map<String, FittedScores> moved = new TreeMap<>();
            TodaysCourse.movedByOneError(today)
                    .forEach((period, other) -> moved.put(period, FittedScores.of(design(other, own, center))));
            return Optional.of(fitted.withSharedErrors(moved));
        } catch (CannotFitException tooFew) {
            return Optional.empty();
        }
    }

    private static ScoreDesign design(ModelFrame today, Set<String> own, double center) {
        ScoreDesign design = ScoreDesign.of(today, FORM, center);
        int count = today.batches().size();
        Map<String, double[]> columns = new LinkedHashMap<>();
        double[] square = new double[count];
        double[] along = new double[count];
        for (TastedBatch batch : today.batches()) {
            double x = batch.measure() - center;
            String column = own.contains(batch.lotPeriod()) ? column(batch.lotPeriod()) : shared(batch);
            columns.computeIfAbsent(column, key -> new double[count])[batch.position()] = x;
            square[batch.position()] = x * x;
            along[batch.position()] = x;
        }
        for (Map.Entry<String, double[]> column : columns.entrySet()) {
            design = design.withBatchColumn(column.getKey(), column.getValue());
        }
        return design.withBatchColumn(ScoreDesign.SQUARE, square).withCuppersSlopes(along);
    }

    private static LotBest best(
            String lot,
            List<TastedBatch> batches,
            boolean own,
            Optional<FittedScores> fitted,
            double center,
            double level) {
        TriedRange range =
                TriedRange.of(batches.stream().mapToDouble(TastedBatch::measure).toArray(), center);
        String column = own ? column(lot) : shared(batches.get(0));
        String words = TastedBatch.lotWords(lot);
        Slope line = fitted.map(found -> found.slope(column)).orElse(Slope.MISSING);
        Slope square = fitted.map(found -> found.slope(ScoreDesign.SQUARE)).orElse(Slope.MISSING);
        LotBest.Own whose = own ? LotBest.Own.OWN : LotBest.Own.SHARED;
        if (!line.known() || !square.known()) {
            return new LotBest(words, batches.size(), days(batches), Slope.MISSING, whose, Peak.unknown(range));
        }
        double covariance = fitted.orElseThrow().covariance(column, ScoreDesign.SQUARE);
        double mean =
                batches.stream().mapToDouble(TastedBatch::measure).average().orElse(center) - center;
        double variance = line.standardError() * line.standardError()
                + 4 * mean * covariance
                + 4 * mean * mean * square.standardError() * square.standardError();
        Slope atMean = new Slope(
                line.estimate() + 2 * mean * square.estimate(),
                Math.sqrt(Math.max(0, variance)),
                Math.min(line.degreesOfFreedom(), square.degreesOfFreedom()));
        return new LotBest(
                words, batches.size(), days(batches), atMean, whose, Peak.of(line, square, covariance, range, level));
    }

    /** Puts the lots' own slopes together. */
    private record Pooled(FittedScores fitted, List<String> own, TriedRange range, double level) {
        Bests bests(Bests unpooled) {
            List<Own> known = new ArrayList<>();
            for (String lot : own) {
                Slope slope = fitted.slope(column(lot));
                if (slope.known()) {
                    known.add(new Own(lot, slope));
                }
            }
            List<Slope> slopes = known.stream().map(Own::slope).toList();
            Slope square = fitted.slope(ScoreDesign.SQUARE);
            RandomSlopes pooled = RandomSlopes.of(slopes);
            if (slopes.size() < LOTS_FOR_NEXT || slopes.size() < own.size() || !square.known()) {
                return unpooled.with(Peak.unknown(range), pooled.chanceOfDifference(), known);
            }
            double covariance = 0;
            double variance = pooled.between() * pooled.between();
            for (int i = 0; i < own.size(); i++) {
                covariance += pooled.weight(i) * fitted.covariance(column(own.get(i)), ScoreDesign.SQUARE);
                for (int j = 0; j < own.size(); j++) {
                    // The slopes share the bend and the probe, so their mean has more error than independent ones
                    // would.
                    variance += pooled.weight(i)
                            * pooled.weight(j)
                            * fitted.covariance(column(own.get(i)), column(own.get(j)));
                }
            }
            Slope next = new Slope(pooled.mean(), Math.sqrt(variance), own.size() - 2.0);
            return unpooled.with(Peak.of(next, square, covariance, range, level), pooled.chanceOfDifference(), known);
        }
    }

    private Bests with(Peak ofNext, double chance, List<Own> slopes) {
        return new Bests(lots, ofNext, chance, slopes, keys, scale);
    }

    /** Returns the same with its places told in the reader's unit. */
    Bests told(String attribute, Measure measure) {
        return new Bests(
                lots.stream()
                        .map(lot -> new LotBest(
                                lot.lot(),
                                lot.batches(),
                                lot.roastDays(),
                                lot.slope(),
                                lot.own(),
                                lot.best().told(attribute, measure)))
                        .toList(),
                next.told(attribute, measure),
                chanceOfDifference,
                own,
                keys,
                scale);
    }

    /** Returns the lots on their machines that a name may mean: one of just that name, otherwise those of that lot on any machine. */
    List<LotBest> named(String name) {
        List<LotBest> exact =
                lots.stream().filter(lot -> lot.lot().equals(name)).toList();
        return !exact.isEmpty()
                ? exact
                : IntStream.range(0, lots.size())
                        .filter(i -> TastedBatch.lotOf(keys.get(i)).equals(name))
                        .mapToObj(lots::get)
                        .toList();
    }

    /** Returns the lots in words: three lots on two machines are three lots. */
    String count() {
        long different = keys.stream().map(TastedBatch::lotOf).distinct().count();
        return Wording.count(different, "lot", "lots") + (different == lots.size() ? "" : " on their machines");
    }

    /** Returns what each lot tells, in the order of their names. */
    public List<LotBest> lots() {
        return lots;
    }

    /** Returns the slope of each lot that has one of its own, at a place common to all. */
    List<Own> own() {
        return own;
    }

    /** Returns where to expect the best of the next lot; everywhere with fewer than three lots that have a slope of their own. */
    public Peak next() {
        return next;
    }

    /** Returns the share of logbooks in which chance alone would make the lots' slopes differ as much; 1 if fewer than two have one. */
    public double chanceOfDifference() {
        return chanceOfDifference;
    }

    /** Says in words whether the lots differ and what to expect of the next. */
    String words(String attribute, Measure measure) {
        if (scale == Scale.ONE_PER_MACHINE) {
            return "Whether lots differ in this, and what to expect of the next, cannot be told for several machines at once: a place on one"
                    + " machine's probe is not the same on another's. Ask with the batches of one machine.";
        }
        long own = lots.stream().filter(lot -> lot.own() == LotBest.Own.OWN).count();
        String differ = own < 2
                ? "Whether lots differ in this cannot be told: fewer than two have " + BATCHES_FOR_SLOPE
                        + " scored batches on " + DAYS_FOR_SLOPE + " roast days."
                : chanceOfDifference < CHANCE_OF_DIFFERENCE
                        ? "The lots differ: how " + attribute + " goes with the " + measure.name()
                                + " is not the same in each, so look at the lot and not at all of them together."
                        : "That the lots differ in how " + attribute + " goes with the " + measure.name()
                                + " was not seen; chance alone would make them differ as much in "
                                + Math.round(100 * chanceOfDifference) + " of 100 logbooks.";
        String following = own < LOTS_FOR_NEXT
                ? " What to expect of the next lot cannot be told: at least " + LOTS_FOR_NEXT
                        + " lots with a slope of their own are needed, and "
                        + (own == 0 ? "none has one." : own == 1 ? "1 has one." : own + " have one.")
                : " Of the next lot, if it is like these, " + next.wordsForNext(attribute, measure);
        return differ + following;
    }

    Table table(String attribute, Measure measure) {
        return Table.titled("Best " + measure.name() + " of each lot" + measure.onTodaysProbe())
                .withText("lot", lots, LotBest::lot)
                .withNumber("batches", "", 0, lots, LotBest::batches)
                .withNumber("roast days", "", 0, lots, LotBest::roastDays)
                .withNumber(
                        "slope at its mean, per " + measure.stepWords(),
                        "points",
                        2,
                        lots,
                        lot -> lot.slope().estimate() * measure.step())
                .withText(
                        "whose slope",
                        lots,
                        lot -> lot.own() == LotBest.Own.OWN ? "its own" : "of lots with few batches")
                .withText("best", lots, lot -> lot.best().shortWords(measure))
                .withNote("The bend is common to all lots. A slope of its own needs " + BATCHES_FOR_SLOPE
                        + " scored batches on " + DAYS_FOR_SLOPE + " roast days.");
    }

    @Override
    public String text() {
        return lots.stream().anyMatch(lot -> lot.best().answer() == Peak.Answer.INSIDE)
                ? EvidencePage.cautioned(toString())
                : toString();
    }

    @Override
    public String toString() {
        return Wording.count(lots.size(), "lot", "lots") + ": "
                + String.join("; ", lots.stream().map(LotBest::toString).toList());
    }
}
