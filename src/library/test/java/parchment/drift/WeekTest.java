package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.logbook.written.CupScores;

class WeekTest {
    /** Sixty batches of which the last forty, or all of them but the last seven, lose more than the first twenty. */
    private static Logbook losingMore(double last) {
        double[] quiet = {0.3, -0.8, 0.5, 1.2, -0.4, -1.1, 0.9, 0.1, -0.6, 0.2};
        return BuiltBatch.logbook(IntStream.range(0, 60)
                .mapToObj(i ->
                        BuiltBatch.losing(0.14 + 0.002 * (quiet[(i * 7) % 10] + (i < 20 ? 0 : i < 53 ? 4 : last))))
                .toList());
    }

    @Test
    void tellsANumberThatMovedOnceWithItsSizeAndSinceWhen() {
        Week week = Week.of(losingMore(4));
        assertEquals(
                List.of(
                        "The mass loss of lot one lies above what was usual since 2025-01-21: 0.8 percentage points (0.6 to 0.9)."
                                + " Look at the scales, and whether drop, batch size or the moisture of the green changed."),
                week.causes().stream().map(WeekCause::toString).toList());
        assertEquals(WeekCause.Sure.CLEAR, week.causes().get(0).sure());
        assertEquals(1, times("what was usual since", week.text()), week.text());
    }

    @Test
    void saysNothingOfANumberThatCameBack() {
        assertEquals(List.of(), Week.of(losingMore(-2)).causes());
    }

    static CupScores cup(String batch) {
        return new CupScores(
                "one",
                LocalDate.of(2025, 1, 4),
                "Ida",
                batch,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Map.of("sweetness", 6.0),
                Optional.empty(),
                Map.of());
    }

    /** Three batches of a week, too few of their lot to be held against each other, of which some were cupped. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "B1 B2 B3; Every batch of the week was cupped.",
                "B1 B2; Batch B3 of the week was not cupped, and it cannot be held against others of its lot.",
                "B2; 2 batches of the week were not cupped (B1, B3), and none of them can be held against others of its lot."
            })
    void saysWhyNothingIsWorthCupping(String cupped, String sentence) {
        Logbook logbook =
                BuiltBatch.logbook(Stream.of(2.0, 2.1, 2.2).map(BuiltBatch::of).toList());
        List<CupScores> cups =
                Arrays.stream(cupped.split(" ")).map(WeekTest::cup).toList();
        String page = Week.of(
                        Logbook.of(logbook.contents().toBuilder().cups(cups).build()))
                .text();
        assertTrue(page.contains(sentence), page);
    }

    /** Twelve batches that lose about 14 %, and a thirteenth. */
    private static Week endingWith(double loss) {
        return Week.of(BuiltBatch.logbook(IntStream.range(0, 13)
                .mapToObj(i -> BuiltBatch.losing(i == 12 ? loss : 0.14 + 0.001 * (i * 7 % 5)))
                .toList()));
    }

    @Test
    void aUsualBatchIsWorthCuppingOnlyBesideAnUnlikeOneOfItsLot() {
        Week odd = endingWith(0.25);
        assertEquals(2, odd.worthCupping().size(), odd.worthCupping().toString());
        assertEquals(
                "batch B7: as usual for lot one, to taste beside the unlike one.",
                odd.worthCupping().get(0));
        assertTrue(
                odd.worthCupping().get(1).matches("batch B13: mass loss 25\\.0 %, which is .* Did the cup notice\\?"),
                odd.worthCupping().get(1));
        Week quiet = endingWith(0.142);
        assertEquals(List.of(), quiet.worthCupping());
        assertTrue(
                quiet.text().contains("Nothing calls for it: no batch was unlike the others of its lot."),
                quiet.text());
    }

    /** The stretch and the days after it differ so much from day to day that a shift was signalled whose size may be nothing. */
    @Test
    void aNumberWhoseMoveMayBeNothingOnlyMayLieThere() {
        Week week = Week.of(Logbook.open(Path.of("..", "datasets", "harbour")).ofLot("Low Orchard"));
        List<WeekCause> drifts = week.causes();
        assertEquals(1, drifts.size(), drifts.toString());
        assertEquals(WeekCause.Sure.WEAK, drifts.get(0).sure());
        assertEquals(
                "the mass loss of lot Low Orchard may lie above what was usual",
                drifts.get(0).what());
        assertTrue(
                drifts.get(0).size().matches("\\d percentage points? \\(-\\d to \\d\\)"),
                drifts.get(0).size());
        assertEquals(
                "If it goes on, look at the scales, and whether drop, batch size or the moisture of the green changed.",
                drifts.get(0).next());
        InShort words = ShortSentences.keptBy(week.inShort());
        assertEquals("Each was held against at least eight others of its lot.", words.howSure());
        assertEquals("Cup batch H237 again beside a usual one before you decide.", words.next());
        Logbook notCupped =
                Logbook.of(week.logbook().contents().toBuilder().cups(List.of()).build());
        assertEquals(
                "Nothing to do yet; the page tells of a weak sign.",
                Week.of(notCupped).inShort().next());
        assertEquals(Optional.empty(), week.told());
        String page = week.text();
        assertEquals(1, times("mass loss of lot Low Orchard may lie above", page), page);
        assertTrue(
                page.contains(
                        "A weak sign, which may be nothing. The mass loss of lot Low Orchard may lie above what was usual since"),
                page);
        // What is a little unlike is surer than what may be nothing.
        assertTrue(page.indexOf("Batch H237 was a little unlike: ") < page.indexOf("A weak sign, which may be"), page);
        assertTrue(
                page.contains("A sign is weak if the interval of its size holds zero: nothing may have moved."), page);
    }

    private static int times(String words, String text) {
        return text.split(Pattern.quote(words), -1).length - 1;
    }

    @Test
    void carriesTheFullCautionsInTextAndInAPage() {
        Week week = Week.of(
                BuiltBatch.logbook(Stream.of(2.0, 2.1, 2.2).map(BuiltBatch::of).toList()));
        for (String page : List.of(week.text(), week.html().orElseThrow())) {
            for (String caution : Cautions.forAPage()) {
                assertEquals(1, times(caution, page.replace("&#39;", "'")), caution);
            }
        }
    }

    @Test
    void aDateThatLooksLikeASlipInTheYearMakesNoWeekOfItsOwn() {
        Logbook plain = losingMore(0);
        List<Batch> batches = plain.batches();
        Batch last = batches.get(batches.size() - 1);
        Batch slipped = last.toBuilder()
                .roastedAt(last.roastedAt().orElseThrow().plusYears(27))
                .build();
        Week week = Week.of(Logbook.of(plain.contents().toBuilder()
                .batches(Stream.concat(batches.stream().limit(batches.size() - 1), Stream.of(slipped))
                        .toList())
                .build()));
        assertEquals(
                batches.get(batches.size() - 2).roastDay(),
                week.lastDay(),
                "the day of the last batch but the slipped one");
        assertTrue(
                WeekProblems.of(week)
                        .contains("Please check the date of batch " + last.name() + ": "
                                + slipped.roastDay().orElseThrow()
                                + " is more than a year after the others. It is in no week here."),
                WeekProblems.of(week).toString());
    }
}
