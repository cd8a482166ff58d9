package parchment.drift;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parchment.display.answer.Spelling;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.CupScores;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/**
 * The number that is followed through time, one per batch of a table.
 *
 * @param name in words
 * @param unit what it is measured in
 * @param values one per batch, NaN where missing
 * @param kind where it comes from
 */
record Response(String name, Unit unit, List<Double> values, Kind kind) {

    Response {
        values = List.copyOf(values);
    }

    enum Kind {
        FEATURE,
        SCORE
    }

    /** Takes a feature as measured: an offset of the probe is the model's business. */
    static Response of(Feature feature, BatchTable table) {
        return new Response(feature.name(), feature.unit(), boxed(table.values(feature)), Kind.FEATURE);
    }

    /** Takes the mean over a batch's cups of the score less its cupper's mean, put back to the mean of all. */
    static Response of(String attribute, BatchTable table) {
        Logbook logbook = table.logbook();
        check(attribute, logbook);
        Map<String, double[]> cuppers = new HashMap<>();
        double[] all = new double[2];
        for (CupScores cup : logbook.cups()) {
            double score = cup.score(attribute);
            if (Double.isFinite(score)) {
                add(cuppers.computeIfAbsent(cup.cupper(), k -> new double[2]), score);
                add(all, score);
            }
        }
        Map<String, double[]> batches = new HashMap<>();
        for (CupScores cup : logbook.cups()) {
            double score = cup.score(attribute);
            if (Double.isFinite(score)) {
                double[] own = cuppers.getOrDefault(cup.cupper(), all);
                add(
                        batches.computeIfAbsent(cup.batch(), k -> new double[2]),
                        score - own[0] / own[1] + all[0] / all[1]);
            }
        }
        double[] values = new double[table.size()];
        for (int i = 0; i < values.length; i++) {
            double[] sum = batches.get(table.batches().get(i).name());
            values[i] = sum == null ? Double.NaN : sum[0] / sum[1];
        }
        return new Response(attribute, Unit.POINTS, boxed(values), Kind.SCORE);
    }

    /** Refuses an attribute that nobody scored in the whole logbook; a filter that leaves no cup is no misspelling. */
    static void check(String attribute, Logbook filtered) {
        Logbook logbook = filtered.whole();
        if (!logbook.attributes().contains(attribute)) {
            throw new LogbookException("The logbook has no attribute '" + attribute + "'."
                    + Spelling.question(attribute, logbook.attributes())
                    + (logbook.attributes().isEmpty()
                            ? " Nothing was scored."
                            : " Attributes: " + String.join(", ", logbook.attributes()) + "."));
        }
    }

    private static void add(double[] sum, double value) {
        sum[0] += value;
        sum[1]++;
    }

    /** Returns the numbers, one per batch of the table, NaN where missing. */
    double[] raw() {
        return values.stream().mapToDouble(value -> value).toArray();
    }

    private static List<Double> boxed(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    /** Prints a change with its 90 % interval. */
    String shown(Estimate estimate, TemperatureUnit reader) {
        Interval interval = estimate.interval(0.90);
        Unit step = stepUnit().withDigitsFor(interval.width() / 2, reader);
        double change = step.shownStep(estimate.estimate(), reader);
        String number = step.number(change);
        return String.format(
                Locale.ROOT,
                "%s %s (%s to %s)",
                change > 0 && !number.matches("0(\\.0+)?") ? "+" + number : number,
                step.symbol(reader).equals("%") ? "percentage points" : step.symbol(reader),
                step.number(step.shownStep(interval.lower(), reader)),
                step.number(step.shownStep(interval.upper(), reader)));
    }

    /** Returns the unit with the digits in which changes are told. */
    Unit stepUnit() {
        return unit.withDigits(Math.max(1, unit.digits() + (unit.digits() < 2 ? 1 : 0)));
    }
}
