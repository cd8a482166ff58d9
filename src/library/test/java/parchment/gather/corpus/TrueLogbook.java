package parchment.gather.corpus;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import parchment.gather.corpus.CurveColumn.Clock;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;

/** Writes the truth as a logbook, and plants faults in it, so that the score can be tried. */
final class TrueLogbook {
    private TrueLogbook() {}

    static void write(Roastery roastery, Path folder) throws IOException {
        ListParts list = ListParts.of(
                ListColumn.number("batch"),
                new ListColumn(
                        "roasted at", Set.of(), roast -> roast.chargedAt().toString()),
                ListColumn.lot("lot"),
                ListColumn.green("green mass [kg]", ListColumn.KILOGRAM),
                ListColumn.roasted("roasted mass [kg]", ListColumn.KILOGRAM),
                ListColumn.chargeCelsius("charge temperature [°C]"),
                ListColumn.yellowing("yellowing [s]", Clock.SECONDS),
                ListColumn.crack("first crack start [s]", Clock.SECONDS),
                ListColumn.drop("drop [s]", Clock.SECONDS));
        TextStyle.PLAIN.write(list.table(roastery.batches()), folder.resolve("batches.csv"));
        CurveParts curves = CurveParts.of(
                CurveColumn.sinceCharge("time [s]", Clock.SECONDS),
                CurveColumn.bean("bean temperature [°C]"),
                CurveColumn.air("environment temperature [°C]"),
                CurveColumn.gas("gas [%]"));
        for (Roast roast : roastery.batches()) {
            TextStyle.PLAIN.write(curves.table("curve", roast), folder.resolve("curves/" + roast.number() + ".csv"));
        }
        Grid cups = new Grid("cups");
        List<Object> head = new ArrayList<>(List.of("cupping", "tasted on", "cupper", "batch"));
        head.addAll(InventedRoastery.ATTRIBUTES);
        cups.row(head);
        for (Tasting tasting : roastery.tastings()) {
            List<Object> row = new ArrayList<>(
                    List.of("C" + tasting.cupping(), tasting.tastedOn(), tasting.cupper(), tasting.batch()));
            row.addAll(tasting.scores().values());
            cups.row(row);
        }
        TextStyle.PLAIN.write(cups, folder.resolve("cuppings.csv"));
        TextStyle.PLAIN.write("name=truth\ntime.zone=UTC\n", folder.resolve("logbook.properties"));
    }

    /** Changes the first row's cell of a column: a factor such as 1.006, a sum such as +2, "blank", or a word. */
    static void plant(Path file, String column, String plant) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        int place = List.of(lines.get(0).split(",")).indexOf(column);
        String[] cells = lines.get(1).split(",");
        if (plant.equals("blank")) {
            cells[place] = "";
        } else if (plant.matches("[-+].*")) {
            cells[place] = Cells.number(Double.parseDouble(cells[place]) + Double.parseDouble(plant));
        } else if (plant.matches("[0-9.]+")) {
            cells[place] = Cells.number(Cells.rounded(Double.parseDouble(cells[place]) * Double.parseDouble(plant), 4));
        } else {
            cells[place] = plant;
        }
        lines.set(1, String.join(",", cells));
        Files.write(file, lines);
    }

    /** Moves a curve in time, and its bean temperature. */
    static void moveCurve(Path file, double seconds, double degrees) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        for (int i = 1; i < lines.size(); i++) {
            String[] cells = lines.get(i).split(",");
            cells[0] = Cells.number(Double.parseDouble(cells[0]) + seconds);
            cells[1] = Cells.number(Cells.rounded(Double.parseDouble(cells[1]) + degrees, 1));
            lines.set(i, String.join(",", cells));
        }
        Files.write(file, lines);
    }
}
