package parchment.align;

import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Puts many batches on one clock into three sentences: where their mean stands half way, how well it is known, what to look at. */
final class ClockInShort {
    private ClockInShort() {}

    /**
     * Where the mean stands half way.
     *
     * @param at the place on the clock: seconds, or °C
     * @param mean there, in °C or °C/min
     * @param half half of the band's width there; NaN if the batches cannot tell
     * @param batches how many are in the mean
     * @param roastDays of how many days they are
     */
    record HalfWay(double at, double mean, double half, int batches, long roastDays) {}

    static InShort of(Clock clock, int asked, int laid, Optional<HalfWay> middle, TemperatureUnit reader) {
        if (laid == 0) {
            return new InShort(
                    "None of these batches can be laid on this clock.",
                    "It needs a bean temperature and the " + clock.needed().words() + ".",
                    "Write that mark while you roast, or take another clock.");
        }
        String counted = laid + " of " + asked + (asked == 1 ? " batch is" : " batches are") + " on this clock";
        if (middle.isEmpty()) {
            return new InShort(
                    counted + ", but they share no stretch of it.",
                    "So they have no mean.",
                    "Look at the lines one by one.");
        }
        HalfWay half = middle.get();
        Unit unit = clock.comparesRates() ? Unit.RATE_OF_RISE.withDigits(1) : Unit.TEMPERATURE;
        String mean = unit.format(half.mean(), reader);
        String where = clock == Clock.BY_BEAN_TEMPERATURE
                ? "At " + Stretches.whole(half.at(), reader)
                : "Half way, at " + Elapsed.seconds(half.at()) + ",";
        String known = Double.isNaN(half.half())
                ? ""
                : " (" + unit.format(half.mean() - half.half(), reader) + " to "
                        + unit.format(half.mean() + half.half(), reader) + ")";
        return new InShort(
                where + " the " + (clock.comparesRates() ? "rate of rise" : "bean temperature") + " of "
                        + (half.batches() == 1 ? "the one batch was " : half.batches() + " batches was on average ")
                        + mean + known + ".",
                counted + "; "
                        + (Double.isNaN(half.half())
                                ? "how well their mean is known cannot be told from so few roast days."
                                : "their mean is that of " + half.roastDays() + " roast days."),
                "Look for lines that leave the crowd, and ask what was different that day.");
    }
}
