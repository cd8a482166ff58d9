package parchment.period;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.Interruption;

class ChangeSearchTest {
    private static final int BATCHES_A_DAY = 2;
    private static final double NOISE = 0.4;

    /** Roast days six days apart, two batches each, two indicators that both follow a course. */
    private record Days(int days, IntToDoubleFunction first, IntToDoubleFunction second, IntToDoubleFunction room) {
        static Days of(int days, IntToDoubleFunction course) {
            return new Days(days, course, course, day -> Double.NaN);
        }

        Days withRoom(IntToDoubleFunction other) {
            return new Days(days, first, second, other);
        }

        double[] dates() {
            return IntStream.range(0, days).mapToDouble(ChangeSearchTest::date).toArray();
        }

        int[] dayOfRow() {
            return IntStream.range(0, days * BATCHES_A_DAY)
                    .map(row -> row / BATCHES_A_DAY)
                    .toArray();
        }

        private Indicator indicator(String name, IntToDoubleFunction course, long seed, double times) {
            Random random = new Random(seed);
            int[] day = dayOfRow();
            double[] y = Arrays.stream(day)
                    .mapToDouble(d -> times * (100 + course.applyAsDouble(d) + NOISE * random.nextGaussian()))
                    .toArray();
            double[] ones = new double[y.length];
            Arrays.fill(ones, 1);
            return new Indicator(
                    name,
                    100,
                    IntStream.range(0, y.length).boxed().toList(),
                    new Indicator.Numbers(y),
                    List.of(new Indicator.Numbers(ones)),
                    List.of("all"));
        }

        ChangeSearch.Result search() {
            return search(1);
        }

        /** Searches in readings of which each is so many times as large. */
        ChangeSearch.Result search(double times) {
            return ChangeSearch.run(
                    List.of(indicator("one", first, 31, times), indicator("two", second, 32, times)),
                    dayOfRow(),
                    dates(),
                    Arrays.stream(dayOfRow()).mapToDouble(room::applyAsDouble).toArray(),
                    7);
        }
    }

    private static double date(int day) {
        return 20_000 + 6 * day;
    }

    private static double wave(int day) {
        return Math.cos(2 * Math.PI * date(day) / 365.25);
    }

    private static IntToDoubleFunction step(double size, int... at) {
        return day -> size * Arrays.stream(at).filter(from -> day >= from).count();
    }

    private static List<Integer> firstDays(ChangeSearch.Result found) {
        return found.steps().stream().map(ChangeSearch.Step::firstDay).toList();
    }

    @Test
    void aClearStepIsDatedToItsDayAndSupportedByBothIndicators() {
        ChangeSearch.Result found = Days.of(20, step(3, 9)).search();
        ChangeSearch.Step step = found.steps().get(0);
        assertEquals(1, found.steps().size());
        assertEquals(9, step.firstDay());
        assertEquals(List.of(9), step.days());
        assertEquals(2, step.supporting());
        assertEquals(ChangeSearch.Shape.STEP, step.shape());
        assertEquals(0.005, step.chance(), 1e-12, "none of 199 drawn, and itself");
        assertEquals(List.of(), found.slow());
        assertEquals(List.of("all"), found.adjusted().get(0).columnNames());
    }

    @Test
    void nothingIsFoundWhereNothingChanged() {
        ChangeSearch.Result found = Days.of(20, day -> 0).search();
        assertEquals(List.of(), found.steps());
        assertEquals(List.of(), found.slow());
    }

    @Test
    void aStepInOneIndicatorIsSupportedByOne() {
        ChangeSearch.Result found = new Days(20, step(3, 9), day -> 0, day -> Double.NaN).search();
        assertEquals(List.of(9), firstDays(found));
        assertEquals(1, found.steps().get(0).supporting());
    }

    /** Four roast days on either side. */
    @ParameterizedTest
    @CsvSource({"3,4", "4,4", "5,5", "15,15", "16,16", "17,16"})
    void aStepIsLookedForWithFourDaysOnEitherSide(int at, int found) {
        assertEquals(List.of(found), firstDays(Days.of(20, step(4, at)).search()));
    }

    @ParameterizedTest
    @CsvSource({"10,14,true", "10,15,true", "10,13,false", "10,12,false"})
    void twoStepsLieAtLeastFourDaysApart(int first, int second, boolean both) {
        List<Integer> found = firstDays(
                Days.of(24, day -> day >= second ? -4 : day >= first ? 4 : 0).search());
        assertEquals(both, found.equals(List.of(first, second)), found.toString());
        for (int k = 1; k < found.size(); k++) {
            assertTrue(found.get(k) - found.get(k - 1) >= 4, found.toString());
        }
    }

    /** A step for each eight roast days: two halves of four. */
    @ParameterizedTest
    @CsvSource({"15,1", "16,2"})
    void asManyStepsAreTriedAsTheDaysHaveRoomFor(int days, int most) {
        assertEquals(
                most,
                Days.of(days, day -> day >= 10 ? -4 : day >= 5 ? 4 : 0)
                        .search()
                        .steps()
                        .size());
    }

