package parchment.display.answer;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.display.Html;

/**
 * Writes sentences as HTML whose names, dates, ranges and numbers with a unit stay on one line, where a browser would break them at a hyphen, at a
 * stroke or before the unit.
 */
public final class WholeNames {
    /** A number with its error and its unit: a line that begins with °C would belong to nothing. */
    private static final String MEASURED =
            "[(+-]{0,2}\\d[\\d.,:]{0,12}(?: ± \\d[\\d.]{0,8})? (?:°[CF](?:/min)?|%|s|kg|g|points?)(?![\\w/-])[^\\w\\s]{0,3}";

    /** A name, date or range within a sentence: broken after a hyphen, 2024-11-03 would read as a month. */
    private static final String NAME = "(?=\\S*[-\u2010\u2013/])\\S{1,40}";

    private static final Pattern BREAKABLE = Pattern.compile("(?<!\\S)(?:" + MEASURED + "|" + NAME + ")(?!\\S)");

    private WholeNames() {}

    /** Returns the words escaped, for a page that may have no rule for the class {@code whole}. */
    static String inParagraph(String sentence) {
        return html(sentence, "<span style=\"white-space:nowrap\">");
    }

    /** Returns the words escaped, for a page with a rule for the class {@code whole}. */
    public static String inTable(String sentence) {
        return html(sentence, "<span class=\"whole\">");
    }

    private static String html(String sentence, String before) {
        StringBuilder html = new StringBuilder();
        Matcher name = BREAKABLE.matcher(sentence);
        int from = 0;
        while (name.find()) {
            html.append(Html.escape(sentence.substring(from, name.start())))
                    .append(before)
                    .append(Html.escape(name.group()))
                    .append("</span>");
            from = name.end();
        }
        return html.append(Html.escape(sentence.substring(from))).toString();
    }
}
