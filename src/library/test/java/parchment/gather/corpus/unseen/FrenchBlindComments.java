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
import java.util.TreeMap;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind;

/**
 * Writes every cup of every cupper into one sheet under its blind code with a comment, the quarters with a comma, and keeps the codes in another; roasts are listed
 * in grams.
 */
final class FrenchBlindComments implements StrangeKind {
    private static final Map<String, String> WORDS =
            Map.of("acidity", "acidité", "sweetness", "douceur", "body", "corps", "overall", "note globale");

    @Override
    public String name() {
        return "a French score sheet under blind codes with comments, and the codes in another file";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(
                Fact.BATCHES, Fact.DAYS, Fact.TIMES, Fact.LOTS, Fact.GREEN_MASSES, Fact.ROASTED_MASSES, Fact.SCORES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        List<String> list = new ArrayList<>(List.of("lot torréfié n°;date;heure;café;vert (g);torréfié (g);remarques"));
        for (Roast roast : roastery.batches()) {
            list.add(Pen.line(
                    ';',
                    roast.number(),
                    Pen.date(Pen.day(roast), "dd/MM/yyyy"),
                    Pen.time(roast),
                    roast.lot(),
                    Pen.point(roast.greenKilograms() * 1000, 0),
                    Pen.point(roast.roastedKilograms() * 1000, 0),
                    roast.note()));
        }
        Pen.save(Pen.file(folder, "torrefactions.csv"), Pen.OLD, Pen.CRLF, list);

        List<String> attributes = Pen.attributes(roastery);
        List<Object> head = new ArrayList<>(List.of("dégustation", "date", "dégustateur", "code"));
        attributes.forEach(attribute -> head.add(WORDS.getOrDefault(attribute, attribute)));
        head.add("commentaire");
        List<String> scores = new ArrayList<>(List.of(Pen.line(';', head.toArray())));
        Map<String, String> keys = new TreeMap<>();
        for (Tasting tasting : roastery.tastings()) {
            List<Object> cells = new ArrayList<>(List.of(
                    tasting.cupping(), Pen.date(tasting.tastedOn(), "dd/MM/yyyy"), tasting.cupper(), tasting.code()));
            attributes.forEach(
                    attribute -> cells.add(Pen.scoreWithComma(tasting.scores().get(attribute))));
            cells.add(Pen.pick(random, "", "", "net; un peu court", "dit \"agrumes\", je ne sens rien", "rond"));
            scores.add(Pen.line(';', cells.toArray()));
            keys.put(
                    String.format(Locale.ROOT, "%09d %s", tasting.cupping(), tasting.code()),
                    Pen.line(';', tasting.cupping(), tasting.code(), tasting.batch()));
        }
        Pen.save(Pen.file(folder, "degustations.csv"), Pen.OLD, Pen.CRLF, scores);
        List<String> codes = new ArrayList<>(List.of("dégustation;code;lot torréfié n°"));
        codes.addAll(keys.values());
        Pen.save(Pen.file(folder, "codes.csv"), Pen.OLD, Pen.CRLF, codes);
        Leftovers.picture(folder.resolve("roue.jpg"), random);
    }

    @Override
    public Map<String, String> answers() {
        return Map.of("day/month/year", "day/month/year");
    }
}
