package parchment.gather.corpus;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import parchment.curve.Curve;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;

/**
 * Compares a gathered curve with the true readings at random instants between charge and drop.
 *
 * <p>The whole curve may stand up to 1.5 s off, as a charge that is found on the curve does. Each instant is looked up at the nearest gathered
 * reading, which must lie no farther from it than the readings lie apart.
 */
final class CurveComparison {
    /**
     * Holds what is compared.
     *
     * @param fact the fact
     * @param quantity the curve
     * @param truth what the probe said
     * @param tolerance how far a reading may be off, in its own unit
     */
    record Line(Fact fact, Quantity quantity, ToDoubleFunction<Reading> truth, double tolerance) {}

    /**
     * Holds how a curve compares.
     *
     * @param there whether there is one that says something else than the truth
     * @param right whether nearly all instants agree
     * @param words what was found
     */
    record Agreement(boolean there, boolean right, String words) {}

    static final Line BEAN = new Line(Fact.BEAN_CURVES, Quantity.BEAN_TEMPERATURE, Reading::beanCelsius, 0.6);
    static final List<Line> LINES = List.of(
            BEAN,
            new Line(Fact.AIR_CURVES, airQuantity(), Reading::airCelsius, 0.6),
            new Line(Fact.GAS, Quantity.GAS, Reading::gasPercent, 1));

    private static final int INSTANTS = 50;
    private static final int MAY_DIFFER = 2;
    private static final double SHIFT = 1.5;
    private static final double COARSEST = 65;

    private CurveComparison() {}

    /** The air probe's quantity, by its place: its name in code changes. */
    private static Quantity airQuantity() {
        return Quantity.values()[1];
    }

    static Agreement of(Roast roast, Optional<Batch> batch, Line line) {
        Optional<Curve> curve = batch.flatMap(b -> b.curve(line.quantity()));
        if (curve.isEmpty() || curve.get().size() < 2) {
            return new Agreement(false, false, "no " + line.quantity());
        }
        double step = step(curve.get());
        if (step > COARSEST) {
            return new Agreement(true, false, "readings " + Math.round(step) + " s apart");
        }
        int most = 0;
        double at = 0;
        for (double shift = -SHIFT; shift <= SHIFT; shift += 0.5) {
            int agreeing = agreeing(roast, curve.get(), line, shift, step);
            if (agreeing > most) {
                most = agreeing;
                at = shift;
            }
        }
        if (most >= INSTANTS - MAY_DIFFER) {
            return new Agreement(true, true, "");
        }
        int lacking = count(roast, curve.get(), line, at, step, What.LACKING);
        String words = words(roast, curve.get(), line, most, step, at);
        // A curve that agrees wherever it has readings was cut off; one that agrees nowhere says something wrong.
        boolean cut = most >= INSTANTS / 5 && INSTANTS - most - lacking <= MAY_DIFFER;
        return new Agreement(!cut, false, words);
    }

    private enum What {
        AGREEING,
        LACKING
    }

    private static String words(Roast roast, Curve curve, Line line, int most, double step, double at) {
        for (double shift = -120; shift <= 120; shift += 0.5) {
            if (agreeing(roast, curve, line, shift, step) >= INSTANTS - MAY_DIFFER) {
                return String.format(
                        Locale.ROOT,
                        "%s stands %.1f s too %s",
                        line.quantity(),
                        Math.abs(shift),
                        shift > 0 ? "late" : "early");
            }
        }
        return String.format(
                Locale.ROOT,
                "%s agrees at %d of %d instants (%d readings from %.0f to %.0f s, values %.0f to %.0f, shift %.1f)",
                line.quantity(),
                most,
                INSTANTS,
                curve.size(),
                curve.secondsAt(0),
                curve.secondsAt(curve.size() - 1),
                Arrays.stream(curve.values()).min().orElse(Double.NaN),
                Arrays.stream(curve.values()).max().orElse(Double.NaN),
                at);
    }

    private static double step(Curve curve) {
        double[] gaps = new double[curve.size() - 1];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = curve.secondsAt(i + 1) - curve.secondsAt(i);
        }
        Arrays.sort(gaps);
        return gaps[gaps.length / 2];
    }

    private static int agreeing(Roast roast, Curve curve, Line line, double shift, double step) {
        return count(roast, curve, line, shift, step, What.AGREEING);
    }

    private static int count(Roast roast, Curve curve, Line line, double shift, double step, What what) {
        Random random = new Random(roast.number());
        List<Reading> readings = roast.readings();
        double first = readings.get(0).seconds();
        double drop = roast.marks().get(MarkKind.DROP);
        double[] seconds = curve.seconds();
        int agreeing = 0;
        int lacking = 0;
        for (int i = 0; i < INSTANTS; i++) {
            double instant = random.nextDouble() * drop;
            int place = nearest(seconds, instant + shift);
            double there = seconds[place] - shift;
            if (Math.abs(there - instant) > Math.max(step, SHIFT) || there < first || there > -first + 2 * drop) {
                lacking++;
                continue;
            }
            double truth = between(readings, there - first, line.truth());
            agreeing += Math.abs(curve.valueAt(place) - truth) <= line.tolerance() ? 1 : 0;
        }
        return what == What.AGREEING ? agreeing : lacking;
    }

    private static double between(List<Reading> readings, double place, ToDoubleFunction<Reading> value) {
        int left = (int) Math.max(0, Math.min(readings.size() - 2, Math.floor(place)));
        double share = Math.max(0, Math.min(1, place - left));
        return (1 - share) * value.applyAsDouble(readings.get(left))
                + share * value.applyAsDouble(readings.get(left + 1));
    }

    private static int nearest(double[] seconds, double at) {
        int found = Arrays.binarySearch(seconds, at);
        if (found >= 0) {
            return found;
        }
        int right = Math.min(seconds.length - 1, -found - 1);
        int left = Math.max(0, right - 1);
        return Math.abs(seconds[left] - at) <= Math.abs(seconds[right] - at) ? left : right;
    }
}
