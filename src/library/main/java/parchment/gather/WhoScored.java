package parchment.gather;

import java.util.List;

/** Asks once who scored the cups of a sheet that names nobody; until it is answered they are the panel's. */
final class WhoScored {
    /** How the line of a sheet begins in which nobody is named. */
    static final String OPEN = "Who scored?";

    private WhoScored() {}

    /** Returns the sheet with the cupper that was answered. */
    static ScoreSheet of(ScoreSheet sheet, String letter, GatherQuestions questions) {
        boolean nobody = !sheet.cups().isEmpty()
                && sheet.cups().stream().allMatch(cup -> cup.cupper().isEmpty());
        if (!nobody) {
            return sheet;
        }
        int cups = sheet.cups().size();
        String answer = questions.askOf(
                "sheet." + letter + ".cupper",
                "Who scored the " + (cups == 1 ? "cup" : cups + " cups") + " of "
                        + TablePlace.of(sheet.table()).shown()
                        + "? Nobody is named there. Answer with the cupper's name; "
                        + CuppingsWriter.PANEL + " stands for several, or for means over them.",
                CuppingsWriter.PANEL,
                text -> !text.isBlank(),
                "the name of the cupper, or " + CuppingsWriter.PANEL,
                new GatherQuestions.Decides(cups, "cup", "cups"));
        List<String> open =
                sheet.open().stream().filter(line -> !line.startsWith(OPEN)).toList();
        return (answer.equals(CuppingsWriter.PANEL) ? sheet : sheet.by(answer)).leaving(open);
    }
}
