package parchment.gather.corpus;

import java.util.List;
import java.util.Set;
import parchment.gather.corpus.StrangeKind.Fact;

/** What files are called, and where the batch's number stands. */
final class KindsOfNames {
    private KindsOfNames() {}

    private static Kind.Part curves(Naming naming) {
        return CorpusKinds.LOGGED.files(TextStyle.PLAIN, naming);
    }

    private static Kind.Part list() {
        return CorpusKinds.SHORT.text(TextStyle.PLAIN, "list.csv");
    }

    static List<Kind> all() {
        return List.of(
                Kind.of("names: 101.csv", curves(Naming.number("%d.csv")), list()),
                Kind.of("names: Batch 101 - Wren.csv", curves(Naming.numberAndLot("Batch %d - %s.csv")), list()),
                Kind.of("names: 00101_lot.csv", curves(Naming.numberAndLot("%05d_%s.csv")), list()),
                Kind.of(
                        "names: R-101 in a folder of each day",
                        curves(Naming.dayAndNumber("yyyy-MM-dd", "%s/R-%d.csv")),
                        list()),
                Kind.of("names: day and number", curves(Naming.dayAndNumber("yyMMdd", "%s #%d.csv")), list()),
                Kind.of(
                        "names: only the moment it began, a list with numbers",
                        curves(Naming.started("yyyy-MM-dd_HHmmss'.csv'")),
                        list()),
                Kind.of(
                        "names: only the minute of the charge, a list with numbers",
                        curves(Naming.charged("yyyyMMdd_HHmm'.csv'")),
                        list()),
                Kind.of(
                        "names: only the moment it began, no list",
                        curves(Naming.started("'log 'yyyy-MM-dd HH-mm-ss'.csv'"))),
                Kind.of(
                        "names: the logger's own count, the time in a row above",
                        CorpusKinds.LOGGED
                                .under(roast -> new Grid("above")
                                        .row("Started", roast.chargedAt().plusSeconds((long)
                                                roast.readings().get(0).seconds()))
                                        .row(""))
                                .files(
                                        TextStyle.PLAIN,
                                        new Naming(
                                                Set.of(Fact.DAYS, Fact.TIMES),
                                                roast -> "LOG0" + (7000 + (roast.number() * 37) % 1000) + ".CSV")),
                        list()),
                Kind.of(
                        "names: the batch only in a row above, padded with commas",
                        CorpusKinds.LOGGED
                                .under(roast -> new Grid("above")
                                        .row(
                                                "Batch " + roast.number(),
                                                roast.chargedAt().plusSeconds((long)
                                                        roast.readings().get(0).seconds()),
                                                "",
                                                ""))
                                .files(
                                        TextStyle.AMERICAN,
                                        Naming.charged("'data_'MMdd_HHmmss'.csv'")
                                                .telling(Fact.BATCHES, Fact.DAYS, Fact.TIMES)),
                        ListParts.of(
                                        ListColumn.number("Batch #"),
                                        ListColumn.date("Date"),
                                        ListColumn.lot("Coffee"),
                                        ListColumn.green("Green (lb)", ListColumn.POUND),
                                        ListColumn.roasted("Roasted (lb)", ListColumn.POUND))
                                .text(TextStyle.AMERICAN, "Roast list.csv")),
                Kind.of(
                        "names: accents and commas",
                        curves(Naming.numberAndLot("Röstung Nº%d, %s (fertig).csv")),
                        list()));
    }
}
