package parchment.feature;

import static parchment.logbook.MarkKind.DROP;
import static parchment.logbook.MarkKind.FIRST_CRACK_START;
import static parchment.logbook.MarkKind.TURNING_POINT;
import static parchment.logbook.MarkKind.YELLOWING;

import java.util.List;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Smoothed;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.kind.Role;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.MarkKind;
import parchment.phase.found.ChargeTemperature;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** Temperatures at marks, rises between them, and the air's temperature against the beans'. */
final class TemperatureFeatures {
    static final Feature DROP_TEMPERATURE = at(
                    "drop temperature", DROP, Family.FINISH, "smoothed bean-probe reading at the drop")
            .planned(batch -> batch.plan().dropTemperature().stream()
                    .mapToDouble(Temperature::celsius)
                    .findFirst());
    static final Feature FIRST_CRACK_TEMPERATURE = at(
            "first crack temperature",
            FIRST_CRACK_START,
            Family.FINISH,
            "smoothed bean-probe reading at the start of first crack");
    static final Feature YELLOWING_TEMPERATURE =
            at("yellowing temperature", YELLOWING, Family.PACE, "smoothed bean-probe reading at yellowing");
    static final Feature TURNING_POINT_TEMPERATURE = at(
            "turning point temperature",
            TURNING_POINT,
            Family.START,
            "lowest smoothed bean-probe reading after charge");
    static final Feature CHARGE_TEMPERATURE = NamedFeature.of(
                    "charge temperature",
                    Unit.TEMPERATURE.withNaturalStep(5),
                    Family.START,
                    "bean-probe reading just before charge, as written; where it was not written, the median reading of the ten seconds"
                            + " before charge",
                    path -> Measured.of(ChargeTemperature.of(path.phases())))
            .as(Role.CONTROL)
            .hangingOnTheBeanProbe()
            .needing(Need.CHARGE_TEMPERATURE);
    static final Feature RISE_AFTER_FIRST_CRACK = rise(
            "rise after first crack",
            FIRST_CRACK_START,
            DROP,
            Family.FINISH,
            "drop temperature minus first crack temperature");
    static final Feature RISE_IN_BROWNING = rise(
            "rise in browning",
            YELLOWING,
            FIRST_CRACK_START,
            Family.PACE,
            "first crack temperature minus yellowing temperature");
    static final Feature AIR_ABOVE_BEANS = NamedFeature.of(
                    "air above beans",
                    Unit.TEMPERATURE_STEP.withNaturalStep(5),
                    Family.AIR,
                    "air temperature minus bean temperature, mean over time from the turning point to the drop",
                    TemperatureFeatures::airAboveBeans)
            .hangingOnTheBeanProbe()
            .using(TURNING_POINT, DROP)
            .needing(Need.BEAN_TEMPERATURE, Need.AIR_TEMPERATURE);
    static final Feature PEAK_AIR_TEMPERATURE = NamedFeature.of(
                    "peak air temperature",
                    Unit.TEMPERATURE.withNaturalStep(5),
                    Family.AIR,
                    "highest smoothed air temperature from the turning point to the drop",
                    TemperatureFeatures::peakAir)
            .using(TURNING_POINT, DROP)
            .needing(Need.AIR_TEMPERATURE);
    static final Feature AIR_TEMPERATURE_AT_FIRST_CRACK =
            airAt("air temperature at first crack", FIRST_CRACK_START, "the start of first crack");
    static final Feature AIR_TEMPERATURE_AT_DROP = airAt("air temperature at drop", DROP, "the drop");

    /** The last reading of the air stands for a mark so many seconds after it at most; common practice, no source. */
    private static final double LONGEST_HELD_SECONDS = 10;

    private TemperatureFeatures() {}

