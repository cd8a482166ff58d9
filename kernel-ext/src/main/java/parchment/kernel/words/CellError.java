package parchment.kernel.words;

import java.util.List;
import java.util.stream.Stream;

/**
 * Why a cell failed, in words for the person who wrote it.
 *
 * @param name the kind of error, such as {@code NumberFormatException} or {@code Not valid Java}
 * @param message one sentence
 * @param lines everything to show, one line each: where in the cell, the line itself, the message, the causes
 */
public record CellError(String name, String message, List<String> lines) {
    public CellError {
        lines = List.copyOf(lines);
    }

    /** Returns the same error with lines at its end. */
    public CellError withLines(List<String> more) {
        return new CellError(
                name, message, Stream.concat(lines.stream(), more.stream()).toList());
    }

    /** Returns the lines as one text. */
    public String text() {
        return String.join("\n", lines);
    }
}
