package parchment.feature;

import static parchment.logbook.MarkKind.CHARGE;
import static parchment.logbook.MarkKind.DROP;
import static parchment.logbook.MarkKind.FIRST_CRACK_END;
import static parchment.logbook.MarkKind.FIRST_CRACK_START;
import static parchment.logbook.MarkKind.TURNING_POINT;
import static parchment.logbook.MarkKind.YELLOWING;

import java.util.List;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.MarkKind;
import parchment.quantity.Unit;

/** Times between marks, shares of the whole, and the two log-ratio coordinates of the three phases. */
final class TimeFeatures {
    static final Feature DROP_TIME =
            between("drop time", CHARGE, DROP, Unit.SECONDS.withNaturalStep(30), "time from charge to drop");
    static final Feature DRYING_TIME = between(
            "drying time", CHARGE, YELLOWING, Unit.SECONDS.withNaturalStep(30), "time from charge to yellowing");
    static final Feature BROWNING_TIME = between(
            "browning time",
            YELLOWING,
            FIRST_CRACK_START,
            Unit.SECONDS.withNaturalStep(30),
            "time from yellowing to the start of first crack");
    static final Feature DEVELOPMENT_TIME = between(
            "development time",
            FIRST_CRACK_START,
            DROP,
            Unit.SECONDS,
            "time from the start of first crack to the drop");
    static final Feature FIRST_CRACK_TIME = between(
            "first crack time",
            CHARGE,
            FIRST_CRACK_START,
            Unit.SECONDS.withNaturalStep(30),
            "time from charge to the start of first crack");
    static final Feature FIRST_CRACK_LENGTH = between(
            "first crack length",
            FIRST_CRACK_START,
            FIRST_CRACK_END,
            Unit.SECONDS,
            "time from the start of first crack to its end");
    static final Feature TURNING_POINT_TIME = NamedFeature.of(
                    "turning point time",
                    Unit.SECONDS,
                    Family.START,
                    "time from charge to the lowest smoothed bean-probe reading; tells of the probe, the batch's mass and the"
                            + " machine's heat, not of the beans alone",
                    path -> path.secondsBetween(CHARGE, TURNING_POINT))
            .using(CHARGE, TURNING_POINT)
            .needing(Need.BEAN_TEMPERATURE);
    static final Feature DRYING_SHARE = share("drying share", CHARGE, YELLOWING, "drying time divided by drop time");
    static final Feature BROWNING_SHARE =
            share("browning share", YELLOWING, FIRST_CRACK_START, "browning time divided by drop time");
    static final Feature DEVELOPMENT_RATIO =
            share("development ratio", FIRST_CRACK_START, DROP, "development time divided by drop time");
    static final Feature DRYING_AGAINST_BROWNING = NamedFeature.of(
                    "drying against browning",
                    Unit.NONE.withNaturalStep(0.1),
                    Family.PHASE_LENGTHS,
                    "first isometric log-ratio coordinate of the three phases: √(1/2) · ln(drying time / browning time); 0 where both"
                            + " took as long (Egozcue et al. 2003, Mathematical Geology 35:279)",
                    path -> logRatio(path, Math.sqrt(0.5), 1, -1, 0))
            .using(CHARGE, YELLOWING, FIRST_CRACK_START);
    static final Feature EARLY_AGAINST_DEVELOPMENT = NamedFeature.of(
                    "early phases against development",
                    Unit.NONE.withNaturalStep(0.1),
                    Family.PHASE_LENGTHS,
                    "second isometric log-ratio coordinate of the three phases: √(2/3) · ln(√(drying time · browning time) / development"
                            + " time); the larger, the shorter the development for its roast (Egozcue et al. 2003, Mathematical"
                            + " Geology 35:279)",
                    path -> logRatio(path, Math.sqrt(2.0 / 3), 0.5, 0.5, -1))
            .using(CHARGE, YELLOWING, FIRST_CRACK_START, DROP);

    private TimeFeatures() {}

    static List<Feature> all() {
        return List.of(
                DROP_TIME,
                DRYING_TIME,
                BROWNING_TIME,
                DEVELOPMENT_TIME,
                FIRST_CRACK_TIME,
                FIRST_CRACK_LENGTH,
                TURNING_POINT_TIME,
                DRYING_SHARE,
                BROWNING_SHARE,
                DEVELOPMENT_RATIO,
                DRYING_AGAINST_BROWNING,
                EARLY_AGAINST_DEVELOPMENT);
    }

    private static Feature between(String name, MarkKind from, MarkKind to, Unit unit, String definition) {
        return NamedFeature.of(name, unit, Family.PHASE_LENGTHS, definition, path -> path.secondsBetween(from, to))
                .using(from, to);
    }

    private static Feature share(String name, MarkKind from, MarkKind to, String definition) {
        return NamedFeature.of(name, Unit.SHARE, Family.PHASE_LENGTHS, definition, path -> {
                    Measured part = path.secondsBetween(from, to);
                    Measured whole = path.secondsBetween(CHARGE, DROP);
                    return whole.isMissing() ? whole : ratio(part, whole.value());
                })
                .using(from, to, CHARGE, DROP);
    }

    private static Measured ratio(Measured part, double whole) {
        return part.isMissing() ? part : Measured.exact(part.value() / whole);
    }

    private static Measured logRatio(BatchPath path, double scale, double drying, double browning, double development) {
        MarkKind[] kinds = {CHARGE, YELLOWING, FIRST_CRACK_START, DROP};
        double[] weights = {drying, browning, development};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            if (weights[i] == 0) {
                continue;
            }
            Measured time = path.secondsBetween(kinds[i], kinds[i + 1]);
            if (time.isMissing()) {
                return time;
            }
            sum += weights[i] * Math.log(time.value());
        }
        return Measured.exact(scale * sum);
    }
}
