package parchment.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.evidence.finding.Slope;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;
import parchment.stats.linear.CannotFitException;

/**
 * Looks at an attribute relative to the rest of its cup: its score less the mean of all attributes in that row.
 *
 * <p>A second view, never the answer: what lifts the whole cup, halo or roast, is gone from it. Nothing is regressed on other scores,
 * which would make a slope where there is none.
 */
final class GeneralLevel {
    private GeneralLevel() {}

    /** Returns the slope of the attribute relative to its row; missing if no other attribute is scored or too little is left. */
    static Slope slope(String attribute, Measure measure, Logbook logbook) {
        if (logbook.attributes().size() < 2) {
            return Slope.MISSING;
        }
        List<CupScores> relative =
                logbook.cups().stream().map(cup -> relative(cup, attribute)).toList();
        LogbookContents all = logbook.contents();
        Logbook changed = Logbook.of(all.toBuilder().cups(relative).build());
        ModelFrame material = ModelFrames.of(attribute, changed, measure.readings());
        if (!Analysis.whyNot(material).isEmpty()) {
            return Slope.MISSING;
        }
        try {
            return FittedScores.of(material, ModelForm.STANDARD).slope();
        } catch (CannotFitException tooFew) {
            return Slope.MISSING;
        }
    }

    private static CupScores relative(CupScores cup, String attribute) {
        double[] known = cup.scores().values().stream()
                .mapToDouble(Double::doubleValue)
                .filter(score -> !Double.isNaN(score))
                .toArray();
        double sum = 0;
        for (double score : known) {
            sum += score;
        }
        Map<String, Double> scores = new LinkedHashMap<>();
        double own = cup.score(attribute);
        scores.put(attribute, known.length < 2 ? Double.NaN : own - sum / known.length);
        return cup.withScores(scores);
    }
}
