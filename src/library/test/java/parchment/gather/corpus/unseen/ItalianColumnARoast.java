package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
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
 * Writes the roasts side by side, one column each with the words down the left edge, and the loss in percent because that is what is talked about; of a cupping
 * only the averages are kept.
 */
final class ItalianColumnARoast implements StrangeKind {
    private static final Map<String, String> WORDS =
            Map.of("acidity", "acidità", "sweetness", "dolcezza", "body", "corpo", "overall", "complessivo");

    @Override
    public String name() {
        return "an Italian spreadsheet with a column a roast, losses in percent, averages of cuppings";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BATCHES,
                Fact.DAYS,
                Fact.TIMES,
                Fact.LOTS,
                Fact.GREEN_MASSES,
                Fact.ROASTED_MASSES,
                Fact.YELLOWING,
                Fact.FIRST_CRACK,
                Fact.DROP,
                Fact.MEAN_SCORES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        int width = roastery.batches().size() + 1;
        String[] heads = {
            "tostatura n.", "data", "ora", "caffè", "crudo (g)", "calo (%)", "giallo", "primo crack", "scarico"
        };
        List<Object[]> rows = new ArrayList<>();
        rows.add(new Object[] {"Quaderno delle tostature"});
        for (String head : heads) {
            Object[] row = new Object[width];
            row[0] = head;
            rows.add(row);
        }
        for (int i = 0; i < roastery.batches().size(); i++) {
            Roast roast = roastery.batches().get(i);
            Object[] cells = {
                (double) roast.number(),
                Pen.day(roast),
                Pen.time(roast),
                roast.lot(),
                Pen.round(roast.greenKilograms() * 1000, 0),
                Pen.round(100 * (1 - roast.roastedKilograms() / roast.greenKilograms()), 2),
                Pen.yellow(roast),
                Pen.crack(roast),
                Pen.drop(roast)
            };
            for (int j = 0; j < cells.length; j++) {
                rows.get(j + 1)[i + 1] = cells[j];
            }
        }
        rows.add(new Object[] {});
        rows.add(new Object[] {"tempi in minuti e secondi dal carico"});

        List<String> attributes = Pen.attributes(roastery);
        List<Object[]> tastings = new ArrayList<>();
        for (Map.Entry<Integer, List<Tasting>> cupping :
                Pen.byCupping(roastery.tastings()).entrySet()) {
            tastings.add(new Object[] {
                "assaggio " + cupping.getKey() + " del "
                        + Pen.date(cupping.getValue().get(0).tastedOn(), "d MMMM yyyy", Locale.ITALIAN)
                        + ", medie"
            });
            List<Object> head = new ArrayList<>(List.of("tostatura"));
            attributes.forEach(attribute -> head.add(WORDS.getOrDefault(attribute, attribute)));
            tastings.add(head.toArray());
            for (Map.Entry<Integer, List<Tasting>> batch :
                    Pen.byBatch(cupping.getValue()).entrySet()) {
                List<Object> row = new ArrayList<>(List.of((double) batch.getKey()));
                for (String attribute : attributes) {
                    Double mean = Pen.mean(batch.getValue(), attribute);
                    row.add(mean == null ? null : (Object) Pen.round(mean, 2));
                }
                tastings.add(row.toArray());
            }
            tastings.add(new Object[] {});
        }
        Map<String, List<Object[]>> tabs = new LinkedHashMap<>();
        tabs.put("tostature", rows);
        tabs.put("assaggi", tastings);
        tabs.put("Foglio3", List.of());
        Pen.spreadsheet(folder.resolve(Pen.pick(random, "quaderno.ods", "tostature.ods")), tabs);
        Leftovers.temporary(folder.resolve(".~lock.quaderno.ods#"), random);
    }
}
