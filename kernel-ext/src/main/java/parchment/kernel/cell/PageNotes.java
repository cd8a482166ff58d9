package parchment.kernel.cell;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.display.Html;
import parchment.kernel.page.Shown;

/**
 * Keeps the sentences that hold for the whole page because of what the running cell opened, such as that a logbook was invented. Safe for
 * threads.
 */
final class PageNotes {
    private final Set<String> told = new LinkedHashSet<>();

    /** Begins a cell: the next notes are about what it opens. */
    synchronized void beginCell() {
        told.clear();
    }

    synchronized void add(String sentence) {
        told.add(sentence);
    }

    /** Returns the running cell's sentences, each as it is shown. */
    synchronized List<Shown> shown() {
        return told.stream().map(PageNotes::shown).toList();
    }

    private static Shown shown(String sentence) {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(Shown.TEXT, sentence);
        forms.put(
                Shown.HTML,
                "<p role=\"note\" style=\"max-width:50em;border-left:4px solid currentColor;padding-left:.7em\">"
                        + Html.escape(sentence) + "</p>");
        return new Shown(forms);
    }
}
