package parchment.trial;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.stats.Fieller;
import parchment.stats.Interval;
import parchment.trial.sealed.TrialTerms;

/** Counts over drawn trials of one condition what was found, and how often each interval held the truth. */
final class TrialTally {
    /** What is counted, in the order of the file. */
    enum Count {
        TRIALS,
        COMPARED,
        FOUND,
        HELD,
        BY_T,
        READ,
        ACHIEVED_HELD,
        NOT_BOUNDED,
        TWIN,
        TWIN_HELD,
        BOUNDED,
        BOUNDS_HELD
    }

    private final long[] counts = new long[Count.values().length];
    private double widths;
    private double boundWidths;

    /** Which of the dearer parts are worked out. */
    enum Part {
        ACHIEVED,
        TWIN,
        BOUNDS
    }

    static TrialTally of(TrialDraws.Cell cell, long first, int trials, List<Part> parts) {
        TrialTally tally = new TrialTally();
        for (long seed = first; seed < first + trials; seed++) {
            tally.add(cell, seed, parts);
        }
        return tally;
    }

    private void count(Count what, boolean yes) {
        counts[what.ordinal()] += yes ? 1 : 0;
    }

    private void add(TrialDraws.Cell cell, long seed, List<Part> parts) {
        TrialTerms terms = cell.terms();
        List<AssignedBatch> batches = cell.draw(seed);
        count(Count.TRIALS, true);
        Optional<AsAssigned> assigned = AsAssigned.of(batches, terms.span(), 0.9);
        if (assigned.isEmpty()) {
            return;
        }
        AsAssigned found = assigned.get();
        double truth = (cell.slope * cell.followed) * terms.span();
        Interval interval = found.interval();
        count(Count.COMPARED, true);
        count(Count.FOUND, found.chance() <= 0.05 + 1e-12);
        count(Count.HELD, interval.contains(truth));
        count(Count.BY_T, found.line().slope("slope", found.means()).probability() <= 0.05);
        widths += Double.isFinite(interval.width()) ? interval.width() / terms.span() : 0;
        if (parts.contains(Part.ACHIEVED)) {
            AsAchieved.of(found, terms.span(), 0.9).ifPresent(achieved -> {
                count(Count.READ, true);
                count(Count.ACHIEVED_HELD, achieved.set().contains(cell.slope));
                count(Count.NOT_BOUNDED, achieved.set().form() != Fieller.Form.BETWEEN);
                if (parts.contains(Part.TWIN)) {
                    count(Count.TWIN, true);
                    count(Count.TWIN_HELD, achieved.twin().contains(cell.slope));
                }
            });
        }
        if (parts.contains(Part.BOUNDS)) {
            MissingScores.of(terms, batches, 0.9).bounds().ifPresent(bounds -> {
                count(Count.BOUNDED, true);
                count(Count.BOUNDS_HELD, bounds.interval().contains(truth));
                boundWidths += bounds.interval().width() / terms.span();
            });
        }
    }

    long of(Count what) {
        return counts[what.ordinal()];
    }

    double share(Count what, Count among) {
        return (double) of(what) / of(among);
    }

    double found() {
        return share(Count.FOUND, Count.COMPARED);
    }

    double held() {
        return share(Count.HELD, Count.COMPARED);
    }

    double width() {
        return widths / of(Count.COMPARED);
    }

    double boundWidth() {
        return boundWidths / of(Count.BOUNDED);
    }

    /** The counts as one line of a file; lines of one condition add up. */
    String line() {
        List<String> words = new ArrayList<>();
        Arrays.stream(counts).forEach(count -> words.add(Long.toString(count)));
        words.add(Double.toString(widths));
        words.add(Double.toString(boundWidths));
        return String.join(",", words);
    }

    /** Adds a line of a file. */
    TrialTally plus(String line) {
        TrialTally sum = new TrialTally();
        String[] words = line.split(",");
        for (int i = 0; i < counts.length; i++) {
            sum.counts[i] = counts[i] + Long.parseLong(words[i]);
        }
        sum.widths = widths + Double.parseDouble(words[counts.length]);
        sum.boundWidths = boundWidths + Double.parseDouble(words[counts.length + 1]);
        return sum;
    }
}
