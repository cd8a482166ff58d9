package parchment.gather.corpus;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import parchment.gather.corpus.CurveColumn.Clock;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/** Spreadsheets as roasters keep them. */
final class KindsOfSpreadsheets {
    private KindsOfSpreadsheets() {}

    private static Kind.Part curves() {
        return CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv"));
    }

    private static final CurveParts SPARSE = CurveParts.of(
                    CurveColumn.sinceStart("Time [s]", Clock.SECONDS),
                    CurveColumn.bean("Bean [°C]"),
                    CurveColumn.air("Air [°C]"))
            .every(2);

    private static final Grid NONSENSE = new Grid("To do")
            .row("Call about the chimney")
            .row("new gasket?", "", "12.50")
            .row("bags", 400, "labels", 250);

    private static final Grid HOLIDAYS = new Grid("Holidays")
            .row("Who", "From", "Until")
            .row("Maren", "3 May", "17 May")
            .row("Jørn", "1 Aug", "8 Aug");

    private static Kind.Part monthly(String file) {
        ListParts listed = CorpusKinds.LISTED;
        return new Kind.Part(listed.facts(), (roastery, folder, random) -> {
            Map<String, List<Roast>> months = roastery.batches().stream()
                    .collect(Collectors.groupingBy(
                            roast -> Naming.pattern("MMMM yyyy").format(roast.chargedAt()),
                            TreeMap::new,
                            Collectors.toList()));
            List<Grid> tabs = new ArrayList<>();
            months.forEach((month, roasts) -> tabs.add(listed.table(roasts).named(month)));
            tabs.add(listed.head().named("Template"));
            Spreadsheets.write(folder.resolve(file), tabs);
        });
    }

    private static Grid merged(Grid grid) {
        Grid under = new Grid("Roasts")
                .row("Roast", "", "", "Coffee", "Weights", "", "Times", "", "", "")
                .add(grid)
                .merge(0, 0, 0, 2)
                .merge(0, 4, 0, 5)
                .merge(0, 6, 0, 8);
        return under;
    }

    private static Grid titled(Grid grid) {
        return new Grid("Log")
                .row("Quayside roasting room")
                .row("Roast log", "", "", "2031")
                .row("")
                .add(grid)
                .merge(0, 0, 0, 9);
    }

    private static Grid totalled(Grid grid) {
        double green = grid.rows().stream()
                .skip(1)
                .mapToDouble(row -> (Double) row.get(4))
                .sum();
        return grid.row("").row("", "", "", "Sum", Cells.rounded(green, 2));
    }

    static List<Kind> all() {
        ListParts listed = CorpusKinds.LISTED;
        ListParts german = ListParts.of(
                ListColumn.number("Röstung"),
                ListColumn.date("Datum"),
                ListColumn.time("Beginn"),
                ListColumn.lot("Sorte"),
                ListColumn.green("Rohkaffee g", ListColumn.GRAM),
                ListColumn.roasted("Röstkaffee g", ListColumn.GRAM),
                ListColumn.crack("Crack", Clock.HOURS),
                ListColumn.drop("Ende", Clock.HOURS));
        return List.of(
                Kind.of("sheets: a list in .xlsx", curves(), listed.sheet("Roast log.xlsx")),
                Kind.of("sheets: a list in .ods", curves(), listed.sheet("Roast log.ods")),
                Kind.of(
                        "sheets: German .xlsx, hours, minutes, seconds as shares of a day",
                        curves(),
                        german.sheet("Röstungen.xlsx")),
                Kind.of("sheets: German .ods", curves(), german.sheet("Röstungen.ods")),
                Kind.of(
                        "sheets: serial dates without a format",
                        curves(),
                        ListParts.of(
                                        ListColumn.number("Batch"),
                                        ListColumn.serial("Roasted"),
                                        ListColumn.lot("Coffee"),
                                        ListColumn.green("Green kg", ListColumn.KILOGRAM),
                                        ListColumn.roasted("Roasted kg", ListColumn.KILOGRAM),
                                        ListColumn.drop("Drop", Clock.DAY_SHARE))
                                .sheet("log.xlsx")),
                Kind.of(
                        "sheets: titles above, a merged one",
                        curves(),
                        listed.sheet("log.xlsx", KindsOfSpreadsheets::titled)),
                Kind.of(
                        "sheets: merged heads above the heads",
                        curves(),
                        listed.sheet("log.xlsx", KindsOfSpreadsheets::merged)),
                Kind.of("sheets: sums below", curves(), listed.sheet("log.xlsx", KindsOfSpreadsheets::totalled)),
                Kind.of(
                        "sheets: a list among sheets of nonsense",
                        curves(),
                        listed.sheet("office.xlsx", grid -> grid, NONSENSE, HOLIDAYS)),
                Kind.of("sheets: a tab each month and a template", curves(), monthly("roasts.xlsx")),
                Kind.of(
                        "sheets: hidden columns",
                        curves(),
                        listed.sheet("log.xlsx", grid -> grid.hide(2).hide(5))),
                Kind.of("sheets: a list on its side", curves(), listed.sheet("log.xlsx", Grid::transposed)),
                Kind.of(
                        "sheets: one workbook with a tab each batch",
                        SPARSE.tabs("Roasts.xlsx", Naming.number("Batch %d"))),
                Kind.of(
                        "sheets: one .ods with a tab each batch",
                        SPARSE.every(5).tabs("Roasts.ods", Naming.number("%d"))),
                Kind.of(
                        "sheets: one workbook, tabs and a list",
                        new Kind.Part(
                                EnumSet.copyOf(all(listed.facts(), SPARSE.facts())), (roastery, folder, random) -> {
                                    List<Grid> tabs = new ArrayList<>(List.of(listed.table(roastery.batches())));
                                    tabs.addAll(SPARSE.tabs(roastery, roast -> "#" + roast.number()));
                                    Spreadsheets.write(folder.resolve("All roasts.xlsx"), tabs);
                                })),
                Kind.of("sheets: a workbook each batch", SPARSE.workbooks(Naming.number("Batch %d.xlsx"))),
                Kind.of(
                        "sheets: a workbook each day with its roasts side by side",
                        new Kind.Part(
                                EnumSet.of(Fact.BATCHES, Fact.DAYS, Fact.BEAN_CURVES, Fact.AIR_CURVES),
                                (roastery, folder, random) -> {
                                    for (var day : CurveParts.byDay(roastery).entrySet()) {
                                        Spreadsheets.write(
                                                folder.resolve(day.getKey() + ".xlsx"),
                                                SPARSE.every(5).wide(day.getValue()));
                                    }
                                })));
    }

    private static List<Fact> all(Set<Fact> some, Set<Fact> more) {
        List<Fact> facts = new ArrayList<>(some);
        facts.addAll(more);
        return facts;
    }
}
