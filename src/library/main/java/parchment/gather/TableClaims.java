package parchment.gather;

import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import parchment.gather.ListColumn.Confidence;
import parchment.gather.TableKind.What;
import parchment.sheet.DateOrder;

/** Weighs how well a table fits to be a list of batches, of lots, of work on a machine, or a recording. */
final class TableClaims {
    private static final int FEWEST_READINGS = 10;
    private static final double MOST_ON_A_SCALE = 10;
    private static final int ROWS_LOOKED_AT = 2_000;

    /** A roast of eight minutes and more has as many readings at least (common practice, no source). */
    private static final int FEWEST_OF_A_ROAST = 12;

    /** Readings by hand are a minute apart at most, and roasts of one machine eight or more, in seconds (common practice, no source). */
    private static final double LONGEST_STEP = 180;

    private static final Set<ListMeaning> OF_ROASTS = Set.of(
            ListMeaning.GREEN_MASS,
            ListMeaning.ROASTED_MASS,
            ListMeaning.MASS_LOSS,
            ListMeaning.CHARGE_TEMPERATURE,
            ListMeaning.DROP_TEMPERATURE,
            ListMeaning.PLANNED_DROP_TEMPERATURE,
            ListMeaning.YELLOWING,
            ListMeaning.FIRST_CRACK_START,
            ListMeaning.SECOND_CRACK_START,
            ListMeaning.DROP,
            ListMeaning.DEVELOPMENT_TIME,
            ListMeaning.DEVELOPMENT_RATIO,
            ListMeaning.WHOLE_BEAN_COLOUR,
            ListMeaning.GROUND_COLOUR,
            ListMeaning.MACHINE,
            ListMeaning.OPERATOR,
            ListMeaning.LOT);

    private static final Set<ListMeaning> OF_LOTS = Set.of(
            ListMeaning.ORIGIN,
            ListMeaning.PROCESS,
            ListMeaning.VARIETY,
            ListMeaning.MOISTURE,
            ListMeaning.DENSITY,
            ListMeaning.ARRIVED_ON,
            ListMeaning.HARVESTED_ON,
            ListMeaning.STORAGE,
            ListMeaning.SCREEN_SIZE);

    private TableClaims() {}

    static List<TableKind> of(FoundTable table, Clues clues) {
        List<TableKind> claims = new ArrayList<>();
        TableKind recording = recording(table);
        claims.add(recording);
        if (recording.score() > 0.5) {
            return claims;
        }
        ListColumns columns = ListColumns.of(table, clues);
        claims.add(batches(columns, clues));
        claims.add(lots(columns));
        claims.add(upkeep(columns));
        return claims;
    }

    private static TableKind batches(ListColumns columns, Clues clues) {
        int roasts = 0;
        List<String> found = new ArrayList<>();
        for (ListColumn column : columns.columns()) {
            if (OF_ROASTS.contains(column.meaning())) {
                roasts++;
                found.add(column.meaning().words());
            }
        }
        boolean named = columns.of(ListMeaning.BATCH).isPresent();
        boolean joined = columns.of(ListMeaning.BATCH)
                .filter(column -> column.reason().contains("curve files"))
                .isPresent();
        boolean dated = columns.of(ListMeaning.DATE).isPresent()
                || columns.of(ListMeaning.ROASTED_AT).isPresent();
        long lots = columns.columns().stream()
                .filter(column -> OF_LOTS.contains(column.meaning()))
                .count();
        double score = (joined ? 0.45 : named ? 0.25 : dated ? 0.15 : 0)
                + (named && dated ? 0.2 : 0)
                + Math.min(0.45, 0.15 * roasts)
                - Math.min(0.3, 0.08 * lots);
        if (roasts == 0 && isScale(columns)) {
            return new TableKind(What.BATCHES, 0, "holds numbers of one scale and nothing of roasts");
        }
        boolean any = named || dated && roasts >= 2;
        if (!any) {
            return new TableKind(What.BATCHES, 0, "names no batches");
        }
        String reason = (joined
                        ? "names batches that have curves"
                        : named ? "has a column of batches" : "has a date for each row")
                + (found.isEmpty() ? "" : " and columns of roasts: " + String.join(", ", found));
        return new TableKind(What.BATCHES, Math.max(0, Math.min(1, score)), reason);
    }

