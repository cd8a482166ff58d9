package parchment.kernel;

import java.util.List;

/**
 * The text of a cell, and how a place in it is shown to the reader.
 *
 * @param number the cell's number as the notebook shows it, from 1
 * @param code its Java, line for line in the places where it was written
 * @param written what was written; the same but for lines that are no Java
 * @param name what a later error calls it, such as {@code Cell 3}
 */
record CellText(int number, String code, String written, String name) {

    /** Returns a cell that is all Java. */
    CellText(int number, String code) {
        this(number, code, code, "Cell " + number);
    }

    /** Returns the line, from 1, that holds the character at the offset. */
    int line(int offset) {
        int end = Math.min(Math.max(offset, 0), code.length());
        return 1 + (int) code.chars().limit(end).filter(c -> c == '\n').count();
    }

    /** Returns the line's text as written. */
    String lineText(int line) {
        String[] lines = written.split("\n", -1);
        return line >= 1 && line <= lines.length ? lines[line - 1].stripTrailing() : "";
    }

    /** Returns the line with its number, and a caret under the character at the offset. */
    List<String> pointAt(int offset) {
        int line = line(offset);
        String lead = "Line " + line + ":  ";
        int start = code.lastIndexOf('\n', Math.max(0, Math.min(offset, code.length()) - 1)) + 1;
        String before = code.substring(start, Math.max(start, Math.min(offset, code.length())));
        // A tab must stay one, or the caret would stand elsewhere than the eye expects.
        String blank = before.replaceAll("[^\t]", " ");
        return List.of(lead + lineText(line), " ".repeat(lead.length()) + blank + "^");
    }

    /** Returns the line with its number. */
    String mark(int line) {
        return "Line " + line + ":  " + lineText(line).strip();
    }
}
