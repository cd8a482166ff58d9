package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.drift.ProbeShifts;
import parchment.lesson.sheet.Reply;
import parchment.logbook.Logbook;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Cupping;
import parchment.period.ProbePeriods;
import parchment.quantity.TemperatureUnit;

class LessonTest {
    private static final long[] SEEDS = {23};

    static List<Integer> lessons() {
        return IntStream.rangeClosed(1, Course.size()).boxed().toList();
    }

    /** The number or word that a student would type who reads the page rightly. */
    private static String typed(LessonQuestion question) {
        if (question instanceof NumberQuestion number) {
            return String.format(
                    java.util.Locale.ROOT,
                    "%." + number.unit().digits() + "f",
                    number.unit().shown(number.expected().value(), number.reader()));
        }
        return ((WordQuestion) question).right().value().get(0);
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void checksWorkForOtherSeeds(int number) {
        for (long seed : SEEDS) {
            Lesson lesson = Lesson.open(number, seed);
            for (LessonQuestion question : lesson.questions()) {
                if (question instanceof ClaimQuestion claim) {
                    assertTrue(Double.isFinite(claim.shownTruth().orElse(Double.NaN)), () -> number + claim.name());
                } else {
                    String right = typed(question);
                    Reply reply = lesson.check(question.name(), right);
                    assertEquals(Reply.Kind.RIGHT, reply.kind(), () -> number + " " + question.name() + " " + right);
                }
            }
        }
    }

    /** "Cup 1" in a hint gives nothing away where the answer is the number 1; "1 cup" does. */
    private static boolean givesAway(String hints, String right) {
        String told = hints.replaceAll("(?i)\\b(cups?|batch(es)?|lessons?) \\d+\\b", "");
        return told.matches("(?s).*(?<![\\d.:])" + Pattern.quote(right) + "(?![\\d:]|\\.\\d).*");
    }

    @Test
    void aHintThatHoldsTheAnswerIsNoticed() {
        assertTrue(givesAway("Not yet. Count again: it is 3.", "3"));
        assertTrue(givesAway("Not yet. There are 3 of them", "3"));
        assertTrue(givesAway("Not yet. It is 204.5.", "204.5"));
        assertFalse(givesAway("Not yet. Look at cup 3 again.", "3"));
        assertFalse(givesAway("Not yet. Look between 3:30 and 0.3.", "3"));
        assertFalse(givesAway("Not yet. It is over 1204.5", "204.5"));
    }

    /** A hint gives a word away if it has that and none of the other words that fit; "yes" and "no" are in many a sentence. */
    private static boolean givesAway(String hints, WordQuestion question) {
        String right = question.right().value().get(0);
        return !List.of("yes", "no").contains(right)
                && holds(hints, right)
                && question.choices().stream().noneMatch(other -> !other.equals(right) && holds(hints, other));
    }

    private static boolean holds(String hints, String word) {
        return Pattern.compile("(?<![\\p{L}\\d])" + Pattern.quote(word) + "(?![\\p{L}\\d])", Pattern.CASE_INSENSITIVE)
                .matcher(hints)
                .find();
    }

    private static WordQuestion asked(String right, String... choices) {
        return new WordQuestion("asked", "", Once.of(() -> List.of(right)), List.of(choices), "", "", "");
    }

    @Test
    void aHintThatHoldsTheRightWordAloneIsNoticed() {
        assertTrue(givesAway("Not yet. It was Ida's hand.", asked("Ida", "Ida", "Jon")));
        assertTrue(givesAway("Not yet. Look at B again.", asked("B", "A", "B")));
        assertFalse(givesAway("Not yet. Was it Ida or Jon?", asked("Ida", "Ida", "Jon")));
        assertFalse(givesAway("Not yet. Look at the batches.", asked("B", "A", "B")));
        assertTrue(givesAway("Not yet. Look at batch H12.", asked("H12")));
        assertFalse(givesAway("Not yet. Look at batch H123.", asked("H12")));
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void hintsNeverHoldTheAnswer(int number) {
        Lesson lesson = Lesson.open(number, SEEDS[0]);
        for (LessonQuestion question : lesson.questions()) {
            if (question instanceof NumberQuestion) {
                String right = typed(question);
                Reply first = lesson.check(question.name(), "-98765");
                Reply second = lesson.check(question.name(), "-98765");
                assertEquals(Reply.Kind.NOT_YET, first.kind());
                assertNotEquals(first.words(), second.words());
                assertFalse(givesAway(first + " " + second, right), () -> question.name() + " gives away " + right);
            } else if (question instanceof WordQuestion word) {
                String hints = word.firstHint() + " " + word.secondHint();
                assertFalse(
                        givesAway(hints, word),
                        () -> question.name() + " gives away "
                                + word.right().value().get(0) + ": " + hints);
            }
        }
    }

    @Test
    void theSameSeedIsTheSameLessonAndAnotherIsNot() {
        assertEquals(AnswerKey.of(4, 5).text(), AnswerKey.of(4, 5).text());
        assertNotEquals(AnswerKey.of(4, 5).text(), AnswerKey.of(4, 6).text());
    }

    /** The three autumns, by seeds that draw them: what each shows is in the truth, not in the book. */
    @Test
    void whoMovedFirstCrackIsDrawnFromTheSeedAndTheBatchesSayWhom() {
        Set<Suspect> met = EnumSet.noneOf(Suspect.class);
        for (long seed : new long[] {1, 2, 3}) {
            Lesson lesson = Lesson.open(8, seed);
            Suspect truth = Suspect.behind(lesson.behind().orElseThrow());
            met.add(truth);
            assertEquals(truth, BeanMachineOrWeather.likeliest(lesson.logbook()), "seed " + seed);
            assertEquals(
                    Reply.Kind.RIGHT, lesson.check("written", "probe cleaned").kind());
            ClaimQuestion claim = (ClaimQuestion) lesson.questions().stream()
                    .filter(ClaimQuestion.class::isInstance)
                    .findFirst()
                    .orElseThrow();
            double shift = claim.shownTruth().orElseThrow();
            assertTrue(truth == Suspect.MACHINE ? shift < -1.5 : shift == 0, truth + " " + shift);
            lesson.claim("probe", shift - 0.5, shift + 0.5);
            assertTrue(lesson.openEnvelope().text().contains(truth.opened()), truth.opened());
        }
        assertEquals(EnumSet.allOf(Suspect.class), met);
    }

    @Test
    void otherBeansInTheSacksOnADayOfWorkOnTheProbeAreNotQuietlyLaidToTheProbe() {
        Lesson lesson = Lesson.open(8, 3);
        assertEquals(Suspect.BEAN, Suspect.behind(lesson.behind().orElseThrow()));
        String page = ProbeShifts.of(lesson.logbook()).text();
        assertTrue(page.contains("look at each lot by itself"), page);
    }

    /** The classes of lesson five: what a degree does, drawn by the seed, and what the page says of it. */
    @ParameterizedTest
    @CsvSource({"1, strong, -0.17", "3, suggestive, 0.05", "5, strong, 0.21", "56, nothing seen, 0.00"})
    void neighboursOfLessonFiveFindDifferentThings(long seed, String verdict, double perDegree) {
        Lesson lesson = Lesson.open(5, seed);
        LessonQuestion asked = lesson.questions().stream()
                .filter(question -> question.name().equals("verdict"))
                .findFirst()
                .orElseThrow();
        assertEquals(verdict, asked.key());
        ClaimQuestion claim =
                (ClaimQuestion) lesson.questions().get(lesson.questions().size() - 1);
        assertEquals(perDegree, claim.shownTruth().orElseThrow(), 0.005);
    }

    /** As the story of lesson five says: codes on every cup, and nothing is written of what comes after the summer. */
    @Test
    void theSummerOfLessonFiveIsBlindAndEndsBeforeTheProbeIsChanged() {
        Logbook logbook = Lesson.open(5, 3).logbook();
        assertFalse(logbook.cups().isEmpty());
        logbook.cups().forEach(cup -> {
            Cupping cupping = logbook.cupping(cup.cupping()).orElseThrow();
            assertEquals(Cupping.Said.YES, cupping.blind(), cupping.name());
            assertEquals(Cupping.Said.YES, cupping.beforeDiscussion(), cupping.name());
        });
        assertTrue(
                logbook.batches().stream().allMatch(batch -> batch.plan().plannedBy() == BatchPlan.PlannedBy.CHANCE));
        assertEquals(List.of(), ProbePeriods.of(logbook).doubts(logbook.batches()));
    }

    @Test
    void takesNumbersAsPeopleWriteThem() {
        Lesson lesson = Lesson.open(1, 1);
        double seconds = ((NumberQuestion) lesson.questions().get(2)).expected().value();
        String clock = String.format(java.util.Locale.ROOT, "%d:%02d", (int) seconds / 60, Math.round(seconds) % 60);
        assertEquals(Reply.Kind.RIGHT, lesson.check("drop time", clock).kind());
        assertEquals(
                Reply.Kind.RIGHT,
                lesson.check("drop time", Math.round(seconds) + ",0 s").kind());
        assertEquals(Reply.Kind.RIGHT, lesson.check("drop time", seconds).kind());
        assertEquals(Reply.Kind.RIGHT, lesson.check("colder", " No. ").kind());
    }

    @Test
    void saysWhatIsMissingAndWhatWasMeant() {
        Lesson lesson = Lesson.open(1, 1);
        assertEquals(Reply.Kind.NOTHING_YET, lesson.check("mass loss", "?").kind());
        assertTrue(lesson.check("mass loss", "a lot").words().contains("no number"));
        assertTrue(lesson.check("colder", "noo").words().contains("Did you mean 'no'?"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> lesson.check("mas loss", "1"))
                .getMessage()
                .contains("Did you mean 'mass loss'?"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> lesson.claim("mass loss", 1, 2))
                .getMessage()
                .contains("asks for an answer, not for a claim"));
    }

    @Test
    void answersFollowTheReadersDegrees() {
        Lesson celsius = Lesson.open(1, 1);
        Lesson fahrenheit = celsius.in(TemperatureUnit.FAHRENHEIT);
        String drop = typed(fahrenheit.questions().get(3));
        assertTrue(Double.parseDouble(drop) > 350, drop);
        assertEquals(
                Reply.Kind.RIGHT, fahrenheit.check("drop temperature", drop).kind());
        assertEquals(Reply.Kind.NOT_YET, celsius.check("drop temperature", drop).kind());
        double kept = ((ClaimQuestion) celsius.questions().get(7)).shownTruth().orElseThrow();
        double shown =
                ((ClaimQuestion) fahrenheit.questions().get(7)).shownTruth().orElseThrow();
        assertEquals(kept * 1.8, shown, 1e-9);
    }

    @Test
    void takesNoClaimOnceTheEnvelopeIsOpen() {
        Lesson lesson = Lesson.open(2, 1);
        assertEquals(Reply.Kind.NOTED, lesson.cannotTell("lateness").kind());
        assertEquals(10, lesson.openEnvelope().points());
        assertEquals(Reply.Kind.NOT_YET, lesson.claim("lateness", 3, 4).kind());
        assertEquals(10, lesson.openEnvelope().points());
    }

    @Test
    void fiveBatchesAreRoastedAsPlanned() {
        Lesson lesson = Lesson.open(9, 3);
        PlanTasted tasted = lesson.roast(lesson.plan("Cinder Ridge", "204", "198", "210", "201", "207"));
        assertEquals(5, tasted.logbook().batches().size());
        double truth = ((ClaimQuestion) lesson.questions().get(4)).shownTruth().orElseThrow();
        // A 90 % interval from five batches; this seed is one of the nine in ten.
        assertTrue(tasted.slope().orElseThrow().interval(0.9).contains(truth));
        assertTrue(
                lesson.roast(lesson.plan("Cinder Ridge", "203", "203")).slope().isEmpty());
        assertTrue(assertThrows(IllegalArgumentException.class, () -> lesson.plan("Cinder Ridge", "hot"))
                .getMessage()
                .contains("batch 1 has \"hot\""));
    }

    @Test
    void aPlanIsCountedAsItWasTyped() {
        Lesson lesson = Lesson.open(9, 3);
        assertEquals(
                "your plan, batch 5: the drop temperature is expected from 185.0 to 230.0 °C on this invented machine, but is '260.0'.",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> lesson.plan("Cinder Ridge", "203", "204", "205", "206", "260"))
                        .getMessage());
        assertEquals(
                "A plan needs a bean temperature for each batch, as in \"203\"; batch 2 has \"hot\".",
                assertThrows(IllegalArgumentException.class, () -> lesson.plan("Cinder Ridge", "203", "hot"))
                        .getMessage());
        PlanSheet plan = lesson.plan("Cinder Rige", "203");
        assertTrue(assertThrows(IllegalArgumentException.class, () -> lesson.roast(plan))
                .getMessage()
                .startsWith("your plan, batch 1: there is no lot 'Cinder Rige' in store"));
    }

    @Test
    void saysWhatToDoWhereNothingIsAnsweredYet() {
        AnswerSheet none = new AnswerSheet(List.of());
        assertTrue(none.text().contains("None yet. Fill in a blank"), none.text());
        assertTrue(none.html().orElseThrow().contains("None yet. Fill in a blank"));
        assertFalse(none.html().orElseThrow().contains("<table"));
    }

    /** The notebook's first line has the name of the lesson already. */
    @Test
    void whatALessonOpensIsCalledAfterWhatItHolds() {
        String page = Lesson.open(2, 1).shownAs().text();
        assertTrue(page.startsWith("The logbook of lesson 2\n\n"), page);
        assertFalse(page.contains("Lesson 2: "), page);
    }

    @Test
    void everySheetSaysThatTheMachineIsInvented() {
        Lesson lesson = Lesson.open(9, 3);
        PlanSheet plan = lesson.plan("Cinder Ridge", "204", "198");
        for (String shown : List.of(
                lesson.text(),
                plan.text(),
                plan.html().orElseThrow(),
                lesson.roast(plan).text())) {
            assertTrue(shown.contains("Invented machine: do not roast"), shown);
        }
    }
}
