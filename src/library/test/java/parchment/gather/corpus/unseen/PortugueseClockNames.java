package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;

/**
 * Never numbers a roast: the date and the minute of the charge are the name of the file, and the list finds them again by day and hour.
 */
final class PortugueseClockNames implements StrangeKind {
    @Override
    public String name() {
        return "Portuguese files named after the minute of the charge, without numbers";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BEAN_CURVES,
                Fact.AIR_CURVES,
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
    public Map<String, String> answers() {
        return Map.of("day/month/year", "day/month/year");
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        String extension = Pen.pick(random, ".txt", ".csv", ".tsv");
        List<String> list = new ArrayList<>();
        list.add("data;hora;café;verde kg;torrado kg;amarelo;1º crack;saída;obs.");
        for (Roast roast : roastery.batches()) {
            List<String> lines = new ArrayList<>();
            lines.add("Tempo\tGrão °C\tAr °C");
            for (Reading row : Pen.every(roast, 2, 0, Pen.end(roast, 12))) {
                lines.add(Pen.line(
                        '\t',
                        Pen.clock(row.seconds()),
                        Pen.comma(row.beanCelsius(), 1),
                        Pen.comma(row.airCelsius(), 1)));
            }
            Pen.save(
                    Pen.file(folder, "curvas", Pen.time(roast.chargedAt(), "yyyyMMdd_HHmm") + extension),
                    Pen.UTF_8,
                    Pen.CRLF,
                    lines);
            list.add(Pen.line(
                    ';',
                    Pen.date(Pen.day(roast), "dd/MM/yyyy"),
                    Pen.time(roast),
                    roast.lot(),
                    Pen.comma(roast.greenKilograms(), 2),
                    Pen.comma(roast.roastedKilograms(), 2),
                    Pen.yellow(roast),
                    Pen.crack(roast),
                    Pen.drop(roast),
                    roast.note()));
        }
        Pen.save(Pen.file(folder, "torras.csv"), Pen.OLD, Pen.CRLF, list);
        Leftovers.orders(Pen.file(folder, "pedidos.csv"), ';', random, "cliente", "gramas", "pacotes", "pago");
        Leftovers.emptyWorkbook(folder.resolve("Pasta1.xlsx"));
    }
}
