package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;

/**
 * Pastes the roasts of a day next to each other on one tab, three columns each, with the time as the spreadsheet keeps it: a fraction of a day.
 */
final class SideBySideOnADay implements StrangeKind {
    @Override
    public String name() {
        return "a tab a day with the roasts side by side, times as fractions of a day";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BEAN_CURVES, Fact.AIR_CURVES, Fact.BATCHES, Fact.DAYS, Fact.TIMES, Fact.LOTS, Fact.GREEN_MASSES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        boolean fahrenheit = random.nextBoolean();
        String unit = fahrenheit ? " °F" : " °C";
        Pen.workbook(folder.resolve("drum log.xlsx"), book -> {
            for (Map.Entry<LocalDate, List<Roast>> day :
                    Pen.byDay(roastery.batches()).entrySet()) {
                Worksheet sheet = book.newWorksheet(day.getKey().toString());
                sheet.value(0, 0, "Roasts of " + Pen.date(day.getKey(), "EEEE d MMMM yyyy"));
                sheet.range(0, 0, 0, 6).merge();
                int left = 0;
                for (Roast roast : day.getValue()) {
                    sheet.value(2, left, "Batch " + roast.number());
                    sheet.value(3, left, roast.lot());
                    sheet.value(4, left, "charged " + Pen.time(roast));
                    sheet.value(5, left, Pen.point(roast.greenKilograms(), 2) + " kg green");
                    sheet.value(7, left, "time");
                    sheet.value(7, left + 1, "beans" + unit);
                    sheet.value(7, left + 2, "air" + unit);
                    int row = 8;
                    for (Reading reading : Pen.every(roast, 5, 0, Pen.end(roast, 0))) {
                        sheet.value(row, left, Math.round(reading.seconds()) / 86400.0);
                        sheet.style(row, left).format("[mm]:ss").set();
                        double bean = reading.beanCelsius();
                        double air = reading.airCelsius();
                        sheet.value(row, left + 1, Pen.round(fahrenheit ? Pen.fahrenheit(bean) : bean, 1));
                        sheet.value(row, left + 2, Pen.round(fahrenheit ? Pen.fahrenheit(air) : air, 1));
                        row++;
                    }
                    left += 4;
                }
            }
        });
        Leftovers.orders(Pen.file(folder, "bags.csv"), ';', random, "who", "size", "number", "paid");
    }
}
