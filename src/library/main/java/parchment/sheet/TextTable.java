package parchment.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a text file as one sheet. */
final class TextTable {
    private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d+,(\\d{1,2}|\\d{4,})");

    /** A first line by which some spreadsheets are told the sign between the columns. */
    private static final Pattern STATED =
            Pattern.compile("\\A\"?sep=(.)\"?(?:\r\n|\r|\n|\\z)", Pattern.CASE_INSENSITIVE);

    private TextTable() {}

    static Sheet read(Path file, InputStream in, Told told) throws IOException {
        TextReader reader = TextFile.reader(in);
        String text = text(reader);
        reader.other()
                .ifPresent(other -> told.sentence("The letters of the file are not UTF-8: read as " + other.encoding()
                        + ", first on line " + other.line() + "."));
        if (text.indexOf('\0') >= 0) {
            throw new NoTableException("a file of a program and no table; save or export it as CSV or .xlsx");
        }
        if (text.isBlank()) {
            throw new NoTableException("an empty file");
        }
        Matcher stated = STATED.matcher(text);
        boolean states = stated.find();
        if (!states) {
            AlignedColumns aligned = AlignedColumns.of(text).orElse(null);
            if (aligned != null) {
                return new Sheet(file, "", ' ', Numbers.Decimal.EITHER, aligned.rows(), aligned.lines());
            }
        }
        char delimiter = states ? stated.group(1).charAt(0) : DelimiterChoice.of(text);
        DelimitedRows rows = new DelimitedRows(text, delimiter, told, SheetBounds.MOST_ROWS);
        rows.read(states ? stated.end() : 0, states ? 2 : 1);
        // Between commas a number may have one within quotes: "199,6"; three places behind it can be thousands.
        boolean point = delimiter == ','
                && rows.rows().stream()
                        .flatMap(row -> row.stream())
                        .noneMatch(cell -> DECIMAL_COMMA.matcher(cell).matches());
        Numbers.Decimal decimal = point ? Numbers.Decimal.POINT : Numbers.Decimal.EITHER;
        return new Sheet(file, "", delimiter, decimal, rows.rows(), rows.lines());
    }

    private static String text(TextReader reader) throws IOException {
        StringBuilder text = new StringBuilder();
        char[] buffer = new char[1 << 15];
        for (int read = reader.read(buffer); read >= 0; read = reader.read(buffer)) {
            text.append(buffer, 0, read);
            if (text.length() > BoundedReader.mostCharacters()) {
                throw new NoTableException("a text of more than " + BoundedReader.mostCharacters() / 1_000_000
                        + " million letters; cut it into several files, one for each day");
            }
        }
        return text.toString();
    }
}
