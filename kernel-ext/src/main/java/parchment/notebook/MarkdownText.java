package parchment.notebook;

import java.util.regex.Pattern;

/** Plain text as Markdown that shows it as it is, whatever signs are in it. */
final class MarkdownText {
    private static final Pattern SIGNS = Pattern.compile("[\\\\`*_\\[\\]<>|~$#&]");
    private static final Pattern FENCE = Pattern.compile("(?m)^ {0,3}`{3,}");

    private MarkdownText() {}

    static String escaped(String text) {
        return SIGNS.matcher(text.replaceAll("\\s+", " ")).replaceAll("\\\\$0");
    }

    /** Returns text between fences that nothing in it can close. */
    static String fenced(String kind, String text) {
        String fence = "```";
        while (FENCE.matcher(text).find() && text.contains(fence)) {
            fence += "`";
        }
        return fence + kind + "\n" + text.stripTrailing() + "\n" + fence;
    }
}
