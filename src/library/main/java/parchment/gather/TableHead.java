package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.sheet.Numbers;

/**
 * Finds the headings of a block of rows: one row, or up to three with the names of groups above and units below.
 *
 * @param from the first row of the headings
 * @param body the first row of values
 * @param names the headings, "#1", "#2" … where none stands
 */
record TableHead(int from, int body, List<String> names) {
    private static final int ROWS_LOOKED_AT = 80;
    private static final int ROWS_BELOW = 5;
    private static final Pattern UNIT = Pattern.compile(
            "(?i)[\\[(]?\\s*(s|secs?|seconds?|sek|min|minutes?|h:min:s|min:s|mm:ss|m:ss|hh:mm(:ss)?|h:mm|ms|[°º]?\\s?[cfk]|celsius|fahrenheit"
                    + "|%|kgs?|g|gr|lbs?|oz|kpa|pa|hpa|mbar|rpm|1/min|[°º]?[cfk]/min|g/l)\\s*[\\])]?");
    private static final double FULL = 0.7;
    private static final int FEWEST_TIMES = 5;

    TableHead {
        names = List.copyOf(names);
    }

    /** Finds the headings among the rows from one up to, not including, another; empty if the rows hold no table. */
    static Optional<TableHead> find(SheetArea area, int from, int to) {
        int best = -1;
        double bestScore = 0;
        for (int r = from; r < Math.min(to, from + ROWS_LOOKED_AT); r++) {
            double score = score(area, r, to);
            if (score > bestScore) {
                best = r;
                bestScore = score;
            }
        }
        best = first(area, from, best);
        int values = firstValues(area, from, best < 0 ? to : best);
        if (best < 0 || values >= 0) {
            int body = best < 0 ? firstValues(area, from, to) : values;
            return body < 0 ? Optional.empty() : Optional.of(headless(area, body));
        }
        return joined(area, best, from, to);
    }

    /** Headings that stand again, as on each page of a printed list, are those of all rows below the first. */
    private static int first(SheetArea area, int from, int best) {
        for (int r = from; r < best; r++) {
            if (area.row(r).equals(area.row(best))) {
                return r;
            }
        }
        return best;
    }

    /** Returns whether every filled cell of a row is a unit. */
    static boolean isUnits(List<String> cells) {
        List<String> filled = cells.stream().filter(cell -> !cell.isEmpty()).toList();
        return !filled.isEmpty()
                && filled.stream().allMatch(cell -> UNIT.matcher(cell).matches());
    }

    /** More words, words of the trade, and values below make a better row of headings; values in it make it none. */
    private static double score(SheetArea area, int row, int to) {
        List<String> cells = area.row(row);
        int words = 0;
        double known = 0;
        int values = 0;
        for (String cell : cells) {
            CellForm form = form(cell);
            words += form == CellForm.WORDS ? 1 : 0;
            values += form.isValue() ? 1 : 0;
            TradeWords.Named named = form == CellForm.WORDS
                    ? TradeWords.of(cell)
                    : new TradeWords.Named(java.util.Set.of(), java.util.Set.of());
            known += !named.whole().isEmpty() ? 1 : named.isKnown() && cell.length() < 40 ? 0.5 : 0;
        }
        boolean headed = words >= 2 && values == 0 || words >= 1 && values >= 2 && areHeadNumbers(cells);
        if (!headed || isUnits(cells) || row + 1 >= to) {
            return 0;
        }
        return words + values + 2 * known + 2 * support(area, row, to, cells);
    }

    /** Returns how many values stand below the words in a row, on average, up to the next row of words alone. */
    private static double support(SheetArea area, int row, int to, List<String> cells) {
        double support = 0;
        int rows = 0;
        for (int r = row + 1; r < to && rows < ROWS_BELOW; r++) {
            List<String> below = area.row(r);
            if (isUnits(below)) {
                continue;
            }
            int here = 0;
            boolean any = false;
            for (int c = 0; c < area.width(); c++) {
                boolean value = CellForm.of(below.get(c)).isValue();
                any |= value;
                here += value && !cells.get(c).isEmpty() ? 1 : 0;
            }
            if (!any) {
                break;
            }
            support += here;
            rows++;
        }
        return rows == 0 ? 0 : support / rows;
    }

