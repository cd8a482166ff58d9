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
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind;

/**
 * Rules a cupping sheet with the cuppers across and the attributes down, one small block a roast; weighs in ounces, having only a kitchen scale.
 */
final class CuppersAcross implements StrangeKind {
    @Override
    public String name() {
        return "cupping sheets with cuppers across and attributes down, and a list in ounces";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BATCHES, Fact.DAYS, Fact.LOTS, Fact.GREEN_MASSES, Fact.ROASTED_MASSES, Fact.DROP, Fact.SCORES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        boolean fractions = random.nextBoolean();
        double ounce = Pen.KILOGRAMS_PER_POUND / 16;
        List<String> list = new ArrayList<>();
        list.add("Roasts in the small drum");
        list.add("");
        list.add("Roast no.\tOn\tCoffee\tIn (oz)\tOut (oz)\tRoast time\tRemarks");
        for (Roast roast : roastery.batches()) {
            list.add(Pen.line(
                    '\t',
                    roast.number(),
                    Pen.date(Pen.day(roast), "d MMM yyyy"),
                    roast.lot(),
                    Pen.point(roast.greenKilograms() / ounce, 1),
                    Pen.point(roast.roastedKilograms() / ounce, 1),
                    Pen.drop(roast),
                    roast.note()));
        }
        Pen.save(Pen.file(folder, "roasts.txt"), Pen.UTF_8, Pen.LF, list);

        List<String> attributes = Pen.attributes(roastery);
        for (Map.Entry<Integer, List<Tasting>> cupping :
                Pen.byCupping(roastery.tastings()).entrySet()) {
            List<String> cuppers =
                    new ArrayList<>(Pen.byCupper(cupping.getValue()).keySet());
            List<String> lines = new ArrayList<>();
            lines.add(Pen.line(
                    ',',
                    "Cupping no. " + cupping.getKey(),
                    Pen.date(cupping.getValue().get(0).tastedOn(), "EEEE d MMMM yyyy")));
            lines.add("");
            for (Map.Entry<Integer, List<Tasting>> batch :
                    Pen.byBatch(cupping.getValue()).entrySet()) {
                lines.add("Roast no. " + batch.getKey() + "," + String.join(",", cuppers));
                for (String attribute : attributes) {
                    List<String> cells = new ArrayList<>(
                            List.of(attribute.substring(0, 1).toUpperCase(Locale.ROOT) + attribute.substring(1)));
                    for (String cupper : cuppers) {
                        String cell = "";
                        for (Tasting tasting : batch.getValue()) {
                            if (tasting.cupper().equals(cupper)) {
                                Double score = tasting.scores().get(attribute);
                                cell = fractions ? Pen.fraction(score) : Pen.score(score);
                            }
                        }
                        cells.add(cell);
                    }
                    lines.add(String.join(",", cells));
                }
                lines.add("");
            }
            Pen.save(
                    Pen.file(folder, "cupping sheets", "cupping " + cupping.getKey() + ".csv"),
                    Pen.UTF_8,
                    Pen.LF,
                    lines);
        }
        Leftovers.picture(folder.resolve("table.jpg"), random);
        Leftovers.words(folder.resolve("desktop.ini"), "[ViewState]", "Mode=");
    }
}
