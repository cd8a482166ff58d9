package parchment.trial.sealed;

import java.util.List;
import java.util.stream.Collectors;
import parchment.display.Html;

/** Lays out what is printed and taken to the machine: boxes with a border, one beside nothing else, never broken across pages. */
final class SheetHtml {
    private static final String BOX =
            "border:1px solid currentColor;padding:.6em .8em;margin:0 0 1em;break-inside:avoid;max-width:46em";

    private static final String CELL =
            "border:1px solid currentColor;padding:.35em .5em;text-align:left;vertical-align:top";

    private SheetHtml() {}

    static String box(String title, String inside) {
        return "<section style=\"" + BOX + "\"><h4 style=\"margin:0 0 .4em\">" + Html.escape(title) + "</h4>\n" + inside
                + "</section>\n";
    }

    static String paragraph(String words) {
        return "<p style=\"margin:.3em 0\">" + Html.escape(words) + "</p>\n";
    }

    static String warning(String words) {
        return "<p role=\"note\" style=\"margin:.4em 0;border-left:4px solid currentColor;padding-left:.7em\">"
                + Html.escape(words) + "</p>\n";
    }

    /** A line of small print that may break anywhere, as 64 digits must. */
    static String digits(String words) {
        return "<p style=\"margin:.3em 0;font-family:monospace;font-size:.8em;overflow-wrap:anywhere\">"
                + Html.escape(words) + "</p>\n";
    }

    /** Where the paper is folded. */
    static String fold(String words) {
        return "<p style=\"margin:.6em 0;border-top:1px dashed currentColor;font-size:.85em\">" + Html.escape(words)
                + "</p>\n";
    }

    /** Two columns: what is asked, and what is known of it or room to write. */
    static String form(List<List<String>> rows) {
        return "<table style=\"border-collapse:collapse;width:100%\"><tbody>"
                + rows.stream()
                        .map(row -> "<tr><th scope=\"row\" style=\"" + CELL + ";width:40%;font-weight:normal\">"
                                + Html.escape(row.get(0)) + "</th><td style=\"" + CELL + "\">" + Html.escape(row.get(1))
                                + "</td></tr>")
                        .collect(Collectors.joining("\n"))
                + "</tbody></table>\n";
    }
}
