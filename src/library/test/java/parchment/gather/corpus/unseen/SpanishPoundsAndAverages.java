package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind;

/**
 * Keeps one workbook with the roasts in pounds, a cost column hidden in the middle and remarks under the table, and a second tab on which only the averages of
 * the cuppings survive, with decimal commas typed as text.
 */
final class SpanishPoundsAndAverages implements StrangeKind {
    private static final Map<String, String> WORDS =
            Map.of("acidity", "acidez", "sweetness", "dulzor", "body", "cuerpo", "overall", "global");

    @Override
    public String name() {
        return "a Spanish workbook in pounds with a hidden column and averaged cuppings";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BATCHES,
                Fact.DAYS,
                Fact.TIMES,
                Fact.LOTS,
                Fact.GREEN_MASSES,
                Fact.ROASTED_MASSES,
                Fact.FIRST_CRACK,
                Fact.DROP,
                Fact.MEAN_SCORES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        List<String> attributes = Pen.attributes(roastery);
        double price = 2 + random.nextInt(3);
        Pen.workbook(folder.resolve("tuestes.xlsx"), book -> {
            Worksheet sheet = book.newWorksheet("tuestes");
            Pen.row(
                    sheet,
                    0,
                    "tueste",
                    "fecha y hora",
                    "café",
                    "verde (lb)",
                    "costo",
                    "tostado (lb)",
                    "1er crac (min:s)",
                    "fin (min:s)",
                    "nota");
            sheet.hideColumn(4);
            int row = 1;
            for (Roast roast : roastery.batches()) {
                sheet.value(row, 0, roast.number());
                Pen.cell(sheet, row, 1, roast.chargedAt(), "dd/mm/yyyy hh:mm");
                sheet.value(row, 2, roast.lot());
                double green = roast.greenKilograms() / Pen.KILOGRAMS_PER_POUND;
                sheet.value(row, 3, Pen.round(green, 2));
                sheet.value(row, 4, Pen.round(green * price, 2));
                sheet.value(row, 5, Pen.round(roast.roastedKilograms() / Pen.KILOGRAMS_PER_POUND, 2));
                sheet.value(row, 6, Pen.crack(roast));
                sheet.value(row, 7, Pen.drop(roast));
                if (!roast.note().isEmpty()) {
                    sheet.value(row, 8, roast.note());
                }
                row++;
            }
            sheet.value(row + 2, 0, "Todo pesado en frío.");
            sheet.value(row + 3, 0, "Preguntar por el precio del saco.");

            Worksheet tastings = book.newWorksheet("catas");
            List<Object> head = new ArrayList<>(List.of("cata", "fecha", "tueste"));
            attributes.forEach(attribute -> head.add(WORDS.getOrDefault(attribute, attribute) + " (promedio)"));
            Pen.row(tastings, 0, head.toArray());
            int line = 1;
            for (Map.Entry<Integer, List<Tasting>> cupping :
                    Pen.byCupping(roastery.tastings()).entrySet()) {
                for (Map.Entry<Integer, List<Tasting>> batch :
                        Pen.byBatch(cupping.getValue()).entrySet()) {
                    List<Object> cells = new ArrayList<>();
                    cells.add(cupping.getKey());
                    cells.add(batch.getValue().get(0).tastedOn());
                    cells.add(batch.getKey());
                    for (String attribute : attributes) {
                        Double mean = Pen.mean(batch.getValue(), attribute);
                        cells.add(mean == null ? null : Pen.comma(mean, 2));
                    }
                    Pen.row(tastings, line++, cells.toArray());
                }
            }
        });
        Leftovers.emptyWorkbook(folder.resolve("Libro1.xlsx"));
        Leftovers.temporary(folder.resolve("~$tuestes.xlsx"), random);
    }
}
