package parchment.gather.corpus;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import parchment.gather.corpus.Kind.Part;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/**
 * Writes a list of roasts.
 *
 * @param columns its columns
 */
record ListParts(List<ListColumn> columns) {
    static ListParts of(ListColumn... columns) {
        return new ListParts(List.of(columns));
    }

    Set<Fact> facts() {
        Set<Fact> facts = EnumSet.noneOf(Fact.class);
        columns.forEach(column -> facts.addAll(column.facts()));
        return facts;
    }

    Grid head() {
        return new Grid("Roasts").row(columns.stream().map(ListColumn::head).toList());
    }

    List<Object> row(Roast roast) {
        List<Object> cells = new ArrayList<>();
        columns.forEach(column -> cells.add(column.cell().apply(roast)));
        return cells;
    }

    Grid rows(List<Roast> roasts) {
        Grid grid = new Grid("Roasts");
        roasts.forEach(roast -> grid.row(row(roast)));
        return grid;
    }

    Grid table(List<Roast> roasts) {
        return head().add(rows(roasts));
    }

    /** Returns a part with the list as text. */
    Part text(TextStyle style, String file) {
        return text(style, file, UnaryOperator.identity());
    }

    /** Returns a part with the list as text after something was done to it. */
    Part text(TextStyle style, String file, UnaryOperator<Grid> done) {
        return new Part(
                facts(),
                (roastery, folder, random) -> style.write(done.apply(table(roastery.batches())), folder.resolve(file)));
    }

    /** Returns a part with the list as a spreadsheet after something was done to it. */
    Part sheet(String file, UnaryOperator<Grid> done, Grid... others) {
        return new Part(facts(), (roastery, folder, random) -> {
            List<Grid> sheets = new ArrayList<>(List.of(done.apply(table(roastery.batches()))));
            sheets.addAll(List.of(others));
            Spreadsheets.write(folder.resolve(file), sheets);
        });
    }

    Part sheet(String file) {
        return sheet(file, UnaryOperator.identity());
    }

    /** Returns a part with the list in another order of rows. */
    Part shuffled(TextStyle style, String file) {
        return new Part(facts(), (roastery, folder, random) -> {
            List<Roast> roasts = new ArrayList<>(roastery.batches());
            Collections.shuffle(roasts, new Random(random.nextLong()));
            style.write(table(roasts), folder.resolve(file));
        });
    }

    /** Returns a part with a table that is made of all roasts. */
    Part made(TextStyle style, String file, Function<List<Roast>, Grid> table) {
        return new Part(
                facts(),
                (roastery, folder, random) -> style.write(table.apply(roastery.batches()), folder.resolve(file)));
    }
}
