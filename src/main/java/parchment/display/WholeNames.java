package parchment.display;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Writes sentences as HTML whose names, dates and ranges stay on one line, where a browser would break them at a hyphen or a stroke. */
final class WholeNames {
    /** A name, date or range within a sentence: broken after a hyphen, 2024-11-03 would read as a month. */
    private static final Pattern BREAKABLE = Pattern.compile("(?<!\\S)(?=\\S*[-\u2010\u2013/])\\S{1,40}(?!\\S)");

    private WholeNames() {}

    /** Returns the words escaped, for a page that may have no rule for the class {@code whole}. */
    static String inParagraph(String sentence) {
        return html(sentence, "<span style=\"white-space:nowrap\">");
    }

    /** Returns the words escaped, for a page with a rule for the class {@code whole}. */
    static String inTable(String sentence) {
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
