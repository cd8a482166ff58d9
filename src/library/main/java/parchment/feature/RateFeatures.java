package parchment.feature;

import static parchment.logbook.MarkKind.DROP;
import static parchment.logbook.MarkKind.FIRST_CRACK_START;
import static parchment.logbook.MarkKind.TURNING_POINT;
import static parchment.logbook.MarkKind.YELLOWING;

import java.util.List;
import java.util.Locale;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.MarkKind;
import parchment.quantity.Unit;

/** Rates of rise, and times told along the temperature axis. */
final class RateFeatures {
    /** Seconds before and after first crack over which the change of the rate is told; common practice, no source. */
    static final double AROUND_CRACK_SECONDS = 30;

    static final Feature DRYING_RATE = mean(
            "mean rate of rise in drying",
            TURNING_POINT,
            YELLOWING,
            Family.PACE,
            "rise from the turning point to yellowing divided by its time");
    static final Feature BROWNING_RATE = mean(
            "mean rate of rise in browning",
            YELLOWING,
            FIRST_CRACK_START,
            Family.PACE,
            "rise from yellowing to the start of first crack divided by its time");
    static final Feature DEVELOPMENT_RATE = mean(
            "mean rate of rise in development",
            FIRST_CRACK_START,
            DROP,
            Family.FINISH,
            "rise from the start of first crack to the drop divided by its time");
    static final Feature RATE_AT_YELLOWING = at("rate of rise at yellowing", YELLOWING, Family.PACE, "yellowing");
    static final Feature RATE_AT_FIRST_CRACK =
            at("rate of rise at first crack", FIRST_CRACK_START, Family.PACE, "the start of first crack");
    static final Feature RATE_AT_DROP = at("rate of rise at drop", DROP, Family.PACE, "the drop");
    static final Feature RATE_CHANGE_ACROSS_FIRST_CRACK = NamedFeature.of(
                    "change of rate across first crack",
                    Unit.RATE_OF_RISE,
                    Family.PACE,
                    "mean rate of rise in the 30 s after the start of first crack minus that in the 30 s before it",
                    RateFeatures::changeAcrossCrack)
            .using(FIRST_CRACK_START)
            .needing(Need.BEAN_TEMPERATURE);
    static final Feature PEAK_RATE = NamedFeature.of(
                    "peak rate of rise",
                    Unit.RATE_OF_RISE,
                    Family.PACE,
                    "highest rate of rise at any reading from the turning point to the drop; the noisier the log, the higher it reads",
                    RateFeatures::peak)
            .using(TURNING_POINT, DROP)
            .needing(Need.BEAN_TEMPERATURE);

    private RateFeatures() {}

    static List<Feature> all() {
        return List.of(
                DRYING_RATE,
                BROWNING_RATE,
                DEVELOPMENT_RATE,
                RATE_AT_YELLOWING,
                RATE_AT_FIRST_CRACK,
                RATE_AT_DROP,
                RATE_CHANGE_ACROSS_FIRST_CRACK,
                PEAK_RATE,
                secondsBetween(150, 180));
    }

    static Feature secondsBetween(double from, double to) {
        if (!(to > from)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The time between two temperatures needs the lower one first; it was given %.1f and %.1f °C.",
                    from,
                    to));
        }
        return NamedFeature.of(
                        String.format(Locale.ROOT, "time from %s to %s °C", number(from), number(to)),
                        Unit.SECONDS,
                        Family.PACE,
                        String.format(
                                Locale.ROOT,
                                "time in which the smoothed bean temperature rises from %s to %s °C after the turning point",
                                number(from),
                                number(to)),
                        path -> TemperatureFeatures.difference(
                                path.secondsAtTemperature(to), path.secondsAtTemperature(from)))
                .hangingOnTheBeanProbe()
                .needing(Need.BEAN_TEMPERATURE);
    }

    private static String number(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.1f", value);
    }

    private static Feature mean(String name, MarkKind from, MarkKind to, Family family, String definition) {
        return NamedFeature.of(name, Unit.RATE_OF_RISE, family, definition, path -> {
                    Measured seconds = path.secondsBetween(from, to);
                    return seconds.isMissing()
                            ? seconds
                            : perMinute(
                                    TemperatureFeatures.difference(
                                            path.beanTemperatureAt(to), path.beanTemperatureAt(from)),
                                    seconds.value());
                })
                .using(from, to)
                .needing(Need.BEAN_TEMPERATURE);
    }

    private static Measured perMinute(Measured rise, double seconds) {
        return rise.isMissing() ? rise : Measured.of(60 * rise.value() / seconds, 60 * rise.standardError() / seconds);
    }

    private static Feature at(String name, MarkKind kind, Family family, String words) {
        return NamedFeature.of(
                        name, Unit.RATE_OF_RISE, family, "slope of the smoothed bean temperature at " + words, path -> {
                            Measured at = path.seconds(kind);
                            if (at.isMissing()) {
                                return at;
                            }
                            // The logger may stop a moment before the drop as it was written: the mark knows the rate
                            // there.
                            Measured read = path.whyNothingAt(kind).orElseGet(() -> path.rateAt(at.value()));
                            return read.isMissing() ? atMark(path, kind, read) : read;
                        })
                .using(kind)
                .needing(Need.BEAN_TEMPERATURE);
    }

    private static Measured atMark(BatchPath path, MarkKind kind, Measured otherwise) {
        return path.mark(kind)
                .flatMap(m -> m.probe())
                .map(p -> Measured.of(p.rateOfRise(), p.rateStandardError()))
                .orElse(otherwise);
    }

    private static Measured changeAcrossCrack(BatchPath path) {
        Measured at = path.seconds(FIRST_CRACK_START);
        if (at.isMissing()) {
            return at;
        }
        Measured before = path.beanTemperatureAt(at.value() - AROUND_CRACK_SECONDS);
        Measured there = path.beanTemperatureAt(at.value());
        Measured after = path.beanTemperatureAt(at.value() + AROUND_CRACK_SECONDS);
        for (Measured one : List.of(before, there, after)) {
            if (one.isMissing()) {
                return one;
            }
        }
        double minutes = AROUND_CRACK_SECONDS / 60;
        double error = Math.hypot(Math.hypot(before.standardError(), after.standardError()), 2 * there.standardError());
        return Measured.of((after.value() - 2 * there.value() + before.value()) / minutes, error / minutes);
    }

    private static Measured peak(BatchPath path) {
        Measured stretch = path.secondsBetween(TURNING_POINT, DROP);
        if (stretch.isMissing() || path.bean().isEmpty()) {
            return stretch.isMissing() ? stretch : path.noBean();
        }
        double from = path.seconds(TURNING_POINT).value();
        double to = path.seconds(DROP).value();
        return path.bean().get().atReadings().stream()
                .filter(r -> !r.isMissing() && r.seconds() >= from && r.seconds() <= to)
                .max((a, b) -> Double.compare(a.slope(), b.slope()))
                .map(r -> Measured.of(r.slope(), r.slopeStandardError()))
                .orElseGet(path::noBean);
    }
}
