package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/** Finds the column that names the batches: by the curves' names first, then by its own name, then by what its values do. */
final class BatchColumn {
    private static final double ALL_BUT_A_FEW = 0.9;
    private static final int LONGEST_NAME = 40;
    private static final int MOST_A_DAY = 60;
    private static final double OF_MACHINE = 0.97;
    private static final double MOST_ALONE = 0.8;
    private static final Pattern NUMBER_SIGN = Pattern.compile("\\bno\\b");

    private BatchColumn() {}

    /** Returns what speaks for each column to be the batches' names, or their numbers of the day. */
    static List<ColumnClaim> of(List<ColumnValues> columns, Clues clues) {
        List<ColumnClaim> claims = new ArrayList<>();
        Set<String> names = clues.names();
        Optional<ColumnValues> dates = columns.stream()
                .filter(column -> ColumnDayFit.day(column).score() > 0
                        || ColumnDayFit.dateAndTime(column).score() > 0)
                .findFirst();
        for (ColumnValues column : columns) {
            if (canName(column)) {
                name(column, names, clues.recordings().size()).ifPresent(claims::add);
                ofMachine(column, columns).ifPresent(claims::add);
                dates.filter(days -> days != column)
                        .flatMap(days -> running(column, days))
                        .ifPresent(claims::add);
            }
        }
        return claims;
    }

    private static boolean canName(ColumnValues column) {
        int dates = column.count(CellForm.DATE) + column.count(CellForm.DATE_AND_TIME) + column.count(CellForm.CLOCK);
        boolean whole = column.count(CellForm.NUMBER) == 0 || column.isWhole();
        boolean known = column.unit().matches("kg|g|lb|oz|°C|°F|%|s|min|min:s");
        return column.filled() >= 0.6 * column.cells().size()
                && column.filled() > 0
                && (2 * dates < column.filled() || column.named().strength(ListMeaning.BATCH) == 2)
                && whole
                && !known
                && !ColumnDayFit.isSerial(column)
                && column.cells().stream().allMatch(cell -> cell.length() <= LONGEST_NAME);
    }

    private static Optional<ColumnClaim> name(ColumnValues column, Set<String> names, int curves) {
        double unique = column.distinct() / (double) column.filled();
        int named = column.named().strength(ListMeaning.BATCH);
        int matched = 0;
        Set<String> met = new HashSet<>();
        for (String cell : column.cells()) {
            String plain = Clues.plain(BatchRowNames.withoutEnding(cell));
            if (!plain.isEmpty()
                    && (names.contains(plain)
                            || names.contains(Clues.number(cell)) && named > 0
                            || names.contains(Clues.number(cell)) && plain.length() <= 12)) {
                matched++;
                met.add(plain);
            }
        }
        // Small numbers match the numbers of many files by chance: a quarter of the rows at least, and more than a few.
        double share = matched / (double) column.filled();
        if (unique >= ALL_BUT_A_FEW && share >= 0.5 && met.size() >= Math.min(3, curves)) {
            double score = named == 2
                    ? 0.99
                    : named == 1 ? 0.95 : share >= 0.8 && column.named().whole().isEmpty() ? 0.9 : 0.6;
            return Optional.of(ColumnClaim.of(
                    column,
                    ListMeaning.BATCH,
                    "",
                    score,
                    "its values are the names or numbers of " + met.size() + " of " + curves + " curve files"));
        }
        boolean mostlyUnique = unique >= ALL_BUT_A_FEW;
        if (named > 0 && mostlyUnique) {
            double rising = column.mostly(CellForm.NUMBER) ? column.rising() : 0.5;
            boolean once = column.named().whole().size() == 1;
            return Optional.of(ColumnClaim.of(
                    column,
                    ListMeaning.BATCH,
                    "",
                    (named == 2 ? 0.8 : 0.6) + (rising > 0.8 ? 0.12 : 0.02) + (once ? 0.05 : 0),
                    "its heading says so and "
                            + (unique == 1 ? "each value stands once" : "nearly each value stands once")));
        }
        if (named == 2 && unique >= 0.6 && column.named().whole().size() == 1) {
            return Optional.of(ColumnClaim.of(
                    column,
                    ListMeaning.BATCH,
                    "",
                    0.65,
                    "its heading says so, though " + (column.filled() - column.distinct())
                            + " of its values stand more than once"));
        }
        // A number sign says that the numbers below are of something, whatever the words beside it mean elsewhere.
        boolean signed = NUMBER_SIGN.matcher(TradeWords.plain(column.heading())).find();
        boolean unnamed =
                !column.named().isKnown() || signed && named(column).stream().allMatch(BatchColumn::isMeasured);
        boolean counts = column.mostly(CellForm.NUMBER) && column.rising() == 1 && steps(column) <= 1.5;
        boolean codes =
                column.cells().stream().allMatch(cell -> cell.isEmpty() || cell.matches("\\S{0,12}\\d\\S{0,12}"));
        if (unnamed && unique == 1 && column.filled() >= 3 && (counts || codes && column.mostly(CellForm.WORDS))) {
            return Optional.of(ColumnClaim.of(
                    column,
                    ListMeaning.BATCH,
                    "",
                    (counts ? 0.62 : 0.6) + (column.place() == 0 ? 0.1 : 0),
                    counts ? "its values count up row by row" : "each of its codes stands once"));
        }
        return Optional.empty();
    }

