package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.drift.Week;
import parchment.drift.found.WeekCause;
import parchment.evidence.Evidence;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;
import parchment.logbook.written.Upkeep;
import parchment.period.NearbyWork;
import parchment.period.ProbeChange;

class OverviewTest {
    private static final Logbook HILLSIDE = Logbook.open(Path.of("..", "datasets", "hillside"));

    @TempDir
    private Path folder;

    private Logbook logbook(String batches) throws IOException {
        Files.writeString(folder.resolve("batches.csv"), batches);
        return Logbook.open(folder);
    }

    private static List<String> said(Overview.Part part, Logbook logbook) {
        return part.of(logbook).sentences();
    }

    @Test
    void aSmallLogbookIsToldInFourPartsWithTheCautionOnce() {
        Overview overview = Overview.of(HILLSIDE);
        String text = overview.text();
        assertEquals(
                List.of("The last week", "What is odd", "What to cup", "What is unsettled"),
                overview.sections().stream()
                        .map(section -> section.part().title())
                        .toList());
        int from = 0;
        for (Overview.Section section : overview.sections()) {
            int at = text.indexOf(section.part().title(), from);
            assertTrue(at >= from, text);
            from = at;
        }
        assertEquals(1, text.split(Pattern.quote(Cautions.BESIDE_A_READING), -1).length - 1, text);
        ShortSentences.keptBy(overview.sections().get(0).inShort().orElseThrow());
        List<String> open = overview.sections().get(3).sentences();
        assertEquals(3, open.size(), open.toString());
        InShort acidity =
                Evidence.of("acidity", Features.dropTemperature(), HILLSIDE).inShort();
        assertEquals(acidity.found() + " " + acidity.next(), open.get(0));
        assertTrue(
                open.get(0).startsWith("Whether acidity is higher at a drop temperature of 394 °F or "), open.get(0));
        assertTrue(overview.toString().startsWith("Overview of Hillside"), overview.toString());
    }

    @Test
    void whatIsTooNewToJudgeIsNotCalledUsual() throws IOException {
        Logbook three =
                logbook("batch,roasted at,lot\n1,2031-01-06T09:00,a\n2,2031-01-06T09:30,a\n3,2031-01-07T09:00,a\n");
        assertEquals(
                List.of(
                        "Nothing can be told yet: no batch of a last week can be held against eight others of its lot."),
                said(Overview.Part.WHAT_IS_ODD, three));
        assertEquals(
                List.of(
                        "Batches 1, 2, 3: not cupped, and too early to say what is usual for the lot. The cup says how it came out."),
                said(Overview.Part.WORTH_CUPPING, three));
        assertEquals(
                List.of(
                        "Nothing was cupped yet, so nothing can be asked of the scores. Write scores into cuppings.csv, a line for"
                                + " each cup."),
                said(Overview.Part.UNSETTLED, three));
    }

    @Test
    void withoutDatesThereIsNoWeekAndEveryPartSaysSoInWords() throws IOException {
        Logbook undated = logbook("batch,roasted at,lot\n1,,a\n2,,a\n");
        assertEquals(
                "There is no week to show: no batch has a date.",
                Overview.Part.THE_WEEK.of(undated).inShort().orElseThrow().found());
        assertEquals(
                List.of("Nothing: there is no week with batches in it."), said(Overview.Part.WORTH_CUPPING, undated));
        assertTrue(said(Overview.Part.WHAT_IS_ODD, undated).get(0).startsWith("Nothing can be told yet"));
    }

    @Test
    void aPartThatFailsSaysSoAndAStopIsNoFailure() {
        Overview.Section failed = Overview.Part.standing(Overview.Part.UNSETTLED, () -> {
            throw new IllegalStateException("NullPointerException at line 3");
        });
        assertEquals(
                List.of(
                        "This part could not be worked out from this logbook; the rest of the page stands. Mend the problems that the tour"
                                + " lists and look again. If it stays so, send the folded line to those who mend the program."),
                failed.sentences());
        assertTrue(
                failed.failed()
                        .get(0)
                        .matches(
                                "IllegalStateException in parchment\\.card\\.OverviewTest, line \\d+: NullPointerException at line 3"),
                failed.failed().toString());
        String html = failed.html().orElseThrow();
        int folded = html.indexOf("<details");
        assertTrue(folded > 0 && html.indexOf("IllegalStateException") > folded, html);
        assertThrows(
                CancellationException.class,
                () -> Overview.Part.standing(Overview.Part.UNSETTLED, () -> {
                    throw new CancellationException("Stopped.");
                }));
    }

