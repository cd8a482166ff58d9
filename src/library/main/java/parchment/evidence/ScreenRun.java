package parchment.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import parchment.logbook.Logbook;
import parchment.stats.linear.CannotFitException;
import parchment.stats.mixed.AddedFeatures;
import parchment.stats.resample.Permutation;
import parchment.stats.resample.PermutationTest;

/** Computes a screen: one model per attribute without any feature, then each feature's statistic as the batches are and shuffled. */
final class ScreenRun {
    /** From this many lots-and-days with two batches or more on, batches are shuffled inside them. */
    private static final int SETS = 20;

    /** A feature that fewer batches have is not looked at. */
    private static final int FEWEST = 20;

    private static final double CHANCE = 0.05;

    private final List<TastedBatch> batches;
    private final List<Column> columns = new ArrayList<>();
    private final List<Fit> fits = new ArrayList<>();
    private final Screen.Shuffled shuffled;
    private final int sets;
    private final Permutation permutation;
    private final int shuffles;

    /** A feature's value of each batch, counted from the mean of those it is compared with; 0 where missing. */
    private record Column(Measure measure, double[] values) {}

    /** An attribute's model, with the place of each of its batches among all. */
    private record Fit(String attribute, AddedFeatures added, int[] places) {}

    private ScreenRun(Logbook logbook, List<Measure> measures, int shuffles, long seed) {
        Map<String, ModelFrames.Reading> present = new LinkedHashMap<>();
        logbook.batches().forEach(batch -> present.put(batch.name(), new ModelFrames.Reading(0, Double.NaN)));
        Map<String, ModelFrame> materials = new LinkedHashMap<>();
        Map<String, TastedBatch> all = new LinkedHashMap<>();
        for (String attribute : logbook.attributes()) {
            ModelFrame material = ModelFrames.of(attribute, logbook, present);
            if (material.batches().size() >= FEWEST) {
                materials.put(attribute, material);
                material.batches().forEach(batch -> all.putIfAbsent(batch.name(), batch));
            }
        }
        this.batches = List.copyOf(all.values());
        this.shuffles = shuffles;
        Function<TastedBatch, String> lotAndDay = batch -> batch.lotPeriod() + "\n" + batch.day();
        Permutation inside =
                Permutation.withinBlocks(batches.stream().map(lotAndDay).toList(), seed);
        this.sets = inside.sets();
        this.shuffled = sets >= SETS ? Screen.Shuffled.BATCHES_OF_ONE_LOT_AND_DAY : Screen.Shuffled.WHOLE_DAYS;
        boolean byBatch = shuffled == Screen.Shuffled.BATCHES_OF_ONE_LOT_AND_DAY;
        this.permutation = byBatch
                ? inside
                : Permutation.ofWholeBlocks(
                        batches.stream().map(batch -> batch.day().toString()).toList(), seed);
        for (Measure measure : measures) {
            addColumn(measure, byBatch ? lotAndDay : TastedBatch::lotPeriod);
        }
        materials.forEach(this::addFit);
    }

    /** @throws CannotFitException if no attribute is scored for enough batches */
    static ScreenRun of(Logbook logbook, List<Measure> measures, int shuffles, long seed) {
        ScreenRun run = new ScreenRun(logbook, measures, shuffles, seed);
        if (run.fits.isEmpty() || run.columns.isEmpty()) {
            throw new CannotFitException("A screen needs at least " + FEWEST
                    + " scored batches with a feature; the logbook '" + logbook.name() + "' has " + run.batches.size()
                    + ". Ask one question with Evidence.of: it says what is missing.");
        }
        return run;
    }

    private void addColumn(Measure measure, Function<TastedBatch, String> group) {
        double[] values = new double[batches.size()];
        Map<String, double[]> sums = new HashMap<>();
        int known = 0;
        for (int i = 0; i < values.length; i++) {
            values[i] = measure.readings()
                    .getOrDefault(batches.get(i).name(), ModelFrames.Reading.NONE)
                    .value();
            if (Double.isFinite(values[i])) {
                double[] sum = sums.computeIfAbsent(group.apply(batches.get(i)), key -> new double[2]);
                sum[0] += values[i];
                sum[1]++;
                known++;
            }
        }
        double squares = 0;
        for (int i = 0; i < values.length; i++) {
            double[] sum = sums.getOrDefault(group.apply(batches.get(i)), new double[] {0, 1});
            values[i] = Double.isFinite(values[i]) ? values[i] - sum[0] / sum[1] : 0;
            squares += values[i] * values[i];
        }
        if (known >= FEWEST && squares > 1e-12) {
            columns.add(new Column(measure, values));
        }
    }

    private void addFit(String attribute, ModelFrame material) {
        FittedScores fitted = FittedScores.of(material, ModelForm.STANDARD.with(ModelForm.Shape.ABSENT));
        AddedFeatures added = AddedFeatures.to(
                fitted.model(),
                material.scores().stream()
                        .map(score -> material.batchOf(score).name())
                        .toList());
        Map<String, Integer> place = new HashMap<>();
        for (int i = 0; i < batches.size(); i++) {
            place.put(batches.get(i).name(), i);
        }
        fits.add(new Fit(
                attribute,
                added,
                added.units().stream()
                        .mapToInt(name -> place.getOrDefault(name, 0))
                        .toArray()));
    }

    private double[] statistics(int[] order) {
        return fits.parallelStream()
                .flatMapToDouble(fit -> Arrays.stream(fit.added()
                        .statistics(columns.stream()
                                .map(column -> placed(fit, column, order))
                                .toList())))
                .toArray();
    }

    /** Returns a feature's values for one model's batches, taken from the batches in another order. */
    private static double[] placed(Fit fit, Column column, int[] order) {
        double[] feature = new double[fit.places().length];
        for (int i = 0; i < feature.length; i++) {
            feature[i] = column.values()[order[fit.places()[i]]];
        }
        return feature;
    }

    Screen screen() {
        PermutationTest test = PermutationTest.run(permutation, shuffles, this::statistics);
        double[] observed = test.observed();
        List<Screen.Look> looks = new ArrayList<>();
        for (int f = 0; f < fits.size(); f++) {
            Fit fit = fits.get(f);
            for (int c = 0; c < columns.size(); c++) {
                int k = f * columns.size() + c;
                Column column = columns.get(c);
                double[] feature = new double[fit.places().length];
                for (int i = 0; i < feature.length; i++) {
                    feature[i] = column.values()[fit.places()[i]];
                }
                if (Double.isFinite(observed[k])) {
                    looks.add(new Screen.Look(
                            fit.attribute(),
                            column.measure().name(),
                            observed[k],
                            test.adjustedProbability(k),
                            fit.added().slope(column.measure().name(), feature).estimate()
                                    * column.measure().step(),
                            column.measure().stepWords()));
                }
            }
        }
        return new Screen(looks, test.luckLine(CHANCE), shuffled, sets, batches.size(), shuffles, permutation.seed());
    }
}