    @Test
    void notMoreThanSixStepsAreTold() {
        ChangeSearch.Result found = Days.of(56, day -> day / 7 % 2 == 0 ? 0 : 5).search();
        assertEquals(6, found.steps().size());
    }

    @Test
    void stepsAreToldInOrderOfTimeWhicheverWasFoundFirst() {
        ChangeSearch.Result found =
                Days.of(24, day -> (day >= 7 ? 1.6 : 0) + (day >= 15 ? 5 : 0)).search();
        assertEquals(List.of(7, 15), firstDays(found));
        assertTrue(
                found.steps().get(0).days().contains(7)
                        && found.steps().get(1).days().contains(15),
                found.toString());
        assertTrue(found.steps().get(0).days().stream().allMatch(day -> day < 15), found.toString());
        assertTrue(found.steps().get(1).days().stream().allMatch(day -> day > 7), found.toString());
    }

    @Test
    void aSteadyClimbIsASlowChangeAndStandsAmongTheColumns() {
        ChangeSearch.Result found = Days.of(30, day -> 0.5 * day).search();
        assertEquals(List.of(), found.steps());
        assertEquals(List.of("a slow, steady change"), found.slow());
        for (Indicator adjusted : found.adjusted()) {
            assertEquals(List.of("all", "a slow, steady change"), adjusted.columnNames());
            double[] ramp = adjusted.columns().get(1).raw();
            assertEquals(0, ramp[0], 1e-12);
            assertEquals(1, ramp[ramp.length - 1], 1e-12);
            assertEquals(10.0 / 29, ramp[20], 1e-12);
        }
    }

    @Test
    void aWaveOfTheYearIsTheTimeOfYear() {
        ChangeSearch.Result found = Days.of(60, day -> 2 * wave(day)).search();
        assertEquals(List.of(), found.steps());
        assertEquals(List.of("the time of year"), found.slow());
        assertEquals(
                List.of("all", "the time of year", "the time of year"),
                found.adjusted().get(1).columnNames());
    }

    @Test
    void readingsThatFollowASlowRoomAreTheRoomsAndNotASteps() {
        IntToDoubleFunction room = day -> 20 + 4 * wave(day);
        ChangeSearch.Result found =
                Days.of(60, day -> 0.5 * room.applyAsDouble(day)).withRoom(room).search();
        assertEquals(List.of(), found.steps());
        assertEquals(List.of("the room's temperature"), found.slow());
    }

    @Test
    void aRoomThatOnlyJittersIsNeverASlowChangeEvenWhereItHappensToStep() {
        // The room jitters by 2 °C; readings step, and follow the room by a tenth.
        Random random = new Random(3);
        double[] jitter = IntStream.range(0, 24)
                .mapToDouble(d -> 2 * random.nextGaussian())
                .toArray();
        ChangeSearch.Result found = Days.of(24, day -> step(3, 12).applyAsDouble(day) + 0.1 * jitter[day])
                .withRoom(day -> 20 + jitter[day])
                .search();
        assertEquals(List.of(12), firstDays(found));
        assertEquals(ChangeSearch.Shape.STEP, found.steps().get(0).shape());
        assertTrue(!found.steps().get(0).rival().equals("the room's temperature"), found.toString());
        ChangeSearch.Result follows = Days.of(24, day -> jitter[day])
                .withRoom(day -> 20 + jitter[day])
                .search();
        assertEquals(List.of(), follows.slow());
    }

    @Test
    void aStepBesideAClimbIsFoundOnceTheClimbIsThere() {
        ChangeSearch.Result found =
                Days.of(40, day -> 0.2 * day + (day >= 20 ? -4 : 0)).search();
        assertEquals(List.of(20), firstDays(found));
    }

    private static IntToDoubleFunction rise(int days, int over, double size) {
        return day -> size * Math.max(0, Math.min(1, (day - days / 2 + over / 2.0) / over));
    }

    /** Minus twice the log likelihood, with two points for each column: a step that wins by less than four points could be slow. */
    @Test
    void betweenAStepAndASlowChangeNeitherIsSaidForSure() {
        ChangeSearch.Result found = Days.of(30, rise(30, 4, 6)).search();
        assertEquals(List.of(12, 16), firstDays(found));
        assertEquals(
                List.of(ChangeSearch.Shape.STEP_OR_SLOW, ChangeSearch.Shape.STEP),
                found.steps().stream().map(ChangeSearch.Step::shape).toList());
        assertEquals("the time of year", found.steps().get(0).rival());
        assertEquals(List.of(), found.slow());
    }

    @ParameterizedTest
    @CsvSource({"28,'a slow, steady change'", "8,the time of year"})
    void aRiseOverManyDaysIsTheSlowChangeThatFitsItBest(int over, String words) {
        ChangeSearch.Result found = Days.of(30, rise(30, over, 10)).search();
        assertEquals(List.of(), found.steps());
        assertEquals(List.of(words), found.slow());
    }

