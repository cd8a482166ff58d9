package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;

/**
 * Counts the roasts anew each morning: a block a day in the workbook with the date above it, and curve files named after the day and the count.
 */
final class FrenchDayBlocks implements StrangeKind {
    @Override
    public String name() {
        return "a French workbook in blocks a day, counted anew each morning, and curves named so";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BEAN_CURVES,
                Fact.AIR_CURVES,
                Fact.GAS,
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
        Map<LocalDate, List<Roast>> days = Pen.byDay(roastery.batches());
        String before = Pen.pick(random, "", "Journée du ");
        Pen.workbook(folder.resolve("cahier.xlsx"), book -> {
            Worksheet sheet = book.newWorksheet("cahier");
            sheet.value(0, 0, "Cahier de torréfaction");
            sheet.range(0, 0, 0, 7).merge();
            int row = 2;
            for (Map.Entry<LocalDate, List<Roast>> day : days.entrySet()) {
                sheet.value(row++, 0, before + Pen.date(day.getKey(), "EEEE d MMMM yyyy", Locale.FRENCH));
                Pen.row(
                        sheet,
                        row++,
                        "cuisson",
                        "heure",
                        "café",
                        "vert (kg)",
                        "torréfié (kg)",
                        "jaune à",
                        "1er crack à",
                        "sortie à",
                        "remarques");
                double green = 0;
                for (int i = 0; i < day.getValue().size(); i++) {
                    Roast roast = day.getValue().get(i);
                    Pen.row(
                            sheet,
                            row++,
                            i + 1,
                            Pen.time(roast.chargedAt(), "H'h'mm"),
                            roast.lot(),
                            Pen.round(roast.greenKilograms(), 2),
                            Pen.round(roast.roastedKilograms(), 2),
                            Pen.yellow(roast),
                            Pen.crack(roast),
                            Pen.drop(roast),
                            roast.note().isEmpty() ? null : roast.note());
                    green += roast.greenKilograms();
                }
                Pen.row(sheet, row++, null, null, "total", Pen.round(green, 2));
                row++;
            }
        });
        for (Map.Entry<LocalDate, List<Roast>> day : days.entrySet()) {
            for (int i = 0; i < day.getValue().size(); i++) {
                Roast roast = day.getValue().get(i);
                List<String> lines = new ArrayList<>();
                lines.add("temps (s);grains (°C);air (°C);gaz (%)");
                for (Reading reading : Pen.every(roast, 1, 0, Pen.end(roast, 8))) {
                    lines.add(Pen.line(
                            ';',
                            Math.round(reading.seconds()),
                            Pen.comma(reading.beanCelsius(), 2),
                            Pen.comma(reading.airCelsius(), 2),
                            Pen.comma(reading.gasPercent(), 0)));
                }
                Pen.save(
                        Pen.file(folder, "courbes", day.getKey() + " cuisson " + (i + 1) + ".csv"),
                        Pen.UTF_8,
                        Pen.LF,
                        lines);
            }
        }
        Leftovers.picture(folder.resolve("etiquette.jpg"), random);
    }
}
