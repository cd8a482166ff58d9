package parchment.phase.found;

import java.util.Locale;
import parchment.display.Showable;
import parchment.phase.KnownMoments;
import parchment.phase.MomentDetector;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;

/**
 * One notable moment of a batch: what, when, how large, and how unusual among the batches it can be compared with.
 *
 * @param batch the batch's name
 * @param detector what was measured
 * @param seconds when, since charge
 * @param size how large, in the detector's unit
 * @param usual the usual size among the batches compared with
 * @param apart how many robust standard deviations it lies from the usual, with its sign; NaN where too few batches can tell
 * @param rank its place among the compared batches from the most notable side, from 1
 * @param compared how many batches were compared, this one included
 * @param crowd whom it was compared with, such as "batches of this lot"
 * @param reader the scale temperatures are shown on
 */
public record Moment(
        String batch,
        MomentDetector detector,
        double seconds,
        double size,
        double usual,
        double apart,
        int rank,
        int compared,
        String crowd,
        TemperatureUnit reader)
        implements Showable {

    /** Returns when it was, since charge. */
    public Elapsed at() {
        return Elapsed.seconds(seconds);
    }

    /** Returns how unusual it is, in words: "the largest of 23 batches of this lot". */
    public String unusual() {
        if (Double.isNaN(apart)) {
            return String.format(Locale.ROOT, "how unusual cannot be told among %d %s", compared, crowd);
        }
        String side = apart >= 0 ? "largest" : "smallest";
        String place = rank == 1 ? "the " + side : "the " + ordinal(rank) + " " + side;
        return String.format(Locale.ROOT, "%s of %d %s", place, compared, crowd);
    }

    public String shownSize() {
        return KnownMoments.sized(detector, size, reader);
    }

    public String shownUsual() {
        return KnownMoments.sized(detector, usual, reader);
    }

    /** Returns how unusual it is as a sentence. */
    public String inWords() {
        return Double.isNaN(apart)
                ? "How unusual that is cannot be told from " + compared + " " + crowd + "."
                : "It is " + unusual() + ".";
    }

    private static String ordinal(int n) {
        int last = n % 100;
        String ending = last >= 11 && last <= 13
                ? "th"
                : switch (n % 10) {
                    case 1 -> "st";
                    case 2 -> "nd";
                    case 3 -> "rd";
                    default -> "th";
                };
        return n + ending;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "Batch %s at %s: %s, %s where %s is usual; %s.",
                batch,
                at(),
                detector.name(),
                shownSize(),
                shownUsual(),
                unusual());
    }
}
