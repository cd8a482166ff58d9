package parchment.notebook;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.display.Html;

/** Marks up Java for reading: comments, texts, numbers and keywords; everything else stays plain. */
public final class CodeColours {
    /** Where a text goes on after a backslash; Java's expressions go one call deeper for each, so there is a largest number. */
    private static final String AND_SO_ON = "(?:\\\\.[^%s\\\\\n]*+){0,500}%s?";

    private static final Pattern TOKENS = Pattern.compile(
            "(?<comment>//[^\n]*|/\\*.*?(?:\\*/|$))"
                    + "|(?<text>\"\"\".*?(?:\"\"\"|$)|\"[^\"\\\\\n]*+" + AND_SO_ON.replace("%s", "\"")
                    + "|'[^'\\\\\n]*+" + AND_SO_ON.replace("%s", "'") + ")"
                    + "|(?<number>\\b\\d[\\w.]*)"
                    + "|(?<keyword>\\b(?:abstract|boolean|break|byte|case|catch|char|class|continue|default|do|double|else|enum|extends"
                    + "|final|finally|float|for|if|implements|import|instanceof|int|interface|long|new|null|private|public|record|return"
                    + "|short|static|switch|this|throw|throws|true|false|try|var|void|while|yield)\\b)",
            Pattern.DOTALL);

    private CodeColours() {}

    /** Returns the code as HTML to put inside {@code <code>}. */
    public static String html(String code) {
        StringBuilder html = new StringBuilder();
        Matcher token = TOKENS.matcher(code);
        int plain = 0;
        while (token.find()) {
            html.append(Html.escape(code.substring(plain, token.start())));
            String kind = token.group("comment") != null
                    ? "comment"
                    : token.group("text") != null ? "text" : token.group("number") != null ? "number" : "keyword";
            html.append("<span class=\"")
                    .append(kind)
                    .append("\">")
                    .append(Html.escape(token.group()))
                    .append("</span>");
            plain = token.end();
        }
        return html.append(Html.escape(code.substring(plain))).toString();
    }
}
