package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;

/**
 * Keeps one workbook with a tab for every month, the month merged across the top, the masses added up below, and no curves at all.
 */
final class GermanMonthlyTabs implements StrangeKind {
    @Override
    public String name() {
        return "a German workbook with a tab a month";
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
                Fact.YELLOWING,
                Fact.FIRST_CRACK,
                Fact.DROP);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        Map<String, List<Roast>> months = new LinkedHashMap<>();
        for (Roast roast : roastery.batches()) {
            months.computeIfAbsent(Pen.date(Pen.day(roast), "MMMM yyyy", Locale.GERMAN), key -> new ArrayList<>())
                    .add(roast);
        }
        boolean datesAsText = random.nextBoolean();
        Pen.workbook(folder.resolve("Roestbuch.xlsx"), book -> {
            for (Map.Entry<String, List<Roast>> month : months.entrySet()) {
                Worksheet sheet = book.newWorksheet(month.getKey());
                sheet.value(0, 0, "Röstungen " + month.getKey());
                sheet.range(0, 0, 0, 9).merge();
                Pen.row(
                        sheet,
                        2,
                        "Nr.",
                        "Datum",
                        "Uhrzeit",
                        "Kaffee",
                        "Rohkaffee (kg)",
                        "Röstkaffee (kg)",
                        "gelb",
                        "1. Crack",
                        "Ablass",
                        "Bemerkung");
                int row = 3;
                double green = 0;
                double roasted = 0;
                for (Roast roast : month.getValue()) {
                    Pen.row(sheet, row, roast.number());
                    if (datesAsText) {
                        sheet.value(row, 1, Pen.date(Pen.day(roast), "dd.MM.yyyy"));
                        sheet.value(row, 2, Pen.time(roast));
                    } else {
                        Pen.cell(sheet, row, 1, Pen.day(roast), "dd.mm.yyyy");
                        Pen.cell(sheet, row, 2, roast.chargedAt().toLocalTime(), "hh:mm");
                    }
                    sheet.value(row, 3, roast.lot());
                    sheet.value(row, 4, Pen.round(roast.greenKilograms(), 2));
                    sheet.value(row, 5, Pen.round(roast.roastedKilograms(), 2));
                    sheet.value(row, 6, Pen.yellow(roast));
                    sheet.value(row, 7, Pen.crack(roast));
                    sheet.value(row, 8, Pen.drop(roast));
                    if (!roast.note().isEmpty()) {
                        sheet.value(row, 9, roast.note());
                    }
                    green += roast.greenKilograms();
                    roasted += roast.roastedKilograms();
                    row++;
                }
                sheet.value(row + 1, 3, "Summe");
                sheet.value(row + 1, 4, Pen.round(green, 2));
                sheet.value(row + 1, 5, Pen.round(roasted, 2));
                sheet.value(row + 3, 0, "Gewogen wird nach dem Abkühlen. Zeiten in min:s ab Einfüllen.");
            }
            Worksheet prices = book.newWorksheet("Preise");
            Pen.row(prices, 0, "Packung", "Euro");
            Pen.row(prices, 1, "250 g", 8.5);
            Pen.row(prices, 2, "500 g", 16);
            book.newWorksheet("Tabelle7");
        });
        Leftovers.temporary(folder.resolve("~$Roestbuch.xlsx"), random);
    }
}