    @Test
    void stepsFoundBeforeASlowChangeAreLookedForAgainWithItThere() {
        ChangeSearch.Result found =
                Days.of(30, day -> 0.3 * day + (day >= 15 ? -3.5 : 0)).search();
        assertEquals(List.of(15), firstDays(found));
        assertEquals(List.of("a slow, steady change"), found.slow());
        assertEquals(ChangeSearch.Shape.STEP, found.steps().get(0).shape());
    }

    /** One more drawn logbook that gains as much turns the answer: ten of 199 and itself are 5 in 100. */
    @ParameterizedTest
    @CsvSource({"0.320,0", "0.326,0", "0.327,0.045", "0.332,0.05", "0.340,0.03"})
    void fiveInAHundredLogbooksWithoutAStepMayGainAsMuch(double size, double chance) {
        List<ChangeSearch.Step> steps = Days.of(20, step(size, 9)).search().steps();
        assertEquals(chance > 0 ? 1 : 0, steps.size());
        if (chance > 0) {
            assertEquals(chance, steps.get(0).chance(), 1e-12);
            assertEquals(9, steps.get(0).firstDay());
        }
    }

    @Test
    void theDateSetOfASmallStepHoldsSeveralDays() {
        assertEquals(
                List.of(8, 9, 12),
                Days.of(20, step(0.332, 9)).search().steps().get(0).days());
        assertEquals(
                List.of(8, 9, 10),
                Days.of(20, step(0.34, 9)).search().steps().get(0).days());
    }

    private static List<String> rivals(ChangeSearch.Result found) {
        return found.steps().stream().map(ChangeSearch.Step::rival).toList();
    }

    /** Steps of several sizes at several days. */
    private static IntToDoubleFunction steps(double... sizeThenDay) {
        return day -> IntStream.range(0, sizeThenDay.length / 2)
                .filter(k -> day >= sizeThenDay[2 * k + 1])
                .mapToDouble(k -> sizeThenDay[2 * k])
                .sum();
    }

    /** A climb competes over the stretch between the steps that are there already, not over all days. */
    @Test
    void aSlowChangeCompetesOverTheStretchBetweenTheNeighbouringSteps() {
        ChangeSearch.Result after = Days.of(26, steps(-1.9, 16, 1.1, 21)).search();
        assertEquals(List.of(16, 21), firstDays(after));
        assertEquals(List.of("a slow, steady change", "a slow, steady change"), rivals(after));
        ChangeSearch.Result before =
                Days.of(30, steps(0.6, 4, 2.9, 11, 3.0, 18)).search();
        assertEquals(List.of(4, 11, 18), firstDays(before));
        assertEquals(List.of("a slow, steady change", "a slow, steady change", "the time of year"), rivals(before));
    }

    /** Found one after the other, the first of two near steps lies a day off; of all pairs of days the best is taken. */
    @Test
    void twoNearStepsAreDatedAsAPair() {
        ChangeSearch.Result found = Days.of(28, steps(0.8, 6, 0.8, 10)).search();
        assertEquals(List.of(6, 10), firstDays(found));
        assertEquals(
                List.of(List.of(6), List.of(10)),
                found.steps().stream().map(ChangeSearch.Step::days).toList());
    }

    /** A small step's days end where the next step is, however well a day beyond it would do. */
    @Test
    void theDateSetOfAStepDoesNotReachBeyondItsNeighbour() {
        ChangeSearch.Result found = Days.of(24, steps(0.5, 6, 1, 12, 0.5, 18)).search();
        assertEquals(List.of(6, 12), firstDays(found));
        assertEquals(List.of(5, 6), found.steps().get(0).days());
        // Days before the neighbour have no share in what the days of a later step add up to.
        ChangeSearch.Result later =
                Days.of(28, steps(0.25, 7, 1.2, 14, 0.42, 21)).search();
        assertEquals(List.of(14, 22), firstDays(later));
        assertEquals(List.of(20, 22, 23), later.steps().get(1).days());
    }

    /** A step that stood for a climb goes once the climb is there, and what is left is looked for afresh. */
    @Test
    void aStepThatOnlyStoodForAClimbGoes() {
        ChangeSearch.Result found = Days.of(24, steps(-0.5, 9, 1.0, 14)).search();
        assertEquals(List.of(14), firstDays(found));
        assertEquals(List.of("a slow, steady change"), found.slow());
        assertEquals(0.005, found.steps().get(0).chance(), 1e-12);
    }

    /** The reader's unit changes nothing: readings times twenty step on the same days, as clearly and as often by chance. */
    @Test
    void theUnitOfTheReadingsChangesNothing() {
        Days plain = Days.of(24, steps(1.6, 7, 5, 15));
        ChangeSearch.Result small = plain.search();
        ChangeSearch.Result large = plain.search(20);
        assertEquals(firstDays(small), firstDays(large));
        for (int k = 0; k < small.steps().size(); k++) {
            assertEquals(small.steps().get(k), large.steps().get(k));
        }
    }

    @Test
    void stopsWhereTheReaderStopsIt() {
        Thread.currentThread().interrupt();
        assertThrows(CancellationException.class, () -> Days.of(20, step(3, 9)).search());
        Interruption.forget(Thread.currentThread());
    }
}
