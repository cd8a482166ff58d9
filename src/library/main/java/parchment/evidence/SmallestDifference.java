package parchment.evidence;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import parchment.evidence.finding.Wording;
import parchment.logbook.Logbook;
import parchment.logbook.contents.AssumedScale;

/**
 * Fixes, before the scores are looked at, the smallest difference of a score that matters to the roaster.
 *
 * <p>As stated in the settings; otherwise half a point of a ten-point scale, and in proportion on other scales: a twentieth of the
 * attribute's scale in {@code logbook.properties}. Where no scale is written the smallest of 0 to 10, 0 to 20 and 0 to 100 that holds at
 * least 95 in 100 scores of the logbook is assumed, and that is said, with how many lie above it: a slip of the pen makes no scale. Where no score
 * lies above 5 the scale may be one of four or five steps, of which half a point would be much, so 0 to 5 is assumed: the stricter of the two,
 * under which fewer differences are called too small to matter. It never depends on how well the cuppers repeat themselves: a panel that scatters
 * more earns no easier "nothing seen". Repeatability says only whether such a difference can be seen.
 *
 * @param points above 0
 * @param source where it comes from, in words
 */
record SmallestDifference(double points, String source) {
    /** Half a point of ten. */
    static final double SHARE_OF_SCALE = 0.05;

    private static final double TEN = 10;

    /** Scores that never pass it may be of a scale that ends there; common practice, no source. */
    private static final double FIVE = 5;

    static SmallestDifference of(String attribute, Logbook logbook, EvidenceSettings settings) {
        if (settings.smallestDifference().isPresent()) {
            return new SmallestDifference(settings.smallestDifference().getAsDouble(), "stated beforehand");
        }
        Optional<Logbook.Scale> written =
                Optional.ofNullable(logbook.contents().scales().get(attribute));
        if (written.isPresent() && written.get().high() > written.get().low()) {
            double width = written.get().high() - written.get().low();
            return new SmallestDifference(
                    SHARE_OF_SCALE * width,
                    String.format(
                            Locale.ROOT,
                            "a twentieth of the scale of %s, %s to %s; state another beforehand if it matters more or less to you",
                            attribute,
                            number(written.get().low()),
                            number(written.get().high())));
        }
        // All scores of the logbook, whatever a filter left out: the margin is fixed beforehand and is the same for
        // every question.
        double[] scores = logbook.whole().cups().stream()
                .mapToDouble(cup -> cup.score(attribute))
                .filter(score -> !Double.isNaN(score))
                .toArray();
        AssumedScale scale = AssumedScale.of(scores);
        double top = scale.top();
        double highest = Arrays.stream(scores).max().orElse(TEN);
        if (highest <= FIVE) {
            return new SmallestDifference(
                    SHARE_OF_SCALE * FIVE,
                    "a twentieth of a scale from 0 to 5, which is assumed as none is written and no score lies above "
                            + number(highest) + "; write scale." + setting(attribute) + " into logbook.properties");
        }
        String slips = scale.above() == 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        "; %s of %d %s above it, which looks like a slip of the pen",
                        Wording.count(scale.above(), "score", "scores"),
                        scale.scores(),
                        scale.above() == 1 ? "lies" : "lie");
        return new SmallestDifference(
                SHARE_OF_SCALE * top,
                top == TEN
                        ? "half a point of a ten-point scale, which is assumed as none is written" + slips
                        : "a twentieth of a scale from 0 to " + number(top)
                                + ", which is assumed as none is written" + slips + "; write scale."
                                + setting(attribute)
                                + " into logbook.properties");
    }

    /** The key of a setting has no blanks. */
    private static String setting(String attribute) {
        return attribute.replace(' ', '-');
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Wording.plain(value, 0) : Wording.plain(value, 1);
    }
}
