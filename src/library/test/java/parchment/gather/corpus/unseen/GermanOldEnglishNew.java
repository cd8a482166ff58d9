package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;

/**
 * Changed the logger half way: the old half is German with semicolons, decimal commas and Celsius, the new half English with commas and Fahrenheit; one list runs
 * through both.
 */
final class GermanOldEnglishNew implements StrangeKind {
    @Override
    public String name() {
        return "an old half in German and a new half in English under one list";
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
                Fact.YELLOWING,
                Fact.FIRST_CRACK,
                Fact.DROP);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        int half = roastery.batches().size() / 2;
        for (int i = 0; i < roastery.batches().size(); i++) {
            Roast roast = roastery.batches().get(i);
            List<String> lines = new ArrayList<>();
            if (i < half) {
                lines.add("Röstung " + roast.number() + ";;");
                lines.add("vom " + Pen.date(Pen.day(roast), "dd.MM.yy") + ";;");
                lines.add(";;");
                lines.add("Zeit (s);Bohne;Abluft");
                for (Reading row : Pen.every(roast, 2, 0, Pen.end(roast, 10))) {
                    lines.add(Pen.line(
                            ';',
                            Math.round(row.seconds()),
                            Pen.comma(row.beanCelsius(), 1),
                            Pen.comma(row.airCelsius(), 1)));
                }
                Pen.save(Pen.file(folder, "alt", "Roestung " + roast.number() + ".txt"), Pen.OLD, Pen.CRLF, lines);
            } else {
                lines.add("Time since charge,Bean °F,Exhaust °F");
                for (Reading row : Pen.every(roast, 1, -10, Pen.end(roast, 10))) {
                    lines.add(Pen.line(
                            ',',
                            Pen.clock(row.seconds()),
                            Pen.point(Pen.fahrenheit(row.beanCelsius()), 2),
                            Pen.point(Pen.fahrenheit(row.airCelsius()), 2)));
                }
                String name = Pen.time(roast.chargedAt(), "yyyy-MM-dd HHmm") + " batch " + roast.number() + ".csv";
                Pen.save(Pen.file(folder, "new logger", name), Pen.UTF_8, Pen.LF, lines);
            }
        }
        boolean grams = random.nextBoolean();
        Pen.workbook(folder.resolve("Liste.xlsx"), book -> {
            Worksheet sheet = book.newWorksheet("Liste");
            Pen.row(
                    sheet,
                    0,
                    "Nr",
                    "Datum",
                    "Zeit",
                    "Sorte",
                    grams ? "Füllung g" : "Füllung kg",
                    "Gelb",
                    "Crack",
                    "Ende",
                    "Notiz");
            int row = 1;
            for (Roast roast : roastery.batches()) {
                sheet.value(row, 0, roast.number());
                Pen.cell(sheet, row, 1, Pen.day(roast), "dd.mm.yy");
                Pen.cell(sheet, row, 2, roast.chargedAt().toLocalTime(), "hh:mm");
                sheet.value(row, 3, roast.lot());
                sheet.value(
                        row,
                        4,
                        grams ? Pen.round(roast.greenKilograms() * 1000, 0) : Pen.round(roast.greenKilograms(), 2));
                sheet.value(row, 5, Pen.yellow(roast));
                sheet.value(row, 6, Pen.crack(roast));
                sheet.value(row, 7, Pen.drop(roast));
                if (!roast.note().isEmpty()) {
                    sheet.value(row, 8, roast.note());
                }
                row++;
            }
        });
        Leftovers.temporary(folder.resolve("~$Liste.xlsx"), random);
    }
}
