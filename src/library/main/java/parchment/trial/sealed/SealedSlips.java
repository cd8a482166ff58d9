package parchment.trial.sealed;

import java.util.List;
import java.util.Optional;
import parchment.display.Showable;
import parchment.logbook.contents.Cautions;
import parchment.sheet.Words;

/**
 * Shows a slip for each place of a trial, to cut, fold and seal in an envelope, for a place without a computer: outside set and place, inside the
 * line that was sealed, whose SHA-256 anybody can take later.
 */
public final class SealedSlips implements Showable {
    private static final String MAKER =
            "Let somebody print, fold and seal these who neither roasts nor cups: whoever sees this page can read every"
                    + " target. List and weigh the batches of a set before its first slip is opened, and open each at charge.";

    private final TrialPlan plan;
    private final List<DrawnLine> lines;

    public SealedSlips(TrialPlan plan, List<DrawnLine> lines) {
        this.plan = plan;
        this.lines = List.copyOf(lines);
    }

    private String outside(DrawnLine line) {
        return "Trial " + plan.terms().trial() + ", set " + line.set() + " of " + plan.sets() + ", place "
                + line.place() + " of " + plan.size() + ". Open at charge, not before.";
    }

    private String inside(DrawnLine line) {
        return "Chance drew a " + plan.terms().control().words() + " of " + DrawnTarget.told(plan, line.value()) + ".";
    }

    @Override
    public String text() {
        StringBuilder text = new StringBuilder(plan.isInvented() ? Cautions.INVENTED_MACHINE + "\n" : "")
                .append(this)
                .append('\n')
                .append(MAKER);
        for (DrawnLine line : lines) {
            text.append("\n\n")
                    .append(outside(line))
                    .append("\n- - - fold inwards - - -\n")
                    .append(inside(line))
                    .append('\n')
                    .append(DrawnTarget.ABORT)
                    .append('\n')
                    .append(line.text());
        }
        return text.append("\n\n")
                .append(String.join("\n", Cautions.forAPage()))
                .toString();
    }

    @Override
    public Optional<String> html() {
        StringBuilder html = new StringBuilder(SheetHtml.paragraph(toString())).append(SheetHtml.warning(MAKER));
        if (plan.isInvented()) {
            html.append(SheetHtml.warning(Cautions.INVENTED_MACHINE));
        }
        for (DrawnLine line : lines) {
            html.append(SheetHtml.box(
                    outside(line),
                    SheetHtml.fold("fold here, so that what follows is inside")
                            + SheetHtml.paragraph(inside(line))
                            + SheetHtml.warning(DrawnTarget.ABORT)
                            + SheetHtml.digits(line.text())));
        }
        Cautions.forAPage().forEach(caution -> html.append(SheetHtml.paragraph(caution)));
        return Optional.of(html.toString());
    }

    @Override
    public String toString() {
        return "Trial " + plan.terms().trial() + ": " + Words.count(lines.size(), "slip", "slips")
                + " to cut along the lines, in " + Words.count(plan.sets(), "set", "sets") + ".";
    }
}
