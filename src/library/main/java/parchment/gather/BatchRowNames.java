package parchment.gather;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Names the rows of a list of batches: as the roaster does, by the day and its running number, or by the day and a letter. */
final class BatchRowNames {
    private static final Pattern ENDING = Pattern.compile(
            "(?i)(?<=[\\p{L}\\p{N}_)-])\\.(csv|tsv|txt|log|dat|xlsx?|xlsm|ods|jpe?g|png|heic|tiff?|pdf|docx?)$");

    private final ListColumns columns;
    private final List<String> told;
    private final boolean ofMachines;
    private final Map<LocalDate, Integer> letters = new LinkedHashMap<>();

    BatchRowNames(ListColumns columns, List<String> told) {
        this.columns = columns;
        this.told = told;
        this.ofMachines = columns.of(ListMeaning.BATCH)
                .flatMap(batch -> columns.of(ListMeaning.MACHINE)
                        .map(machine -> BatchColumn.numbersEach(
                                columns.table().column(machine.place()),
                                columns.table().column(batch.place()))))
                .orElse(false);
    }

    /** Returns a row's name; "" where neither a batch nor a day is written. */
    String of(List<String> row, Optional<LocalDate> day, int line) {
        String own = cell(row, ListMeaning.BATCH);
        if (!own.isEmpty()) {
            return ofMachines ? cell(row, ListMeaning.MACHINE) + " " + whole(own) : whole(own);
        }
        if (isNumberOfDay(row, day)) {
            return day.orElseThrow() + "-" + whole(cell(row, ListMeaning.RUNNING_NUMBER));
        }
        if (day.isEmpty()) {
            told.add("Line " + line + " names no batch and no day.");
            return "";
        }
        int number = letters.merge(day.get(), 1, Integer::sum);
        String letter = number <= 26 ? String.valueOf((char) ('a' + number - 1)) : Integer.toString(number);
        return day.get() + "-" + letter;
    }

    /** Returns whether a row is named by its running number. */
    boolean isNumberOfDay(List<String> row, Optional<LocalDate> day) {
        return cell(row, ListMeaning.BATCH).isEmpty()
                && day.isPresent()
                && !cell(row, ListMeaning.RUNNING_NUMBER).isEmpty();
    }

    private String cell(List<String> row, ListMeaning meaning) {
        return columns.of(meaning)
                .map(column -> row.get(column.place()).strip())
                .orElse("");
    }

    /** A spreadsheet may write batch 101 as 101.0. */
    private static String whole(String name) {
        return name.matches("\\d+[.,]0+")
                ? name.substring(0, name.indexOf(name.contains(".") ? '.' : ','))
                : withoutEnding(name.replaceFirst("^#\\s?(?=\\d)", ""));
    }

    /** Returns a name without the ending of a file, as in "IMG_0012.jpg" or "101.csv". */
    static String withoutEnding(String name) {
        return ENDING.matcher(name).replaceFirst("");
    }
}
