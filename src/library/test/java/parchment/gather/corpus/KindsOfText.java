package parchment.gather.corpus;

import java.util.List;
import parchment.gather.corpus.CurveColumn.Clock;

/** Encodings, delimiters, decimal signs. */
final class KindsOfText {
    private KindsOfText() {}

    private static Kind both(String name, TextStyle style, String ending) {
        return Kind.of(
                name,
                CorpusKinds.LOGGED.files(style, Naming.number("Batch %d." + ending)),
                CorpusKinds.LISTED.text(style, "Roasts." + ending));
    }

    static List<Kind> all() {
        CurveParts german = CurveParts.of(
                CurveColumn.sinceStart("Zeit (s)", Clock.SECONDS),
                CurveColumn.bean("Bohnentemperatur (°C)"),
                CurveColumn.air("Ablufttemperatur (°C)"),
                CurveColumn.gas("Gas (%)"));
        CurveParts french = CurveParts.of(
                CurveColumn.sinceStart("Temps", Clock.MINUTES),
                CurveColumn.bean("Température grains °C"),
                CurveColumn.air("Température air °C"),
                CurveColumn.gas("Gaz %"));
        CurveParts spanish = CurveParts.of(
                CurveColumn.sinceStart("Tiempo (s)", Clock.SECONDS),
                CurveColumn.bean("Temperatura grano (°C)"),
                CurveColumn.air("Temperatura aire (°C)"),
                CurveColumn.gas("Gas (%)"));
        CurveParts italian = CurveParts.of(
                CurveColumn.sinceStart("Tempo (s)", Clock.SECONDS),
                CurveColumn.bean("Temperatura chicchi (°C)"),
                CurveColumn.air("Temperatura aria (°C)"),
                CurveColumn.gas("Gas (%)"));
        CurveParts portuguese = CurveParts.of(
                CurveColumn.sinceStart("Tempo (s)", Clock.SECONDS),
                CurveColumn.bean("Temperatura do grão (°C)"),
                CurveColumn.air("Temperatura do ar (°C)"),
                CurveColumn.gas("Gás (%)"));
        return List.of(
                both("text: UTF-8 with a mark", TextStyle.PLAIN.marked(), "csv"),
                both(
                        "text: UTF-16, little end first",
                        TextStyle.PLAIN.in("UTF-16LE").marked().between("\t"),
                        "txt"),
                both(
                        "text: UTF-16, big end first",
                        TextStyle.PLAIN.in("UTF-16BE").marked(),
                        "csv"),
                both("text: Windows-1252, semicolons, decimal commas", TextStyle.GERMAN.in("windows-1252"), "csv"),
                both("text: Latin-1, tabs", TextStyle.PLAIN.in("ISO-8859-1").between("\t"), "tsv"),
                both("text: tabs, decimal commas", TextStyle.GERMAN.between("\t"), "txt"),
                both("text: commas between and within, quoted", TextStyle.PLAIN.decimal(','), "csv"),
                both("text: bars between", TextStyle.PLAIN.between("|"), "txt"),
                Kind.of(
                        "text: German curves in Windows-1252",
                        german.files(TextStyle.GERMAN.in("windows-1252"), Naming.number("Röstung %d.csv"))),
                Kind.of(
                        "text: French curves in Latin-1",
                        french.files(TextStyle.SPANISH.in("ISO-8859-1"), Naming.number("Torréfaction %d.csv"))),
                Kind.of(
                        "text: Spanish curves with a mark",
                        spanish.files(TextStyle.SPANISH.marked(), Naming.number("tueste-%d.csv"))),
                Kind.of("text: Italian curves", italian.files(TextStyle.SPANISH, Naming.number("tostatura_%d.csv"))),
                Kind.of("text: Portuguese curves", portuguese.files(TextStyle.SPANISH, Naming.number("torra %d.txt"))));
    }
}
