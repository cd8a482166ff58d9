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

/**
 * Shortens every coffee to a few letters in files and list, with a sheet that says which is which; the logger writes when it likes, and scores are kept long, one
 * row a number.
 */
final class ShortenedCoffees implements StrangeKind {
    @Override
    public String name() {
        return "coffees shortened with a sheet of what is what, uneven readings, one score a row";
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
                Fact.SCORES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        Map<String, String> codes = Pen.codes(roastery.batches());
        List<String> coffees = new ArrayList<>(List.of("short;coffee;bags left"));
        codes.forEach((coffee, code) -> coffees.add(Pen.line(';', code, coffee, 1 + random.nextInt(9))));
        Pen.save(Pen.file(folder, "coffees.csv"), Pen.UTF_8, Pen.LF, coffees);

        List<String> list = new ArrayList<>(List.of("no;day;start;coffee;green g;roasted g;remark;"));
        for (Roast roast : roastery.batches()) {
            List<String> lines = new ArrayList<>(List.of("sec;bean temp C;"));
            double next = 0;
            for (Reading reading : Pen.every(roast, 1, 0, Pen.end(roast, 0))) {
                if (reading.seconds() >= next) {
                    lines.add(Pen.point(reading.seconds(), 1) + ";" + Pen.point(reading.beanCelsius(), 2) + ";");
                    next = reading.seconds() + 1 + random.nextInt(4);
                }
            }
            String name = codes.get(roast.lot()) + " " + roast.number() + ".csv";
            Pen.save(Pen.file(folder, "curves", name), Pen.UTF_8, Pen.LF, lines);
            list.add(Pen.line(
                            ';',
                            roast.number(),
                            Pen.date(Pen.day(roast), "d-MMM-yyyy"),
                            Pen.time(roast),
                            codes.get(roast.lot()),
                            Pen.point(roast.greenKilograms() * 1000, 0),
                            Pen.point(roast.roastedKilograms() * 1000, 0),
                            roast.note())
                    + ";");
        }
        Pen.save(Pen.file(folder, "roasts.csv"), Pen.UTF_8, Pen.LF, list);

        List<String> scores = new ArrayList<>(List.of("cupping,date,cupper,roast,attribute,score"));
        for (Tasting tasting : roastery.tastings()) {
            for (String attribute : Pen.attributes(roastery)) {
                Double score = tasting.scores().get(attribute);
                if (score != null) {
                    scores.add(Pen.line(
                            ',',
                            tasting.cupping(),
                            Pen.date(tasting.tastedOn(), "d-MMM-yyyy"),
                            tasting.cupper(),
                            tasting.batch(),
                            attribute,
                            Pen.score(score)));
                }
            }
        }
        Pen.save(Pen.file(folder, "scores.csv"), Pen.UTF_8, Pen.LF, scores);
    }
}
