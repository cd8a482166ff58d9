package parchment.phase;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiPredicate;
import java.util.function.Function;
import java.util.stream.Stream;
import parchment.curve.ControlSteps;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.found.Mark;
import parchment.quantity.Mass;
import parchment.quantity.Unit;
import parchment.stats.linear.Robust;

/**
 * Offers the moments that are looked for unless told otherwise. All thresholds are common practice, no source: they say what a roaster would
 * want to hear of, and whether it is unusual is told by the other batches of the lot.
 *
 * <pre>{@code
 * Moments.of(logbook, List.of(KnownMoments.stall(), KnownMoments.looseProbe()))
 * }</pre>
 */
public final class KnownMoments {
    /** A rate of rise below this stands still, °C/min. */
    private static final double STANDING_RATE = 1.5;

    private static final double CHANGE_SECONDS = 40;
    private static final double BEFORE_CRACK = 45;
    private static final double AFTER_CRACK = 90;

    private static final String CHARGE = "charge temperature";

    private KnownMoments() {}

    private record Known(
            String name,
            Unit unit,
            double noticeable,
            Side side,
            OptionalDouble usual,
            BiPredicate<Batch, Batch> comparing,
            Function<Phases, Optional<Sighting>> looking)
            implements MomentDetector {
        @Override
        public String source() {
            return "common practice, no source";
        }

        @Override
        public Optional<Sighting> look(Phases phases) {
            return looking.apply(phases);
        }

        @Override
        public boolean comparable(Batch one, Batch other) {
            return comparing.test(one, other);
        }

        @Override
        public boolean roughlyComparable(Batch one, Batch other) {
            return !name.equals(CHARGE) || sameMass(one, other);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    /** Returns all of them. */
    public static List<MomentDetector> all() {
        return List.of(
                stall(),
                suddenLoss(),
                suddenSurge(),
                late(Quantity.GAS),
                late(Quantity.AIRFLOW),
                afterCrack(Quantity.GAS),
                afterCrack(Quantity.AIRFLOW),
                chargeTemperature(),
                looseProbe());
    }

    private static boolean sameLot(Batch one, Batch other) {
        return one.lot().orElse("").equals(other.lot().orElse(""));
    }

    /** The rate of rise stays below 1.5 °C/min after the first two minutes of the climb; the size is for how long, notable from 15 s. */
    public static MomentDetector stall() {
        return new Known(
                "stall",
                Unit.SECONDS,
                15,
                MomentDetector.Side.HIGH,
                OptionalDouble.of(0),
                KnownMoments::sameLot,
                phases -> RisingPart.of(phases).map(KnownMoments::standingStill));
    }

    private static MomentDetector.Sighting standingStill(RisingPart climb) {
        double longest = 0;
        double at = climb.start();
        double since = Double.NaN;
        for (double seconds : climb.times()) {
            boolean still = seconds > climb.start() + 120 && climb.rateAt(seconds) < STANDING_RATE;
            since = !still ? Double.NaN : Double.isNaN(since) ? seconds : since;
            if (still && seconds - since > longest) {
                longest = seconds - since;
                at = since;
            }
        }
        return new MomentDetector.Sighting(at, longest);
    }

    /** The rate of rise falls within 40 s near first crack by more than usual; notable from 2 °C/min more. */
    public static MomentDetector suddenLoss() {
        return new Known(
                "sudden loss of rate near first crack",
                Unit.RATE_OF_RISE,
                2,
                MomentDetector.Side.HIGH,
                OptionalDouble.empty(),
                KnownMoments::sameLot,
                phases -> change(phases, -1));
    }

    /** The rate of rise grows within 40 s near first crack by more than usual; notable from 2 °C/min more. */
    public static MomentDetector suddenSurge() {
        return new Known(
                "sudden surge of rate near first crack",
                Unit.RATE_OF_RISE,
                2,
                MomentDetector.Side.HIGH,
                OptionalDouble.empty(),
                KnownMoments::sameLot,
                phases -> change(phases, 1));
    }

    private static Optional<MomentDetector.Sighting> change(Phases phases, int sign) {
        Optional<RisingPart> climb = RisingPart.of(phases);
        Optional<Mark> crack = phases.mark(MarkKind.FIRST_CRACK_START);
        if (climb.isEmpty() || crack.isEmpty()) {
            return Optional.empty();
        }
        double from = crack.get().seconds() - BEFORE_CRACK;
        double to = crack.get().seconds() + AFTER_CRACK;
        MomentDetector.Sighting best = new MomentDetector.Sighting(Double.NaN, Double.NEGATIVE_INFINITY);
        for (double seconds : climb.get().times()) {
            double half = CHANGE_SECONDS / 2;
            double change =
                    sign * (climb.get().rateAt(seconds + half) - climb.get().rateAt(seconds - half));
            boolean inside = seconds >= from
                    && seconds <= to
                    && seconds + CHANGE_SECONDS <= climb.get().end();
            if (inside && change > best.size()) {
                best = new MomentDetector.Sighting(seconds, change);
            }
        }
        return Double.isNaN(best.seconds()) ? Optional.empty() : Optional.of(best);
    }

    /**
     * The first change of gas or air in the climb comes later along the temperatures than usual; the size is the bean temperature then,
     * notable from 6 °C more. A change is a move of at least 3 % of the largest setting.
     */
    public static MomentDetector late(Quantity control) {
        return new Known(
                "late first change of " + control.words(),
                Unit.TEMPERATURE,
                6,
                MomentDetector.Side.HIGH,
                OptionalDouble.empty(),
                KnownMoments::sameLot,
                phases -> RisingPart.of(phases)
                        .flatMap(climb -> changes(phases, control, climb.start(), climb.end())
                                .findFirst()
                                .map(step -> new MomentDetector.Sighting(
                                        step.atSeconds(), climb.celsiusAt(step.atSeconds())))));
    }

    /**
     * Gas or air is changed after the start of first crack by more than usual; the size is the largest change there as a share of the largest
     * setting, notable from 20 %.
     */
    public static MomentDetector afterCrack(Quantity control) {
        return new Known(
                "change of " + control.words() + " after first crack",
                Unit.SHARE,
                0.2,
                MomentDetector.Side.HIGH,
                OptionalDouble.empty(),
                KnownMoments::sameLot,
                phases -> largestAfterCrack(phases, control));
    }

    private static Optional<MomentDetector.Sighting> largestAfterCrack(Phases phases, Quantity control) {
        Optional<RisingPart> climb = RisingPart.of(phases);
        Optional<Mark> crack = phases.mark(MarkKind.FIRST_CRACK_START);
        if (climb.isEmpty() || crack.isEmpty() || phases.curve(control).isEmpty()) {
            return Optional.empty();
        }
        // What is moved in the last seconds is the drop itself, or the shutting down after it.
        double until = climb.get().end() - 15;
        return Optional.of(changes(phases, control, crack.get().seconds() + 10, until)
                .map(step -> new MomentDetector.Sighting(
                        step.atSeconds(), Math.abs(step.change()) / largest(phases, control)))
                .max(Comparator.comparingDouble(MomentDetector.Sighting::size))
                .orElse(new MomentDetector.Sighting(crack.get().seconds(), 0)));
    }

    private static Stream<ControlSteps.Step> changes(Phases phases, Quantity control, double from, double to) {
        double least = 0.03 * largest(phases, control);
        return phases.curve(control).stream()
                .filter(curve -> !curve.isEmpty() && to > from)
                .flatMap(curve -> ControlSteps.of(curve).between(from, to).list().stream())
                .filter(step -> Math.abs(step.change()) >= least);
    }

    private static double largest(Phases phases, Quantity control) {
        return phases.curve(control)
                .map(curve -> Arrays.stream(curve.values()).map(Math::abs).max().orElse(0))
                .orElse(Double.NaN);
    }

    /**
     * The drum was hotter or colder at charge than usual for the lot and a charge of the same mass (15 % either way); notable from 4 °C. The
     * bean probe's reading just before charge is used, and what was written where none was logged. A log that does not hold the charge is not
     * judged.
     */
    public static MomentDetector chargeTemperature() {
        return new Known(
                CHARGE,
                Unit.TEMPERATURE,
                4,
                MomentDetector.Side.EITHER,
                OptionalDouble.empty(),
                (one, other) -> sameLot(one, other) && sameMass(one, other),
                phases -> charge(phases).map(celsius -> new MomentDetector.Sighting(0, celsius)));
    }

    private static boolean sameMass(Batch one, Batch other) {
        Optional<Mass> a = one.conditions().greenMass();
        Optional<Mass> b = other.conditions().greenMass();
        return a.isEmpty()
                || b.isEmpty()
                || Math.abs(Math.log(a.get().kilograms() / b.get().kilograms())) < Math.log(1.15);
    }

    private static Optional<Double> charge(Phases phases) {
        if (phases.clean().isPresent() && !phases.isChargeLogged()) {
            return Optional.empty();
        }
        Optional<Double> read = phases.clean()
                .map(clean -> clean.kept().between(-20, -2).values())
                .filter(values -> values.length >= 3)
                .map(Robust::median);
        return read.isPresent()
                ? read
                : phases.batch().conditions().chargeTemperature().map(t -> t.celsius());
    }

    /**
     * The bean probe jumps to another level in the climb and stays there for half a minute: a probe that came loose, or slipped. The size is
     * the jump against the line of the half minute before, in °C; notable from 6 °C.
     */
    public static MomentDetector looseProbe() {
        return new Known(
                "jump of the bean probe",
                Unit.TEMPERATURE_STEP,
                6,
                MomentDetector.Side.HIGH,
                OptionalDouble.of(0),
                KnownMoments::sameLot,
                phases -> RisingPart.of(phases).flatMap(climb -> jump(phases, climb)));
    }

    private static Optional<MomentDetector.Sighting> jump(Phases phases, RisingPart climb) {
        Curve curve = phases.clean().orElseThrow().kept().between(climb.start() + 60, climb.end());
        MomentDetector.Sighting best = new MomentDetector.Sighting(Double.NaN, 0);
        for (int i = 0; i < curve.size(); i++) {
            double at = curve.secondsAt(i);
            List<double[]> before = readings(curve, at - 30, at);
            List<double[]> after = readings(curve, at + 6, at + 36);
            if (before.size() < 5 || after.size() < 5 || at - 30 < curve.secondsAt(0) || at + 36 > climb.end()) {
                continue;
            }
            double[] line = line(before, at);
            double[] off = new double[after.size()];
            for (int k = 0; k < off.length; k++) {
                double ahead = after.get(k)[0] - at;
                off[k] = after.get(k)[1] - line[0] - line[1] * ahead;
            }
            double size = Math.abs(Robust.median(off));
            if (size > best.size()) {
                best = new MomentDetector.Sighting(at, size);
            }
        }
        return Double.isNaN(best.seconds()) ? Optional.empty() : Optional.of(best);
    }

    private static List<double[]> readings(Curve curve, double from, double to) {
        List<double[]> list = new ArrayList<>();
        for (int i = curve.position(from); i < curve.size() && curve.secondsAt(i) <= to; i++) {
            if (curve.secondsAt(i) >= from) {
                list.add(new double[] {curve.secondsAt(i), curve.valueAt(i)});
            }
        }
        return list;
    }

    /** Height at a time and slope per second of the line of least squares. */
    private static double[] line(List<double[]> points, double at) {
        double n = points.size();
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        for (double[] p : points) {
            double x = p[0] - at;
            sx += x;
            sy += p[1];
            sxx += x * x;
            sxy += x * p[1];
        }
        double slope = (sxy - sx * sy / n) / Math.max(1e-9, sxx - sx * sx / n);
        return new double[] {(sy - slope * sx) / n, slope};
    }

    public static String sized(MomentDetector detector, double size, parchment.quantity.TemperatureUnit reader) {
        String printed = detector.unit().format(size, reader);
        return printed.isEmpty() ? String.format(Locale.ROOT, "%.3g", size) : printed;
    }
}
