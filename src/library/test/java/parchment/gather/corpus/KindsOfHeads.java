package parchment.gather.corpus;

import java.util.List;
import parchment.gather.corpus.CurveColumn.Clock;

/** Lists beside plain curves, under the heads of six languages; trade words are common practice, no source. */
final class KindsOfHeads {
    private KindsOfHeads() {}

    private static final Naming NUMBERED = Naming.number("%d.csv");

    private static Kind.Part curves() {
        return CorpusKinds.LOGGED.files(TextStyle.PLAIN, NUMBERED);
    }

    private static ListParts under(
            String batch,
            String date,
            String time,
            String lot,
            String green,
            String roasted,
            String yellow,
            String crack,
            String drop,
            String note) {
        return ListParts.of(
                ListColumn.number(batch),
                ListColumn.date(date),
                ListColumn.time(time),
                ListColumn.lot(lot),
                ListColumn.green(green, ListColumn.KILOGRAM),
                ListColumn.roasted(roasted, ListColumn.KILOGRAM),
                ListColumn.yellowing(yellow, Clock.MINUTES),
                ListColumn.crack(crack, Clock.MINUTES),
                ListColumn.drop(drop, Clock.MINUTES),
                ListColumn.note(note));
    }

    static List<Kind> all() {
        return List.of(
                Kind.of("heads: Batch", curves(), CorpusKinds.LISTED.text(TextStyle.PLAIN, "roast log.csv")),
                Kind.of(
                        "heads: Batch #, American dates, pounds",
                        curves(),
                        ListParts.of(
                                        ListColumn.number("Batch #"),
                                        ListColumn.date("Roast Date"),
                                        ListColumn.time("Charge Time"),
                                        ListColumn.lot("Coffee"),
                                        ListColumn.green("Green In (lbs)", ListColumn.POUND),
                                        ListColumn.roasted("Roasted Out (lbs)", ListColumn.POUND),
                                        ListColumn.yellowing("Yellow", Clock.MINUTES),
                                        ListColumn.crack("1st Crack", Clock.MINUTES),
                                        ListColumn.drop("Drop", Clock.MINUTES),
                                        ListColumn.note("Comments"))
                                .text(TextStyle.AMERICAN, "Roast log.csv")),
                Kind.of(
                        "heads: Roast No.",
                        curves(),
                        under(
                                        "Roast No.",
                                        "Date",
                                        "Start",
                                        "Bean",
                                        "In [kg]",
                                        "Out [kg]",
                                        "Colour change",
                                        "1st cr.",
                                        "End",
                                        "Remarks")
                                .text(TextStyle.SPANISH.between(",").decimal('.'), "list.csv")),
                Kind.of(
                        "heads: all in capitals, BATCH",
                        curves(),
                        under(
                                        "BATCH",
                                        "DATE",
                                        "TIME",
                                        "ORIGIN",
                                        "GREEN KG",
                                        "ROASTED KG",
                                        "YELLOW",
                                        "1ST CRACK",
                                        "DROP",
                                        "NOTES")
                                .text(TextStyle.PLAIN, "BATCHES.CSV")),
                Kind.of(
                        "heads: Batch/Lot in one cell",
                        curves(),
                        ListParts.of(
                                        new ListColumn(
                                                "Batch/Lot",
                                                CorpusKinds.LISTED
                                                        .columns()
                                                        .get(0)
                                                        .facts(),
                                                roast -> roast.number() + "/" + roast.lot()),
                                        ListColumn.at("When"),
                                        ListColumn.green("Load kg", ListColumn.KILOGRAM),
                                        ListColumn.roasted("Yield kg", ListColumn.KILOGRAM),
                                        ListColumn.crack("Crack", Clock.MINUTES),
                                        ListColumn.drop("Dump", Clock.MINUTES))
                                .text(TextStyle.PLAIN, "production.csv")),
                Kind.of(
                        "heads: number under #",
                        curves(),
                        under("#", "Day", "At", "What", "Raw, kg", "Brown, kg", "Yellow at", "Crack at", "Out at", "")
                                .text(TextStyle.PLAIN, "sheet1.csv")),
                Kind.of(
                        "heads: German, Charge",
                        curves(),
                        under(
                                        "Charge",
                                        "Datum",
                                        "Uhrzeit",
                                        "Sorte",
                                        "Rohkaffee (kg)",
                                        "Röstkaffee (kg)",
                                        "Gelb",
                                        "Erster Knack",
                                        "Ende",
                                        "Bemerkung")
                                .text(TextStyle.GERMAN, "Röstbuch.csv")),
                Kind.of(
                        "heads: German, Röstung Nr., grams",
                        curves(),
                        ListParts.of(
                                        ListColumn.number("Röstung Nr."),
                                        ListColumn.at("Röstbeginn"),
                                        ListColumn.lot("Rohkaffee"),
                                        ListColumn.green("Einwaage [g]", ListColumn.GRAM),
                                        ListColumn.roasted("Auswaage [g]", ListColumn.GRAM),
                                        ListColumn.yellowing("Vergilbung", Clock.MINUTES),
                                        ListColumn.crack("First Crack", Clock.MINUTES),
                                        ListColumn.drop("Auswurf", Clock.MINUTES),
                                        ListColumn.note("Notiz"))
                                .text(TextStyle.GERMAN.in("windows-1252"), "Roestungen.csv")),
                Kind.of(
                        "heads: Spanish, N° tueste",
                        curves(),
                        under(
                                        "N° tueste",
                                        "Fecha",
                                        "Hora",
                                        "Café",
                                        "Peso verde (kg)",
                                        "Peso tostado (kg)",
                                        "Amarillo",
                                        "Primer crack",
                                        "Salida",
                                        "Observaciones")
                                .text(TextStyle.SPANISH, "registro de tueste.csv")),
                Kind.of(
                        "heads: Spanish, Lote",
                        curves(),
                        under(
                                        "Lote",
                                        "Día",
                                        "Hora de carga",
                                        "Origen",
                                        "Verde kg",
                                        "Tostado kg",
                                        "Amarilleo",
                                        "1er crack",
                                        "Descarga",
                                        "Notas")
                                .text(TextStyle.SPANISH.in("ISO-8859-1"), "lotes.csv")),
                Kind.of(
                        "heads: Italian, Tostatura",
                        curves(),
                        under(
                                        "Tostatura",
                                        "Data",
                                        "Ora",
                                        "Caffè",
                                        "Crudo (kg)",
                                        "Tostato (kg)",
                                        "Giallo",
                                        "Primo crack",
                                        "Scarico",
                                        "Note")
                                .text(TextStyle.SPANISH, "tostature.csv")),
                Kind.of(
                        "heads: French, Torréfaction",
                        curves(),
                        under(
                                        "Torréfaction",
                                        "Date",
                                        "Heure",
                                        "Café",
                                        "Poids vert (kg)",
                                        "Poids torréfié (kg)",
                                        "Jaunissement",
                                        "Premier crack",
                                        "Sortie",
                                        "Remarques")
                                .text(TextStyle.SPANISH, "cahier.csv")),
                Kind.of(
                        "heads: Portuguese, Torra",
                        curves(),
                        under(
                                        "Torra nº",
                                        "Data",
                                        "Hora",
                                        "Café",
                                        "Peso verde (kg)",
                                        "Peso torrado (kg)",
                                        "Amarelecimento",
                                        "Primeiro crack",
                                        "Descarga",
                                        "Observações")
                                .text(TextStyle.SPANISH, "torras.csv")),
                Kind.of(
                        "heads: abbreviated by hand",
                        curves(),
                        under("No", "Dt", "Tm", "Cof", "G kg", "R kg", "Yel", "Cr", "Drp", "Rem")
                                .text(TextStyle.PLAIN, "log.csv")),
                Kind.of(
                        "heads: no headings at all",
                        curves(),
                        CorpusKinds.LISTED.text(TextStyle.PLAIN, "roasts.csv", grid -> {
                            grid.rows().remove(0);
                            return grid;
                        })));
    }
}
