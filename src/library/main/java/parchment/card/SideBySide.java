package parchment.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.IntStream;
import parchment.align.score.ShrunkenScores;
import parchment.display.Table;
import parchment.drift.OneCharge;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/** Lays settings and marks of some batches side by side, with the middle and the range of each; readings of the probe are on today's. */
final class SideBySide {
    private static final List<Feature> MEASURED = List.of(
            Features.chargeTemperature(),
            Features.turningPointTime(),
            Features.turningPointTemperature(),
            Features.dryingTime(),
            Features.yellowingTemperature(),
            Features.firstCrackTime(),
            Features.firstCrackTemperature(),
            Features.dropTime(),
            Features.dropTemperature(),
            Features.developmentTime(),
            Features.developmentRatio(),
            Features.massLoss());

    private static final String ONLY = "only ";

    private final List<Batch> batches;
    private final BatchTable table;
    private final TodaysReadings readings;
    private final TemperatureUnit reader;

    /** One line: what it is, the middle, the range, and what each batch had. */
    private record Row(String what, String middle, String range, List<String> cells) {
        boolean isEmpty() {
            return cells.stream().allMatch(String::isEmpty);
        }
    }

    private SideBySide(List<Batch> batches, Logbook logbook) {
        this.batches = batches;
        this.table = BatchTable.of(logbook.whole(), MEASURED).onTodaysProbe();
        this.readings = TodaysReadings.of(logbook);
        this.reader = logbook.readerUnit();
    }

    static SideBySide of(List<Batch> batches, Logbook logbook) {
        return new SideBySide(batches, logbook);
    }

    /** Returns a feature of each batch, in order, NaN where missing. */
    double[] values(Feature feature) {
        double[] all = table.values(feature);
        List<String> names = table.batches().stream().map(Batch::name).toList();
        return batches.stream()
                .mapToDouble(batch -> all[names.indexOf(batch.name())])
                .toArray();
    }

    /** Tells whether a batch has a charge temperature that is not told, because it was read by the probe as it was before. */
    boolean leavesOutChargeTemperatures() {
        double[] read = BatchTable.of(table.logbook(), MEASURED).values(Features.chargeTemperature());
        double[] told = values(Features.chargeTemperature());
        List<String> names = table.batches().stream().map(Batch::name).toList();
        return IntStream.range(0, batches.size())
                .anyMatch(i -> Double.isNaN(told[i])
                        && Double.isFinite(read[names.indexOf(batches.get(i).name())]));
    }

    /** Returns the middle of the known values; NaN if there are none. */
    static double middle(double[] values) {
        double[] known = Arrays.stream(values).filter(Double::isFinite).toArray();
        return known.length == 0 ? Double.NaN : Robust.median(known);
    }

    /**
     * Says middle and range of a feature, as in "205 °C (203 to 207 °C)", or the range alone where it is known of too few to have a middle; empty
     * if it is known of no batch.
     */
    String words(Feature feature) {
        double[] values = values(feature);
        long known = known(values);
        Digits digits = Digits.of(values, feature.unit(), 0, reader);
        String range = range(values, digits);
        String middle = digits.with(middle(values));
        return range.isEmpty() || range.equals(middle)
                ? middle + of(known)
                : known < ScoredLot.ENOUGH ? range + of(known) : middle + " (" + range + of(known, ", ") + ")";
    }

    /** Says of how many it is known where that is not all. */
    private String of(long known) {
        String words = of(known, "");
        return words.isEmpty() ? "" : " (" + words + ")";
    }

    private String of(long known, String before) {
        return known == 0 || known == batches.size() ? "" : before + "known of " + known;
    }

    private static long known(double[] values) {
        return Arrays.stream(values).filter(Double::isFinite).count();
    }

    private static String range(double[] values, Digits digits) {
        double[] known = Arrays.stream(values).filter(Double::isFinite).toArray();
        return known.length < 2
                ? ""
                : digits.range(
                        Arrays.stream(known).min().getAsDouble(),
                        Arrays.stream(known).max().getAsDouble());
    }