    /** Cups 1, 2, 3 … or blind codes may head columns: whole numbers, each once, that count up from 1 or are three digits long. */
    private static boolean areHeadNumbers(List<String> cells) {
        List<String> numbers =
                cells.stream().filter(cell -> CellForm.of(cell).isValue()).toList();
        if (areHeadTimes(numbers)) {
            return true;
        }
        boolean counted = true;
        boolean codes = true;
        for (int i = 0; i < numbers.size(); i++) {
            counted &= numbers.get(i).equals(Integer.toString(i + 1));
            codes &= numbers.get(i).matches("[1-9]\\d{2}");
        }
        return counted
                || codes
                        && numbers.stream().distinct().count() == numbers.size()
                        && CellForm.of(cells.get(0)) != CellForm.NUMBER;
    }

    /** Times of a roast may head columns of readings: they count from 0:00 in one step. */
    private static boolean areHeadTimes(List<String> times) {
        if (times.size() < FEWEST_TIMES || times.stream().anyMatch(cell -> CellForm.of(cell) != CellForm.CLOCK)) {
            return false;
        }
        double step = seconds(times.get(1));
        for (int i = 0; i < times.size(); i++) {
            if (seconds(times.get(i)) != i * step) {
                return false;
            }
        }
        return step > 0;
    }

    private static double seconds(String cell) {
        return ColumnTimes.seconds(cell, ColumnTimes.MINUTES_AND_SECONDS, Numbers.Decimal.POINT);
    }

    /** "1C" is a number with a unit, and a word for first crack; what has no letter is none. */
    private static CellForm form(String cell) {
        CellForm form = CellForm.of(cell);
        return form != CellForm.WORDS && cell.chars().anyMatch(Character::isLetter) && isCrack(cell)
                ? CellForm.WORDS
                : form;
    }

    private static boolean isCrack(String cell) {
        return cell.length() < 12 && TradeWords.of(cell).whole().contains(ListMeaning.FIRST_CRACK_START);
    }

    /** Returns the first of two rows in a row that hold mostly values, or -1. */
    private static int firstValues(SheetArea area, int from, int to) {
        int first = -1;
        int run = 0;
        for (int r = from; r < to && r < from + ROWS_LOOKED_AT; r++) {
            int filled = 0;
            int values = 0;
            for (String cell : area.row(r)) {
                CellForm form = CellForm.of(cell);
                filled += form == CellForm.BLANK ? 0 : 1;
                values += form.isValue() ? 1 : 0;
            }
            boolean row =
                    values >= 2 || values == 1 && filled >= 2 && area.width() > 2 && 2 * values >= filled && filled > 2;
            first = row && run == 0 ? r : first;
            run = row ? run + 1 : 0;
            if (run == 3 || run > 0 && r == to - 1) {
                return first;
            }
        }
        return -1;
    }

    private static TableHead headless(SheetArea area, int body) {
        List<String> names = new ArrayList<>();
        for (int c = 1; c <= area.width(); c++) {
            names.add("#" + c);
        }
        return new TableHead(body, body, names);
    }

