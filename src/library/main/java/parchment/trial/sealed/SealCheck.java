package parchment.trial.sealed;

import java.util.List;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.Report;
import parchment.sheet.Words;

/** Says whether a trial's folder is as it was sealed and as it was written since, and how anybody can see that without us. */
public final class SealCheck implements Showable {
    private final String seal;
    private final List<String> findings;
    private final List<String> notes;
    private final int opened;
    private final int sealed;

    public SealCheck(String seal, List<String> findings, List<String> notes, int opened, int sealed) {
        this.seal = seal;
        this.findings = List.copyOf(findings);
        this.notes = List.copyOf(notes);
        this.opened = opened;
        this.sealed = sealed;
    }

    /** Says what a seal was found to be. */
    public enum Outcome {
        /** Everything is as it was sealed and written. */
        WHOLE,
        /** Something was changed. */
        BROKEN
    }

    /** Returns what was found. */
    public Outcome outcome() {
        return findings.isEmpty() ? Outcome.WHOLE : Outcome.BROKEN;
    }

    /** Returns what is not as it was, a sentence each; empty if everything is. */
    public List<String> findings() {
        return findings;
    }

    private String first() {
        return outcome() == Outcome.WHOLE
                ? "The seal is whole: plan, " + opened + " of " + Words.count(sealed, "line", "lines")
                        + " opened and the record are as they were sealed and written."
                : "The seal is broken: " + Words.count(findings.size(), "place is", "places are") + " not as "
                        + (findings.size() == 1 ? "it was." : "they were.");
    }

    private static final String BY_HAND =
            "By hand, in the folder: 'sha256sum seal.txt' prints the seal; 'sha256sum plan.txt' prints line 2 of seal.txt;"
                    + " the text of an opened line, from 'parchment-draw-1' on and without the end of the line, gives its own line of seal.txt,"
                    + " as in: printf '%s' 'parchment-draw-1|...' | sha256sum";

    private static final String MEANS =
            "A seal proves that nothing was changed since its digits were given to somebody else. It does not prove"
                    + " that nobody peeked, and a file's date proves nothing.";

    @Override
    public String text() {
        StringBuilder text = new StringBuilder(first());
        findings.forEach(each -> text.append('\n').append(each));
        notes.forEach(each -> text.append('\n').append(each));
        return text.append("\nSeal: ")
                .append(Seal.inFours(seal))
                .append('\n')
                .append(BY_HAND)
                .append('\n')
                .append(MEANS)
                .toString();
    }

    @Override
    public Optional<String> html() {
        Report report = Report.titled("The seal").say(first());
        for (String each : findings) {
            report = report.caution(each);
        }
        for (String each : notes) {
            report = report.say(each);
        }
        return report.say("Seal: " + Seal.inFours(seal)).say(BY_HAND).say(MEANS).html();
    }

    @Override
    public String toString() {
        return first();
    }
}
