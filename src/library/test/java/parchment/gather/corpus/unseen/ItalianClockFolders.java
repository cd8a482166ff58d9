package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Files;
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
import parchment.logbook.MarkKind;

/**
 * Has a folder a day and in it a file a roast, in which the logger, started early and stopped late, writes the hour on the wall; the hand types beside it when the
 * beans went in, turned and came out.
 */
final class ItalianClockFolders implements StrangeKind {
    @Override
    public String name() {
        return "Italian folders a day with the wall clock and words beside the readings";
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
                Fact.YELLOWING,
                Fact.FIRST_CRACK,
                Fact.DROP);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        Map<MarkKind, String> words = Map.of(
                MarkKind.CHARGE, "carico",
                MarkKind.YELLOWING, Pen.pick(random, "giallo", "ingiallimento"),
                MarkKind.FIRST_CRACK_START, Pen.pick(random, "primo crack", "inizio primo crack"),
                MarkKind.DROP, Pen.pick(random, "scarico", "fine, scarico"));
        int twice = random.nextInt(roastery.batches().size());
        for (int i = 0; i < roastery.batches().size(); i++) {
            Roast roast = roastery.batches().get(i);
            List<Reading> rows = Pen.everyAndMarks(roast, 2, -30, Pen.end(roast, 30));
            List<String> remarks = Pen.words(roast, rows, words);
            List<String> lines = new ArrayList<>();
            lines.add("ora;chicchi (°C);aria (°C);gas (%);annotazioni;");
            for (int j = 0; j < rows.size(); j++) {
                Reading row = rows.get(j);
                lines.add(Pen.line(
                        ';',
                        Pen.time(Pen.clockAt(roast, row.seconds()), "HH:mm:ss"),
                        Pen.comma(row.beanCelsius(), 1),
                        Pen.comma(row.airCelsius(), 1),
                        Pen.comma(row.gasPercent(), 0),
                        remarks.get(j),
                        ""));
            }
            String day = Pen.day(roast).toString();
            String name = "tostatura " + roast.number();
            Pen.save(Pen.file(folder, day, name + ".csv"), Pen.OLD, Pen.CRLF, lines);
            if (i == twice) {
                Pen.save(Pen.file(folder, day, name + " (1).csv"), Pen.OLD, Pen.CRLF, lines);
            }
        }
        Leftovers.orders(Pen.file(folder, "ordini.csv"), ';', random, "cliente", "grammi", "sacchetti", "pagato");
        Files.createDirectories(folder.resolve("da ordinare"));
    }
}