    Table table(GoodBatches good) {
        List<Row> rows = new ArrayList<>();
        rows.add(text("roasted on", b -> b.roastDay().map(LocalDate::toString).orElse("")));
        good.scored().ifPresent(scored -> rows.add(text("mean " + scored.attribute(), b -> score(good, b))));
        rows.add(masses(good));
        rows.add(chargeTemperatures());
        rows.add(numbers(
                "planned drop",
                Unit.TEMPERATURE,
                0,
                b -> b.plan()
                        .dropTemperature()
                        .map(Temperature::celsius)
                        .map(aim -> readings.today(b, aim))
                        .orElse(Double.NaN)));
        for (Feature feature : MEASURED) {
            if (feature != Features.chargeTemperature() && feature != Features.massLoss()) {
                rows.add(measured(feature));
            }
        }
        rows.add(measured(Features.massLoss()));
        List<Row> known = rows.stream().filter(row -> !row.isEmpty()).toList();
        Table shown = Table.titled("Side by side").withText("", known, Row::what);
        if (batches.size() >= ScoredLot.ENOUGH) {
            shown = shown.withText("middle", known, Row::middle).withText("range", known, Row::range);
        }
        for (int i = 0; i < batches.size(); i++) {
            int batch = i;
            shown = shown.withText(
                    batches.get(i).name(), known, row -> row.cells().get(batch));
        }
        return shown.withDashForMissing("not written, not measured, or not known on today's probe")
                .withRowsShown(20)
                .withNote("Times are since charge, in minutes and seconds; temperatures are those of the bean probe."
                        + (batches.size() >= ScoredLot.ENOUGH
                                ? " Middle and range are those of these " + batches.size()
                                        + " batches; the next one need not lie within. A number known of fewer than three has no middle."
                                        + " What was planned was meant, and need not have come."
                                : ""));
    }

    private static String score(GoodBatches good, Batch batch) {
        return good.score(batch)
                .map(score -> String.format(Locale.ROOT, "%.1f (%s)", score.mean(), scores(score)))
                .orElse("");
    }

    private static String scores(ShrunkenScores.Score score) {
        return score.scores() == 1 ? "1 score" : score.scores() + " scores";
    }

    /** Says the charges as they were weighed: kilograms to ten grams, small ones to the gram. */
    private Row masses(GoodBatches good) {
        double[] charged = batches.stream()
                .mapToDouble(
                        b -> b.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN))
                .toArray();
        MassUnit written = table.logbook().massUnit();
        boolean small = Arrays.stream(charged).anyMatch(mass -> mass < 1);
        int digits = Math.min(Unit.mass(written).digits(), written == MassUnit.KILOGRAM && small ? 3 : 2);
        Row row = numbers("green mass", Unit.mass(written).withDigits(digits), digits, charged);
        // The charge has one number wherever it is told: that of its size, and not the middle of these few weighings.
        return known(charged) < ScoredLot.ENOUGH
                ? row
                : new Row(
                        row.what(),
                        good.charge()
                                .orElseGet(() ->
                                        OneCharge.sizeOf(Mass.kilograms(middle(charged)), good.lot(), table.logbook()))
                                .words(),
                        row.range(),
                        row.cells());
    }

    private Row text(String what, Function<Batch, String> cell) {
        return new Row(what, "", "", batches.stream().map(cell).toList());
    }

    private Row numbers(String what, Unit unit, int least, Function<Batch, Double> number) {
        return numbers(
                what, unit, least, batches.stream().mapToDouble(number::apply).toArray());
    }

    /** Says of how many the charge temperature is known, and why of no more where the probe was changed since. */
    private Row chargeTemperatures() {
        Row row = measured(Features.chargeTemperature());
        return row.middle().startsWith(ONLY) && leavesOutChargeTemperatures()
                ? new Row(row.what(), row.middle() + ": others on the probe as it was", row.range(), row.cells())
                : row;
    }

    private Row measured(Feature feature) {
        int least = feature.unit().equals(Unit.SHARE) ? 1 : 0;
        String what = feature.name().equals(Features.dryingTime().name()) ? "yellowing time" : feature.name();
        return numbers(what, feature.unit(), least, values(feature));
    }

    private Row numbers(String what, Unit unit, int least, double[] values) {
        Digits digits = Digits.of(values, unit, least, reader);
        long known = known(values);
        return new Row(
                what,
                known >= ScoredLot.ENOUGH ? digits.with(middle(values)) : ONLY + known,
                range(values, digits),
                Arrays.stream(values).mapToObj(digits::with).toList());
    }
}
