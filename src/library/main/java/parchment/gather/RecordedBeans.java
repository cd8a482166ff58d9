package parchment.gather;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Header;
import parchment.sheet.Numbers;

/**
 * What charges and drops are looked for on: the bean temperatures of a recording in °C with their times, without missing readings.
 */
final class RecordedBeans {
    private final double[] seconds;
    private final double[] celsius;

    private RecordedBeans(double[] seconds, double[] celsius) {
        this.seconds = seconds;
        this.celsius = celsius;
    }

    /** Returns the temperatures of the column at a place; none for a place below 0. */
    static RecordedBeans of(Recording recording, int bean) {
        if (bean < 0) {
            return new RecordedBeans(new double[0], new double[0]);
        }
        TemperatureUnit unit = Header.parse(
                        "x [" + recording.meanings().get(bean).unit() + "]")
                .temperatureUnit()
                .orElse(TemperatureUnit.CELSIUS);
        List<Integer> rows = recording.rows();
        double[] times = new double[rows.size()];
        double[] celsius = new double[rows.size()];
        int size = 0;
        for (int i = 0; i < rows.size(); i++) {
            double value = Numbers.parse(
                    recording.file().rows().get(rows.get(i)).get(bean),
                    recording.file().sheet().decimal());
            if (!Double.isNaN(value) && !StrangeColumn.isOdd(value)) {
                times[size] = recording.seconds().get(i);
                celsius[size++] = unit.toCelsius(value);
            }
        }
        return new RecordedBeans(Arrays.copyOf(times, size), Arrays.copyOf(celsius, size));
    }

    /** Returns the charges, as the fall of the temperature shows them. */
    List<Double> charges() {
        return ChargeFinder.charges(seconds, celsius);
    }

    /** Returns where a fall begins that is a charge if the drum had cooled, between two times; nothing if there is none. */
    Optional<Double> smallerFall(double from, double to) {
        return ChargeFinder.smaller(seconds, celsius, from, to);
    }

    /** Returns the time of the lowest temperature; NaN if none is read. */
    double lowestSecond() {
        int lowest = 0;
        for (int i = 1; i < celsius.length; i++) {
            lowest = celsius[i] < celsius[lowest] ? i : lowest;
        }
        return celsius.length == 0 ? Double.NaN : seconds[lowest];
    }

    /** Returns the time of the highest temperature between two times; NaN if none is read. */
    double hottestSecond(double from, double to) {
        double highest = Double.NEGATIVE_INFINITY;
        double at = Double.NaN;
        for (int i = 0; i < celsius.length; i++) {
            if (seconds[i] >= from && seconds[i] < to && celsius[i] > highest) {
                highest = celsius[i];
                at = seconds[i];
            }
        }
        return at;
    }

    /** Returns how much the first temperature at or after a time is above the one before, in °C; NaN if one is not read. */
    double stepAt(double at) {
        double before = Double.NaN;
        for (int k = 0; k < celsius.length; k++) {
            if (seconds[k] >= at) {
                return celsius[k] - before;
            }
            before = celsius[k];
        }
        return Double.NaN;
    }
}
