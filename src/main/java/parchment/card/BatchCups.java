package parchment.card;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.display.InShort;
import parchment.display.Table;
import parchment.logbook.Batch;
import parchment.logbook.CupScores;
import parchment.logbook.Cupping;
import parchment.logbook.Logbook;

/** Lays what each cupper scored of a batch beside what the same cupper scored of its lot's others. */
final class BatchCups {
    /** Fewest scores of the lot's others from which it is told how far scores differ anyhow; common practice, no source. */
    static final int ENOUGH = 8;

    private final Batch batch;
    private final Logbook logbook;
    private final List<CupScores> own;
    private final List<CupScores> others;

    /** One cupper at one cupping. */
    private record Row(String cupper, String cupping, List<CupScores> scores) {}

    private BatchCups(Batch batch, Logbook logbook) {
        this.batch = batch;
        this.logbook = logbook;
        this.own = logbook.cups().stream()
                .filter(cup -> cup.batch().equals(batch.name()))
                .toList();
        Set<String> lot = logbook.batches().stream()
                .filter(b -> b.lot().isPresent() && b.lot().equals(batch.lot()))
                .map(Batch::name)
                .filter(name -> !name.equals(batch.name()))
                .collect(Collectors.toSet());
        this.others =
                logbook.cups().stream().filter(cup -> lot.contains(cup.batch())).toList();
    }

    static BatchCups of(Batch batch, Logbook logbook) {
        return new BatchCups(batch, logbook);
    }

    /** Says how the batch was scored beside its lot's others, or that it was not. */
    String words() {
        if (own.isEmpty()) {
            return "It was not cupped.";
        }
        String attribute = attribute();
        List<Double> differences = differences(attribute);
        long blind = blind();
        String blindly = blind == own.size()
                ? " All were scored blind."
                : blind == 0
                        ? " None is known to be scored blind."
                        : " " + blind + " of " + own.size() + " were scored blind.";
        return scored(attribute, differences) + blindly;
    }

    /** Returns the three sentences with what the cups said in place of what to do, for to cup it is done; the same if it was not cupped. */
    InShort after(InShort beside) {
        if (own.isEmpty()) {
            return beside;
        }
        String attribute = attribute();
        List<Double> differences = differences(attribute);
        double error = spread(attribute) / Math.sqrt(differences.size());
        double mean = mean(differences);
        String blindly = blind() == own.size() ? ", blind" : "";
        String cups;
        if (differences.isEmpty() || !Double.isFinite(error)) {
            cups = "It was cupped" + blindly + ", but its scores cannot be held against its lot's others yet.";
        } else if (Math.abs(mean) <= ScoredLot.APART * error) {
            cups = "It was cupped" + blindly + ": its " + attribute
                    + " differs no more from its lot's others than cups do anyhow.";
        } else {
            cups = String.format(
                    Locale.ROOT,
                    "Its cups scored %.1f points %s its lot's others in %s%s: look at what else differed.",
                    Math.abs(mean),
                    mean > 0 ? "above" : "below",
                    attribute,
                    blindly);
        }
        return new InShort(beside.found(), beside.howSure(), cups);
    }

    private String attribute() {
        return logbook.scored("overall", "liking", "sweetness");
    }

    private static double mean(List<Double> differences) {
        return differences.stream().mapToDouble(d -> d).average().orElse(Double.NaN);
    }

    /** Returns by how much each score lies above the same cupper's mean for the lot's others, where there is one. */
    private List<Double> differences(String attribute) {
        return own.stream()
                .map(cup -> cup.score(attribute) - cuppersMean(cup.cupper(), attribute))
                .filter(Double::isFinite)
                .toList();
    }

    private long blind() {
        return own.stream()
                .filter(cup -> logbook.cupping(cup.cupping())
                        .filter(how -> how.blind() == Cupping.Said.YES)
                        .isPresent())
                .count();
    }

    private String scored(String attribute, List<Double> differences) {
        double spread = spread(attribute);
        if (differences.isEmpty() || !Double.isFinite(spread)) {
            return (own.size() == 1 ? "It has 1 score sheet" : "It has " + own.size() + " score sheets")
                    + ", and too few of its lot's others by the same cuppers to hold them against.";
        }
        double mean = mean(differences);
        double error = spread / Math.sqrt(differences.size());
        String size = String.format(Locale.ROOT, "%.1f points", Math.abs(mean));
        String sure = String.format(Locale.ROOT, "%.1f", Math.max(0.1, error));
        String where = size.equals("0.0 points")
                ? "Its " + attribute + " was that of its lot's others by the same cuppers"
                : "Its " + attribute + " was " + size + (mean > 0 ? " above" : " below")
                        + " its lot's others by the same cuppers";
        return where + " (" + (differences.size() == 1 ? "1 score" : differences.size() + " scores") + ", give or take "
                + sure
                + (Math.abs(mean) <= ScoredLot.APART * error
                        ? "): no more than cups differ by anyhow."
                        : "): more than cups differ by as a rule.");
    }

    /** Returns a cupper's mean for the lot's others; NaN if there is none. */
    private double cuppersMean(String cupper, String attribute) {
        return others.stream()
                .filter(cup -> cup.cupper().equals(cupper))
                .mapToDouble(cup -> cup.score(attribute))
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
    }

    /** Returns the standard deviation of the lot's other scores about their cuppers' means; NaN if there are too few. */
    private double spread(String attribute) {
        double squares = 0;
        int scores = 0;
        Set<String> cuppers = new HashSet<>();
        for (CupScores cup : others) {
            double off = cup.score(attribute) - cuppersMean(cup.cupper(), attribute);
            if (Double.isFinite(off)) {
                squares += off * off;
                scores++;
                cuppers.add(cup.cupper());
            }
        }
        return scores < ENOUGH || scores <= cuppers.size()
                ? Double.NaN
                : Math.sqrt(squares / (scores - cuppers.size()));
    }

    /** Returns the table, one row for each cupper at each cupping; empty if it was not cupped. */
    Optional<Table> table() {
        Map<String, Row> rows = new LinkedHashMap<>();
        for (CupScores cup : own) {
            rows.computeIfAbsent(
                            cup.cupper() + "\n" + cup.cupping(),
                            key -> new Row(cup.cupper(), cup.cupping(), new ArrayList<>()))
                    .scores()
                    .add(cup);
        }
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        List<Row> list = List.copyOf(rows.values());
        Table table = Table.titled("Its cups beside its lot's others")
                .withText("cupper", list, Row::cupper)
                .withText(
                        "tasted on", list, row -> row.scores().get(0).tastedOn().toString())
                .withNumber("cups", "", 0, list, row -> row.scores().size());
        for (String attribute : logbook.attributes()) {
            if (own.stream().anyMatch(cup -> Double.isFinite(cup.score(attribute)))) {
                table = table.withText(attribute, list, row -> cell(row, attribute));
            }
        }
        return Optional.of(table.withDashForMissing("not scored")
                .withRowsShown(20)
                .withNote("In brackets the mean of the same cupper for the other batches of "
                        + batch.lot().map(lot -> "lot " + lot).orElse("its lot, of which none is written") + "."));
    }

    private String cell(Row row, String attribute) {
        double mean = row.scores().stream()
                .mapToDouble(cup -> cup.score(attribute))
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN);
        double theirs = cuppersMean(row.cupper(), attribute);
        return Double.isNaN(mean)
                ? ""
                : String.format(Locale.ROOT, "%.1f", mean)
                        + (Double.isNaN(theirs) ? "" : String.format(Locale.ROOT, " (%.1f)", theirs));
    }
}
