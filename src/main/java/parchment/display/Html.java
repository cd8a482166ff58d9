package parchment.display;

/** Escapes text for HTML and SVG. */
public final class Html {
    private Html() {}

    /** Returns the text with the five characters that mean something to HTML or XML written as entities; safe in attributes too. */
    public static String escape(String text) {
        StringBuilder escaped = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                default -> {
                    // Control characters are not allowed in XML 1.0, so a picture with one in a label would not open.
                    escaped.append(c < 0x20 && c != '\n' && c != '\t' && c != '\r' ? '\uFFFD' : c);
                }
            }
        }
        return escaped.toString();
    }
}
