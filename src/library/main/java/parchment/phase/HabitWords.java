package parchment.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import parchment.display.Table;
import parchment.display.answer.Sentence;
import parchment.logbook.MarkKind;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;
import parchment.stats.mixed.LinearMixedModel;

/** Puts the habit of one kind of mark into words. */
final class HabitWords {
    private HabitWords() {}

    static String of(HabitModel model, TemperatureUnit reader) {
        String kind = model.kind.words();
        int marks = model.learnt.size();
        if (!model.isLearnt()) {
            return String.format(
                    Locale.ROOT,
                    "%s: written %d %s on %d roast %s, too few to learn a habit (%d marks on %d days are needed); assumed around %s,"
                            + " give or take %s between probes (common practice, no source).",
                    Sentence.of(kind),
                    marks,
                    marks == 1 ? "time" : "times",
                    model.days(),
                    model.days() == 1 ? "day" : "days",
                    HabitModel.FEWEST_MARKS,
                    HabitModel.FEWEST_DAYS,
                    Unit.TEMPERATURE.format(StatedPractice.celsius(model.kind), reader),
                    Unit.TEMPERATURE_STEP.formatStep(StatedPractice.BETWEEN_PROBES, reader));
        }
        List<String> sentences = new ArrayList<>();
        double middle = usual(model);
        sentences.add(String.format(
                Locale.ROOT,
                "%s: learnt from %d written marks on %d roast days, usually around %s.",
                Sentence.of(kind),
                marks,
                model.days(),
                Unit.TEMPERATURE.format(middle, reader)));
        model.model().forEach(fitted -> sentences.add(spreads(fitted, reader)));
        sentences.add(
                model.isCalibrated()
                        ? "Intervals are calibrated on left-out days."
                        : String.format(
                                Locale.ROOT,
                                "Intervals rest on the normal model: calibration on left-out days needs %d roast days.",
                                HabitModel.DAYS_TO_CALIBRATE));
        if (model.kind == MarkKind.FIRST_CRACK_START) {
            sentences.add(model.gain.toString());
        }
        if (!model.setAside.isEmpty()) {
            sentences.add(String.format(
                    Locale.ROOT,
                    "Not learnt from, because far off all the others: %s.",
                    model.setAside.stream().map(HabitRow::name).collect(Collectors.joining(", "))));
        }
        return String.join(" ", sentences);
    }

    /** Returns where half of the marks are written hotter, in °C. */
    static double usual(HabitModel model) {
        return Robust.median(model.learnt.stream()
                .mapToDouble(row -> HabitModel.writtenCelsius(row, model.kind))
                .toArray());
    }

    private static String spreads(LinearMixedModel fitted, TemperatureUnit reader) {
        List<String> parts = new ArrayList<>();
        for (String term : fitted.randomNames()) {
            parts.add(Unit.TEMPERATURE_STEP.formatStep(fitted.standardDeviation(term), reader) + " between "
                    + plural(term));
        }
        parts.add(
                Unit.TEMPERATURE_STEP.formatStep(fitted.residualStandardDeviation(), reader) + " from batch to batch");
        StringBuilder text = new StringBuilder("It differs by ")
                .append(String.join(", ", parts))
                .append(" (standard deviations)");
        if (fitted.columnNames().contains("rate of rise before it")) {
            double slope = fitted.term("rate of rise before it").estimate();
            double error = fitted.term("rate of rise before it").standardError();
            double perStep = reader == TemperatureUnit.CELSIUS ? 1 : 5.0 / 9;
            text.append(String.format(
                    Locale.ROOT,
                    "; a rate of rise faster by %s goes with a mark %s%s %s",
                    Unit.RATE_OF_RISE.withDigits(0).format(perStep, reader),
                    Unit.TEMPERATURE_STEP
                            .withDigitsFor(error * perStep, reader)
                            .formatStep(Math.abs(slope) * perStep, reader),
                    Unit.TEMPERATURE_STEP.formatError(error * perStep, reader),
                    slope >= 0 ? "hotter" : "cooler"));
        }
        return text.append('.').toString();
    }

    /** One row per mark and lot: where it was written. */
    static Table table(List<HabitModel> models, TemperatureUnit reader) {
        record Lot(MarkKind kind, String lot, double[] celsius) {}
        List<Lot> rows = new ArrayList<>();
        for (HabitModel model : models) {
            Map<String, List<Double>> byLot = new TreeMap<>();
            for (HabitRow row : model.learnt) {
                byLot.computeIfAbsent(row.surroundings().get(0), key -> new ArrayList<>())
                        .add(HabitModel.writtenCelsius(row, model.kind));
            }
            byLot.forEach((lot, celsius) -> rows.add(new Lot(
                    model.kind,
                    lot,
                    celsius.stream().mapToDouble(Double::doubleValue).toArray())));
        }
        return Table.titled("Bean temperature at written marks")
                .withText("mark", rows, row -> row.kind().words())
                .withText("lot", rows, row -> row.lot().isEmpty() ? "not written" : row.lot())
                .withNumber("written", "", 0, rows, row -> row.celsius().length)
                .withNumber("coolest tenth", Unit.TEMPERATURE, reader, rows, row -> Robust.quantile(row.celsius(), 0.1))
                .withNumber("middle", Unit.TEMPERATURE, reader, rows, row -> Robust.median(row.celsius()))
                .withNumber("hottest tenth", Unit.TEMPERATURE, reader, rows, row -> Robust.quantile(row.celsius(), 0.9))
                .withNote("One in ten was written below the coolest tenth, one in ten above the hottest.");
    }

    private static String plural(String term) {
        return term + "s";
    }
}
