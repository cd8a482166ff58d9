package parchment.stats.resample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import parchment.display.Interruption;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;

/**
 * Deals assigned values out again inside the sets in which chance dealt them, as an experiment that was drawn so could have come out.
 *
 * <p>All ways of dealing are gone through where there are 100,000 or fewer; otherwise 9,999 are drawn with a seed, and the way it was counts
 * as one more. Each of them is as likely as the one that came about, whatever the responses are: this is the whole assumption.
 *
 * <pre>{@code
 * SetShuffle.of(sets, targets, 1).slope(scores).probability()
 * }</pre>
 *
 * @see <a href="https://archive.org/details/in.ernet.dli.2015.502684">Fisher 1935, The Design of Experiments, section 21</a>
 */
public final class SetShuffle implements Showable {
    /** As many ways of dealing as are gone through one by one. */
    static final int MOST_ENUMERATED = 100_000;

    /** How many are drawn where there are more. */
    static final int DRAWN = 9_999;

    private final List<SetArrangements> sets;
    private final int rows;
    private final long seed;

    private SetShuffle(List<SetArrangements> sets, int rows, long seed) {
        this.sets = List.copyOf(sets);
        this.rows = rows;
        this.seed = seed;
    }

    /**
     * Returns the shuffles of a design.
     *
     * @param sets set of each row
     * @param assigned the value that chance dealt to each row
     * @param seed of the shuffles, where not all are gone through
     * @throws CannotFitException if no set has two different values
     * @throws IllegalArgumentException if the lengths differ or an assigned value is missing
     */
    public static SetShuffle of(List<String> sets, double[] assigned, long seed) {
        Checks.sameLength("Shuffling inside sets", sets.size(), "the assigned values", assigned.length);
        complete("the assigned values", assigned);
        Map<String, List<Integer>> found = new LinkedHashMap<>();
        for (int i = 0; i < assigned.length; i++) {
            found.computeIfAbsent(sets.get(i), set -> new ArrayList<>()).add(i);
        }
        List<SetArrangements> kept = found.values().stream()
                .map(rows -> new SetArrangements(
                        rows.stream().mapToInt(Integer::intValue).toArray(), assigned))
                .filter(set -> set.count() > 1)
                .toList();
        if (kept.isEmpty()) {
            throw new CannotFitException(
                    "Shuffling inside sets needs a set with two different values, but in each set all values are the same.");
        }
        return new SetShuffle(kept, assigned.length, seed);
    }

