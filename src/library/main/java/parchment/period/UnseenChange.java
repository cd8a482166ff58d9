package parchment.period;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/**
 * Tells what is known of a change of a bean probe that was written down and shows as no step by itself. Not seen is not the same as no
 * change: readings from before it are moved by what they differ by at its day, and every page that tells of it says so with these words.
 */
public final class UnseenChange {
    private static final double LEVEL = 0.9;

    /** What moves readings by less than this, in °C, for sure is told as no change; common practice, no source. */
    private static final double LITTLE = 1;

    private static final int MOST_DIGITS = 2;

    private final Optional<Estimate> told;

    private UnseenChange(Optional<Estimate> told) {
        this.told = told;
    }

    /** Takes the steps of a change at its indicators: what the beans show is told, the clearest of it. */
    public static UnseenChange of(List<Estimate> offsets) {
        return new UnseenChange(offsets.stream()
                .filter(offset -> Double.isFinite(offset.estimate()) && !ProbeChange.isExactlyAlike(offset))
                .filter(offset -> !offset.name().equals(IndicatorByDay.EMPTY_DRUM)
                        && !offset.name().equals(IndicatorByDay.COLD_MACHINE))
                .max(Comparator.comparingDouble(offset -> Math.abs(offset.t()))));
    }

    /** Returns what the probe does since, to stand behind its name, as in "may read lower". */
    public String does(TemperatureUnit reader) {
        return told.filter(offset -> within(offset) <= LITTLE)
                .map(offset -> "reads as before to within "
                        + Unit.TEMPERATURE_STEP.withDigits(1).formatStep(within(offset), reader))
                .or(() -> told.filter(offset -> !interval(offset).contains(0))
                        .map(offset -> "may read " + (offset.estimate() < 0 ? "lower" : "higher")))
                .orElse("may read otherwise");
    }

    /** Tells whether it may have moved readings by so much that a roaster would act on it. */
    public boolean matters() {
        return told.filter(offset -> within(offset) <= LITTLE).isEmpty();
    }

    /** Returns how sure that is and by how much readings from before are moved, as one sentence. */
    public String sentence(TemperatureUnit reader) {
        return told.map(offset ->
                        begin(offset) + "; readings " + at(offset) + " are moved " + size(offset, reader) + ".")
                .orElse("Whether it reads differently cannot be told; readings before and after are kept apart.");
    }

    private static String begin(Estimate offset) {
        return within(offset) <= LITTLE
                ? "No change that matters was seen"
                : interval(offset).contains(0)
                        ? "Too few batches to see whether it reads differently"
                        : "Too few batches to be sure that it reads differently";
    }

    private static String at(Estimate offset) {
        return (offset.name().equals("first crack") ? "at " : "at the ") + offset.name();
    }

    /** Readings from before are moved to the side to which the probe went. */
    private static String size(Estimate offset, TemperatureUnit reader) {
        double side = offset.estimate() < 0 ? -1 : 1;
        double one = shown(interval(offset).lower(), reader) * side;
        double other = shown(interval(offset).upper(), reader) * side;
        int digits = digits(Math.abs(one - other));
        return (side < 0 ? "down" : "up") + " by about "
                + number(Math.abs(shown(offset.estimate(), reader)), digits) + " "
                + Unit.TEMPERATURE_STEP.symbol(reader) + " (" + number(Math.min(one, other), digits) + " to "
                + number(Math.max(one, other), digits) + ")";
    }

    private static double shown(double celsius, TemperatureUnit reader) {
        return Unit.TEMPERATURE_STEP.shownStep(celsius, reader);
    }

    /** One digit of half of the width is all that an interval deserves. */
    private static int digits(double width) {
        return width > 0 ? (int) Math.max(0, Math.min(MOST_DIGITS, -Math.floor(Math.log10(width / 2)))) : MOST_DIGITS;
    }

    private static String number(double shown, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", shown).replaceFirst("^-(?=0(\\.0+)?$)", "");
    }

    private static double within(Estimate offset) {
        return Math.max(
                Math.abs(interval(offset).lower()), Math.abs(interval(offset).upper()));
    }

    private static Interval interval(Estimate offset) {
        return offset.interval(LEVEL);
    }
}