    private static Optional<TableHead> joined(SheetArea area, int main, int from, int to) {
        List<List<String>> rows = new ArrayList<>(List.of(area.row(main)));
        List<String> units = List.of();
        int first = main;
        if (first > from && isUnits(area.row(first - 1))) {
            units = area.row(--first);
        }
        while (first > from && rows.size() < 3 && isGroup(area.row(first - 1), area.row(main))) {
            rows.add(0, overTimes(spread(area.row(--first), area.row(main)), area.row(main)));
        }
        int body = main + 1;
        while (body < to && rows.size() < 3 && isSecond(area, body, to)) {
            rows.add(area.row(body++));
        }
        if (body < to && isUnits(area.row(body))) {
            units = area.row(body++);
        }
        if (body >= to) {
            return Optional.empty();
        }
        List<String> names = new ArrayList<>();
        for (int c = 0; c < area.width(); c++) {
            names.add(name(rows, units, c));
        }
        return Optional.of(new TableHead(first, body, names));
    }

    private static String name(List<List<String>> rows, List<String> units, int place) {
        StringBuilder name = new StringBuilder();
        for (List<String> row : rows) {
            String part = row.get(place).replaceAll("\\s+", " ");
            if (!part.isEmpty() && !name.toString().endsWith(part)) {
                name.append(name.length() == 0 ? "" : " ").append(part);
            }
        }
        String unit = units.isEmpty()
                ? ""
                : units.get(place).replaceAll("[\\[\\]()]", "").strip();
        if (!unit.isEmpty()) {
            name.append(name.length() == 0 ? "[" : " [").append(unit).append(']');
        }
        return name.length() == 0 ? "#" + (place + 1) : name.toString();
    }

    /** Groups stand over some columns and leave blanks, or stand again, to their right; a key with its value does neither. */
    private static boolean isGroup(List<String> cells, List<String> below) {
        int filled = 0;
        int last = -1;
        boolean leaves = false;
        boolean repeats = false;
        for (int c = 0; c < cells.size(); c++) {
            CellForm form = CellForm.of(cells.get(c));
            if (form.isValue()) {
                return false;
            }
            if (form == CellForm.WORDS) {
                filled++;
                repeats |= c > 0 && cells.get(c).equals(cells.get(c - 1));
                leaves |= below.get(c).isEmpty() || last >= 0 && c - last > 1;
                last = c;
            }
        }
        boolean keys = cells.stream().anyMatch(cell -> cell.endsWith(":"));
        return !keys
                && filled >= 2
                && last >= 2
                && (repeats || leaves || filled >= FULL * cells.size())
                && !isTitle(cells);
    }

    private static boolean isTitle(List<String> cells) {
        return cells.stream().anyMatch(cell -> cell.length() > 40);
    }

    private static List<String> spread(List<String> cells, List<String> below) {
        List<String> spread = new ArrayList<>(cells);
        for (int c = 1; c < spread.size(); c++) {
            if (spread.get(c).isEmpty()
                    && !below.get(c).isEmpty()
                    && !below.get(c - 1).isEmpty()) {
                spread.set(c, spread.get(c - 1));
            }
        }
        return spread;
    }

    /** What stands above times says what is read at them; above other headings it says nothing of theirs. */
    private static List<String> overTimes(List<String> group, List<String> below) {
        List<String> times =
                below.stream().filter(cell -> CellForm.of(cell).isValue()).toList();
        if (!areHeadTimes(times)) {
            return group;
        }
        List<String> over = new ArrayList<>();
        for (int c = 0; c < group.size(); c++) {
            over.add(CellForm.of(below.get(c)).isValue() ? group.get(c) : "");
        }
        return over;
    }

    /** A second row of headings has words alone where values stand below it. */
    private static boolean isSecond(SheetArea area, int row, int to) {
        List<String> cells = area.row(row);
        if (row + 1 >= to
                || isUnits(cells)
                || cells.stream().anyMatch(cell -> CellForm.of(cell).isValue())) {
            return false;
        }
        int filled = 0;
        int over = 0;
        for (int c = 0; c < cells.size(); c++) {
            boolean word = !cells.get(c).isEmpty();
            filled += word ? 1 : 0;
            over += word && CellForm.of(area.cell(row + 1, c)).isValue() ? 1 : 0;
        }
        return filled >= 2 && 2 * over >= filled;
    }
}
