package parchment.drift.found;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;

/**
 * How a batch was scored beside its lot's others, each cupper held against the same cupper's other scores.
 *
 * <pre>{@code
 * CupsBeside.of(logbook.batches().get(0), logbook)
 * }</pre>
 *
 * @param attribute what was scored
 * @param scores how many scores of the batch could be held against others; 0 if none could
 * @param mean their mean difference, in points; NaN if it cannot be told
 * @param error by how much such a mean differs anyhow, as a standard error in points; NaN if it cannot be told
 */
public record CupsBeside(String attribute, int scores, double mean, double error) {
    /** Fewest scores of the lot's others from which it is told how far scores differ anyhow; common practice, no source. */
    public static final int ENOUGH = 8;

    /** The 90 % point of the normal distribution, to one side 95 %. */
    public static final double APART = 1.645;

    /** Holds the scores of a batch, by the first attribute that tells good from bad, against those of its lot's others. */
    public static CupsBeside of(Batch batch, Logbook logbook) {
        String attribute = logbook.scored("overall", "liking", "sweetness");
        List<CupScores> others = others(batch, logbook);
        List<Double> differences = new ArrayList<>();
        for (CupScores cup : logbook.cups()) {
            double off = cup.score(attribute) - cuppersMean(others, cup.cupper(), attribute);
            if (cup.batch().equals(batch.name()) && Double.isFinite(off)) {
                differences.add(off);
            }
        }
        double spread = spread(others, attribute);
        if (differences.isEmpty() || !Double.isFinite(spread)) {
            return new CupsBeside(attribute, 0, Double.NaN, Double.NaN);
        }
        double mean = differences.stream().mapToDouble(d -> d).average().orElse(Double.NaN);
        // Its own scores may lie farther apart than those of the others do; a mean of them is no surer than they are.
        double apart = differences.size() < 2 ? 0 : apart(differences, mean);
        return new CupsBeside(
                attribute, differences.size(), mean, Math.max(spread, apart) / Math.sqrt(differences.size()));
    }

    /** Returns the standard deviation of some differences about their mean. */
    private static double apart(List<Double> differences, double mean) {
        double squares = differences.stream()
                .mapToDouble(off -> (off - mean) * (off - mean))
                .sum();
        return Math.sqrt(squares / (differences.size() - 1));
    }

    /** Returns the scores of the lot's other batches. */
    public static List<CupScores> others(Batch batch, Logbook logbook) {
        Set<String> lot = logbook.batches().stream()
                .filter(b -> b.lot().isPresent() && b.lot().equals(batch.lot()))
                .map(Batch::name)
                .filter(name -> !name.equals(batch.name()))
                .collect(Collectors.toSet());
        return logbook.cups().stream().filter(cup -> lot.contains(cup.batch())).toList();
    }

    /** Returns a cupper's mean of some scores; NaN if there is none. */
    public static double cuppersMean(List<CupScores> cups, String cupper, String attribute) {
        return cups.stream()
                .filter(cup -> cup.cupper().equals(cupper))
                .mapToDouble(cup -> cup.score(attribute))
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    /** Returns the standard deviation of the lot's other scores about their cuppers' means; NaN if there are too few. */
    private static double spread(List<CupScores> others, String attribute) {
        double squares = 0;
        int scores = 0;
        Set<String> cuppers = new HashSet<>();
        for (CupScores cup : others) {
            double off = cup.score(attribute) - cuppersMean(others, cup.cupper(), attribute);
            if (Double.isFinite(off)) {
                squares += off * off;
                scores++;
                cuppers.add(cup.cupper());
            }
        }
        return scores < ENOUGH || scores <= cuppers.size()
                ? Double.NaN
                : Math.sqrt(squares / (scores - cuppers.size()));
    }

    /** Tells whether it can be told how the batch was scored beside the others. */
    public boolean isKnown() {
        return scores > 0;
    }

    /** Tells whether the difference is more than cups differ by as a rule. */
    public boolean isClear() {
        return isKnown() && Math.abs(mean) > APART * error;
    }

    /** Says the difference, as in "its liking was 1.8 points below its lot's others by the same cuppers (1 score, give or take 1.1)"; empty if unknown. */
    public Optional<String> words() {
        if (!isKnown()) {
            return Optional.empty();
        }
        String size = String.format(Locale.ROOT, "%.1f points", Math.abs(mean));
        return Optional.of("its " + attribute + " was "
                + (size.equals("0.0 points")
                        ? "that of its lot's others"
                        : size + (mean > 0 ? " above" : " below") + " its lot's others")
                + " by the same cuppers (" + (scores == 1 ? "1 score" : scores + " scores")
                + String.format(Locale.ROOT, ", give or take %.1f)", Math.max(0.1, error)));
    }
}
