package parchment.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import parchment.evidence.Evidence;
import parchment.evidence.finding.Verdict;
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

    private static final List<Feature> FEATURES = List.of(Features.dropTemperature(), Features.developmentTime());

    private Unsettled() {}

    /**
     * One question that was asked.
     *
     * @param about what it is about, as in "sweetness and drop temperature"
     * @param verdict the answer
     * @param words what was found and what would tell
     */
    record Asked(String about, Verdict verdict, String words) {
        static Asked of(String attribute, Feature feature, Logbook logbook) {
            Evidence evidence = Evidence.of(attribute, feature, logbook);
            return new Asked(
                    attribute + " and " + feature.name(),
                    evidence.verdict(),
                    evidence.inShort().found() + " " + evidence.inShort().next());
        }

        boolean unsettled() {
            return verdict == Verdict.CANNOT_TELL;
        }
    }

    static Overview.Section of(Logbook logbook) {
        return told(ask(logbook.attributes(), (attribute, feature) -> Asked.of(attribute, feature, logbook)));
    }

    /** Asks both questions of one attribute after the other, until enough is unsettled or enough was asked. */
    static List<Asked> ask(Set<String> attributes, BiFunction<String, Feature, Asked> question) {
        List<Asked> asked = new ArrayList<>();
        for (String attribute : attributes) {
            for (Feature feature : FEATURES) {
                if (asked.size() < MOST_ASKED
                        && asked.stream().filter(Asked::unsettled).count() < MOST_TOLD) {
                    asked.add(question.apply(attribute, feature));
                }
            }
        }
        return asked;
    }

    static Overview.Section told(List<Asked> asked) {
        if (asked.isEmpty()) {
            return section(List.of(
                    "Nothing was cupped yet, so nothing can be asked of the scores. Write scores into cuppings.csv,"
                            + " a line for each cup."));
        }
        List<String> open =
                asked.stream().filter(Asked::unsettled).map(Asked::words).toList();
        return section(
                open.isEmpty()
                        ? List.of("Nothing of what was asked. There is an answer to each of these: "
                                + String.join(
                                        ", ", asked.stream().map(Asked::about).toList()) + ".")
                        : open);
    }

    private static Overview.Section section(List<String> sentences) {
        return Overview.Section.of(Overview.Part.UNSETTLED, sentences);
    }
}
