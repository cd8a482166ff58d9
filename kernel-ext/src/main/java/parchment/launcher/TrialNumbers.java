package parchment.launcher;

import parchment.logbook.Logbook;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;

/**
 * Reads the numbers of a trial as a roaster types them: in the logbook's degrees, or as the gas has them.
 *
 * @param unit the logbook's degrees
 * @param kind what the numbers are
 */
record TrialNumbers(TemperatureUnit unit, Kind kind) {
    /** Says what the ends and the step are. */
    enum Kind {
        DEGREES,
        GAS
    }

    static TrialNumbers of(Logbook logbook, boolean gas) {
        return new TrialNumbers(logbook.readerUnit(), gas ? Kind.GAS : Kind.DEGREES);
    }

    Temperature temperature(double typed) {
        return Temperature.of(typed, unit);
    }

    /** Returns a difference as the library keeps it. */
    double step(double typed) {
        return kind == Kind.GAS ? typed : unit.toCelsius(unit.fromCelsius(0) + typed);
    }

    /**
     * Reads two ends, as in 200..206.
     *
     * @throws IllegalArgumentException if they are not two numbers; the message says how to write them
     */
    double[] ends(String option, String typed) {
        String[] parts = typed.split("\\.\\.", -1);
        try {
            if (parts.length == 2) {
                return new double[] {end(parts[0]), end(parts[1])};
            }
        } catch (NumberFormatException e) {
            throw noEnds(option, typed, e);
        }
        throw noEnds(option, typed, null);
    }

    private double end(String typed) {
        double number = Double.parseDouble(typed.strip());
        return kind == Kind.GAS ? number : unit.toCelsius(number);
    }

    private static IllegalArgumentException noEnds(
            String option, String typed, @org.jspecify.annotations.Nullable NumberFormatException cause) {
        return new IllegalArgumentException(
                option + " takes two numbers with two dots between, as in 200..206, but this is '" + typed + "'.",
                cause);
    }
}
