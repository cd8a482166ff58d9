package parchment.gather.corpus;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.gather.corpus.CurveColumn.Clock;
import parchment.gather.corpus.CurveParts.Headings;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/** How tables lie in text files: one a day, wide, transposed, under titles, in one file with others. */
final class KindsOfLayouts {
    private KindsOfLayouts() {}

    private static Kind.Part curves() {
        return CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv"));
    }

    private static final CurveParts CLOCKED = CurveParts.of(
            CurveColumn.timeOfDay("Time"),
            CurveColumn.bean("Bean temperature [C]"),
            CurveColumn.air("Air temperature [C]"),
            CurveColumn.gas("Gas [%]"));

    private static Grid totals(Grid grid, List<Roast> roasts) {
        double green = roasts.stream().mapToDouble(Roast::greenKilograms).sum();
        double roasted = roasts.stream().mapToDouble(Roast::roastedKilograms).sum();
        return grid.row("")
                .row("Total", "", "", "", Cells.rounded(green, 2), Cells.rounded(roasted, 2), "", "", "", "");
    }

    private static Grid titled(Grid grid) {
        return new Grid("Roasts")
                .row("Quayside roasting room: roast log")
                .row("kept by Maren", "", "page 3")
                .row("")
                .add(grid)
                .padded();
    }

