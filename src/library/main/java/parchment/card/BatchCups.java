package parchment.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.drift.Usual;
import parchment.drift.found.CupsBeside;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;

/** Lays what each cupper scored of a batch beside what the same cupper scored of its lot's others. */
final class BatchCups {
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
        this.others = CupsBeside.others(batch, logbook);
    }

    static BatchCups of(Batch batch, Logbook logbook) {
        return new BatchCups(batch, logbook);
    }

    /** Says how the batch was scored beside its lot's others, or that it was not. */
    String words() {
        if (own.isEmpty()) {
            return "It was not cupped.";
        }
        long blind = blind();
        String blindly = blind == own.size()
                ? " All were scored blind."
                : blind == 0
                        ? " None is known to be scored blind."
                        : " " + blind + " of " + own.size() + " were scored blind.";
        return scored(CupsBeside.of(batch, logbook)) + blindly;
    }

    /** Returns the three sentences with what the cups said in place of what to do, for to cup it is done; the same if it was not cupped. */
    InShort after(InShort beside, Usual.Verdict verdict) {
        if (own.isEmpty()) {
            return beside;
        }
        CupsBeside held = CupsBeside.of(batch, logbook);
        String blindly = blind() == own.size() ? ", blind" : "";
        String cups;
        if (!held.isKnown()) {
            cups = "It was cupped" + blindly + ", but its scores cannot be held against its lot's others yet.";
        } else if (!held.isClear()) {
            cups = "It was cupped" + blindly + ": its " + held.attribute()
                    + " differs no more from its lot's others than cups do anyhow.";
        } else {
            cups = String.format(
                    Locale.ROOT,
                    "Its cups scored %.1f points %s its lot's others in %s%s: %s",
                    Math.abs(held.mean()),
                    held.mean() > 0 ? "above" : "below",
                    held.attribute(),
                    blindly,
                    switch (verdict) {
                        case LIKE_THE_OTHERS -> "cup it again, nothing measured says why.";
                        case A_LITTLE_UNLIKE_THE_OTHERS, UNLIKE_THE_OTHERS -> "look at what else differed.";
                        case CANNOT_TELL -> "why cannot be told.";
                    });
        }
        return new InShort(beside.found(), beside.howSure(), cups);
    }

    private long blind() {
        return own.stream()
                .filter(cup -> logbook.cupping(cup.cupping())
                        .filter(how -> how.blind() == Cupping.Said.YES)
                        .isPresent())
                .count();
    }

    private String scored(CupsBeside cups) {
        if (!cups.isKnown()) {
            return (own.size() == 1 ? "It has 1 score sheet" : "It has " + own.size() + " score sheets")
                    + ", and too few of its lot's others by the same cuppers to hold them against.";
        }
        String attribute = cups.attribute();
        double mean = cups.mean();
        double error = cups.error();
        String size = String.format(Locale.ROOT, "%.1f points", Math.abs(mean));
        String sure = String.format(Locale.ROOT, "%.1f", Math.max(0.1, error));
        String where = size.equals("0.0 points")
                ? "Its " + attribute + " was that of its lot's others by the same cuppers"
                : "Its " + attribute + " was " + size + (mean > 0 ? " above" : " below")
                        + " its lot's others by the same cuppers";
        return where + " (" + (cups.scores() == 1 ? "1 score" : cups.scores() + " scores") + ", give or take "
                + sure
                + (!cups.isClear()
                        ? "): no more than cups differ by anyhow."
                        : "): more than cups differ by as a rule.");
    }

    private double cuppersMean(String cupper, String attribute) {
        return CupsBeside.cuppersMean(others, cupper, attribute);
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
