package parchment.period;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Draws two indicators of one machine whose every step, slow change and wandering is known. */
final class KnownDays {
    int days = 60;
    int batchesPerDay = 3;
    int lots = 4;
    double batchSpread = 1.5;
    double daySpread = 0.8;
    /** Correlation of neighbouring roast days. */
    double neighbours;
    /** Size of the step in both indicators, °C; 0 for none. */
    double step;
    /** Whole size of a climb over all days, °C. */
    double climb;
    /** Half the swing of an annual wave, °C. */
    double season;
    /** Share of each lot's life over which the lots follow each other: 1 side by side, 0 one after the other. */
    double overlap = 0.5;

    /** What was drawn: the indicators, roast day of each batch, dates, room, and the first day with the new readings. */
    static final class Drawn {
        final List<Indicator> indicators = new ArrayList<>();
        int[] dayOfRow = {};
        double[] dates = {};
        double[] room = {};
        int firstDay = -1;

        ChangeSearch.Result search(long seed) {
            return ChangeSearch.run(indicators, dayOfRow, dates, room, seed);
        }
    }

    Drawn draw(long seed) {
        Random random = new Random(seed * 7919 + 17);
        Drawn drawn = new Drawn();
        int n = days * batchesPerDay;
        drawn.dates = new double[days];
        for (int d = 1; d < days; d++) {
            drawn.dates[d] = drawn.dates[d - 1] + 4 + random.nextInt(5);
        }
        drawn.dayOfRow = new int[n];
        int[] lot = new int[n];
        double[] mass = new double[n];
        drawn.room = new double[n];
        double[] roomOfDay = new double[days];
        for (int d = 0; d < days; d++) {
            roomOfDay[d] = 20 + 4.5 * Math.cos(2 * Math.PI * drawn.dates[d] / 365.25) + random.nextGaussian();
        }
        for (int i = 0; i < n; i++) {
            int d = i / batchesPerDay;
            drawn.dayOfRow[i] = d;
            double place = d / (double) days * lots;
            lot[i] = Math.max(0, Math.min(lots - 1, (int)
                    Math.floor(place + overlap * lots * (random.nextDouble() - 0.5))));
            mass[i] = random.nextGaussian();
            drawn.room[i] = roomOfDay[d];
        }
        drawn.firstDay = step == 0 ? -1 : (int) (days * (0.2 + 0.6 * random.nextDouble()));
        for (int j = 0; j < 2; j++) {
            double[] ofLot = new double[lots];
            for (int l = 0; l < lots; l++) {
                ofLot[l] = 1.5 * random.nextGaussian();
            }
            double[] ofDay = new double[days];
            for (int d = 0; d < days; d++) {
                double fresh = random.nextGaussian() * daySpread;
                ofDay[d] = d == 0 ? fresh : neighbours * ofDay[d - 1] + Math.sqrt(1 - neighbours * neighbours) * fresh;
            }
            double[] y = new double[n];
            List<Integer> rows = new ArrayList<>();
            List<Indicator.Numbers> columns = new ArrayList<>();
            double[] ones = new double[n];
            for (int i = 0; i < n; i++) {
                int d = drawn.dayOfRow[i];
                rows.add(i);
                ones[i] = 1;
                y[i] = (j == 0 ? 90 : 195)
                        + ofLot[lot[i]]
                        + 1.2 * mass[i]
                        + ofDay[d]
                        + batchSpread * random.nextGaussian()
                        + climb * d / days
                        + season * Math.cos(2 * Math.PI * drawn.dates[d] / 365.25 + 0.7)
                        + (drawn.firstDay >= 0 && d >= drawn.firstDay ? step : 0);
            }
            columns.add(new Indicator.Numbers(ones));
            List<String> names = new ArrayList<>(List.of("all"));
            for (int l = 1; l < lots; l++) {
                double[] column = new double[n];
                for (int i = 0; i < n; i++) {
                    column[i] = lot[i] == l ? 1 : 0;
                }
                columns.add(new Indicator.Numbers(column));
                names.add("lot " + l);
            }
            columns.add(new Indicator.Numbers(mass));
            names.add("mass");
            drawn.indicators.add(new Indicator(
                    j == 0 ? "turning point" : "first crack",
                    j == 0 ? 90 : 195,
                    rows,
                    new Indicator.Numbers(y),
                    columns,
                    names));
        }
        return drawn;
    }
}
