package parchment.evidence;

import java.util.Locale;
import java.util.Optional;
import parchment.logbook.CupScores;
import parchment.logbook.Logbook;

/**
 * Holds the smallest difference of a score that matters to the roaster, fixed before the scores are looked at.
 *
 * <p>As stated in the settings; otherwise half a point of a ten-point scale, and in proportion on other scales: a twentieth of the
 * attribute's scale in {@code logbook.properties}. It never depends on how well the cuppers repeat themselves: a panel that scatters
 * more earns no easier "nothing seen". Repeatability says only whether such a difference can be seen.
 *
 * @param points above 0
 * @param source where it comes from, in words
 */
record SmallestDifference(double points, String source) {
    /** Half a point of ten. */
    private static final double SHARE_OF_SCALE = 0.05;

    private static final double TEN = 10;

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
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (CupScores cup : logbook.cups()) {
            double score = cup.score(attribute);
            if (!Double.isNaN(score)) {
                lowest = Math.min(lowest, score);
                highest = Math.max(highest, score);
            }
        }
        if (highest > TEN) {
            return new SmallestDifference(
                    Math.max(SHARE_OF_SCALE * (highest - lowest), Double.MIN_NORMAL),
                    "a twentieth of the way from the lowest to the highest score given, as no scale is written; write"
                            + " scale." + attribute + " into logbook.properties");
        }
        return new SmallestDifference(
                SHARE_OF_SCALE * TEN, "half a point of a ten-point scale, which is assumed as none is written");
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Wording.plain(value, 0) : Wording.plain(value, 1);
    }
}
