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
 * Saves bare numbers as "roast (12)" with no head at all, having said once in a note what the columns are; the list is American, in pounds, with the month first.
 */
final class HeadlessFiles implements StrangeKind {
    @Override
    public String name() {
        return "files without heads explained in a note, and an American list in pounds";
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
                Fact.FIRST_CRACK,
                Fact.DROP);
    }

    @Override
    public Map<String, String> answers() {
        return Map.of("day/month/year", "month/day/year");
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        List<String> list = new ArrayList<>();
        list.add("Roast,Date,Start,Coffee,Green lb,Roasted lb,First crack,Drop,Notes");
        for (Roast roast : roastery.batches()) {
            List<String> lines = new ArrayList<>();
            for (Reading row : Pen.every(roast, 1, -20, Pen.end(roast, 20))) {
                lines.add(Pen.line(
                        ',',
                        Math.round(row.seconds()),
                        Pen.point(Pen.fahrenheit(row.beanCelsius()), 1),
                        Pen.point(Pen.fahrenheit(row.airCelsius()), 1)));
            }
            Pen.save(Pen.file(folder, "logger", "roast (" + roast.number() + ").csv"), Pen.UTF_8, Pen.CRLF, lines);
            list.add(Pen.line(
                    ',',
                    roast.number(),
                    Pen.date(Pen.day(roast), "M/d/yyyy"),
                    Pen.time(roast.chargedAt(), "h:mm a"),
                    roast.lot(),
                    Pen.point(roast.greenKilograms() / Pen.KILOGRAMS_PER_POUND, 2),
                    Pen.point(roast.roastedKilograms() / Pen.KILOGRAMS_PER_POUND, 2),
                    Pen.crack(roast),
                    Pen.drop(roast),
                    roast.note()));
        }
        Pen.save(Pen.file(folder, "roast list.csv"), Pen.UTF_8, Pen.CRLF, list);
        Leftovers.words(
                Pen.file(folder, "logger", "readme.txt"),
                "No headings in these, the logger cannot do it.",
                "First the seconds since the beans went in (minus = before), then the bean probe, then the exhaust.",
                "All in Fahrenheit.");
        Leftovers.orders(Pen.file(folder, "orders.csv"), ',', random, "customer", "size", "bags", "paid");
    }
}