    /** Two or more columns of numbers from 0 to 10 that nobody weighs or measures, beside names, dates and notes only, are scores. */
    private static boolean isScale(ListColumns columns) {
        int scores = 0;
        for (ListColumn column : columns.columns()) {
            ColumnValues values = ColumnValues.of(columns.table(), column.place());
            boolean scale = values.mostly(CellForm.NUMBER)
                    && values.unit().isEmpty()
                    && values.quantile(0) >= 0
                    && values.quantile(1) <= MOST_ON_A_SCALE;
            if (column.meaning() == ListMeaning.EXTRA && values.filled() > 0) {
                if (!scale) {
                    return false;
                }
                scores++;
            }
        }
        return scores >= 2;
    }

    private static TableKind lots(ListColumns columns) {
        List<String> found = new ArrayList<>();
        for (ListColumn column : columns.columns()) {
            if (OF_LOTS.contains(column.meaning())) {
                found.add(column.meaning().words());
            }
        }
        boolean lot = lotPlace(columns) >= 0;
        boolean marks = columns.columns().stream()
                .anyMatch(column -> column.meaning().mark().isPresent()
                        || column.meaning() == ListMeaning.ROASTED_MASS
                        || column.meaning() == ListMeaning.CHARGE_TEMPERATURE);
        double score = found.isEmpty() || !lot || marks ? 0 : Math.min(0.95, 0.35 + 0.2 * found.size());
        return new TableKind(What.LOTS, score, "has a row for each lot with its " + String.join(", ", found));
    }

    /** Returns the column that names each lot once, or -1: a column of lots, of batches ("lote"), or of anything that stands once. */
    static int lotPlace(ListColumns columns) {
        for (ListMeaning meaning : List.of(ListMeaning.LOT, ListMeaning.BATCH, ListMeaning.ORIGIN)) {
            for (ListColumn column : columns.columns()) {
                if (column.meaning() == meaning) {
                    List<String> cells = columns.table().column(column.place());
                    long different = cells.stream()
                            .map(cell -> cell.toLowerCase(Locale.ROOT))
                            .distinct()
                            .count();
                    if (different >= 0.9 * cells.size()) {
                        return column.place();
                    }
                    // Lots that stand twice are told; where they grew is no name while a column is called the lot.
                    if (meaning == ListMeaning.LOT && isNoListOfRoasts(columns)) {
                        return column.place();
                    }
                }
            }
        }
        return isNoListOfRoasts(columns) ? longestNames(columns) : -1;
    }

    private static boolean isNoListOfRoasts(ListColumns columns) {
        return columns.of(ListMeaning.BATCH).isEmpty()
                && columns.of(ListMeaning.DATE).isEmpty()
                && columns.of(ListMeaning.ROASTED_AT).isEmpty()
                && columns.columns().stream()
                                .filter(column -> OF_LOTS.contains(column.meaning()))
                                .count()
                        >= 2;
    }

    /** Lots under "name" or "code" beside their origin and process: the words of most letters that stand once each. */
    private static int longestNames(ListColumns columns) {
        int best = -1;
        int most = 0;
        for (ListColumn column : columns.columns()) {
            ColumnValues values = ColumnValues.of(columns.table(), column.place());
            int letters = values.cells().stream().mapToInt(String::length).sum();
            boolean once = values.distinct() == values.cells().size() && values.mostly(CellForm.WORDS);
            if (once && letters > most && !OF_LOTS.contains(column.meaning()) && column.meaning() != ListMeaning.NOTE) {
                best = column.place();
                most = letters;
            }
        }
        return best;
    }

