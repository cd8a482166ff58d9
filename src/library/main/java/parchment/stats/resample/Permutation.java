package parchment.stats.resample;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import parchment.display.Showable;

/**
 * A way to shuffle rows that leaves untouched what chance does not shuffle, with its seed.
 *
 * <p>An order names, for each row (from 0), the row whose features it gets. All features of a row move together, so their links
 * among themselves stay; responses never move.
 */
public final class Permutation implements Showable {
    private final List<int[]> blocks;
    private final int rows;
    private final long seed;
    private final boolean whole;

    private Permutation(List<int[]> blocks, int rows, long seed, boolean whole) {
        this.blocks = blocks;
        this.rows = rows;
        this.seed = seed;
        this.whole = whole;
    }

    /** Shuffles rows only among rows of the same block (a lot on a day); rows with an empty label stay where they are. */
    public static Permutation withinBlocks(List<String> blocks, long seed) {
        return new Permutation(split(blocks), blocks.size(), seed, false);
    }

    /**
     * Shuffles whole blocks (days): their order changes, rows keep their order within a block, and the rows are laid end to end again.
     * Where all blocks are of one size this moves blocks as they are; otherwise a block may straddle two. Rows with an empty label
     * stay where they are.
     */
    public static Permutation ofWholeBlocks(List<String> blocks, long seed) {
        return new Permutation(split(blocks), blocks.size(), seed, true);
    }

    private static List<int[]> split(List<String> labels) {
        Map<String, List<Integer>> found = new LinkedHashMap<>();
        for (int i = 0; i < labels.size(); i++) {
            if (!labels.get(i).isEmpty()) {
                found.computeIfAbsent(labels.get(i), label -> new ArrayList<>()).add(i);
            }
        }
        return found.values().stream()
                .map(rows -> rows.stream().mapToInt(Integer::intValue).toArray())
                .toList();
    }

    /** Returns the number of blocks in which there is something to shuffle (for whole blocks: the number of blocks). */
    public int sets() {
        return whole
                ? blocks.size()
                : (int) blocks.stream().filter(block -> block.length > 1).count();
    }

    /** Returns the natural logarithm of the number of different orders. */
    public double logOrders() {
        return whole
                ? logFactorial(blocks.size())
                : blocks.stream()
                        .mapToDouble(block -> logFactorial(block.length))
                        .sum();
    }

    private static double logFactorial(int n) {
        return IntStream.rangeClosed(2, n).mapToDouble(Math::log).sum();
    }

    public long seed() {
        return seed;
    }

    public int rows() {
        return rows;
    }

    /** Returns one order; the same number gives the same order always. */
    public int[] order(int number) {
        // Draws of neighbouring numbers must not be alike: the generator mixes its seed before use.
        SplittableRandom random =
                new SplittableRandom(new SplittableRandom(seed + 0x632BE59BD9B4E019L * number).nextLong());
        int[] order = IntStream.range(0, rows).toArray();
        if (whole) {
            int[] shuffled = shuffle(IntStream.range(0, blocks.size()).toArray(), random);
            int[] places = blocks.stream().flatMapToInt(IntStream::of).toArray();
            int at = 0;
            for (int block : shuffled) {
                for (int row : blocks.get(block)) {
                    order[places[at++]] = row;
                }
            }
            return order;
        }
        for (int[] block : blocks) {
            int[] shuffled = shuffle(block.clone(), random);
            for (int i = 0; i < block.length; i++) {
                order[block[i]] = shuffled[i];
            }
        }
        return order;
    }

    private static int[] shuffle(int[] values, SplittableRandom random) {
        for (int i = values.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            int held = values[i];
            values[i] = values[j];
            values[j] = held;
        }
        return values;
    }

    @Override
    public String toString() {
        return whole
                ? "whole blocks shuffled: " + blocks.size() + " blocks, " + rows + " rows, seed " + seed
                : "rows shuffled within blocks: " + sets() + " blocks with two rows or more, " + rows + " rows, seed "
                        + seed;
    }
}
