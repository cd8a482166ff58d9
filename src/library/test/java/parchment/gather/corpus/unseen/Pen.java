package parchment.gather.corpus.unseen;

import com.github.miachm.sods.Sheet;
import com.github.miachm.sods.SpreadSheet;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.logbook.MarkKind;

/** Does what every roaster does by hand: rounds, converts, lines up, saves. */
final class Pen {
    static final Charset UTF_8 = StandardCharsets.UTF_8;
    static final Charset OLD = Charset.forName("windows-1252");
    static final String LF = "\n";
    static final String CRLF = "\r\n";
    static final double KILOGRAMS_PER_POUND = 0.45359237;
    static final List<MarkKind> MARKS = List.of(MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START, MarkKind.DROP);

    private static final List<String> ATTRIBUTES = List.of("acidity", "sweetness", "body", "overall");

    private Pen() {}

    // ---- files

    /** Returns a file below the folder, whose own folders are made where they are missing. */
    static Path file(Path folder, String... names) throws IOException {
        Path file = folder;
        for (String name : names) {
            file = file.resolve(name);
        }
        Files.createDirectories(file.getParent());
        return file;
    }

    /** Saves lines of text; in UTF-8 where the wanted encoding lacks a letter. */
    static void save(Path file, Charset charset, String newline, List<String> lines) throws IOException {
        String text = String.join(newline, lines) + newline;
        Files.write(file, text.getBytes(charset.newEncoder().canEncode(text) ? charset : UTF_8));
    }

