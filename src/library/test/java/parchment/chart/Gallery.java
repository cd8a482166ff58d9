package parchment.chart;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Pictures of invented numbers that tests read and that {@link #main} writes out to be looked at. */
final class Gallery {
    private Gallery() {}

    static Map<String, Panels> all() {
        Map<String, Panels> all = new LinkedHashMap<>();
        all.put("panels", panels(TemperatureUnit.CELSIUS));
        all.put("panels-fahrenheit", panels(TemperatureUnit.FAHRENHEIT));
        all.put("scatter", Panels.stacked("Sweetness and drop temperature", List.of(scatter())));
        all.put("crowd", Panels.stacked("Rate of rise along the bean temperature", List.of(crowd(300))));
        all.put("empty", Panels.stacked("Air temperature", List.of(empty())));
        all.put("rows", Panels.stacked("Calendar", List.of(rows())));
        all.put("ends", Panels.stacked("Many ends <script>alert(1)</script>", List.of(ends())));
        return all;
    }

    static Panels panels(TemperatureUnit reader) {
        int n = 580;
        double[] seconds = new double[n];
        double[] bean = new double[n];
        double[] air = new double[n];
        for (int i = 0; i < n; i++) {
            seconds[i] = i;
            bean[i] = 210 - 120 * Math.exp(-i / 240.0) + 110 * Math.exp(-i / 25.0);
            air[i] = i > 200 && i < 230 ? Double.NaN : 225 - 60 * Math.exp(-i / 150.0);
        }
        Plot temperatures = Plot.of(
                        "", Axis.clock("time since charge"), Axis.of("temperature", Unit.TEMPERATURE, reader))
                .with(Span.of("drying", 0, 285))
                .with(Span.of("browning", 285, 490))
                .with(Span.of("development", 490, 579))
                .with(Line.of("bean temperature", seconds, bean).withWeight(Weight.STRONG))
                .with(Line.of("air temperature", seconds, air))
                .with(Boundary.at("charge", 0))
                .with(Boundary.at("turning point", 78).withUncertainty(3))
                .with(Boundary.at("yellowing", 285).withUncertainty(10))
                .with(Boundary.at("first crack start", 490).withUncertainty(5))
                .with(Boundary.at("first crack end", 560).withUncertainty(15))
                .with(Boundary.at("drop", 579).withUncertainty(2));
        Plot gas = Plot.of(
                        "",
                        Axis.clock("time since charge"),
                        Axis.number("setting", "%").withLimits(0, 100))
                .with(Line.steps("gas", new double[] {0, 90, 300, 480, 579}, new double[] {80, 100, 70, 40, 40}))
                .with(Line.steps("airflow", new double[] {0, 280, 579}, new double[] {30, 60, 60}))
                .withHeight(90);
        return Panels.stacked("Batch 112", List.of(temperatures, gas))
                .withNote(
                        "Marks as heard by the roaster; the narrow bands are their uncertainty. The air probe was silent"
                                + " from 3:20 to 3:50.");
    }

    static Plot scatter() {
        Random random = new Random(7);
        int n = 40;
        double[] x = new double[n];
        double[] y = new double[n];
        double[] error = new double[n];
        List<String> names = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            x[i] = 198 + 14 * random.nextDouble();
            y[i] = i == 5 ? Double.NaN : 6 + 0.05 * (x[i] - 205) + random.nextGaussian() * 0.5;
            error[i] = 0.6;
            names.add("batch " + (100 + i));
        }
        double[] at = new double[50];
        double[] mean = new double[50];
        double[] lower = new double[50];
        double[] upper = new double[50];
        for (int i = 0; i < 50; i++) {
            at[i] = 195 + i * 0.4;
            mean[i] = 6 + 0.05 * (at[i] - 205);
            lower[i] = mean[i] - 0.2 - 0.003 * Math.pow(at[i] - 205, 2);
            upper[i] = mean[i] + 0.2 + 0.003 * Math.pow(at[i] - 205, 2);
        }
        return Plot.of(
                        "",
                        Axis.of("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS),
                        Axis.number("sweetness", "points"))
                .with(Band.of("95 % interval of the mean", at, lower, upper))
                .with(Points.of("one cupping of one batch", x, y)
                        .withErrorsAlongX(error)
                        .withNames(names))
                .with(Line.of("mean", at, mean))
                .withTriedRange(198.2, 211.6)
                .withNote("39 of 40 batches; 1 left out, it was not cupped.");
    }

    static Plot crowd(int batches) {
        Random random = new Random(3);
        Plot plot = Plot.of(
                "",
                Axis.of("bean temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS),
                Axis.of("rate of rise", Unit.RATE_OF_RISE, TemperatureUnit.CELSIUS)
                        .fromZero());
        double[] median = new double[110];
        double[] low = new double[110];
        double[] high = new double[110];
        double[] at = new double[110];
        List<Line> lines = new ArrayList<>();
        for (int b = 0; b < batches; b++) {
            double[] rate = new double[110];
            double level = random.nextGaussian();
            double wave = random.nextDouble() * 6;
            for (int i = 0; i < 110; i++) {
                at[i] = 100 + i;
                rate[i] = 22 - 0.15 * i + level + 0.8 * Math.sin(i / 9.0 + wave);
                median[i] = 22 - 0.15 * i;
                low[i] = median[i] - 0.9;
                high[i] = median[i] + 0.9;
            }
            lines.add(Line.of("one batch each", at, rate).withWeight(Weight.FAINT));
        }
        return plot.with(lines)
                .with(Band.of("middle half of the batches", at, low, high))
                .with(Line.of("median of " + batches + " batches", at, median))
                .with(Line.of(
                                "batch 112",
                                at,
                                java.util.Arrays.stream(median)
                                        .map(m -> m + 1.7)
                                        .toArray())
                        .withWeight(Weight.STRONG));
    }

    static Plot empty() {
        return Plot.of(
                        "",
                        Axis.clock("time since charge"),
                        Axis.of("air temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS))
                .with(Line.of("air temperature", new double[] {0, 1}, new double[] {Double.NaN, Double.NaN}))
                .withEmptySentence("No batch has an air temperature.")
                .withNote("0 of 41 batches used.");
    }

    static Plot rows() {
        double[] days = new double[60];
        double[] row = new double[60];
        Random random = new Random(5);
        for (int i = 0; i < 60; i++) {
            days[i] = LocalDate.of(2025, 9, 1).toEpochDay() + i * 6 + random.nextInt(4);
            row[i] = random.nextInt(4);
        }
        return Plot.of(
                        "",
                        Axis.dates("roast day"),
                        Axis.rows("", List.of("Lot A", "Lot B with a long name", "Lot C", "no lot")))
                .with(Points.of("one batch", days, row).withMarker(Marker.TICK))
                .with(Boundary.at("probe moved", LocalDate.of(2026, 2, 3).toEpochDay()))
                .with(Boundary.at("burner cleaned", LocalDate.of(2026, 2, 20).toEpochDay()))
                .withHeight(120);
    }

    static Plot ends() {
        Plot plot = Plot.of("", Axis.number("x", ""), Axis.number("y <b>", "points & more"));
        for (int i = 0; i < 9; i++) {
            plot = plot.with(Line.of(
                    "line " + i + " \"<i>\"", new double[] {0, 1, 10 - (i % 3)}, new double[] {0, i, 5 + i * 0.01}));
        }
        return plot;
    }

    /** Writes the pictures as files and as a light and a dark page into the given folder. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        StringBuilder page = new StringBuilder();
        for (Map.Entry<String, Panels> entry : all().entrySet()) {
            String svg = entry.getValue().chart().svg().orElseThrow();
            Files.writeString(folder.resolve(entry.getKey() + ".svg"), svg);
            page.append(entry.getValue().chart().html().orElseThrow());
            System.out.printf(
                    "%s: %d characters%n%s%n",
                    entry.getKey(), svg.length(), entry.getValue().text());
        }
        String head = "<!doctype html><meta charset=utf-8><body style='margin:8px;font-family:sans-serif;";
        Files.writeString(folder.resolve("light.html"), head + "background:#fff;color:#111'>" + page);
        Files.writeString(folder.resolve("dark.html"), head + "background:#111;color:#ddd'>" + page);
    }
}
