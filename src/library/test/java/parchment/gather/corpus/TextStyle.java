package parchment.gather.corpus;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Says how a table is written as text.
 *
 * @param delimiter between cells
 * @param decimal the decimal sign
 * @param charset the encoding
 * @param mark what stands before everything: a byte-order mark, or ""
 * @param date the pattern of dates
 * @param time the pattern of times of day
 */
record TextStyle(String delimiter, char decimal, Charset charset, String mark, String date, String time) {
    static final TextStyle PLAIN = new TextStyle(",", '.', StandardCharsets.UTF_8, "", "yyyy-MM-dd", "HH:mm:ss");
    static final TextStyle AMERICAN = PLAIN.dates("MM/dd/yyyy", "HH:mm");
    static final TextStyle GERMAN = PLAIN.between(";").decimal(',').dates("dd.MM.yyyy", "HH:mm");
    static final TextStyle SPANISH = PLAIN.between(";").decimal(',').dates("dd/MM/yyyy", "HH:mm");

    TextStyle between(String other) {
        return new TextStyle(other, decimal, charset, mark, date, time);
    }

    TextStyle decimal(char other) {
        return new TextStyle(delimiter, other, charset, mark, date, time);
    }

    TextStyle in(Charset other) {
        return new TextStyle(delimiter, decimal, other, mark, date, time);
    }

    TextStyle in(String other) {
        return in(Charset.forName(other));
    }

    TextStyle marked() {
        return new TextStyle(delimiter, decimal, charset, "\uFEFF", date, time);
    }

    TextStyle dates(String dates, String times) {
        return new TextStyle(delimiter, decimal, charset, mark, dates, times);
    }

    void write(Grid grid, Path file) throws IOException {
        write(text(grid), file);
    }

    void write(String text, Path file) throws IOException {
        Files.createDirectories(file.getParent());
        Files.write(file, (mark + text).getBytes(charset));
    }

    String text(Grid grid) {
        StringBuilder text = new StringBuilder();
        for (List<Object> row : grid.rows()) {
            for (int i = 0; i < row.size(); i++) {
                text.append(i == 0 ? "" : delimiter).append(quoted(cell(row.get(i))));
            }
            text.append("\r\n");
        }
        return text.toString();
    }

    private String quoted(String cell) {
        return cell.contains(delimiter) || cell.contains("\"") || cell.contains("\n")
                ? '"' + cell.replace("\"", "\"\"") + '"'
                : cell;
    }

    String cell(Object value) {
        if (value instanceof Double number) {
            return Cells.number(number).replace('.', decimal);
        }
        if (value instanceof LocalDate day) {
            return pattern(date).format(day);
        }
        if (value instanceof LocalTime clock) {
            return pattern(time).format(clock);
        }
        if (value instanceof LocalDateTime at) {
            return pattern(date + " " + time).format(at);
        }
        return value instanceof Cells.Span span ? span.text() : String.valueOf(value);
    }

    private static DateTimeFormatter pattern(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH);
    }
}
