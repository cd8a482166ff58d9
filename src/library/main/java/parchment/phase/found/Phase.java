package parchment.phase.found;

import java.util.Locale;
import parchment.curve.measured.CurveEstimate;
import parchment.display.Showable;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * The stretch of a roast between two marks.
 *
 * <p>Errors of the marks are carried into every number; a mark that appears twice (the drop ends development and makes the whole) is
 * counted once, with the sign it has.
 *
 * @param name "drying", "browning" or "development"
 * @param start the mark it begins with
 * @param end the mark it ends with
 * @param charge the mark that the whole roast begins with
 * @param drop the mark that the whole roast ends with, the same as {@code end} for development
 * @param rateStart the mark from which the mean rate of rise is taken: the turning point for drying, else {@code start}
 */
public record Phase(String name, Mark start, Mark end, Mark charge, java.util.Optional<Mark> drop, Mark rateStart)
        implements Showable {

    /** Returns how long the phase lasted. */
    public Elapsed duration() {
        return end.at().minus(start.at());
    }

    /** Returns the standard error of the duration in seconds. */
    public double durationStandardError() {
        return Math.hypot(start.standardError(), end.standardError());
    }

    /** Returns the phase's share of the time from charge to drop, from 0 to 1. */
    public CurveEstimate share() {
        if (drop.isEmpty()) {
            return CurveEstimate.missing("the drop is missing, so the whole roast has no length.");
        }
        double whole = drop.get().seconds() - charge.seconds();
        if (!(whole > 0)) {
            return CurveEstimate.missing("the drop does not lie after charge.");
        }
        double share = duration().seconds() / whole;
        double variance = 0;
        for (MarkKind kind : MarkKind.values()) {
            double slope = 0;
            double error = 0;
            if (end.kind() == kind) {
                slope += 1 / whole;
                error = end.standardError();
            }
            if (start.kind() == kind) {
                slope -= 1 / whole;
                error = start.standardError();
            }
            if (drop.get().kind() == kind) {
                slope -= share / whole;
                error = drop.get().standardError();
            }
            if (charge.kind() == kind) {
                slope += share / whole;
                error = charge.standardError();
            }
            variance += slope * slope * error * error;
        }
        return CurveEstimate.of(share, Math.sqrt(variance));
    }

    /** Returns the bean temperature where the rate is taken from, in °C: at the turning point for drying. */
    public CurveEstimate startTemperature() {
        return temperature(rateStart);
    }

    /** Returns the bean temperature at the end, in °C. */
    public CurveEstimate endTemperature() {
        return temperature(end);
    }

    private static CurveEstimate temperature(Mark mark) {
        return mark.probe()
                .map(p -> CurveEstimate.of(p.celsius(), mark.beanTemperatureStandardError()))
                .orElseGet(() -> CurveEstimate.missing(
                        "no bean temperature at the mark '" + mark.kind().words() + "'."));
    }

    /**
     * Returns the mean rate of rise in °C/min: the rise divided by the time, from the turning point on for drying.
     *
     * <p>A mark that is late moves time and temperature together, which hardly changes the mean; the standard error knows this.
     */
    public CurveEstimate meanRateOfRise() {
        if (rateStart.probe().isEmpty() || end.probe().isEmpty()) {
            Mark lacking = rateStart.probe().isEmpty() ? rateStart : end;
            return CurveEstimate.missing(
                    "no bean temperature at the mark '" + lacking.kind().words() + "'.");
        }
        double minutes = (end.seconds() - rateStart.seconds()) / 60;
        if (!(minutes > 0)) {
            return CurveEstimate.missing("the phase has no length.");
        }
        ProbeReading from = rateStart.probe().get();
        ProbeReading to = end.probe().get();
        double mean = (to.celsius() - from.celsius()) / minutes;
        double atEnd = (to.follows() * to.rateOfRise() - mean) / minutes * end.standardError() / 60;
        double atStart = (from.follows() * from.rateOfRise() - mean) / minutes * rateStart.standardError() / 60;
        double probe = Math.hypot(from.standardError(), to.standardError()) / minutes;
        return CurveEstimate.of(mean, Math.hypot(probe, Math.hypot(atEnd, atStart)));
    }

    /** Prints the phase with its numbers on the given scale. */
    public String text(TemperatureUnit reader) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%s: %s%s from %s to %s",
                name,
                duration(),
                Unit.SECONDS.formatError(durationStandardError(), reader),
                start.kind().words(),
                end.kind().words()));
        CurveEstimate share = share();
        if (!share.isMissing()) {
            text.append(", ")
                    .append(Unit.SHARE.formatWithError(share.value(), share.standardError(), reader))
                    .append(" of the roast");
        }
        CurveEstimate rate = meanRateOfRise();
        if (!rate.isMissing()) {
            text.append(", ")
                    .append(Unit.TEMPERATURE.format(startTemperature().value(), reader))
                    .append(" to ")
                    .append(Unit.TEMPERATURE.format(endTemperature().value(), reader))
                    .append(" at a mean ")
                    .append(Unit.RATE_OF_RISE
                            .withDigitsFor(rate.standardError(), reader)
                            .format(rate.value(), reader))
                    .append(Unit.RATE_OF_RISE.formatError(rate.standardError(), reader));
        }
        return text.toString();
    }

    @Override
    public String toString() {
        return text(TemperatureUnit.CELSIUS);
    }
}
