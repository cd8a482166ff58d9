package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
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
 * Empties everything the logger ever saw into one long file, the number of the batch and the full date in every row, and what happened in the last column.
 */
final class OneLongTable implements StrangeKind {
    @Override
    public String name() {
        return "all readings of all roasts in one long file";
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
    public Map<String, String> answers() {
        return Map.of("day/month/year", "day/month/year");
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        Map<MarkKind, String> words = Map.of(
                MarkKind.CHARGE, Pen.pick(random, "charge", "beans in"),
                MarkKind.YELLOWING, Pen.pick(random, "yellow", "all yellow"),
                MarkKind.FIRST_CRACK_START, Pen.pick(random, "first crack", "1st crack"),
                MarkKind.DROP, Pen.pick(random, "drop", "beans out"));
        boolean isoDates = random.nextBoolean();
        List<String> lines = new ArrayList<>();
        lines.add("\uFEFF\"batch\",\"when\",\"bean\",\"air\",\"gas\",\"event\"");
        for (Roast roast : roastery.batches()) {
            List<Reading> rows = Pen.everyAndMarks(roast, 5, -10, Pen.end(roast, 10));
            List<String> events = Pen.words(roast, rows, words);
            for (int i = 0; i < rows.size(); i++) {
                Reading row = rows.get(i);
                LocalDateTime time = Pen.clockAt(roast, row.seconds());
                lines.add(String.format(
                        Locale.ROOT,
                        "%d,\"%s\",%.1f,%.1f,%.0f,\"%s\"",
                        roast.number(),
                        Pen.time(time, isoDates ? "yyyy-MM-dd HH:mm:ss" : "dd/MM/yyyy HH:mm:ss"),
                        row.beanCelsius(),
                        row.airCelsius(),
                        row.gasPercent(),
                        events.get(i)));
            }
        }
        Pen.save(folder.resolve("all readings.csv"), Pen.UTF_8, Pen.CRLF, lines);
        Leftovers.words(folder.resolve("todo.txt"), "sweep the chimney", "ask about the gas bill");
    }
}