    static List<Feature> all() {
        return List.of(
                DROP_TEMPERATURE,
                FIRST_CRACK_TEMPERATURE,
                YELLOWING_TEMPERATURE,
                TURNING_POINT_TEMPERATURE,
                CHARGE_TEMPERATURE,
                RISE_AFTER_FIRST_CRACK,
                RISE_IN_BROWNING,
                AIR_ABOVE_BEANS,
                PEAK_AIR_TEMPERATURE,
                AIR_TEMPERATURE_AT_FIRST_CRACK,
                AIR_TEMPERATURE_AT_DROP);
    }

    private static NamedFeature at(String name, MarkKind kind, Family family, String definition) {
        return NamedFeature.of(name, Unit.TEMPERATURE, family, definition, path -> path.beanTemperatureAt(kind))
                .readOffTheBeanProbe()
                .using(kind)
                .needing(Need.BEAN_TEMPERATURE);
    }

    private static Feature rise(String name, MarkKind from, MarkKind to, Family family, String definition) {
        return NamedFeature.of(
                        name,
                        Unit.TEMPERATURE_STEP,
                        family,
                        definition,
                        path -> difference(path.beanTemperatureAt(to), path.beanTemperatureAt(from)))
                .using(from, to)
                .needing(Need.BEAN_TEMPERATURE);
    }

    static Measured difference(Measured a, Measured b) {
        if (a.isMissing() || b.isMissing()) {
            return a.isMissing() ? a : b;
        }
        return Measured.of(a.value() - b.value(), Math.hypot(a.standardError(), b.standardError()));
    }

    private static Feature airAt(String name, MarkKind kind, String words) {
        return NamedFeature.of(
                        name,
                        Unit.TEMPERATURE.withNaturalStep(5),
                        Family.AIR,
                        "smoothed air temperature at " + words,
                        path -> {
                            Measured at = path.seconds(kind);
                            if (at.isMissing() || path.air().isEmpty()) {
                                return at.isMissing() ? at : noAir();
                            }
                            return airAt(path.air().get(), at.value());
                        })
                .using(kind)
                .needing(Need.AIR_TEMPERATURE);
    }

    private static Measured airAt(SmoothCurve air, double seconds) {
        List<Smoothed> rows = air.atReadings();
        double last = rows.isEmpty() ? Double.NaN : rows.get(rows.size() - 1).seconds();
        // The logger may stop a moment before the drop as it was written.
        boolean justAfter = seconds > last
                && seconds
                        <= last
                                + Math.min(
                                        LONGEST_HELD_SECONDS,
                                        Math.max(5, 2 * air.clean().interval()));
        return Measured.of(air.valueAt(justAfter ? last : seconds));
    }

    private static Measured airAboveBeans(BatchPath path) {
        Measured stretch = path.secondsBetween(TURNING_POINT, DROP);
        if (stretch.isMissing()) {
            return stretch;
        }
        if (path.air().isEmpty()) {
            return noAir();
        }
        if (path.bean().isEmpty()) {
            return path.noBean();
        }
        double from = path.seconds(TURNING_POINT).value();
        double to = path.seconds(DROP).value();
        return difference(
                PathMeans.mean(path.air().get(), from, to),
                PathMeans.mean(path.bean().get(), from, to));
    }

    private static Measured peakAir(BatchPath path) {
        Measured stretch = path.secondsBetween(TURNING_POINT, DROP);
        if (stretch.isMissing()) {
            return stretch;
        }
        if (path.air().isEmpty()) {
            return noAir();
        }
        double from = path.seconds(TURNING_POINT).value();
        double to = path.seconds(DROP).value();
        return path.air().get().atReadings().stream()
                .filter(r -> !r.isMissing() && r.seconds() >= from && r.seconds() <= to)
                .max((a, b) -> Double.compare(a.value(), b.value()))
                .map(r -> Measured.of(r.value(), r.valueStandardError()))
                .orElseGet(TemperatureFeatures::noAir);
    }

    private static Measured noAir() {
        return Measured.missing("no air temperature was logged.");
    }
}
