package parchment.gather.corpus;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import parchment.gather.corpus.Kind.Part;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.ScoreParts.Words;
import parchment.gather.corpus.StrangeKind.Fact;

/** Score sheets beside curves and a list. */
final class KindsOfScores {
    private static final Set<Fact> SCORES = Set.of(Fact.SCORES);

    private KindsOfScores() {}

    private static Kind beside(String name, Part... parts) {
        Kind kind = Kind.of(
                "scores: " + name,
                CorpusKinds.LOGGED.every(2).files(TextStyle.PLAIN, Naming.numberAndLot("Batch %d - %s.csv")),
                CorpusKinds.SHORT.text(TextStyle.PLAIN, "Roasts.csv"));
        for (Part part : parts) {
            kind = kind.and(part);
        }
        return kind;
    }

    private static Part grid(Set<Fact> facts, String file, Function<Roastery, Grid> grid) {
        return new Part(facts, (roastery, folder, random) -> {
            if (file.endsWith("csv")) {
                TextStyle.PLAIN.write(grid.apply(roastery), folder.resolve(file));
            } else {
                Spreadsheets.write(folder.resolve(file), grid.apply(roastery));
            }
        });
    }

    static List<Kind> all() {
        return List.of(
                beside(
                        "one cup a row",
                        ScoreParts.cups(TextStyle.PLAIN, "scores.csv", Words.ENGLISH, ScoreParts.NUMBER)),
                beside(
                        "one cup a row, German, semicolons",
                        ScoreParts.cups(
                                TextStyle.GERMAN.in("windows-1252"),
                                "Verkostung.csv",
                                Words.GERMAN,
                                ScoreParts.NUMBER)),
                beside(
                        "one cup a row, Spanish workbook",
                        ScoreParts.cupsSheet("cata.xlsx", Words.SPANISH, ScoreParts.NUMBER)),
                beside(
                        "one cup a row, French .ods",
                        ScoreParts.cupsSheet("dégustation.ods", Words.FRENCH, ScoreParts.NUMBER)),
                beside(
                        "one cup a row, Italian, batch and lot in words",
                        ScoreParts.cups(TextStyle.SPANISH, "assaggi.csv", Words.ITALIAN, ScoreParts.NAME_AND_LOT)),
                beside(
                        "cuppers as columns, an attribute a row",
                        grid(
                                SCORES,
                                "scores.csv",
                                r -> ScoreParts.cuppersAsColumns(r, Words.ENGLISH, ScoreParts.NUMBER))),
                beside(
                        "cuppers merged above their attributes",
                        grid(SCORES, "scores.xlsx", r -> ScoreParts.cuppersAbove(r, Words.ENGLISH, ScoreParts.NUMBER))),
                beside("a file each cupper", new Part(SCORES, (roastery, folder, random) -> {
                    for (Grid sheet : ScoreParts.ofEachCupper(roastery, Words.ENGLISH, ScoreParts.NUMBER)) {
                        TextStyle.PLAIN.write(sheet, folder.resolve("Cupping " + sheet.name() + ".csv"));
                    }
                })),
                beside(
                        "a tab each cupper",
                        new Part(
                                SCORES,
                                (roastery, folder, random) -> Spreadsheets.write(
                                        folder.resolve("cuppings.xlsx"),
                                        ScoreParts.ofEachCupper(roastery, Words.PORTUGUESE, ScoreParts.NUMBER)))),
                beside(
                        "averages only",
                        grid(
                                Set.of(Fact.MEAN_SCORES),
                                "averages.csv",
                                r -> ScoreParts.means(r, Words.ENGLISH, ScoreParts.NUMBER))),
                beside(
                        "averages only, by day and lot, workbook",
                        grid(
                                Set.of(Fact.MEAN_SCORES),
                                "means.xlsx",
                                r -> ScoreParts.means(
                                        r,
                                        new Words("Tasted", "", "Roast date|Coffee", Words.ENGLISH.attributes()),
                                        ScoreParts.DAY_AND_LOT))),
                beside(
                        "blind codes with a key",
                        ScoreParts.cups(
                                TextStyle.PLAIN,
                                "blind scores.csv",
                                new Words("Date", "Cupper", "Code", Words.ENGLISH.attributes()),
                                ScoreParts.CODE),
                        grid(Set.of(), "key.csv", r -> ScoreParts.codes(r, "Date", "Code", "Batch"))),
                beside(
                        "blind codes, the key on another tab",
                        new Part(
                                SCORES,
                                (roastery, folder, random) -> Spreadsheets.write(
                                        folder.resolve("blind.xlsx"),
                                        ScoreParts.cups(
                                                roastery,
                                                new Words("Datum", "Name", "Nummer", Words.GERMAN.attributes()),
                                                ScoreParts.CODE),
                                        ScoreParts.codes(roastery, "Datum", "Nummer", "Röstung")
                                                .named("Schlüssel")))),
                beside(
                        "by roast day and lot",
                        ScoreParts.cups(
                                TextStyle.PLAIN,
                                "tasting.csv",
                                new Words("Cupped", "Name", "Roasted|Coffee", Words.ENGLISH.attributes()),
                                ScoreParts.DAY_AND_LOT)),
                beside("on its side, a file each cupping", new Part(SCORES, (roastery, folder, random) -> {
                    for (Map.Entry<LocalDate, List<Tasting>> day :
                            ScoreParts.byDay(roastery).entrySet()) {
                        Roastery only = new Roastery(roastery.batches(), day.getValue());
                        TextStyle.PLAIN.write(
                                ScoreParts.cups(only, Words.ENGLISH, ScoreParts.NUMBER)
                                        .transposed(),
                                folder.resolve("cupping " + day.getKey() + ".csv"));
                    }
                })),
                beside(
                        "a title and the day above, a file each cupping",
                        new Part(SCORES, (roastery, folder, random) -> {
                            for (Map.Entry<LocalDate, List<Tasting>> day :
                                    ScoreParts.byDay(roastery).entrySet()) {
                                Roastery only = new Roastery(roastery.batches(), day.getValue());
                                Grid sheet = new Grid("Cupping")
                                        .row("Cupping of", day.getKey())
                                        .row("");
                                ScoreParts.cups(only, Words.ENGLISH, ScoreParts.NUMBER)
                                        .rows()
                                        .forEach(row -> sheet.row(row.subList(1, row.size())));
                                TextStyle.PLAIN.write(
                                        sheet.padded(), folder.resolve("cupping " + day.getKey() + ".csv"));
                            }
                        })));
    }
}
