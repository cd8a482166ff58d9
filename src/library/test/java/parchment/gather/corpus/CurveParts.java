package parchment.gather.corpus;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import parchment.gather.corpus.Kind.Part;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/**
 * Writes readings: what the columns are, how often a row is written, what stands above.
 *
 * @param columns the columns
 * @param every seconds between rows
 * @param above rows above the headings
 * @param headed whether there is a row of headings
 * @param fromCharge whether the recording starts at the charge
 */
record CurveParts(
        List<CurveColumn> columns, int every, Function<Roast, Grid> above, Headings headed, Begin fromCharge) {
    enum Headings {
        WRITTEN,
        WITH_UNITS_BELOW,
        NONE
    }

    enum Begin {
        BEFORE_CHARGE,
        AT_CHARGE
    }

    static CurveParts of(CurveColumn... columns) {
        return new CurveParts(List.of(columns), 1, roast -> new Grid("above"), Headings.WRITTEN, Begin.BEFORE_CHARGE);
    }

    CurveParts every(int seconds) {
        return new CurveParts(columns, seconds, above, headed, fromCharge);
    }

    CurveParts under(Function<Roast, Grid> rows) {
        return new CurveParts(columns, every, rows, headed, fromCharge);
    }

    CurveParts headed(Headings other) {
        return new CurveParts(columns, every, above, other, fromCharge);
    }

    CurveParts fromTheCharge() {
        return new CurveParts(columns, every, above, headed, Begin.AT_CHARGE);
    }

    Set<Fact> facts() {
        Set<Fact> facts = EnumSet.noneOf(Fact.class);
        columns.forEach(column -> facts.addAll(column.facts()));
        return facts;
    }

    private Grid head(String name) {
        Grid grid = new Grid(name);
        if (headed != Headings.NONE) {
            grid.row(columns.stream()
                    .map(column -> column.head().split("\\|")[0])
                    .toList());
        }
        if (headed == Headings.WITH_UNITS_BELOW) {
            grid.row(columns.stream()
                    .map(column -> column.head().contains("|") ? column.head().split("\\|")[1] : "")
                    .toList());
        }
        return grid;
    }

    private Grid readings(Roast roast) {
        Grid grid = new Grid("readings");
        List<Reading> readings = roast.readings();
        for (int i = 0; i < readings.size(); i++) {
            Reading reading = readings.get(i);
            boolean marked = reading.seconds() == 0 || roast.marks().containsValue(reading.seconds());
            if ((reading.seconds() % every == 0 || marked && typed())
                    && (fromCharge == Begin.BEFORE_CHARGE || reading.seconds() >= 0)) {
                grid.row(columns.stream()
                        .map(column -> column.cell().of(roast, reading))
                        .toList());
            }
        }
        return grid;
    }

    private boolean typed() {
        return facts().contains(Fact.DROP);
    }

    /** Returns one roast's table. */
    Grid table(String name, Roast roast) {
        return new Grid(name).add(above.apply(roast)).add(head(name)).add(readings(roast));
    }

    /** Returns a part with one file for each roast. */
    Part files(TextStyle style, Naming naming) {
        Set<Fact> facts = facts();
        facts.addAll(naming.facts());
        return new Part(facts, (roastery, folder, random) -> {
            for (Roast roast : roastery.batches()) {
                style.write(table("curve", roast), folder.resolve(naming.name().apply(roast)));
            }
        });
    }

    /** Returns a part with a workbook for each roast. */
    Part workbooks(Naming naming) {
        Set<Fact> facts = facts();
        facts.addAll(naming.facts());
        return new Part(facts, (roastery, folder, random) -> {
            for (Roast roast : roastery.batches()) {
                Spreadsheets.write(folder.resolve(naming.name().apply(roast)), table("Log", roast));
            }
        });
    }

    /** Returns the tabs of all roasts, named after them. */
    List<Grid> tabs(Roastery roastery, Function<Roast, String> name) {
        return roastery.batches().stream()
                .map(roast -> table(name.apply(roast), roast))
                .toList();
    }

    /** Returns a part with one workbook that has a tab for each roast. */
    Part tabs(String file, Naming naming) {
        Set<Fact> facts = facts();
        facts.addAll(naming.facts());
        return new Part(
                facts,
                (roastery, folder, random) -> Spreadsheets.write(folder.resolve(file), tabs(roastery, naming.name())));
    }

    /** Returns a part with a file for each day. */
    Part days(TextStyle style, String pattern) {
        Set<Fact> facts = facts();
        facts.add(Fact.DAYS);
        return new Part(facts, (roastery, folder, random) -> {
            for (Map.Entry<LocalDate, List<Roast>> day : byDay(roastery).entrySet()) {
                Grid grid = head("day");
                day.getValue().forEach(roast -> grid.add(readings(roast)));
                style.write(grid, folder.resolve(Naming.pattern(pattern).format(day.getKey())));
            }
        });
    }

    /** Returns a part with a file for each day whose roasts' tables stand side by side. */
    Part wideDays(TextStyle style, String pattern) {
        Set<Fact> facts = facts();
        facts.add(Fact.DAYS);
        facts.add(Fact.BATCHES);
        return new Part(facts, (roastery, folder, random) -> {
            for (Map.Entry<LocalDate, List<Roast>> day : byDay(roastery).entrySet()) {
                style.write(
                        wide(day.getValue()),
                        folder.resolve(Naming.pattern(pattern).format(day.getKey())));
            }
        });
    }

    /** Returns the roasts' tables side by side, each under its number. */
    Grid wide(List<Roast> roasts) {
        List<Grid> blocks = new ArrayList<>();
        for (Roast roast : roasts) {
            List<Object> title = new ArrayList<>(List.of("Batch " + roast.number()));
            while (title.size() < columns.size()) {
                title.add("");
            }
            blocks.add(new Grid("wide").row(title).add(head("wide")).add(readings(roast)));
        }
        Grid wide = blocks.get(0);
        for (Grid block : blocks.subList(1, blocks.size())) {
            wide = wide.beside(block);
        }
        return wide.padded();
    }

    static Map<LocalDate, List<Roast>> byDay(Roastery roastery) {
        return roastery.batches().stream()
                .collect(Collectors.groupingBy(
                        roast -> roast.chargedAt().toLocalDate(), TreeMap::new, Collectors.toList()));
    }
}