    /** What the week's part says of dates that are not yet; the other parts say nothing of it, nor does any without a day of reading. */
    @Test
    void datesAfterTodayAreDoubtedInThePartOfTheWeek() {
        LocalDate today = LocalDate.of(2024, 1, 1);
        List<String> said = Overview.Part.THE_WEEK.of(HILLSIDE, today).sentences();
        assertTrue(
                said.get(said.size() - 1)
                        .startsWith("40 of 40 batches are dated after today, 2024-01-01, the last on 2025-04-15."),
                said.toString());
        assertEquals(said(Overview.Part.THE_WEEK, HILLSIDE), said.subList(0, said.size() - 1));
        assertEquals(
                said(Overview.Part.THE_WEEK, HILLSIDE),
                Overview.Part.THE_WEEK.of(HILLSIDE, LocalDate.of(2025, 4, 15)).sentences());
        assertEquals(
                said(Overview.Part.WORTH_CUPPING, HILLSIDE),
                Overview.Part.WORTH_CUPPING.of(HILLSIDE, today).sentences());
    }

    /** Twelve batches of one lot, the last of which loses as much as is said: as usual, a little unlike, unlike. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "0.141; Nothing: no batch of the week, nothing that is watched, and no step of a probe.",
                "0.147; Nothing by much: 1 batch of the week a little unlike, nothing that is watched, and no step of a probe.",
                "0.25; Nothing more than what is said of the week."
            })
    void whatIsOddIsToldWithHowLittleThereIs(double last, String words) throws IOException {
        StringBuilder rows = new StringBuilder("batch,roasted at,lot,green mass [kg],roasted mass [kg]\n");
        for (int i = 0; i < 12; i++) {
            double loss = i == 11 ? last : 0.14 + 0.001 * (i * 7 % 5);
            rows.append(i + 1)
                    .append(",2031-01-06T")
                    .append(10 + i)
                    .append(":00,a,2,")
                    .append(2 * (1 - loss))
                    .append('\n');
        }
        assertEquals(List.of(words), said(Overview.Part.WHAT_IS_ODD, logbook(rows.toString())));
    }

    /** A batch that was cupped already gives one answer on both pages. */
    @Test
    void whyNothingIsToBeCuppedIsSaidAsOnThePageOfTheWeek() throws IOException {
        Files.writeString(
                folder.resolve("cuppings.csv"),
                "cupping,tasted on,cupper,batch,sweetness\nC1,2031-01-08,Ada,1,7.0\nC1,2031-01-08,Ada,2,6.0\n");
        Logbook cupped = logbook("batch,roasted at,lot\n1,2031-01-06T09:00,a\n2,2031-01-06T09:30,a\n");
        assertEquals(List.of("Every batch of the week was cupped."), said(Overview.Part.WORTH_CUPPING, cupped));
        assertTrue(Week.of(cupped).text().contains("Every batch of the week was cupped."), "on the page");
    }

    private static Unsettled.Asked asked(String about, Verdict verdict) {
        return new Unsettled.Asked(about, verdict, "Words of " + about + ".");
    }

    /** At most three that are unsettled are told, at most six are asked, and both of one attribute before the next. */
    @ParameterizedTest
    @CsvSource({"CANNOT_TELL, 5, 3", "STRONG, 2, 4", "STRONG, 3, 6", "STRONG, 4, 6", "NOTHING_SEEN, 1, 2"})
    void questionsAreBoundedByTheirNumber(Verdict answer, int attributes, int questions) {
        Set<String> names = new LinkedHashSet<>(
                IntStream.range(0, attributes).mapToObj(i -> "a" + i).toList());
        List<String> order = new ArrayList<>();
        List<Unsettled.Asked> asked = Unsettled.ask(names, (attribute, feature) -> {
            order.add(attribute + " " + feature.name());
            return asked(attribute, answer);
        });
        assertEquals(questions, asked.size());
        assertEquals(List.of("a0 drop temperature", "a0 development time"), order.subList(0, 2));
    }

