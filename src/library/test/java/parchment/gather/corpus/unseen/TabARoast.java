package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;

/**
 * Has one workbook with a tab a roast: a small block of facts in the top corner, the readings in Fahrenheit below it, and the pots and pans of a shop beside it.
 */
final class TabARoast implements StrangeKind {
    @Override
    public String name() {
        return "one workbook with a tab a roast, facts in the corner";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BEAN_CURVES,
                Fact.AIR_CURVES,
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
        boolean grams = random.nextBoolean();
        double unit = grams ? 1000 : 1;
        String mass = grams ? "g" : "kg";
        int step = 1 + random.nextInt(2);
        Pen.workbook(folder.resolve("roasts.xlsx"), book -> {
            Worksheet start = book.newWorksheet("Read me");
            start.value(0, 0, "One tab a roast. Copy the tab 'blank' for the next.");
            for (Roast roast : roastery.batches()) {
                Worksheet sheet = book.newWorksheet(String.valueOf(roast.number()));
                Pen.row(sheet, 0, "Batch", roast.number(), null, "Yellow at", Pen.yellow(roast));
                Pen.row(sheet, 1, "Date", Pen.day(roast), null, "First crack at", Pen.crack(roast));
                Pen.row(sheet, 2, "Charged", roast.chargedAt().toLocalTime(), null, "Out at", Pen.drop(roast));
                Pen.row(sheet, 3, "Coffee", roast.lot());
                Pen.row(sheet, 4, "Green " + mass, Pen.round(roast.greenKilograms() * unit, grams ? 0 : 2));
                Pen.row(sheet, 5, "Roasted " + mass, Pen.round(roast.roastedKilograms() * unit, grams ? 0 : 2));
                if (!roast.note().isEmpty()) {
                    Pen.row(sheet, 6, "Note", roast.note());
                }
                Pen.row(sheet, 8, "Seconds", "Bean °F", "Exhaust °F");
                int row = 9;
                for (Reading reading : Pen.every(roast, step, 0, Pen.end(roast, 10))) {
                    Pen.row(
                            sheet,
                            row++,
                            Math.round(reading.seconds()),
                            Pen.round(Pen.fahrenheit(reading.beanCelsius()), 1),
                            Pen.round(Pen.fahrenheit(reading.airCelsius()), 1));
                }
            }
            Worksheet blank = book.newWorksheet("blank");
            Pen.row(blank, 0, "Batch", null, null, "Yellow at");
            Pen.row(blank, 1, "Date", null, null, "First crack at");
            Pen.row(blank, 2, "Charged", null, null, "Out at");
            Pen.row(blank, 3, "Coffee");
            Pen.row(blank, 4, "Green " + mass);
            Pen.row(blank, 5, "Roasted " + mass);
            Pen.row(blank, 8, "Seconds", "Bean °F", "Exhaust °F");
        });
        Leftovers.words(folder.resolve("to buy.txt"), "labels", "valve bags, the brown ones", "descaler");
    }
}
