package parchment.logbook;

import java.util.Locale;
import java.util.Optional;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Header;

/**
 * Keeps a slip of the pen, or a hostile file, from becoming a number: the largest that is read of anything in a logbook. What lies beyond
 * is a problem in words and never a number or a name.
 *
 * <p>They are far beyond any roastery (common practice, no source): they keep one slip, or a file that was never a table, from stopping what
 * can be said of all other batches.
 */
final class Bounds {
    /** Longest name of a batch, lot, machine, cupper, cupping or column, in letters: no file name is longer. */
    static final int LONGEST_NAME = 250;

    /** Longest text of any other cell, in letters; a note of a page has some 3,000. */
    static final int LONGEST_CELL = 10_000;

    /** Longest key of a setting, in letters: a name and what is said of it. */
    static final int LONGEST_KEY = 400;

    /** Longest value of a setting, in letters. */
    static final int LONGEST_SETTING = 1000;

    /** Longest file of settings, in letters. */
    static final int LONGEST_SETTINGS = 1_000_000;

    /** Most columns of a table. */
    static final int MOST_COLUMNS = 1000;

    /** Largest number of a column without a known meaning, to either side of 0. */
    static final double LARGEST_NUMBER = 1e15;

    /** Largest score, colour, gas, heater power, airflow or drum speed, to either side of 0. */
    static final double LARGEST_ON_A_SCALE = 1e6;

    /** Coldest and hottest reading of any probe, in degrees Celsius. */
    static final double COLDEST_READING = -100;

    static final double HOTTEST_READING = 2000;

    /** Least and most that a machine is said to hold, in kilograms. */
    private static final double SMALLEST_MACHINE = 0.001;

    private static final double LARGEST_MACHINE = 10_000;

    /** Lightest and heaviest charge, in kilograms, from a sample roaster's to a large drum's; common practice, no source. */
    static final double LIGHTEST_CHARGE = 0.01;

    static final double HEAVIEST_CHARGE = 300;

    /** What a mass may be of. */
    enum Weighed {
        GREEN(LIGHTEST_CHARGE, HEAVIEST_CHARGE, "a batch of green coffee from 10 g to 300 kg"),
        ROASTED(
                LIGHTEST_CHARGE * (1 - MassPair.LARGEST_MASS_LOSS),
                HEAVIEST_CHARGE,
                "a batch of roasted coffee from 6 g to 300 kg"),
        MACHINE(SMALLEST_MACHINE, LARGEST_MACHINE, "a number above 0: one gram or more, up to 10,000 kg");

        private final double low;
        private final double high;
        private final String words;

        Weighed(double low, double high, String words) {
            this.low = low;
            this.high = high;
            this.words = words;
        }

        /** Returns which masses there are of it, as numbers of a unit; a last digit lost in changing units leaves nothing out. */
        Range in(MassUnit unit) {
            return new Range(
                    unit.fromKilograms(low) * (1 - 1e-9),
                    unit.fromKilograms(high) * (1 + 1e-9),
                    this == MACHINE ? words : words + " (another unit in the heading, or a slip?)");
        }
    }

    /** Latest time of a reading on its logger's clock, in seconds to either side of 0: clocks that count from 1970 stay far below. */
    static final double LATEST_SECONDS = 1e10;

    /** Longest time from the first to the last reading of a curve, in seconds: eleven days. */
    static final double LONGEST_RECORDING = 1e6;

    /** Most readings of one quantity that a curve keeps: five hours and a half at one a second, or half an hour at ten. */
    static final int MOST_READINGS_KEPT = 20_000;

    /** Holds the numbers that a column of a curve may have, in the unit of its heading. */
    record Range(double low, double high, String words) {
        boolean holds(double value) {
            return value >= low && value <= high;
        }
    }

    static final Range ON_A_SCALE = new Range(
            -LARGEST_ON_A_SCALE,
            LARGEST_ON_A_SCALE,
            String.format(Locale.ROOT, "a number from %,.0f to %,.0f", -LARGEST_ON_A_SCALE, LARGEST_ON_A_SCALE));

    static final Range NUMBER =
            new Range(-LARGEST_NUMBER, LARGEST_NUMBER, "a number of at most 15 digits before the decimal point");

    private Bounds() {}

    /** Returns what a probe can read on a scale; on the widest, °F, if the scale is not written. */
    static Range reading(Optional<TemperatureUnit> unit) {
        TemperatureUnit scale = unit.orElse(TemperatureUnit.FAHRENHEIT);
        double low = scale.fromCelsius(COLDEST_READING);
        double high = scale.fromCelsius(HOTTEST_READING);
        return new Range(
                low,
                high,
                String.format(
                        Locale.ROOT,
                        "a temperature from %.0f to %.0f%s",
                        low,
                        high,
                        unit.map(u -> " " + u.symbol()).orElse("")));
    }

    /** Returns the range of a column of a curve. */
    static Range of(CurveColumns.Column column) {
        if (column.quantity().isEmpty()) {
            return NUMBER;
        }
        return column.quantity().get().isControl()
                ? ON_A_SCALE
                : reading(Header.temperatureUnit(column.header().plainUnit()));
    }
}
