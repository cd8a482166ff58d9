package parchment.display;

import java.util.regex.Pattern;

/** Escapes text for HTML and SVG, so that either is well-formed whatever stands in it. */
public final class Html {
    private static final Pattern UNREAD = Pattern.compile(
            "<!--.*?-->|<(script|style)\\b[^>]*>.*?</\\1\\s*>", Pattern.DOTALL | Pattern.CASE_INSENSITIVE);

    private Html() {}

    /**
     * Returns the text with the five characters that mean something to HTML or XML written as entities; safe in attributes too. What
     * neither allows becomes U+FFFD: control characters but the tab and the ends of lines, halves of a character, and the code points
     * that Unicode keeps for no character.
     *
     * @see <a href="https://www.w3.org/TR/xml/#charsets">Extensible Markup Language 1.0 (fifth edition), 2.2 Characters</a>
     * @see <a href="https://html.spec.whatwg.org/multipage/parsing.html#preprocessing-the-input-stream">HTML Living Standard, 13.2.3.5</a>
     */
    public static String escape(String text) {
        StringBuilder escaped = new StringBuilder(text.length() + 16);
        int next;
        for (int i = 0; i < text.length(); i = next) {
            int point = text.codePointAt(i);
            next = i + Character.charCount(point);
            switch (point) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> escaped.appendCodePoint(isAllowed(point) ? point : 0xFFFD);
            }
        }
        return escaped.toString();
    }

    /** Returns what a person would read of a fragment of HTML: its words in one line, without tags, scripts and styles. */
    public static String words(String fragment) {
        return UNREAD.matcher(fragment)
                .replaceAll(" ")
                .replaceAll("<[^>]*>", " ")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&")
                .strip()
                .replaceAll("\\s+", " ");
    }

    /** Returns the text with U+FFFD for what a page may not hold, and nothing else changed; for a whole page, or for data in one. */
    public static String allowed(String text) {
        StringBuilder allowed = new StringBuilder(text.length());
        text.codePoints().forEach(point -> allowed.appendCodePoint(isAllowed(point) ? point : 0xFFFD));
        return allowed.toString();
    }

    private static boolean isAllowed(int point) {
        boolean control = Character.isISOControl(point) && point != '\n' && point != '\t' && point != '\r';
        boolean half = point >= Character.MIN_SURROGATE && point <= Character.MAX_SURROGATE;
        boolean noCharacter = (point & 0xFFFE) == 0xFFFE || point >= 0xFDD0 && point <= 0xFDEF;
        return !control && !half && !noCharacter;
    }
}
