package parchment.kernel.source;

import java.util.List;
import java.util.Locale;

/**
 * The text of a cell, and how a place in it is shown to the reader.
 *
 * @param number the cell's number as the notebook shows it, from 1
 * @param code its Java, line for line in the places where it was written
 * @param written what was written; the same but for lines that are no Java
 * @param name what a later error calls it, such as {@code Cell 3}
 */
public record CellText(int number, String code, String written, String name) {
    /** Letters; of a longer line only what stands around the place is shown. */
    private static final int LONGEST_SHOWN = 400;

    /** Returns a cell that is all Java. */
    public CellText(int number, String code) {
        this(number, code, code, "Cell " + number);
    }

    /** Returns the line, from 1, that holds the character at the offset. */
    public int line(int offset) {
        int end = Math.min(Math.max(offset, 0), code.length());
        return 1 + (int) code.chars().limit(end).filter(c -> c == '\n').count();
    }

    /** Returns the line's text as written. */
    public String lineText(int line) {
        String[] lines = written.split("\n", -1);
        return line >= 1 && line <= lines.length ? lines[line - 1].stripTrailing() : "";
    }

    /** Returns the line with its number, and a caret under the character at the offset. */
    public List<String> pointAt(int offset) {
        int line = line(offset);
        if (lineText(line).length() > LONGEST_SHOWN) {
            return List.of("Line " + line + ":  " + around(line, offset));
        }
        String lead = "Line " + line + ":  ";
        int start = code.lastIndexOf('\n', Math.max(0, Math.min(offset, code.length()) - 1)) + 1;
        String before = code.substring(start, Math.max(start, Math.min(offset, code.length())));
        // A tab must stay one, or the caret would stand elsewhere than the eye expects.
        String blank = before.replaceAll("[^\t]", " ");
        return List.of(lead + lineText(line), " ".repeat(lead.length()) + blank + "^");
    }

    /** Returns what stands around a place of a line that is too long to be shown. */
    private String around(int line, int offset) {
        String text = lineText(line);
        int start = code.lastIndexOf('\n', Math.max(0, Math.min(offset, code.length()) - 1)) + 1;
        int at = Math.max(0, Math.min(offset - start, text.length()));
        int from = Math.max(0, at - LONGEST_SHOWN / 4);
        int to = Math.min(text.length(), from + LONGEST_SHOWN / 2);
        return (from > 0 ? "... " : "")
                + text.substring(from, to).strip()
                + (to < text.length() ? " ..." : "")
                + String.format(Locale.ROOT, "   (%,d letters in this line)", text.length());
    }

    /** Returns the line with its number. */
    public String mark(int line) {
        String text = lineText(line).strip();
        return "Line " + line + ":  "
                + (text.length() > LONGEST_SHOWN ? text.substring(0, LONGEST_SHOWN / 2) + " ..." : text);
    }
}
