package parchment.evidence.finding;

import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;

/**
 * Holds what a finished trial tells, to stand on the page of an answer apart from every other look at the scores.
 *
 * @param trial the trial's name
 * @param effect what the control did, per natural step, as assigned
 * @param verdict by the trial's own rules
 * @param verdictWords the verdict with the difference that was stated, as in "did nothing larger than 0.50 points"
 * @param inShort the trial's answer in three sentences
 * @param seal the seal of the trial's plan and draw
 */
public record FinishedTrial(
        String trial, Effect effect, TrialVerdict verdict, String verdictWords, InShort inShort, String seal)
        implements Showable {

    /** Says whether it asks the question of an answer. */
    public boolean asks(String attribute, String feature) {
        return effect.attribute().equals(attribute) && effect.feature().equals(feature);
    }

    /** Adds the trial to a page, in the words that it has on its own page. */
    public Report onto(Report page) {
        return page.heading("What was drawn by chance: trial " + trial)
                .add(inShort)
                .say("Verdict of the trial: " + verdictWords + ". " + effect + " Seal: " + seal + ".")
                .heading("What all batches tell");
    }

    @Override
    public Optional<String> html() {
        return inShort.html();
    }

    @Override
    public String toString() {
        return "Trial " + trial + ": " + verdictWords + ". " + effect + " Seal: " + seal + ".";
    }
}