    /** Numbers that stand once for each machine, and again for another, are the machines' own numbers of their batches. */
    private static Optional<ColumnClaim> ofMachine(ColumnValues column, List<ColumnValues> columns) {
        if (column.named().strength(ListMeaning.BATCH) == 0
                || !column.mostly(CellForm.NUMBER)
                || column.distinct() == column.filled()) {
            return Optional.empty();
        }
        return columns.stream()
                .filter(other -> other != column
                        && other.named().strength(ListMeaning.MACHINE) > 0
                        && numbersEach(other.cells(), column.cells()))
                .findFirst()
                .map(machine -> ColumnClaim.of(
                        column,
                        ListMeaning.BATCH,
                        "",
                        OF_MACHINE,
                        "its heading says so, and each number stands once for each of "
                                + Words.quote(machine.heading())));
    }

    /** Returns whether cells are filled with each number once for each of two words or more beside them. */
    static boolean numbersEach(List<String> words, List<String> numbers) {
        Set<String> pairs = new HashSet<>();
        Set<String> different = new HashSet<>();
        Set<String> alone = new HashSet<>();
        int filled = 0;
        for (int i = 0; i < numbers.size(); i++) {
            String word = words.get(i).strip().toLowerCase(Locale.ROOT);
            if (!numbers.get(i).isBlank()) {
                if (word.isEmpty()) {
                    return false;
                }
                filled++;
                different.add(word);
                alone.add(numbers.get(i).strip());
                pairs.add(word + "\n" + numbers.get(i).strip());
            }
        }
        return different.size() > 1 && pairs.size() == filled && alone.size() <= MOST_ALONE * filled;
    }

    private static Set<ListMeaning> named(ColumnValues column) {
        return column.named().whole().isEmpty()
                ? column.named().part()
                : column.named().whole();
    }

    /** Returns whether a meaning is one of amounts, which no sign of a number stands over. */
    private static boolean isMeasured(ListMeaning meaning) {
        return switch (meaning.kind()) {
            case MASS, SHARE, ROAST_TEMPERATURE, ROOM_TEMPERATURE, SINCE_CHARGE, NUMBER -> true;
            default -> false;
        };
    }

    private static double steps(ColumnValues column) {
        int rows = column.filled();
        return rows < 2 ? 1 : (column.quantile(1) - column.quantile(0)) / (rows - 1);
    }

    /** Small numbers that stand once a day and begin again with the next are the running numbers of the day. */
    private static Optional<ColumnClaim> running(ColumnValues column, ColumnValues dates) {
        if (!column.mostly(CellForm.NUMBER)
                || column.quantile(1) > MOST_A_DAY
                || column.quantile(0) < 1
                || column.distinct() == column.filled()) {
            return Optional.empty();
        }
        Set<String> pairs = new HashSet<>();
        Set<String> days = new HashSet<>();
        String day = "";
        int restarts = 0;
        for (int i = 0; i < column.cells().size(); i++) {
            String here = dates.cells().get(i).strip();
            String next = here.isEmpty() ? day : here.split("[ T]")[0].toLowerCase(Locale.ROOT);
            restarts += !next.equals(day) && column.number(i) == 1 ? 1 : 0;
            day = next;
            days.add(day);
            if (!Double.isNaN(column.number(i))) {
                pairs.add(day + " " + column.number(i));
            }
        }
        boolean once = pairs.size() == column.count(CellForm.NUMBER);
        boolean begins = restarts >= 0.8 * days.size() && days.size() > 1;
        boolean named = column.named().strength(ListMeaning.RUNNING_NUMBER) > 0
                || column.named().strength(ListMeaning.BATCH) > 0;
        if (!once || !begins && !named) {
            return Optional.empty();
        }
        return Optional.of(ColumnClaim.of(
                column,
                ListMeaning.RUNNING_NUMBER,
                "",
                begins && named ? 0.95 : begins ? 0.7 : 0.65,
                "its numbers begin again with each day and stand once a day"));
    }
}
