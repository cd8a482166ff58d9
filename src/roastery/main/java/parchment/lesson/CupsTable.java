package parchment.lesson;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;

/**
 * Shows every score of one attribute that a few batches were given, cup by cup, before anything is averaged.
 *
 * <pre>{@code
 * CupsTable.of("sweetness", logbook, logbook.lastWithCurve())
 * }</pre>
 */
public final class CupsTable implements Showable {
    private final String attribute;
    private final List<CupScores> cups;
    private final List<Batch> batches;

    private CupsTable(String attribute, List<CupScores> cups, List<Batch> batches) {
        this.attribute = attribute;
        this.cups = List.copyOf(cups);
        this.batches = List.copyOf(batches);
    }

    /** Gathers the scores of the batches, cupper by cupper; cups that were not scored on the attribute are left out. */
    public static CupsTable of(String attribute, Logbook logbook, Batch... batches) {
        List<Batch> asked = Arrays.asList(batches);
        List<CupScores> cups = logbook.cups().stream()
                .filter(cup -> asked.stream().anyMatch(batch -> batch.name().equals(cup.batch())))
                .filter(cup -> !Double.isNaN(cup.score(attribute)))
                .sorted(java.util.Comparator.comparing(CupScores::tastedOn)
                        .thenComparing(CupScores::cupper)
                        .thenComparing(CupScores::batch)
                        .thenComparing(cup -> cup.cup().orElse("")))
                .toList();
        return new CupsTable(attribute, cups, asked);
    }

    /** Returns one cupper's scores of one cup, one after the other. */
    public List<CupScores> cups() {
        return cups;
    }

    /** Returns the mean of a batch's scores, NaN if it has none. */
    public double mean(Batch batch) {
        return cups.stream()
                .filter(cup -> cup.batch().equals(batch.name()))
                .mapToDouble(cup -> cup.score(attribute))
                .average()
                .orElse(Double.NaN);
    }

    private Table table() {
        Table table = Table.titled("Scores of " + attribute + ", cup by cup")
                .withText("cupper", cups, CupScores::cupper)
                .withText("batch", cups, CupScores::batch)
                .withText("cup", cups, cup -> cup.cup().orElse(""))
                .withNumber(attribute, "points", 2, cups, cup -> cup.score(attribute))
                .withText("cupping", cups, CupScores::cupping)
                .withRowsShown(40);
        for (Batch batch : batches) {
            table = table.withNote(meanWords(batch));
        }
        return table;
    }

    private String meanWords(Batch batch) {
        long count =
                cups.stream().filter(cup -> cup.batch().equals(batch.name())).count();
        return count == 0
                ? "Batch " + batch.name() + " has no score of " + attribute + "."
                : String.format(
                        Locale.ROOT, "Batch %s: mean %.2f points of %d scores.", batch.name(), mean(batch), count);
    }

    @Override
    public String text() {
        return table().text();
    }

    @Override
    public Optional<String> html() {
        return table().html();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s of %s, of %s",
                LessonWords.count(cups.size(), "score", "scores"),
                attribute,
                LessonWords.count(batches.size(), "batch", "batches"));
    }
}
