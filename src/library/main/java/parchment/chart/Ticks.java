package parchment.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.quantity.Elapsed;

/** Finds round positions along an axis, and how they are written. Positions are shown numbers, not kept ones. */
record Ticks(List<Double> at, List<String> labels) {
    private static final int MOST_DECIMALS = 6;

    private static final double[] CLOCK_STEPS = {
        1, 2, 5, 10, 15, 30, 60, 120, 180, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400
    };
    private static final int[] MONTH_STEPS = {1, 3, 6, 12, 24, 60, 120, 240, 600, 1200};
    private static final List<String> MONTHS = List.of(
            "January",
            "February",
            "March",
            "April",
            "May",
            "June",
            "July",
            "August",
            "September",
            "October",
            "November",
            "December");

    Ticks {
        at = List.copyOf(at);
        labels = List.copyOf(labels);
    }

    /** Returns ticks between two shown numbers, at most about the given count. */
    static Ticks of(Axis axis, double low, double high, int most) {
        return switch (axis.kind()) {
            case NUMBER -> numbers(low, high, roundStep((high - low) / most));
            case CLOCK -> clock(low, high, most);
            case DATE -> dates(low, high, most);
            case ROWS -> rows(axis.rows());
        };
    }

    /** Returns the smallest of 1, 2, 2.5 and 5 times a power of ten that is not below the given step. */
    static double roundStep(double step) {
        double power = Math.pow(10, Math.floor(Math.log10(step)));
        for (double factor : new double[] {1, 2, 2.5, 5}) {
            if (factor * power >= step * (1 - 1e-9)) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    private static Ticks numbers(double low, double high, double step) {
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        // A step of 2.5 needs one decimal more than its size tells.
        decimals += Math.abs(step * Math.pow(10, decimals) - Math.rint(step * Math.pow(10, decimals))) > 1e-6 ? 1 : 0;
        // A reach this small is what is left of rounding, not of a measurement.
        decimals = Math.min(decimals, MOST_DECIMALS);
        List<Double> at = multiples(low, high, step);
        List<String> labels = new ArrayList<>();
        for (double tick : at) {
            labels.add(String.format(Locale.ROOT, "%." + decimals + "f", tick == 0 ? 0.0 : tick));
        }
        return new Ticks(at, labels);
    }

    private static List<Double> multiples(double low, double high, double step) {
        List<Double> at = new ArrayList<>();
        double slack = 1e-9 * (high - low);
        for (double n = Math.ceil((low - slack) / step); n * step <= high + slack; n++) {
            at.add(n * step);
        }
        return at;
    }

    private static Ticks clock(double low, double high, int most) {
        double wanted = (high - low) / most;
        double step = 86400 * Math.ceil(wanted / 86400);
        for (int i = CLOCK_STEPS.length - 1; i >= 0; i--) {
            step = CLOCK_STEPS[i] >= wanted ? CLOCK_STEPS[i] : step;
        }
        List<Double> at = multiples(low, high, step);
        return new Ticks(at, at.stream().map(s -> new Elapsed(s).toString()).toList());
    }

    private static Ticks dates(double low, double high, int most) {
        List<Double> at = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        double wanted = (high - low) / most;
        if (wanted <= 14) {
            int step = wanted <= 1 ? 1 : wanted <= 2 ? 2 : wanted <= 7 ? 7 : 14;
            // Day 0 of the epoch was a Thursday, so weeks are counted from day 4, a Monday.
            for (long day = (long) Math.ceil(low); day <= high; day++) {
                if (Math.floorMod(day - 4, step) == 0) {
                    at.add((double) day);
                    labels.add(isoDay(day));
                }
            }
            return new Ticks(at, labels);
        }
        int months = MONTH_STEPS[MONTH_STEPS.length - 1];
        for (int i = MONTH_STEPS.length - 1; i >= 0; i--) {
            months = MONTH_STEPS[i] * 30.44 >= wanted ? MONTH_STEPS[i] : months;
        }
        LocalDate first = LocalDate.ofEpochDay((long) Math.floor(low)).withDayOfMonth(1);
        for (LocalDate day = first; day.toEpochDay() <= high; day = day.plusMonths(1)) {
            if (Math.floorMod(day.getYear() * 12L + day.getMonthValue() - 1, (long) months) == 0
                    && day.toEpochDay() >= low) {
                at.add((double) day.toEpochDay());
                labels.add(
                        months % 12 == 0
                                ? String.valueOf(day.getYear())
                                : MONTHS.get(day.getMonthValue() - 1) + " " + day.getYear());
            }
        }
        return new Ticks(at, labels);
    }

    static String isoDay(double epochDay) {
        return LocalDate.ofEpochDay((long) Math.floor(epochDay)).toString();
    }

    private static Ticks rows(List<String> names) {
        List<Double> at = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            at.add((double) i);
        }
        return new Ticks(at, names);
    }
}
