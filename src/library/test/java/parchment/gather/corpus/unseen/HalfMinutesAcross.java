package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;
import parchment.logbook.MarkKind;

/**
 * Reads the bean probe off the dial every half minute and writes a row a roast, the minutes across; what was heard and seen stands in the columns before.
 */
final class HalfMinutesAcross implements StrangeKind {
    @Override
    public String name() {
        return "a row a roast with the bean temperature at every half minute across";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BEAN_CURVES,
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
        int longest = 0;
        for (Roast roast : roastery.batches()) {
            longest = Math.max(longest, (int) (Pen.mark(roast, MarkKind.DROP) / 30));
        }
        List<String> lines = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(
                "batch", "date", "charged", "coffee", "kg green", "kg roasted", "yellow", "first crack", "drop"));
        List<String> title = new ArrayList<>(Collections.nCopies(head.size(), ""));
        title.set(0, "by hand");
        title.add("bean temperature in °C at");
        for (int i = 0; i <= longest; i++) {
            head.add(Pen.clock(30.0 * i));
        }
        lines.add(String.join(",", title) + ",".repeat(longest));
        lines.add(String.join(",", head));
        for (Roast roast : roastery.batches()) {
            List<Object> cells = new ArrayList<>(List.of(
                    roast.number(),
                    Pen.day(roast),
                    Pen.time(roast),
                    roast.lot(),
                    Pen.point(roast.greenKilograms(), 2),
                    Pen.point(roast.roastedKilograms(), 2),
                    Pen.yellow(roast),
                    Pen.crack(roast),
                    Pen.drop(roast)));
            Map<Long, Reading> read = new TreeMap<>();
            for (Reading reading : Pen.every(roast, 30, 0, Pen.end(roast, 0))) {
                read.put(Math.round(reading.seconds()) / 30, reading);
            }
            for (long i = 0; i <= longest; i++) {
                cells.add(read.containsKey(i) ? Pen.point(read.get(i).beanCelsius(), 1) : "");
            }
            lines.add(Pen.line(',', cells.toArray()));
        }
        Pen.save(Pen.file(folder, "paper book typed up.csv"), Pen.UTF_8, Pen.LF, lines);
        Leftovers.picture(folder.resolve("page 14.jpg"), random);
        Leftovers.picture(folder.resolve("page 15.jpg"), random);
    }
}