    @Test
    void onlyWhatIsUnsettledIsToldAndOtherwiseWhatHasAnAnswer() {
        assertEquals(
                List.of("Words of b."),
                Unsettled.told(List.of(asked("a", Verdict.STRONG), asked("b", Verdict.CANNOT_TELL)))
                        .sentences());
        assertEquals(
                List.of("Nothing of what was asked. There is an answer to each of these: a, b."),
                Unsettled.told(List.of(asked("a", Verdict.TOO_SMALL), asked("b", Verdict.SUGGESTIVE)))
                        .sentences());
    }

    private static Optional<String> step(ProbeChange.Kind kind, String machine) {
        LocalDate day = LocalDate.of(2031, 3, 4);
        return OverviewWeek.step(
                new ProbeChange(machine, kind, day, day, day, List.of(), 0.01, "words"), Optional.empty());
    }

    @Test
    void aStepThatOtherWorkMayExplainIsToldAsSuch() {
        LocalDate day = LocalDate.of(2031, 3, 4);
        ProbeChange change =
                new ProbeChange("drum", ProbeChange.Kind.FOUND_WITHOUT_ENTRY, day, day, day, List.of(), 0.01, "words");
        Upkeep work = new Upkeep("drum", day.minusDays(1), "ducts cleaned", Optional.empty());
        assertEquals(
                "The bean probe of drum may read differently since about 2031-03-04. The upkeep says: ducts cleaned on 2031-03-03 (the day"
                        + " before). That can do this too. Older readings are put on today's scale.",
                OverviewWeek.step(change, Optional.of(new NearbyWork(work, change)))
                        .orElseThrow());
    }

    @Test
    void aStepOfAProbeIsToldWithItsDayAndWhetherItWasWritten() {
        assertEquals(
                "The bean probe of drum reads differently since 2031-03-04, as the upkeep says. Older readings are put on today's scale.",
                step(ProbeChange.Kind.FOUND_AND_WRITTEN, "drum").orElseThrow());
        assertEquals(
                "The bean probe reads differently since about 2031-03-04, and nobody wrote why. Older readings are put on today's scale; write"
                        + " into upkeep.csv what was done.",
                step(ProbeChange.Kind.FOUND_WITHOUT_ENTRY, "").orElseThrow());
    }

    @ParameterizedTest
    @EnumSource(
            value = ProbeChange.Kind.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"FOUND_AND_WRITTEN", "FOUND_WITHOUT_ENTRY"})
    void whatMayBeNoStepIsNotOnTheFirstPage(ProbeChange.Kind kind) {
        assertEquals(Optional.empty(), step(kind, "drum"));
    }

    @Test
    void ofManySentencesTheFirstAreShownAndTheRestCounted() {
        List<String> six = List.of("A.", "B.", "C.", "D.", "E.", "F.");
        assertEquals(six.subList(0, 5), OverviewWeek.firstOf(six.subList(0, 5), "None."));
        assertEquals(
                List.of("A.", "B.", "C.", "D.", "And 2 more, on the page of the week."),
                OverviewWeek.firstOf(six, "None."));
        assertEquals(List.of("None."), OverviewWeek.firstOf(List.of(), "None."));
    }

    @Test
    void theCauseOfTheWeekIsToldOnceAndOfItOnlySinceWhenAndHowLarge() {
        WeekCause cause = new WeekCause(
                WeekCause.Kind.DRIFT,
                WeekCause.Sure.CLEAR,
                "the mass loss of lot one lies above what was usual",
                LocalDate.of(2031, 3, 4),
                "0.8 percentage points (0.6 to 0.9)",
                "How sure.",
                "Look at the scales.",
                List.of());
        assertEquals("Since 2031-03-04: 0.8 percentage points (0.6 to 0.9).", OverviewWeek.sinceWhen(cause));
        assertEquals(List.of(), OverviewWeek.odd(List.of(cause), Optional.of(cause)));
        assertEquals(
                List.of(
                        "The mass loss of lot one lies above what was usual since 2031-03-04: 0.8 percentage points (0.6 to 0.9). Look at"
                                + " the scales."),
                OverviewWeek.odd(List.of(cause), Optional.empty()));
    }
}
