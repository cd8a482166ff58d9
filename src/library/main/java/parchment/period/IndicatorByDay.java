package parchment.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import parchment.calendar.machine.MachineDays;
import parchment.stats.series.DayRegression;

/**
 * What a picture of probe periods draws: what one indicator of a machine read on each roast day, freed of what else moves it, with the
 * level of each period.
 *
 * @param indicator its name, as in "turning point"
 * @param batches how many batches it was read in
 * @param dates the roast days
 * @param means mean of each day at like beans, °C; NaN for a day without a batch
 * @param counts how many batches each day has
 * @param level the level of the day's probe period, °C
 */
public record IndicatorByDay(
        String indicator,
        int batches,
        List<LocalDate> dates,
        List<Double> means,
        List<Integer> counts,
        List<Double> level) {

    /** Name of the indicator that is a difference from the room rather than a temperature of the roast. */
    public static final String COLD_MACHINE = "cold machine";

    /** Name of the indicator that is the bean probe's reading less the air probe's, both in the empty drum. */
    public static final String EMPTY_DRUM = "empty drum";

    /** Copies the lists. */
    public IndicatorByDay {
        dates = List.copyOf(dates);
        means = List.copyOf(means);
        counts = List.copyOf(counts);
        level = List.copyOf(level);
    }

    static IndicatorByDay of(Indicator indicator, DayRegression fit, MachineDays days, List<Integer> firstDays) {
        double[] coefficients = fit.coefficients();
        int size = days.dates().size();
        double[] sums = new double[size];
        int[] counts = new int[size];
        List<double[]> columns = indicator.rawColumns();
        double[] y = indicator.y().raw();
        for (int i = 0; i < y.length; i++) {
            double rest = y[i];
            for (int k = 1; k < columns.size(); k++) {
                rest -= coefficients[k] * columns.get(k)[i];
            }
            int day = days.dayOfBatch().get(indicator.rows().get(i));
            sums[day] += rest;
            counts[day]++;
        }
        List<Double> means = new ArrayList<>();
        List<Integer> batches = new ArrayList<>();
        List<Double> level = new ArrayList<>();
        for (int d = 0; d < size; d++) {
            means.add(counts[d] == 0 ? Double.NaN : sums[d] / counts[d]);
            batches.add(counts[d]);
            double here = coefficients[0];
            for (int k = 0; k < firstDays.size(); k++) {
                here += d >= firstDays.get(k) ? coefficients[columns.size() + k] : 0;
            }
            level.add(here);
        }
        return new IndicatorByDay(indicator.name(), indicator.size(), days.dates(), means, batches, level);
    }

    /** Says whether it is a difference of two readings rather than a temperature of the roast. */
    public boolean isDifference() {
        return indicator.equals(COLD_MACHINE) || indicator.equals(EMPTY_DRUM);
    }

    @Override
    public String toString() {
        return indicator + " of " + batches + " batches on " + dates.size() + " roast days";
    }
}
