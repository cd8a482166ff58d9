package parchment.evidence;

import java.util.List;
import parchment.evidence.finding.Wording;
import parchment.feature.Features;

/**
 * Parts what moved along with a feature by its nature from what may be behind the scores in its place.
 *
 * @param measure the feature asked about
 * @param companions what moved along closely, the closest first, without what is tied to it by arithmetic
 */
record PartOfIt(Measure measure, List<CollinearFeatures.Companion> companions) {
    private static final int MOST_NAMED = 2;

    PartOfIt {
        companions = companions.stream()
                .filter(companion -> companion.tie().isEmpty())
                .toList();
    }

    private boolean byNature(CollinearFeatures.Companion companion) {
        return Features.isSettledAtDrop(measure.name()) && Features.isSettledAtDrop(companion.name());
    }

    /** Names those that do not move along by nature. */
    List<String> others() {
        return companions.stream()
                .filter(companion -> !byNature(companion))
                .limit(MOST_NAMED)
                .map(companion -> Wording.spoken(companion.name()))
                .toList();
    }

    /** Says what a roast with more of the feature is by nature; empty if nothing of the kind moved along. */
    String words() {
        List<String> parts = companions.stream()
                .filter(this::byNature)
                .limit(MOST_NAMED)
                .map(companion -> "a " + more(companion.name(), companion.correlation() > 0) + " " + companion.name())
                .toList();
        return parts.isEmpty()
                ? ""
                : "A " + more(measure.name(), true) + " " + measure.name() + " also means " + Wording.list(parts)
                        + ": scores cannot tell the " + (parts.size() == 1 ? "two" : "three") + " apart.";
    }

    private static String more(String name, boolean up) {
        return name.endsWith(" time") ? up ? "longer" : "shorter" : up ? "higher" : "lower";
    }
}
