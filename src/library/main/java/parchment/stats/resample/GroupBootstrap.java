package parchment.stats.resample;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import parchment.display.Progress;
import parchment.display.Showable;
import parchment.stats.Interval;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Robust;

/**
 * Draws whole groups of rows with replacement, with its seed. A group drawn twice counts as two groups.
 *
 * @see <a href="https://doi.org/10.1017/CBO9780511802843">Davison and Hinkley 1997, Bootstrap Methods, section 3.8</a>
 */
public final class GroupBootstrap implements Showable {

    /** One draw: rows (from 0) with repeats, and for each a group label that tells repeats apart. */
    public static final class Draw {
        private final int[] rows;
        private final List<String> groups;

        private Draw(int[] rows, List<String> groups) {
            this.rows = rows;
            this.groups = groups;
        }

        public int[] rows() {
            return rows.clone();
        }

        public List<String> groups() {
            return groups;
        }
    }

    private final List<String> labels;
    private final List<int[]> blocks;
    private final long seed;

    private GroupBootstrap(List<String> labels, List<int[]> blocks, long seed) {
        this.labels = labels;
        this.blocks = blocks;
        this.seed = seed;
    }

    /**
     * Returns the resampling of the given groups.
     *
     * @param groups group of each row; rows with an empty label are never drawn
     * @throws CannotFitException if there is no group
     */
    public static GroupBootstrap of(List<String> groups, long seed) {
        // By label, so that a draw takes the same groups however the rows come.
        Map<String, List<Integer>> found = new TreeMap<>();
        for (int i = 0; i < groups.size(); i++) {
            if (!groups.get(i).isEmpty()) {
                found.computeIfAbsent(groups.get(i), label -> new ArrayList<>()).add(i);
            }
        }
        if (found.isEmpty()) {
            throw new CannotFitException("Resampling needs at least one row with a group, but there is none.");
        }
        return new GroupBootstrap(
                List.copyOf(found.keySet()),
                found.values().stream()
                        .map(rows -> rows.stream().mapToInt(Integer::intValue).toArray())
                        .toList(),
                seed);
    }

    /** Returns one draw of as many groups as there are; the same number gives the same draw always. */
    public Draw draw(int number) {
        SplittableRandom random =
                new SplittableRandom(new SplittableRandom(seed + 0x632BE59BD9B4E019L * number).nextLong());
        List<Integer> rows = new ArrayList<>();
        List<String> groups = new ArrayList<>();
        int[] times = new int[blocks.size()];
        for (int k = 0; k < blocks.size(); k++) {
            int chosen = random.nextInt(blocks.size());
            times[chosen]++;
            String label = times[chosen] == 1 ? labels.get(chosen) : labels.get(chosen) + " (" + times[chosen] + ")";
            for (int row : blocks.get(chosen)) {
                rows.add(row);
                groups.add(label);
            }
        }
        return new Draw(rows.stream().mapToInt(Integer::intValue).toArray(), List.copyOf(groups));
    }

    /**
     * Returns the percentile interval of a statistic; draws in which it cannot be had (NaN) are left out.
     *
     * @param repeats number of draws
     * @param level as in 0.90
     */
    public Interval interval(int repeats, double level, ToDoubleFunction<Draw> statistic) {
        Checks.share("The level of an interval", level);
        double[] values = new double[repeats];
        try (Progress progress = Progress.of(repeats, "resampling")) {
            for (int i = 0; i < repeats; i++) {
                values[i] = statistic.applyAsDouble(draw(i));
                progress.step();
            }
        }
        return new Interval(Robust.quantile(values, 0.5 - level / 2), Robust.quantile(values, 0.5 + level / 2), level);
    }

    public int groupCount() {
        return blocks.size();
    }

    public long seed() {
        return seed;
    }

    @Override
    public String toString() {
        return "resampling of " + blocks.size() + " whole groups, seed " + seed;
    }
}