    /** Saves an .xlsx workbook. */
    static void workbook(Path file, Consumer<Workbook> filler) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                Workbook book = new Workbook(out, "Sheets", "1.0")) {
            filler.accept(book);
        }
    }

    /** Saves an .ods spreadsheet, a tab for each entry; missing cells stay empty. */
    static void spreadsheet(Path file, Map<String, List<Object[]>> tabs) throws IOException {
        SpreadSheet book = new SpreadSheet();
        for (Map.Entry<String, List<Object[]>> tab : tabs.entrySet()) {
            List<Object[]> rows = tab.getValue();
            int width = 1;
            for (Object[] row : rows) {
                width = Math.max(width, row.length);
            }
            Sheet sheet = new Sheet(tab.getKey(), Math.max(1, rows.size()), width);
            for (int r = 0; r < rows.size(); r++) {
                for (int c = 0; c < rows.get(r).length; c++) {
                    if (rows.get(r)[c] != null) {
                        sheet.getRange(r, c).setValue(rows.get(r)[c]);
                    }
                }
            }
            book.appendSheet(sheet);
        }
        try (OutputStream out = Files.newOutputStream(file)) {
            book.save(out);
        }
    }

    /** Fills a row of a sheet from the left; what is null stays empty. */
    static void row(Worksheet sheet, int row, Object... cells) {
        for (int column = 0; column < cells.length; column++) {
            cell(sheet, row, column, cells[column], "yyyy-mm-dd");
        }
    }

    /** Fills one cell; a date or a time of day looks as the format says. */
    static void cell(Worksheet sheet, int row, int column, Object value, String format) {
        if (value instanceof LocalDate date) {
            sheet.value(row, column, date);
            sheet.style(row, column).format(format).set();
        } else if (value instanceof LocalDateTime time) {
            sheet.value(row, column, time);
            sheet.style(row, column).format(format).set();
        } else if (value instanceof LocalTime time) {
            sheet.value(row, column, time.toSecondOfDay() / 86400.0);
            sheet.style(row, column).format("hh:mm").set();
        } else if (value instanceof Number number) {
            sheet.value(row, column, number);
        } else if (value != null) {
            sheet.value(row, column, value.toString());
        }
    }

    /** Returns a line of cells, in quotes where a cell holds the separator, a quote or a line end. */
    static String line(char separator, Object... cells) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < cells.length; i++) {
            if (i > 0) {
                line.append(separator);
            }
            String cell = String.valueOf(cells[i]);
            boolean quoted = cell.indexOf(separator) >= 0 || cell.indexOf('"') >= 0 || cell.indexOf('\n') >= 0;
            line.append(quoted ? '"' + cell.replace("\"", "\"\"") + '"' : cell);
        }
        return line.toString();
    }

    // ---- numbers and times

    static double round(double value, int digits) {
        double scale = Math.pow(10, digits);
        return Math.round(value * scale) / scale;
    }

    static String point(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }

    static String comma(double value, int digits) {
        return point(value, digits).replace('.', ',');
    }

    /** Returns a score as a cupper writes it: 7, 7.5, 7.25. */
    static String score(Double value) {
        if (value == null) {
            return "";
        }
        return value == Math.rint(value)
                ? point(value, 0)
                : value * 2 == Math.rint(value * 2) ? point(value, 1) : point(value, 2);
    }

    static String scoreWithComma(Double value) {
        return score(value).replace('.', ',');
    }

    /** Returns a score in halves and quarters, such as 7 1/4. */
    static String fraction(Double value) {
        if (value == null || value * 4 != Math.rint(value * 4)) {
            return score(value);
        }
        int whole = (int) Math.floor(value);
        String part = List.of("", "1/4", "1/2", "3/4").get((int) Math.round((value - whole) * 4));
        return part.isEmpty() ? String.valueOf(whole) : whole == 0 ? part : whole + " " + part;
    }

    static double fahrenheit(double celsius) {
        return celsius * 1.8 + 32;
    }

    /** Returns minutes and seconds, such as 9:05. */
    static String clock(double seconds) {
        long whole = Math.round(Math.abs(seconds));
        return (seconds <= -0.5 ? "-" : "") + String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    static double mark(Roast roast, MarkKind kind) {
        return kind == MarkKind.CHARGE ? 0 : roast.marks().get(kind);
    }

    static String yellow(Roast roast) {
        return clock(mark(roast, MarkKind.YELLOWING));
    }

    static String crack(Roast roast) {
        return clock(mark(roast, MarkKind.FIRST_CRACK_START));
    }

    static String drop(Roast roast) {
        return clock(mark(roast, MarkKind.DROP));
    }

    static LocalDate day(Roast roast) {
        return roast.chargedAt().toLocalDate();
    }

    static String date(LocalDate day, String pattern, Locale locale) {
        return DateTimeFormatter.ofPattern(pattern, locale).format(day);
    }

    static String date(LocalDate day, String pattern) {
        return date(day, pattern, Locale.ENGLISH);
    }

    /** Returns the hour and minute of the charge. */
    static String time(Roast roast) {
        return time(roast.chargedAt(), "HH:mm");
    }

    static String time(LocalDateTime time, String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(time);
    }

    /** Returns the clock at so many seconds after the charge, to the second. */
    static LocalDateTime clockAt(Roast roast, double seconds) {
        return roast.chargedAt().plusSeconds(Math.round(seconds));
    }

    // ---- readings

    /** Returns every so manieth second's reading, first and last seconds included. */
    static List<Reading> every(Roast roast, int step, double first, double last) {
        List<Reading> kept = new ArrayList<>();
        for (Reading reading : roast.readings()) {
            boolean within = reading.seconds() >= first && reading.seconds() <= last;
            if (within && Math.floorMod(Math.round(reading.seconds()), step) == 0) {
                kept.add(reading);
            }
        }
        return kept;
    }

    /** Returns every so manieth second's reading, and those of the charge and the marks besides. */
    static List<Reading> everyAndMarks(Roast roast, int step, double first, double last) {
        TreeMap<Double, Reading> kept = new TreeMap<>();
        for (Reading reading : every(roast, step, first, last)) {
            kept.put(reading.seconds(), reading);
        }
        List<Double> instants = new ArrayList<>(List.of(0.0));
        for (MarkKind kind : MARKS) {
            instants.add(mark(roast, kind));
        }
        for (double instant : instants) {
            Reading reading = roast.readings().get(nearest(roast.readings(), instant));
            kept.put(reading.seconds(), reading);
        }
        return new ArrayList<>(kept.values());
    }

    /** Returns the word to type beside each reading; "" beside most. */
    static List<String> words(Roast roast, List<Reading> rows, Map<MarkKind, String> spoken) {
        String[] words = new String[rows.size()];
        java.util.Arrays.fill(words, "");
        for (Map.Entry<MarkKind, String> entry : spoken.entrySet()) {
            words[nearest(rows, mark(roast, entry.getKey()))] = entry.getValue();
        }
        return List.of(words);
    }

    /** Returns the second at which the logger is stopped, so long after the drop. */
    static double end(Roast roast, double afterDrop) {
        return mark(roast, MarkKind.DROP) + afterDrop;
    }

    private static int nearest(List<Reading> rows, double seconds) {
        int best = 0;
        for (int i = 1; i < rows.size(); i++) {
            if (Math.abs(rows.get(i).seconds() - seconds)
                    < Math.abs(rows.get(best).seconds() - seconds)) {
                best = i;
            }
        }
        return best;
    }

    // ---- groups

    static Map<LocalDate, List<Roast>> byDay(List<Roast> roasts) {
        Map<LocalDate, List<Roast>> days = new TreeMap<>();
        for (Roast roast : roasts) {
            days.computeIfAbsent(day(roast), key -> new ArrayList<>()).add(roast);
        }
        return days;
    }

    static Map<Integer, List<Tasting>> byCupping(List<Tasting> tastings) {
        Map<Integer, List<Tasting>> cuppings = new TreeMap<>();
        for (Tasting tasting : tastings) {
            cuppings.computeIfAbsent(tasting.cupping(), key -> new ArrayList<>())
                    .add(tasting);
        }
        return cuppings;
    }

    static Map<String, List<Tasting>> byCupper(List<Tasting> tastings) {
        Map<String, List<Tasting>> cuppers = new LinkedHashMap<>();
        for (Tasting tasting : tastings) {
            cuppers.computeIfAbsent(tasting.cupper(), key -> new ArrayList<>()).add(tasting);
        }
        return cuppers;
    }

    static Map<Integer, List<Tasting>> byBatch(List<Tasting> tastings) {
        Map<Integer, List<Tasting>> batches = new TreeMap<>();
        for (Tasting tasting : tastings) {
            batches.computeIfAbsent(tasting.batch(), key -> new ArrayList<>()).add(tasting);
        }
        return batches;
    }

    /** Returns the attributes scored, the usual four first. */
    static List<String> attributes(Roastery roastery) {
        Set<String> found = new TreeSet<>();
        for (Tasting tasting : roastery.tastings()) {
            found.addAll(tasting.scores().keySet());
        }
        List<String> ordered = new ArrayList<>(ATTRIBUTES);
        ordered.retainAll(found);
        found.removeAll(ordered);
        ordered.addAll(found);
        return ordered;
    }

    /** Returns the mean over the cuppers; missing where nobody scored. */
    static Double mean(List<Tasting> tastings, String attribute) {
        double sum = 0;
        int count = 0;
        for (Tasting tasting : tastings) {
            Double score = tasting.scores().get(attribute);
            if (score != null) {
                sum += score;
                count++;
            }
        }
        return count == 0 ? null : sum / count;
    }

    /** Returns a short code for each coffee, no two the same. */
    static Map<String, String> codes(List<Roast> roasts) {
        Map<String, String> codes = new TreeMap<>();
        for (Roast roast : roasts) {
            if (!codes.containsKey(roast.lot())) {
                String letters = roast.lot().replaceAll("[^A-Za-z]", "").toUpperCase(Locale.ROOT);
                String stem = letters.isEmpty() ? "X" : letters.substring(0, Math.min(3, letters.length()));
                String code = stem;
                for (int i = 2; codes.containsValue(code); i++) {
                    code = stem + i;
                }
                codes.put(roast.lot(), code);
            }
        }
        return codes;
    }

    static String pick(java.util.Random random, String... words) {
        return words[random.nextInt(words.length)];
    }
}
