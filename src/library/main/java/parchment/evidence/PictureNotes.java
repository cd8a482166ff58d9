package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;

/** Explains how the picture of an answer is read. */
final class PictureNotes {
    private PictureNotes() {}

    /**
     * Returns the sentences, the most urgent first.
     *
     * @param judgement where the batches cannot tell, the line is dashed, and what decided it says why
     * @param planned whether the dots stand at the targets that chance set
     * @param level the share of such logbooks in which the band holds the average at one place
     */
    static List<String> of(
            Measure measure,
            ModelFrame material,
            VerdictRules.Judgement judgement,
            Findings.Planned planned,
            double level) {
        List<String> notes = new ArrayList<>();
        if (judgement.verdict() == Verdict.CANNOT_TELL) {
            notes.add("The line is dashed because "
                    + doubt(measure, judgement.decisive().why()) + ".");
        }
        notes.add(String.format(
                Locale.ROOT,
                "At any one place along the axis the true average lies inside the band %.0f times in 100.",
                100 * level));
        notes.add("If many more cups of a batch were tasted, its dot would stay within its bar about 2 times in 3.");
        if (planned == Findings.Planned.BY_CHANCE) {
            notes.add("A dot stands at the " + measure.name()
                    + " that chance planned for the batch, not at what came out.");
        }
        notes.add(
                "The dots are not the raw scores: what lot, roast day, cupper, cupping, rest days, place in the day, green mass and date"
                        + " add to them is subtracted, as far as these batches show it. No batch is removed for that.");
        notes.add(Wording.sentence(material.toString()) + ".");
        return List.copyOf(notes);
    }

    /** Luck is named only where it is in question. */
    private static String doubt(Measure measure, VerdictRules.Why why) {
        return switch (why) {
            case MOVED_WITH_ANOTHER, FOLLOWS_A_FACT ->
                "what it shows may come from something that moved along with the " + measure.name();
            case NEXT_DAY_GOES_WITH_IT_TOO -> "what it shows may come from something that changes with the date";
            case OPEN, NOT_RARE_ENOUGH -> "what it shows may be luck";
            case HARDLY_VARIED -> "the " + measure.name() + " hardly varied";
            case MOSTLY_ERROR -> "most of the spread along it is error of reading";
            default -> "these batches cannot tell";
        };
    }
}
