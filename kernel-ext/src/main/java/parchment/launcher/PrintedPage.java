package parchment.launcher;

import java.util.List;
import java.util.stream.Collectors;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.logbook.contents.Cautions;
import parchment.notebook.OurPage;

/** Makes one result a page of its own, to be opened in a browser or printed. */
final class PrintedPage {
    private PrintedPage() {}

    /** Returns the page as HTML that loads nothing, with the cautions at its foot where what is shown does not bring them. */
    static String of(String title, Showable shown) {
        return of(title, List.of(), shown);
    }

    /** Returns the page with sentences above what is shown, which hold for all of it. */
    static String of(String title, List<String> notes, Showable shown) {
        String text = shown.text();
        String cautions = Cautions.forAPage().stream()
                .filter(caution -> !text.contains(caution))
                .map(caution -> "<p>" + Html.escape(caution) + "</p>\n")
                .collect(Collectors.joining());
        String above = notes.stream()
                .map(note -> "<p role=\"note\"><strong>" + Html.escape(note) + "</strong></p>\n")
                .collect(Collectors.joining());
        return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + OurPage.MARK + "\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                + "<title>" + Html.escape(title) + "</title>\n"
                + "<style>\n:root{color-scheme:light dark}\n"
                + "body{font-family:system-ui,sans-serif;max-width:66em;margin:1.5em auto;padding:0 1em;line-height:1.45}\n"
                + "footer{margin-top:2em;border-top:1px solid currentColor;font-size:.9em;max-width:50em}\n"
                + "h4{margin:1.4em 0 .4em}\ntable{border-collapse:collapse}\ntd,th{padding:.2em .5em}\n"
                + "@page{size:A4;margin:14mm}\n"
                + "@media print{:root{color-scheme:light}body{margin:0;padding:0;max-width:none;font-size:9.5pt;line-height:1.3}"
                + "p{margin:.35em 0}h4{margin:.8em 0 .2em}td,th{padding:.1em .4em}"
                + "td:not(.number){white-space:normal!important}"
                + "h4{break-after:avoid}tr,p,figure{break-inside:avoid}input,button{display:none}"
                // The headings of a table that sorts are buttons.
                + "th button{display:inline}}\n"
                + "</style>\n</head>\n<body>\n" + above
                + shown.html().orElse("<pre>" + Html.escape(shown.text()) + "</pre>")
                + (cautions.isEmpty() ? "" : "\n<footer>\n" + cautions + "</footer>") + "\n</body>\n</html>\n";
    }
}
