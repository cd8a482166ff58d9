package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;

class WeekInShortTest {
    private static final double LITTLE = 0.145;

    /** The same beside a batch that is unlike, which makes the ranges of the others wider. */
    private static final double LITTLE_BESIDE_UNLIKE = 0.1463;

    private static final double[] QUIET = {0.3, -0.8, 0.5, 1.2, -0.4, -1.1, 0.9, 0.1, -0.6, 0.2};

    /** Batches a day apart that lose about 14 %, and after them some that lose as much as is said. */
    private static List<BuiltBatch> quiet(int number, double... last) {
        List<BuiltBatch> rows = new ArrayList<>();
        IntStream.range(0, number).forEach(i -> rows.add(BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 10])));
        for (double loss : last) {
            rows.add(BuiltBatch.losing(loss));
        }
        return rows;
    }

    private static void says(String found, String howSure, String next, Logbook logbook) {
        InShort words = ShortSentences.keptBy(Week.of(logbook).inShort());
        assertEquals(new InShort(found, howSure, next), words);
        String page = Week.of(logbook).text();
        assertTrue(page.contains(words.text()), page);
        assertFalse(page.contains("cumulated sum") || page.contains("90 % date set"), page);
    }

    @Test
    void aWeekAsUsual() {
        says(
                "7 batches in the week to 2025-01-09: none was unlike the others of its lot.",
                "Each was held against at least eight others of its lot.",
                "Nothing to do; the cup decides.",
                BuiltBatch.logbook(quiet(9)));
    }

    /** Twelve batches of 4 kg, and in the week after them some of 2 kg: the week says of these what their own pages say. */
    private static Week ofOtherCharges(int number) {
        List<BuiltBatch> rows = new ArrayList<>();
        quiet(12).forEach(row -> rows.add(row.withGreen(4)));
        quiet(number).forEach(rows::add);
        return Week.of(BuiltBatch.logbook(rows));
    }

    @Test
    void aChargeOfItsOwnIsToldAsTheBatchsOwnPageTellsIt() {
        Week one = ofOtherCharges(1);
        assertEquals(
                "6 of 7 could be held against at least eight others; 1 of another charge only in part.",
                ShortSentences.keptBy(one.inShort()).howSure());
        String page = one.text();
        InShort own = one.batches().get(6).inShort();
        assertTrue(own.found().startsWith("Batch B13 was a half charge (2 kg; usually 4 kg)"), own.text());
        assertTrue(page.contains(own.found() + " " + own.howSure()), page);
        assertTrue(page.contains("in part as usual, half charge"), page);
        assertFalse(page.contains("Nothing: no batch, and nothing that is watched."), page);
        assertTrue(ofOtherCharges(3).text().contains("Batch B15 was a half charge (2 kg; usually 4 kg)."));
        Week four = ofOtherCharges(4);
        assertEquals(
                "3 of 7 could be held against at least eight others; 4 of other charges only in part.",
                ShortSentences.keptBy(four.inShort()).howSure());
        assertTrue(
                four.text()
                        .contains(
                                "4 batches were of a charge that too few others are of, so only some numbers of them could be held"
                                        + " against others: B13, B14, B15, B16."),
                four.text());
    }

    private static WeekCause probe(String what, String since) {
        return new WeekCause(
                WeekCause.Kind.PROBE, WeekCause.Sure.PERHAPS, what, LocalDate.parse(since), "1 °C", "", "", List.of());
    }

    /** The week begins on 2025-01-07. */
    @Test
    void aCauseIsToldWithTheBatchesThatItDoesNotExplainAndTheDayIfItIsFromBeforeTheWeek() {
        Week quiet = Week.of(BuiltBatch.logbook(quiet(13)));
        Week one = Week.of(BuiltBatch.logbook(quiet(12, 0.25)));
        Week two = Week.of(BuiltBatch.logbook(quiet(12, 0.25, 0.04)));
        WeekCause before = probe("the probe may read lower", "2025-01-06");
        assertEquals("The week: the probe may read lower since 2025-01-06.", found(before, quiet));
        assertEquals(
                "The week: the probe may read lower.", found(probe("the probe may read lower", "2025-01-07"), quiet));
        assertEquals(
                "The week: the probe may read lower since 2025-01-06, while batch B13 was unlike.", found(before, one));
        assertEquals(
                "The week: the probe may read lower since 2025-01-06, while 2 batches were unlike.",
                found(before, two));
        // With the day it would have 26 words.
        String most = "a b c d e f g h i j k l m n o p";
        assertEquals(
                "The week: " + most + " since 2025-01-06, while batch B13 was unlike.",
                found(probe(most, "2025-01-06"), one));
        assertEquals(
                "The week: " + most + " q, while batch B13 was unlike.", found(probe(most + " q", "2025-01-06"), one));
    }

    private static String found(WeekCause cause, Week week) {
        return WeekInShort.found("The week: ", cause, week);
    }

    @Test
    void aWeekOfOneBatch() {
        List<Batch> batches = new ArrayList<>(BuiltBatch.logbook(quiet(12)).batches());
        Batch last = batches.remove(11);
        batches.add(last.toBuilder()
                .roastedAt(last.roastedAt().orElseThrow().plusDays(20))
                .build());
        says(
                "One batch in the week to 2025-02-01: it was as usual for its lot.",
                "It was held against at least eight others of its lot.",
                "Nothing to do; the cup decides.",
                Logbook.of(LogbookContents.ofBatches("built", batches)));
    }

    @Test
    void oneBatchAndMoreThatWereUnlike() {
        says(
                "7 batches in the week to 2025-01-13: batch B13 was unlike the others of its lot.",
                "Each was held against at least eight others of its lot. Of 100 ordinary ones about five look so.",
                "Cup it beside a usual batch before you decide: unlike is not bad.",
                BuiltBatch.logbook(quiet(12, 0.25)));
        says(
                "7 batches in the week to 2025-01-14: 2 were unlike the others of their lots.",
                "Each was held against at least eight others of its lot. Of 100 ordinary ones about five look so.",
                "Cup them beside usual batches before you decide: unlike is not bad.",
                BuiltBatch.logbook(quiet(12, 0.25, 0.04)));
    }

    @Test
    void aNumberThatMovedStandsBeforeSingleBatches() {
        Logbook logbook = BuiltBatch.logbook(IntStream.range(0, 60)
                .mapToObj(i -> BuiltBatch.losing(0.14 + 0.002 * (QUIET[(i * 7) % 10] + (i < 20 ? 0 : 4))))
                .toList());
        Week week = Week.of(logbook);
        InShort words = ShortSentences.keptBy(week.inShort());
        assertEquals(
                "7 batches in the week to 2025-03-01: the mass loss of lot one lies above what was usual.",
                words.found());
        assertTrue(
                words.howSure().matches("Luck alone .* such a shift in .* as long as this; 1 was watched\\."),
                words.howSure());
        assertEquals(week.causes().get(0).next(), words.next());
    }

    @Test
    void aLotThatIsNewAndOneOfFew() {
        says(
                "3 batches in the week to 2025-01-03: too early to say what is usual.",
                "Lot one was roasted for the first time.",
                "Cup them now; ask again when nine batches of a lot are roasted.",
                BuiltBatch.logbook(quiet(3)));
        says(
                "7 batches in the week to 2025-01-08: too early to say what is usual.",
                "Eight other batches of a lot say what is usual, and there are fewer.",
                "Cup them now; ask again when nine batches of a lot are roasted.",
                BuiltBatch.logbook(quiet(8)));
        says(
                "2 batches in the week to 2025-01-02: too early to say what is usual.",
                "2 lots were roasted for the first time.",
                "Cup them now; ask again when nine batches of a lot are roasted.",
                BuiltBatch.logbook(
                        List.of(BuiltBatch.losing(0.14), BuiltBatch.losing(0.14).withLot("two"))));
    }

    @Test
    void aBatchWithoutALot() {
        says(
                "One batch in the week to 2025-01-01: too early to say what is usual.",
                "No lot was written for it.",
                "Write the lot of each batch into batches.csv and ask again.",
                BuiltBatch.logbook(List.of(BuiltBatch.losing(0.14).withLot(""))));
    }

    @Test
    void aNewLotBesideAnOldOne() {
        List<BuiltBatch> rows = quiet(12);
        rows.add(BuiltBatch.losing(0.15).withLot("two"));
        Logbook logbook = BuiltBatch.logbook(rows);
        says(
                "7 batches in the week to 2025-01-13: none was unlike the others of its lot.",
                "6 of 7 could be held against at least eight others of their lot.",
                "Nothing to do; the cup decides.",
                logbook);
        String page = Week.of(logbook).text();
        assertTrue(
                page.contains(
                        "Lot two was roasted for the first time, in 1 batch. What is usual for it can be told from the"
                                + " ninth batch on."),
                page);
    }

    @Test
    void noDateAndNoBatch() {
        says(
                "There is no week to show: no batch has a date.",
                "None of the 2 batches has a day that could be read under 'roasted at' in batches.csv.",
                "Write the day and time of each charge there, as in 2026-03-14 09:30, and ask again.",
                Logbook.of(LogbookContents.ofBatches(
                        "built",
                        List.of(Batch.named("B1").build(), Batch.named("B2").build()))));
        says(
                "There is no week to show: the logbook has no batches.",
                "Neither a row of batches.csv nor a curve was found.",
                "Put a curve file for each roast into the folder 'curves', and a row into batches.csv.",
                Logbook.of(LogbookContents.ofBatches("built", List.of())));
    }

    @Test
    void batchesWithoutADateAreCounted() {
        Logbook dated = BuiltBatch.logbook(quiet(9));
        List<Batch> batches = new ArrayList<>(dated.batches());
        batches.add(Batch.named("undated").lot("one").build());
        String page =
                Week.of(Logbook.of(LogbookContents.ofBatches("built", batches))).text();
        assertTrue(page.contains("1 batch has no date that could be read, so it is in no week."), page);
    }

    /** A loss of 14.5 % lies beyond what holds 80 of 100 and within what holds 95 of 100. */
    @Test
    void whatIsALittleUnlikeIsCounted() {
        Logbook one = BuiltBatch.logbook(quiet(12, LITTLE));
        says(
                "7 batches in the week to 2025-01-13: none was unlike the others of its lot, 1 a little.",
                "Each was held against at least eight others of its lot.",
                "Nothing to do yet; keep it in mind when you taste.",
                one);
        String page = Week.of(one).text();
        assertTrue(page.contains("Nothing by much, and nothing that is watched."), page);
        assertTrue(page.contains("Batch B13 was a little unlike: mass loss "), page);
        assertTrue(
                page.contains("Nothing calls for it: no batch was unlike the others of its lot by more than a little."),
                page);
        assertTrue(Week.of(one).toString().endsWith("7 batches, 0 unlike the others of their lot, 1 a little"));
        says(
                "7 batches in the week to 2025-01-14: batch B13 was unlike the others of its lot, 1 a little.",
                "Each was held against at least eight others of its lot. Of 100 ordinary ones about five look so.",
                "Cup it beside a usual batch before you decide: unlike is not bad.",
                BuiltBatch.logbook(quiet(12, 0.25, LITTLE_BESIDE_UNLIKE)));
    }

    @Test
    void aWeekOfOneBatchThatIsALittleUnlike() {
        List<Batch> batches =
                new ArrayList<>(BuiltBatch.logbook(quiet(12, LITTLE)).batches());
        Batch last = batches.remove(12);
        batches.add(last.toBuilder()
                .roastedAt(last.roastedAt().orElseThrow().plusDays(20))
                .build());
        says(
                "One batch in the week to 2025-02-02: it was a little unlike the others of its lot.",
                "It was held against at least eight others of its lot.",
                "Nothing to do yet; keep it in mind when you taste.",
                Logbook.of(LogbookContents.ofBatches("built", batches)));
    }

    @Test
    void whatWasCuppedNeedNotBeCupped() {
        Logbook two = BuiltBatch.logbook(quiet(2));
        List<CupScores> cups =
                two.batches().stream().map(batch -> WeekTest.cup(batch.name())).toList();
        says(
                "2 batches in the week to 2025-01-02: too early to say what is usual.",
                "Lot one was roasted for the first time.",
                "Ask again when nine batches of a lot are roasted.",
                Logbook.of(two.contents().toBuilder().cups(cups).build()));
    }
}
