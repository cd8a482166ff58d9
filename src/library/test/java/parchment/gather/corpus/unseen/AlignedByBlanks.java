package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind;

/**
 * Types in a plain text editor and lines the columns up with blanks, the list as well as the curves, without a mark but the drop.
 */
final class AlignedByBlanks implements StrangeKind {
    @Override
    public String name() {
        return "plain text lined up with blanks";
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
                Fact.ROASTED_MASSES,
                Fact.DROP);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        int width = "coffee".length();
        for (Roast roast : roastery.batches()) {
            width = Math.max(width, roast.lot().length());
        }
        String form = "%-6s  %-10s  %-5s  %-" + width + "s  %8s  %8s  %6s";
        List<String> list = new ArrayList<>();
        list.add("ROASTS, green and roasted in kilograms, drop in minutes and seconds");
        list.add("");
        list.add(String.format(Locale.ROOT, form, "batch", "day", "time", "coffee", "green", "roasted", "drop"));
        list.add("-".repeat(list.get(2).length()));
        for (Roast roast : roastery.batches()) {
            list.add(String.format(
                    Locale.ROOT,
                    form,
                    roast.number(),
                    Pen.day(roast),
                    Pen.time(roast),
                    roast.lot(),
                    Pen.point(roast.greenKilograms(), 2),
                    Pen.point(roast.roastedKilograms(), 2),
                    Pen.drop(roast)));
            List<String> lines = new ArrayList<>();
            lines.add("batch " + roast.number());
            lines.add("");
            lines.add("    time    bean     air   gas");
            lines.add("       s       C       C     %");
            for (Reading row : Pen.every(roast, 2, 0, Pen.end(roast, 6))) {
                lines.add(String.format(
                        Locale.ROOT,
                        "%8d%8.1f%8.1f%6.0f",
                        Math.round(row.seconds()),
                        row.beanCelsius(),
                        row.airCelsius(),
                        row.gasPercent()));
            }
            Pen.save(Pen.file(folder, "curves", roast.number() + ".txt"), Pen.UTF_8, Pen.LF, lines);
        }
        Pen.save(Pen.file(folder, "roasts.txt"), Pen.UTF_8, Pen.LF, list);
        Leftovers.words(
                folder.resolve("ideas.txt"),
                "Try a slower start with the dense ones.",
                "Never roast before breakfast.");
    }
}