    private static TableKind upkeep(ListColumns columns) {
        boolean dated = columns.of(ListMeaning.DATE).isPresent()
                || columns.of(ListMeaning.ROASTED_AT).isPresent();
        boolean work = columns.of(ListMeaning.WORK)
                .filter(c -> c.confidence() != Confidence.OPEN)
                .isPresent();
        boolean words = work || columns.of(ListMeaning.NOTE).isPresent();
        boolean roasts = columns.columns().stream()
                .anyMatch(column -> column.meaning().kind() == ListMeaning.Kind.MASS
                        || column.meaning().mark().isPresent()
                        || column.meaning() == ListMeaning.CHARGE_TEMPERATURE);
        int width = columns.columns().size();
        double score = !dated || !words || roasts ? 0 : work ? 0.85 : width <= 3 ? 0.5 : 0.2;
        return new TableKind(What.UPKEEP, score, "has dates and words about work, and nothing of roasts");
    }

    /** A recording has a column of times that go on and a smooth one that goes over many degrees. */
    private static TableKind recording(FoundTable table) {
        if (table.rows().size() < FEWEST_READINGS) {
            return new TableKind(What.RECORDING, 0, "has fewer than " + FEWEST_READINGS + " rows");
        }
        FoundTable some = table.rows().size() <= ROWS_LOOKED_AT
                ? table
                : new FoundTable(
                        table.sheet(),
                        List.of(),
                        table.headings(),
                        table.rows().subList(0, ROWS_LOOKED_AT),
                        table.lines().subList(0, ROWS_LOOKED_AT),
                        List.of());
        if (isSparse(some)) {
            return new TableKind(What.RECORDING, 0, "has minutes from row to row");
        }
        List<ColumnSteps> steps = new ArrayList<>();
        for (int i = 0; i < some.headings().size(); i++) {
            steps.add(ColumnSteps.of(some.column(i), table.sheet().decimal()));
        }
        Optional<ColumnSteps> times =
                steps.stream().filter(ColumnSteps::goesOn).min(Comparator.comparingDouble(ColumnSteps::evenness));
        boolean smooth = steps.stream().anyMatch(each -> each != times.orElse(each) && each.isSmooth());
        if (!smooth) {
            return new TableKind(What.RECORDING, 0, "has no times that go on beside a smooth line");
        }
        // Numbers of batches go on evenly too.
        boolean batches = table.headings().stream()
                .anyMatch(heading -> TradeWords.of(heading).whole().contains(ListMeaning.BATCH));
        return new TableKind(
                What.RECORDING,
                batches ? 0.45 : 0.9,
                "has times that go on evenly and a smooth line of temperatures beside them");
    }

    /** Returns whether the rows are minutes apart, or a few of each day, as roasts are and readings are not. */
    static boolean isSparse(FoundTable table) {
        for (int c = 0; c < table.headings().size(); c++) {
            List<String> days = table.column(c).stream()
                    .limit(ROWS_LOOKED_AT)
                    .filter(cell -> CellForm.of(cell) == CellForm.DATE)
                    .toList();
            long different = days.stream().distinct().count();
            if (2 * days.size() > Math.min(ROWS_LOOKED_AT, table.rows().size())
                    && different > 1
                    && days.size() < FEWEST_OF_A_ROAST * different) {
                return true;
            }
            double[] seconds = table.column(c).stream()
                    .limit(ROWS_LOOKED_AT)
                    .filter(cell -> CellForm.of(cell) == CellForm.DATE_AND_TIME)
                    .flatMap(cell -> WrittenDay.ofCell(cell).stream())
                    .flatMap(day -> day.on(DateOrder.DAY_MONTH_YEAR).stream()
                            .map(date -> date.atTime(day.clock().orElse(LocalTime.MIDNIGHT))))
                    .mapToDouble(at -> at.toEpochSecond(ZoneOffset.UTC))
                    .toArray();
            double[] steps = new double[Math.max(0, seconds.length - 1)];
            for (int i = 0; i < steps.length; i++) {
                steps[i] = Math.abs(seconds[i + 1] - seconds[i]);
            }
            if (2 * seconds.length > table.rows().size() && ColumnValues.quantile(steps, 0.5) > LONGEST_STEP) {
                return true;
            }
        }
        return false;
    }
}
