package parchment.otherroastery;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/**
 * Holds what is true of a logbook, as numbers.
 *
 * @param batches every batch, oldest first
 * @param courses true course of each attribute by lot
 * @param ageing change of mass loss in 100 days by lot, as a share
 * @param planted names of the batches with a planted fault, by the fault
 * @param probeMovedOn the first roast day with the moved probe
 */
public record Truth(
        List<BatchTruth> batches,
        Map<String, Map<String, TrueCourse>> courses,
        Map<String, Double> ageing,
        Map<String, List<String>> planted,
        Optional<LocalDate> probeMovedOn) {

    public Truth {
        batches = List.copyOf(batches);
    }

    /**
     * What is true of a batch.
     *
     * @param name as written
     * @param lot its lot
     * @param machine from 0
     * @param day roast day, from 0
     * @param bean the beans' own temperature at the drop, °C
     * @param reading of the probe as it was fitted on that day, at the drop, °C
     * @param endReading what the probe as it is fitted at the end would have read at that drop, °C
     * @param yellowing when the beans looked yellow, s
     * @param firstPop when 2 % had cracked, s
     * @param drop when they were dropped, s
     * @param gas mean gas from the charge to yellowing, percent
     * @param lastGas mean gas from the first pop to the drop, percent
     * @param massLoss share of the green mass
     * @param roasted points of each attribute that the roast and the lot give, without anything drawn
     */
    public record BatchTruth(
            String name,
            String lot,
            int machine,
            int day,
            double bean,
            double reading,
            double endReading,
            int yellowing,
            int firstPop,
            int drop,
            double gas,
            double lastGas,
            double massLoss,
            Map<String, Double> roasted) {
        public double development() {
            return drop - firstPop;
        }
    }

    static Truth of(OtherRoastery scenario, Roasting roasting, List<RoastedBatch> batches) {
        List<BatchTruth> truths = new ArrayList<>();
        for (RoastedBatch batch : batches) {
            Course course = batch.course();
            int drop = course.drop();
            Map<String, Double> roasted = new LinkedHashMap<>();
            batch.lot()
                    .courses()
                    .forEach((attribute, known) ->
                            roasted.put(attribute, known.points(course.bean(drop), batch.development())));
            truths.add(new BatchTruth(
                    batch.name(),
                    batch.lot().name(),
                    batch.machine(),
                    batch.day(),
                    course.bean(drop),
                    batch.dropReading(),
                    course.otherReading(drop),
                    course.yellow(),
                    course.cracked(RoastedBatch.FIRST_POP),
                    drop,
                    meanGas(course, 0, course.yellow()),
                    meanGas(course, course.cracked(RoastedBatch.FIRST_POP), drop),
                    batch.massLoss(),
                    roasted));
        }
        Map<String, Map<String, TrueCourse>> courses = new LinkedHashMap<>();
        Map<String, Double> ageing = new LinkedHashMap<>();
        for (OtherLot lot : scenario.lots()) {
            courses.put(lot.name(), lot.courses());
            ageing.put(lot.name(), lot.ageingPerHundredDays());
        }
        Map<String, List<String>> planted = new LinkedHashMap<>();
        for (Map.Entry<String, Set<Integer>> fault : roasting.planted().entrySet()) {
            planted.put(
                    fault.getKey(),
                    fault.getValue().stream().map(Roasting::name).toList());
        }
        int moved = roasting.movedOnDay();
        return new Truth(
                truths,
                courses,
                ageing,
                planted,
                moved < scenario.days().days() ? Optional.of(Roasting.date(scenario, moved)) : Optional.empty());
    }

    private static double meanGas(Course course, int from, int to) {
        double sum = 0;
        for (int second = from; second < to; second++) {
            sum += course.setting(second).gas();
        }
        return sum / Math.max(1, to - from);
    }

    /**
     * Returns the best drop of a lot as a reading of the first machine's probe as it is fitted at the end: the reading at which its
     * batches' own temperature is the one at which the lot is best. That temperature is a curve (line and square) over the reading,
     * because slow batches lag less.
     *
     * @throws IllegalArgumentException if the attribute has no peak in this lot
     */
    public double bestReading(String lot, String attribute) {
        double best = peak(lot, attribute).center();
        double[] curve = curve(ofLot(lot), BatchTruth::bean);
        double at = meanEndReading();
        for (int i = 0; i < 20; i++) {
            double x = at - meanEndReading();
            at += (best - curve[0] - curve[1] * x - curve[2] * x * x) / (curve[1] + 2 * curve[2] * x);
        }
        return at;
    }

    /**
     * Returns where the least-squares square of the points that roast and lot give, over the end's reading and this lot's own batches,
     * has its top: what a fit of a square without any noise would say.
     */
    public double ownBest(String lot, String attribute) {
        peak(lot, attribute);
        double[] curve = curve(ofLot(lot), batch -> batch.roasted().get(attribute));
        return meanEndReading() - curve[1] / (2 * curve[2]);
    }

    private TrueCourse peak(String lot, String attribute) {
        TrueCourse course = courses.get(lot).get(attribute);
        if (course.kind() != TrueCourse.Kind.PEAK) {
            throw new IllegalArgumentException(attribute + " of " + lot + " has no peak.");
        }
        return course;
    }

    /** Returns level, line and square over the end's reading, counted from its mean over all batches. */
    private double[] curve(List<BatchTruth> own, ToDoubleFunction<BatchTruth> up) {
        double[][] rows = new double[own.size()][];
        double[] values = new double[own.size()];
        for (int i = 0; i < rows.length; i++) {
            double x = own.get(i).endReading() - meanEndReading();
            rows[i] = new double[] {x, x * x};
            values[i] = up.applyAsDouble(own.get(i));
        }
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.newSampleData(values, rows);
        return fit.estimateRegressionParameters();
    }

    /** Returns the points per degree of reading of a lot's attribute, as caused: per degree of the beans, times their degrees per degree of reading. */
    public double slopePerReading(String lot, String attribute) {
        return courses.get(lot).get(attribute).perDegree()
                * line(ofLot(lot), BatchTruth::endReading, BatchTruth::bean)[1];
    }

    /**
     * Returns the least-squares slope of the points that roast and lot give on the reading of the end's probe, over these batches and
     * inside lots: what a fit without any noise would say.
     */
    public double ownSlope(String attribute) {
        Map<String, double[]> means = new LinkedHashMap<>();
        for (BatchTruth batch : batches) {
            double[] sums = means.computeIfAbsent(batch.lot(), l -> new double[3]);
            sums[0]++;
            sums[1] += batch.endReading();
            sums[2] += batch.roasted().get(attribute);
        }
        double products = 0;
        double squares = 0;
        for (BatchTruth batch : batches) {
            double[] sums = means.get(batch.lot());
            double x = batch.endReading() - sums[1] / sums[0];
            products += x * (batch.roasted().get(attribute) - sums[2] / sums[0]);
            squares += x * x;
        }
        return products / squares;
    }

    /** Returns the mean of the drops as the end's probe would have read them. */
    public double meanEndReading() {
        return batches.stream().mapToDouble(BatchTruth::endReading).average().orElseThrow();
    }

    /** Returns the correlation inside days of two numbers of the batches, as of gas and drop. */
    public double insideDays(ToDoubleFunction<BatchTruth> first, ToDoubleFunction<BatchTruth> second) {
        Map<Integer, double[]> means = new LinkedHashMap<>();
        for (BatchTruth batch : batches) {
            double[] sums = means.computeIfAbsent(batch.day(), d -> new double[3]);
            sums[0]++;
            sums[1] += first.applyAsDouble(batch);
            sums[2] += second.applyAsDouble(batch);
        }
        double products = 0;
        double ofFirst = 0;
        double ofSecond = 0;
        for (BatchTruth batch : batches) {
            double[] sums = means.get(batch.day());
            double f = first.applyAsDouble(batch) - sums[1] / sums[0];
            double s = second.applyAsDouble(batch) - sums[2] / sums[0];
            products += f * s;
            ofFirst += f * f;
            ofSecond += s * s;
        }
        return products / Math.sqrt(ofFirst * ofSecond);
    }

    public BatchTruth batch(String name) {
        return batches.stream().filter(b -> b.name().equals(name)).findFirst().orElseThrow();
    }

    private List<BatchTruth> ofLot(String lot) {
        return batches.stream()
                .filter(batch -> batch.lot().equals(lot) && batch.machine() == 0)
                .toList();
    }

    /** Returns intercept and slope. */
    private static double[] line(
            List<BatchTruth> own, ToDoubleFunction<BatchTruth> across, ToDoubleFunction<BatchTruth> up) {
        double x = own.stream().mapToDouble(across).average().orElseThrow();
        double y = own.stream().mapToDouble(up).average().orElseThrow();
        double products = 0;
        double squares = 0;
        for (BatchTruth batch : own) {
            products += (across.applyAsDouble(batch) - x) * (up.applyAsDouble(batch) - y);
            squares += (across.applyAsDouble(batch) - x) * (across.applyAsDouble(batch) - x);
        }
        double slope = products / squares;
        return new double[] {y - slope * x, slope};
    }
}
