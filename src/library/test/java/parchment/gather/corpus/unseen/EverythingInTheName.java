package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;
import parchment.logbook.MarkKind;

/**
 * Puts day, hour, number and mass into the name of the file and the coffee into its only title line, and thinks that is list enough; has saved one file twice.
 */
final class EverythingInTheName implements StrangeKind {
    @Override
    public String name() {
        return "day, hour, number and mass in the name of the file, no list";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BEAN_CURVES,
                Fact.AIR_CURVES,
                Fact.GAS,
                Fact.BATCHES,
                Fact.DAYS,
                Fact.TIMES,
                Fact.LOTS,
                Fact.GREEN_MASSES,
                Fact.DROP);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        int twice = random.nextInt(roastery.batches().size());
        String mark = Pen.pick(random, "#", "no ", "batch ");
        for (int i = 0; i < roastery.batches().size(); i++) {
            Roast roast = roastery.batches().get(i);
            List<Reading> rows = Pen.every(roast, 1, 0, Pen.end(roast, 25));
            List<String> words = Pen.words(roast, rows, Map.of(MarkKind.DROP, "end of roast"));
            List<String> lines = new ArrayList<>();
            lines.add(Pen.line(';', "coffee: " + roast.lot()));
            lines.add("min:sec;beans C;exhaust C;burner %;");
            for (int j = 0; j < rows.size(); j++) {
                Reading row = rows.get(j);
                lines.add(Pen.line(
                        ';',
                        Pen.clock(row.seconds()),
                        Pen.point(row.beanCelsius(), 1),
                        Pen.point(row.airCelsius(), 1),
                        Pen.point(row.gasPercent(), 0),
                        words.get(j)));
            }
            String name = String.format(
                    Locale.ROOT,
                    "%s %s %s%d %skg",
                    Pen.day(roast),
                    Pen.time(roast.chargedAt(), "HH.mm"),
                    mark,
                    roast.number(),
                    Pen.comma(roast.greenKilograms(), 2));
            Pen.save(folder.resolve(name + ".csv"), Pen.OLD, Pen.CRLF, lines);
            if (i == twice) {
                Pen.save(folder.resolve(name + " (1).csv"), Pen.OLD, Pen.CRLF, lines);
            }
        }
        Leftovers.picture(folder.resolve("shopfront.jpg"), random);
    }
}