    static List<Kind> all() {
        Kind.Part onlyList = new Kind.Part(CorpusKinds.LISTED.facts(), (roastery, folder, random) -> {
            Map<String, List<Roast>> months = roastery.batches().stream()
                    .collect(Collectors.groupingBy(
                            roast -> Naming.pattern("yyyy-MM").format(roast.chargedAt())));
            for (Map.Entry<String, List<Roast>> month : months.entrySet()) {
                TextStyle.PLAIN.write(
                        CorpusKinds.LISTED.table(month.getValue()), folder.resolve("log " + month.getKey() + ".csv"));
            }
        });
        return List.of(
                Kind.of(
                        "layouts: a file of readings each day, a list",
                        CLOCKED.days(TextStyle.PLAIN, "yyyy-MM-dd'.csv'"),
                        CorpusKinds.LISTED.text(TextStyle.PLAIN, "list.csv")),
                Kind.of(
                        "layouts: a file each day with the batch beside each reading",
                        CurveParts.of(
                                        CurveColumn.batch("Batch"),
                                        CurveColumn.dateAndTime("Time"),
                                        CurveColumn.bean("Beans [°C]"),
                                        CurveColumn.air("Air [°C]"),
                                        CurveColumn.gas("Gas [%]"))
                                .days(TextStyle.PLAIN, "'roasts 'yyyyMMdd'.csv'")),
                Kind.of(
                        "layouts: a wide table each day",
                        CurveParts.of(
                                        CurveColumn.sinceStart("Time [s]", Clock.SECONDS),
                                        CurveColumn.bean("Bean [°C]"),
                                        CurveColumn.air("Air [°C]"))
                                .every(2)
                                .wideDays(TextStyle.PLAIN, "yyyy-MM-dd'.csv'")),
                Kind.of(
                        "layouts: curves without headings",
                        CorpusKinds.LOGGED.headed(Headings.NONE).files(TextStyle.PLAIN, Naming.number("%d.csv"))),
                Kind.of(
                        "layouts: lines of words above the readings",
                        CorpusKinds.LOGGED
                                .under(roast -> new Grid("above")
                                        .row("# Roast " + roast.number())
                                        .row("# Coffee: " + roast.lot())
                                        .row("# Operator: Maren")
                                        .row("#"))
                                .files(TextStyle.PLAIN, Naming.number("roast%d.txt"))),
                Kind.of(
                        "layouts: words above in two columns",
                        new Kind.Part(
                                Set.of(
                                        Fact.BATCHES,
                                        Fact.DAYS,
                                        Fact.TIMES,
                                        Fact.BEAN_CURVES,
                                        Fact.AIR_CURVES,
                                        Fact.GAS),
                                CorpusKinds.LOGGED
                                        .under(roast -> new Grid("above")
                                                .row("Batch", roast.number())
                                                .row("Charged", roast.chargedAt())
                                                .row("Coffee", roast.lot())
                                                .row("Green weight", Cells.number(roast.greenKilograms()) + " kg")
                                                .row(""))
                                        .files(TextStyle.PLAIN, Naming.number("%d.csv"))
                                        .writing())),
                Kind.of(
                        "layouts: marks typed beside the readings",
                        CurveParts.of(
                                        CurveColumn.sinceStart("Time", Clock.MINUTES),
                                        CurveColumn.bean("Bean °C"),
                                        CurveColumn.air("Air °C"),
                                        CurveColumn.typed("Event", "Charge", "Yellow", "First crack", "Drop"))
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "layouts: marks typed beside readings each five seconds, German",
                        CurveParts.of(
                                        CurveColumn.sinceStart("Zeit", Clock.MINUTES),
                                        CurveColumn.bean("Bohne °C"),
                                        CurveColumn.air("Abluft °C"),
                                        CurveColumn.typed("Ereignis", "Füllen", "Gelb", "Erster Crack", "Auswurf"))
                                .every(5)
                                .files(TextStyle.GERMAN, Naming.number("Röstung %d.csv"))),
                Kind.of(
                        "layouts: readings by hand each 30 seconds from the charge",
                        CurveParts.of(
                                        CurveColumn.sinceCharge("Min", Clock.MINUTES),
                                        CurveColumn.bean("Bean temp"),
                                        CurveColumn.gas("Gas"))
                                .every(30)
                                .fromTheCharge()
                                .files(TextStyle.PLAIN, Naming.number("Batch %d.csv"))),
                Kind.of(
                        "layouts: a list under titles, padded with commas",
                        curves(),
                        CorpusKinds.LISTED.text(TextStyle.PLAIN, "Log.csv", KindsOfLayouts::titled)),
                Kind.of(
                        "layouts: a list with totals below",
                        curves(),
                        CorpusKinds.LISTED.made(
                                TextStyle.PLAIN,
                                "Log.csv",
                                roasts -> totals(CorpusKinds.LISTED.table(roasts), roasts))),
                Kind.of(
                        "layouts: a list on its side",
                        curves(),
                        CorpusKinds.LISTED.text(TextStyle.PLAIN, "Log.csv", Grid::transposed)),
                Kind.of(
                        "layouts: a list beside a list of stock",
                        curves(),
                        CorpusKinds.LISTED.text(
                                TextStyle.PLAIN,
                                "Log.csv",
                                grid -> grid.beside(new Grid("stock")
                                        .row("Green in store", "Bags")
                                        .row("Wren", 4)
                                        .row("Kela, washed", 2)
                                        .row("Salt Meadow", 7)))),
                Kind.of("layouts: a list each month", curves(), onlyList),
                Kind.of(
                        "layouts: a list with the day written once",
                        curves(),
                        CorpusKinds.LISTED.text(TextStyle.PLAIN, "Log.csv", KindsOfLayouts::dayOnce)),
                Kind.of("layouts: a list only, no curves", CorpusKinds.LISTED.text(TextStyle.PLAIN, "Log.csv")),
                Kind.of(
                        "layouts: the newest row first",
                        curves(),
                        CorpusKinds.LISTED.made(TextStyle.PLAIN, "Log.csv", roasts -> {
                            List<Roast> newest = new ArrayList<>(roasts);
                            Collections.reverse(newest);
                            return CorpusKinds.LISTED.table(newest);
                        })));
    }

    private static Grid dayOnce(Grid grid) {
        Object before = "";
        for (List<Object> row : grid.rows()) {
            if (row.get(1).equals(before)) {
                row.set(1, "");
            } else {
                before = row.get(1);
            }
        }
        return grid;
    }
}
