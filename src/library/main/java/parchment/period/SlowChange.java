package parchment.period;

import java.util.ArrayList;
import java.util.List;

/** Names a slow change that could stand for a step, with its columns: one value per batch of the machine. */
final class SlowChange {
    private final String words;
    private final List<double[]> columns;

    private SlowChange(String words, List<double[]> columns) {
        this.words = words;
        this.columns = columns;
    }

    /**
     * Returns every slow change that is held against a step.
     *
     * @param dates date of each roast day, in days
     * @param dayOfRow number of each batch's roast day
     * @param room the room's temperature per batch; only its slow course is a slow change, see {@link RoomCourse}
     * @param begin where the climb begins, a date
     * @param end where it ends
     */
    static List<SlowChange> all(double[] dates, int[] dayOfRow, double[] room, double begin, double end) {
        double span = Math.max(1, end - begin);
        double[] ramp = new double[dayOfRow.length];
        double[] cosine = new double[ramp.length];
        double[] sine = new double[ramp.length];
        for (int i = 0; i < ramp.length; i++) {
            double date = dates[dayOfRow[i]];
            ramp[i] = Math.max(0, Math.min(1, (date - begin) / span));
            double angle = 2 * Math.PI * date / 365.25;
            cosine[i] = Math.cos(angle);
            sine[i] = Math.sin(angle);
        }
        List<SlowChange> all = new ArrayList<>();
        all.add(new SlowChange("a slow, steady change", List.of(ramp)));
        all.add(new SlowChange("the time of year", List.of(cosine, sine)));
        RoomCourse.of(dates, dayOfRow, room)
                .slow()
                .ifPresent(slow -> all.add(new SlowChange("the room's temperature", List.of(slow))));
        return all;
    }

    String words() {
        return words;
    }

    List<double[]> columns() {
        return columns;
    }
}