    private static void complete(String what, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException("Shuffling inside sets needs every one of " + what + ", but row "
                        + (i + 1) + " is " + Checks.number(values[i]) + ". Leave the row out first.");
            }
        }
    }

    /** Returns the number of sets in which there is something to shuffle. */
    public int sets() {
        return sets.size();
    }

    /** Returns the number of different ways in which the values could have been dealt; huge numbers are rounded. */
    public double assignments() {
        return sets.stream().mapToDouble(SetArrangements::count).reduce(1, (a, b) -> a * b);
    }

    /** Says whether all ways are gone through. */
    public boolean isComplete() {
        return assignments() <= MOST_ENUMERATED && sets.stream().allMatch(SetArrangements::isListed);
    }

    /** Returns how many ways stand behind a p-value, the one that came about among them. */
    public int counted() {
        return isComplete() ? (int) assignments() : DRAWN + 1;
    }

    /**
     * Returns the smallest two-sided p-value that this design can give, whatever the responses: where each way of dealing has its mirror, no
     * way stands alone.
     */
    public double smallestProbability() {
        boolean mirrored = sets.stream().allMatch(SetArrangements::isSymmetric);
        return isComplete() ? (mirrored ? 2 : 1) / assignments() : 1.0 / (DRAWN + 1);
    }

    /**
     * Returns the slope of responses on the assigned values inside sets, among its shuffles.
     *
     * @throws IllegalArgumentException if the number of rows differs or a response is missing
     */
    public ShuffledSlope slope(double[] response) {
        checked("the responses", response);
        double squares = squares();
        double[] values = assignedAgain();
        double[][] sums = sums(response, values);
        return new ShuffledSlope(sum(response), sums[0], sum(values), sums[1], squares, this);
    }

    /**
     * Returns what the slope of responses on achieved values may be, the assigned ones taken as the only reason why the achieved ones differ: all
     * slopes under which no more is left in the responses than chance deals.
     *
     * @param achieved what each row came out at
     * @param level as in 0.90
     * @throws IllegalArgumentException if the number of rows differs or a value is missing
     * @see <a href="https://doi.org/10.1214/aoms/1177730090">Anderson and Rubin 1949, Ann. Math. Stat. 20:46</a>
     */
    public ShuffledRatio ratio(double[] response, double[] achieved, double level) {
        checked("the responses", response);
        checked("the achieved values", achieved);
        double[][] sums = sums(response, achieved);
        return ShuffledRatio.of(sum(response), sums[0], sum(achieved), sums[1], isComplete(), level);
    }

    private void checked(String what, double[] values) {
        Checks.sameLength("Shuffling inside sets", rows, what, values.length);
        complete(what, values);
    }

    private double squares() {
        return sets.stream().mapToDouble(SetArrangements::squares).sum();
    }

    private double[] assignedAgain() {
        double[] values = new double[rows];
        sets.forEach(set -> set.writeValues(values));
        return values;
    }

    private double sum(double[] response) {
        return sets.stream().mapToDouble(set -> set.sumAsDealt(response)).sum();
    }

    /** Returns the sum of centred value times response under each shuffle, for each response; the shuffles are the same for all. */
    private double[][] sums(double[]... responses) {
        return isComplete() ? enumerated(responses) : drawn(responses);
    }

    private double[][] enumerated(double[][] responses) {
        double[][] sums = new double[responses.length][];
        for (int k = 0; k < responses.length; k++) {
            double[] so = {0};
            for (SetArrangements set : sets) {
                double[] adds = set.sums(responses[k]);
                double[] longer = new double[so.length * adds.length];
                for (int i = 0; i < longer.length; i++) {
                    longer[i] = so[i / adds.length] + adds[i % adds.length];
                }
                so = longer;
                Interruption.checkHere();
            }
            sums[k] = so;
        }
        return sums;
    }

    private double[][] drawn(double[][] responses) {
        double[][][] adds = new double[sets.size()][][];
        for (int s = 0; s < adds.length; s++) {
            SetArrangements set = sets.get(s);
            adds[s] =
                    set.isListed() ? Arrays.stream(responses).map(set::sums).toArray(double[][]::new) : new double[0][];
        }
        SplittableRandom random = new SplittableRandom(seed);
        double[][] sums = new double[responses.length][DRAWN];
        double[] one = new double[responses.length];
        for (int i = 0; i < DRAWN; i++) {
            Arrays.fill(one, 0);
            for (int s = 0; s < adds.length; s++) {
                if (adds[s].length == 0) {
                    sets.get(s).addDrawn(responses, one, random);
                } else {
                    int way = random.nextInt(adds[s][0].length);
                    for (int k = 0; k < one.length; k++) {
                        one[k] += adds[s][k][way];
                    }
                }
            }
            for (int k = 0; k < one.length; k++) {
                sums[k][i] = one[k];
            }
            Interruption.checkHere();
        }
        return sums;
    }

    /** Says how the shuffles were had, as in "all 7,776 ways" or "9,999 of about 2.8e+12 ways, seed 1". */
    public String words() {
        return isComplete()
                ? String.format(Locale.ROOT, "all %,d ways of dealing the values out", (long) assignments())
                : String.format(
                        Locale.ROOT,
                        "%,d drawn ways of dealing the values out, of about %.2g (seed %d)",
                        DRAWN,
                        assignments(),
                        seed);
    }

    @Override
    public String toString() {
        return sets.size() + (sets.size() == 1 ? " set, " : " sets, ") + rows + " rows: " + words();
    }
}
