package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;

/** Thirteen batches of one lot, of which the last may be unlike; the first four have scores of 5 and 7, whose deviation is 1.069 points. */
class WeekCupsTest {
    private static CupScores cup(String batch, double score) {
        return new CupScores(
                "blind",
                LocalDate.of(2025, 1, 20),
                "Ida",
                batch,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Map.of("liking", score),
                Optional.empty(),
                Map.of());
    }

    private static Week week(double loss, String note, Cupping.Said blind, double... scores) {
        List<CupScores> cups = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            cups.add(cup("B" + i, 5));
            cups.add(cup("B" + i, 7));
        }
        for (double score : scores) {
            cups.add(cup("B13", score));
        }
        Logbook built = BuiltBatch.logbook(IntStream.range(0, 13)
                .mapToObj(i -> BuiltBatch.losing(i == 12 ? loss : 0.14 + 0.001 * (i * 7 % 5)))
                .toList());
        List<Batch> batches = built.batches().stream()
                .map(b -> b.name().equals("B13") && !note.isEmpty()
                        ? b.toBuilder().label(Batch.Label.NOTE, note).build()
                        : b)
                .toList();
        return Week.of(Logbook.of(built.contents().toBuilder()
                .batches(batches)
                .cups(cups)
                .cuppings(List.of(new Cupping("blind", blind, blind, Map.of())))
                .build()));
    }

    /** 1.645 of 1.069 are 1.7585 points. */
    @ParameterizedTest
    @CsvSource({"4.241,true", "4.242,false", "7.759,false"})
    void aCupClearlyBelowItsLotsOthersStandsOut(double score, boolean told) {
        String page = week(0.142, "", Cupping.Said.YES, score).text().replaceAll("\\s+", " ");
        assertEquals(
                told,
                page.contains(
                        "The cups of batch B13 of lot one were low: its liking was 1.8 points below its lot's others by the same"
                                + " cuppers (1 score, give or take 1.1)."),
                page);
        assertEquals(!told, page.contains("Nothing: no batch, and nothing that is watched."), page);
    }

    @Test
    void anUnlikeBatchThatWasCuppedIsToldWithItsScores() {
        Week cupped = week(0.25, "", Cupping.Said.YES, 6, 7);
        assertEquals(
                List.of(
                        "Batch B13 of lot one was unlike the others and was cupped: its liking was 0.5 points above its lot's others by"
                                + " the same cuppers (2 scores, give or take 0.8): no more than cups differ by anyhow."),
                cupped.oddAndCupped());
        assertFalse(cupped.text().contains("no batch was unlike"), cupped.text());
        assertTrue(cupped.text().replaceAll("\\s+", " ").contains("was unlike the others and was cupped"));
        assertEquals(List.of(), week(0.25, "", Cupping.Said.YES).oddAndCupped());
        assertEquals(List.of(), week(0.142, "", Cupping.Said.YES, 6).oddAndCupped());
    }

    /** 1.645 of 1.069 are 1.7585 points. */
    @ParameterizedTest
    @CsvSource({"4.241,true", "4.242,false"})
    void whatTheCupsOfAnUnlikeBatchSayIsToldWithWhetherItIsMoreThanCupsDifferBy(double score, boolean more) {
        List<String> said = week(0.25, "", Cupping.Said.YES, score).oddAndCupped();
        assertTrue(
                said.get(0)
                        .endsWith(
                                more
                                        ? "(1 score, give or take 1.1): more than cups differ by as a rule."
                                        : "(1 score, give or take 1.1): no more than cups differ by anyhow."),
                said.toString());
    }

    /** A low cup is a reason to act: neither the first sentences nor "Worth cupping" may say that there is none. */
    @Test
    void lowCupsAreInTheHeadlineAndWorthAnotherCupping() {
        Week low = week(0.142, "", Cupping.Said.YES, 4.2);
        assertEquals(
                new InShort(
                        "7 batches in the week to 2025-01-13: none was unlike the others of its lot, yet batch B13's cups were low.",
                        "Each was held against at least eight others of its lot.",
                        "Cup batch B13 again beside a usual one before you decide."),
                ShortSentences.keptBy(low.inShort()));
        String page = low.text().replaceAll("\\s+", " ");
        assertTrue(page.contains("Batch B13 again, beside a usual one: its cups were low."), page);
        assertFalse(page.contains("Nothing calls for it"), page);
        assertEquals(
                "Nothing to do; the cup decides.",
                week(0.142, "", Cupping.Said.YES, 4.3).inShort().next());
    }

    @Test
    void theTableHasTheBlindScoresWhereThereAreSome() {
        assertTrue(week(0.142, "", Cupping.Said.YES, 6, 7).text().contains("liking, scored blind"));
        assertTrue(week(0.142, "", Cupping.Said.YES, 6, 7).text().contains("6.5"));
        assertFalse(week(0.142, "", Cupping.Said.NOT_WRITTEN, 6, 7).text().contains("scored blind"));
        assertFalse(week(0.142, "", Cupping.Said.YES).text().contains("scored blind"));
    }

    /** On a narrow screen the first columns are what is seen; a column in which nothing is written only pushes the others out of it. */
    @Test
    void theTableBeginsWithTheAnswerAndHasNoColumnThatIsEmpty() {
        Week week = week(0.142, "", Cupping.Said.YES);
        String plain = heading(week);
        assertTrue(plain.matches("batch +against its lot +roasted on +lot +development time .*"), plain);
        List<Batch> written = week.logbook().batches().stream()
                .map(b -> b.name().equals("B13")
                        ? b.toBuilder().label(Batch.Label.RECIPE, "filter").build()
                        : b)
                .toList();
        String one = heading(Week.of(Logbook.of(
                week.logbook().contents().toBuilder().batches(written).build())));
        assertTrue(one.matches("batch +against its lot +roasted on +lot +recipe +development time .*"), one);
    }

    private static String heading(Week week) {
        return week.text()
                .lines()
                .map(line -> line.replaceAll("[|*]", " ").strip())
                .filter(line -> line.startsWith("batch ") && line.contains("roasted on"))
                .findFirst()
                .orElse("");
    }

    @Test
    void aNoteIsTheFirstReasonOfAnUnlikeBatch() {
        Week week = week(0.25, "power dip.", Cupping.Said.YES);
        WeekCause batch = week.causes().stream()
                .filter(cause -> cause.kind() == WeekCause.Kind.BATCH)
                .findFirst()
                .orElseThrow();
        assertTrue(batch.size().startsWith("its note says \"power dip\"; mass loss 25.0 %, where "), batch.size());
        assertTrue(
                week.worthCupping().contains("batch B13: its note says \"power dip\". Did the cup notice?"),
                week.worthCupping().toString());
        assertTrue(week(0.142, "power dip", Cupping.Said.YES).causes().isEmpty());
    }
}
