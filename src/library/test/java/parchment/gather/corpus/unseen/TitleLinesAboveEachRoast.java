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
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind;
import parchment.logbook.MarkKind;

/**
 * Opens a fresh text file for every roast, writes who, when and what above the table and a word beside the reading when something happened; each cupping gets a
 * page on which one cupper's scores follow the other's.
 */
final class TitleLinesAboveEachRoast implements StrangeKind {
    @Override
    public String name() {
        return "a file a roast with title lines above and words beside the readings";
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
                Fact.YELLOWING,
                Fact.FIRST_CRACK,
                Fact.DROP,
                Fact.SCORES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        String person = Pen.pick(random, "Milo", "Orla", "Wren");
        Map<MarkKind, String> words = Map.of(
                MarkKind.YELLOWING, Pen.pick(random, "yellow", "Yellow now", "yellowing"),
                MarkKind.FIRST_CRACK_START, Pen.pick(random, "first crack", "1st crack", "First crack!"),
                MarkKind.DROP, Pen.pick(random, "drop", "dropped", "DROP"));
        for (Roast roast : roastery.batches()) {
            List<String> lines = new ArrayList<>();
            lines.add("Roasted by," + person);
            lines.add("Date," + Pen.date(Pen.day(roast), "d MMMM yyyy"));
            lines.add("Charged at," + Pen.time(roast));
            lines.add("Batch," + roast.number());
            lines.add(Pen.line(',', "Coffee", roast.lot()));
            lines.add("Charge," + Pen.point(roast.greenKilograms(), 2) + " kg");
            if (!roast.note().isEmpty()) {
                lines.add(Pen.line(',', "Note", roast.note()));
            }
            lines.add("");
            lines.add("time,beans [C],exhaust air [C],gas %,remarks");
            List<Reading> rows = Pen.every(roast, 2, 0, Pen.end(roast, 16));
            List<String> remarks = Pen.words(roast, rows, words);
            for (int i = 0; i < rows.size(); i++) {
                Reading row = rows.get(i);
                lines.add(Pen.line(
                        ',',
                        Pen.clock(row.seconds()),
                        Pen.point(row.beanCelsius(), 1),
                        Pen.point(row.airCelsius(), 1),
                        Pen.point(row.gasPercent(), 0),
                        remarks.get(i)));
            }
            Pen.save(
                    Pen.file(folder, "roasts", "batch " + roast.number() + ".csv"),
                    Pen.UTF_8,
                    random.nextBoolean() ? Pen.LF : Pen.CRLF,
                    lines);
        }
        List<String> attributes = Pen.attributes(roastery);
        for (Map.Entry<Integer, List<Tasting>> cupping :
                Pen.byCupping(roastery.tastings()).entrySet()) {
            List<String> lines = new ArrayList<>();
            lines.add("Cupping " + cupping.getKey());
            lines.add("Tasted on " + Pen.date(cupping.getValue().get(0).tastedOn(), "d MMMM yyyy"));
            for (Map.Entry<String, List<Tasting>> cupper :
                    Pen.byCupper(cupping.getValue()).entrySet()) {
                lines.add("");
                lines.add("Cupper," + cupper.getKey());
                lines.add("batch," + String.join(",", attributes));
                for (Tasting tasting : cupper.getValue()) {
                    List<String> cells = new ArrayList<>(List.of(String.valueOf(tasting.batch())));
                    for (String attribute : attributes) {
                        cells.add(Pen.score(tasting.scores().get(attribute)));
                    }
                    lines.add(String.join(",", cells));
                }
            }
            Pen.save(Pen.file(folder, "cuppings", "cupping " + cupping.getKey() + ".csv"), Pen.UTF_8, Pen.LF, lines);
        }
        Leftovers.orders(Pen.file(folder, "orders.csv"), ',', random, "customer", "grams", "bags", "paid");
        Leftovers.picture(folder.resolve("drum.jpg"), random);
    }
}
