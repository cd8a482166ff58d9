package parchment.trial.sealed;

import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.Report;
import parchment.logbook.Problems;
import parchment.sheet.Words;
import parchment.trial.TrialAnswer;

/** Shows the answer of a trial with the look that was taken for it, what was stated beforehand, and each cell that differs from the draw. */
public final class AnsweredTrial implements Showable {
    private final TrialPlan plan;
    private final TrialAnswer answer;
    private final Problems problems;
    private final int look;

    public AnsweredTrial(TrialPlan plan, TrialAnswer answer, Problems problems, int look) {
        this.plan = plan;
        this.answer = answer;
        this.problems = problems;
        this.look = look;
    }

    /** Returns the answer by the trial's own rules. */
    public TrialAnswer answer() {
        return answer;
    }

    /** Returns the cells of batches.csv that say otherwise than the sealed draw. */
    public Problems problems() {
        return problems;
    }

    /** Returns which look it was, from 1. */
    public int look() {
        return look;
    }

    /** Returns what is said before the page: the answer, the look, and how many cells differ. */
    public String firstWords() {
        return answer.inShort().text() + "\n" + looked() + "\n" + differing();
    }

    private String looked() {
        int planned = plan.terms().looks();
        return "This is look " + look + " of " + planned + " planned"
                + (look > planned ? ": one more than was stated beforehand." : ".")
                + " It was written into the trial's record before it was shown.";
    }

    private String differing() {
        return problems.size() == 0
                ? "Every cell of the logbook is as was drawn and listed."
                : Words.count(problems.size(), "cell of the logbook differs", "cells of the logbook differ")
                        + " from what was drawn or listed. The sealed draw rules.";
    }

    private Report report() {
        Report cells = Report.titled("Cells that were held against the draw").say(differing());
        cells = problems.size() == 0 ? cells : cells.add(problems);
        Report stated = Report.titled("The plan as it was sealed");
        for (String line : plan.text().lines().skip(1).toList()) {
            stated = stated.say(line);
        }
        return answer.page().say(looked()).say(differing()).fold(cells).fold(stated);
    }

    @Override
    public String text() {
        return report().text();
    }

    @Override
    public Optional<String> html() {
        return report().html();
    }

    @Override
    public String toString() {
        return answer + ". " + looked();
    }
}
