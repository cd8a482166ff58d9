package parchment.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import parchment.evidence.Evidence;
import parchment.evidence.Verdict;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;

/**
 * Puts a few questions to the scores and tells those to which the answer is "cannot tell", with what would tell.
 *
 * <p>The questions are the two that a roaster asks of every score, how hot to drop and how long to develop. They are bounded by their number and not by
 * a clock, so that the same logbook always gets the same answer.
 */
final class Unsettled {
    /** The most questions that are asked; each takes a second or two of a logbook of some hundred batches. */
    static final int MOST_ASKED = 6;

    /** The most that are told. */
    static final int MOST_TOLD = 3;

    private Unsettled() {}

    static Overview.Section of(Logbook logbook) {
        Set<String> attributes = logbook.attributes();
        if (attributes.isEmpty()) {
            return section("Nothing was cupped yet, so nothing can be asked of the scores. Write scores into cuppings.csv,"
                    + " a line for each cup.");
        }
        List<String> told = new ArrayList<>();
        List<String> answered = new ArrayList<>();
        int asked = 0;
        for (String attribute : attributes) {
            for (Feature feature : List.of(Features.dropTemperature(), Features.developmentTime())) {
                if (asked == MOST_ASKED || told.size() == MOST_TOLD) {
                    break;
                }
                asked++;
                Evidence evidence = Evidence.of(attribute, feature, logbook);
                if (evidence.verdict() == Verdict.CANNOT_TELL) {
                    told.add(evidence.inShort().found() + " " + evidence.inShort().next());
                } else {
                    answered.add(attribute + " and " + feature.name());
                }
            }
        }
        if (told.isEmpty()) {
            return section("Nothing of the " + asked + " questions that were asked: this logbook has an answer to each ("
                    + String.join(", ", answered) + ").");
        }
        return Overview.Section.of(Overview.Part.UNSETTLED, told);
    }

    private static Overview.Section section(String sentence) {
        return Overview.Section.of(Overview.Part.UNSETTLED, List.of(sentence));
    }
}
