package parchment.evidence;

import parchment.quantity.Unit;

/**
 * Rounds places of a feature to readings that a roaster would say aloud: steps of 1, 2 or 5 of the reader's own unit, or ten times, a tenth
 * of these and so on, at least five over the width that is told; days and counts in whole numbers.
 */
final class RoundReadings {
    private static final int LEAST_STEPS = 5;

    private final Measure measure;
    private final double step;
    private final int decimals;

    private RoundReadings(Measure measure, double step, int decimals) {
        this.measure = measure;
        this.step = step;
        this.decimals = decimals;
    }

    /** Takes the step from a low and a high place, as the library keeps the feature. */
    static RoundReadings of(Measure measure, double low, double high) {
        double width = Math.abs(measure.unit().shownStep(high - low, measure.reader()));
        double finest = width > 0 ? width / LEAST_STEPS : 1;
        int power = (int) Math.floor(Math.log10(finest) + 1e-9);
        // Half a day or half a count is no reading.
        boolean whole = measure.unit().symbol(measure.reader()).equals("days")
                || measure.unit()
                        .equals(Unit.COUNT.withNaturalStep(measure.unit().naturalStep()));
        if (whole && power < 0) {
            return new RoundReadings(measure, 1, 0);
        }
        double ten = Math.pow(10, power);
        double ones = finest / ten + 1e-9;
        return new RoundReadings(measure, ten * (ones >= 5 ? 5 : ones >= 2 ? 2 : 1), Math.max(0, -power));
    }

    /** Returns the nearest round reading. */
    double nearest(double kept) {
        return moved(kept, Math.rint(steps(kept)));
    }

    /** Returns the lowest round reading that is not below a place. */
    double from(double kept) {
        return moved(kept, Math.ceil(steps(kept) - 1e-9));
    }

    /** Returns the highest round reading that is not above a place. */
    double to(double kept) {
        return moved(kept, Math.floor(steps(kept) + 1e-9));
    }

    private double steps(double kept) {
        return measure.unit().shown(kept, measure.reader()) / step;
    }

    /** A temperature's scale has a zero of its own, so a place moves by the difference. */
    private double moved(double kept, double steps) {
        return kept + (steps - steps(kept)) * step / measure.unit().shownStep(1, measure.reader());
    }

    /** Prints the nearest round reading with its unit, as in "205 °C". */
    String words(double kept) {
        return Measure.withoutMinusZero(measure.unit().withDigits(decimals).format(nearest(kept), measure.reader()));
    }

    @Override
    public String toString() {
        return measure.name() + " in steps of " + step;
    }
}
