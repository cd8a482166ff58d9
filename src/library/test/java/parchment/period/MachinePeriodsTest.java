package parchment.period;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.stats.Estimate;

class MachinePeriodsTest {
    /** Twenty roast days; the probe reads 3 °C lower from the seventh on and 5 °C higher from the fourteenth on. */
    private static BuiltProbe two() {
        return new BuiltProbe(20).step(6, -3).step(13, 5).written("bean probe moved", BuiltProbe.day(6));
    }

    private static BuiltProbe one() {
        return new BuiltProbe(14).step(7, -3);
    }

    private static List<ProbeChange.Kind> kinds(ProbePeriods periods) {
        return periods.changes().stream().map(ProbeChange::kind).toList();
    }

    private static void near(double expected, Estimate of) {
        assertEquals(expected, of.estimate(), 4 * of.standardError(), of.toString());
        assertTrue(of.standardError() > 0.02 && of.standardError() < 0.35, of.toString());
    }

    @Test
    void eachOfTwoChangesCutsAndTheEarliestPeriodGetsBoth() {
        Logbook logbook = two().logbook();
        ProbePeriods periods = ProbePeriods.of(logbook);
        assertEquals(List.of(ProbeChange.Kind.FOUND_AND_WRITTEN, ProbeChange.Kind.FOUND_WITHOUT_ENTRY), kinds(periods));
        assertEquals(
                List.of(BuiltProbe.day(6), BuiltProbe.day(13)),
                periods.changes().stream().map(ProbeChange::on).toList());
        double[] stepped = {-3, 5};
        for (int k = 0; k < 2; k++) {
            for (Estimate offset : periods.changes().get(k).offsets()) {
                near(stepped[k], offset);
            }
        }
        String[] batches = {"B1", "B18", "B19", "B39", "B40", "B60"};
        int[] numbers = {1, 1, 2, 2, 3, 3};
        double[] added = {2, 2, 5, 5, 0, 0};
        for (int i = 0; i < batches.length; i++) {
            Batch batch = logbook.batch(batches[i]);
            assertEquals(Optional.of(numbers[i]), periods.number(batch), batches[i]);
            for (double celsius : new double[] {40, 130, 230}) {
                Estimate today = periods.toToday(batch, celsius);
                if (numbers[i] == 3) {
                    assertEquals(0, today.estimate());
                    assertEquals(0, today.standardError());
                } else {
                    near(added[i], today);
                }
            }
            assertEquals(numbers[i] == 3, periods.isTodays(batch));
        }
        assertEquals("the probe of drum until 2025-02-05", periods.words(logbook.batch("B1")));
        assertEquals("the probe of drum from 2025-02-05 until 2025-03-12", periods.words(logbook.batch("B19")));
        assertEquals("the probe of drum from 2025-03-12 on", periods.words(logbook.batch("B60")));
        assertEquals(
                "drum: 3 probe periods on 20 roast days",
                periods.machines().get(0).toString());
        assertEquals(
                "2 changes of the probe on drum, which make 3 probe periods: 2025-02-05 (found and written), 2025-03-12"
                        + " (found, not written)",
                periods.toString());
        IndicatorByDay turning = periods.machines().get(0).byDay().get(0);
        assertEquals("turning point of 60 batches on 20 roast days", turning.toString());
        double before = turning.level().get(0);
        assertEquals(-3, turning.level().get(6) - before, 0.6);
        assertEquals(before, turning.level().get(5));
        assertEquals(2, turning.level().get(19) - before, 0.6);
        for (int day = 0; day < 20; day++) {
            assertEquals(turning.level().get(day), turning.means().get(day), 0.8);
            assertEquals(3, turning.counts().get(day));
        }
    }

    @Test
    void offsetsLieStraightBetweenTheIndicatorsAndStayBeyond() {
        BuiltProbe built = new BuiltProbe(14);
        built.atTurningPoint = day -> day >= 7 ? 4 : 0;
        built.atFirstCrack = day -> day >= 7 ? -2 : 0;
        Logbook logbook = built.logbook();
        ProbePeriods periods = ProbePeriods.of(logbook);
        Batch old = logbook.batch("B1");
        List<Indicator> indicators = periods.machines().get(0).indicators();
        double low = indicators.get(0).celsius();
        double high = indicators.get(1).celsius();
        assertTrue(low < 120 && high > 180, low + " " + high);
        Estimate atLow = periods.toToday(old, low);
        Estimate atHigh = periods.toToday(old, high);
        near(4, atLow);
        near(-2, atHigh);
        assertEquals(atLow.estimate(), periods.toToday(old, low - 60).estimate(), 1e-12);
        assertEquals(atHigh.estimate(), periods.toToday(old, high + 60).estimate(), 1e-12);
        Estimate quarter = periods.toToday(old, low + (high - low) / 4);
        assertEquals(0.75 * atLow.estimate() + 0.25 * atHigh.estimate(), quarter.estimate(), 1e-9);
        assertEquals(
                Math.hypot(0.75 * atLow.standardError(), 0.25 * atHigh.standardError()), quarter.standardError(), 1e-9);
        assertEquals(Math.min(atLow.degreesOfFreedom(), atHigh.degreesOfFreedom()), quarter.degreesOfFreedom());
    }

    /** The step lies before roast day 7 and is as clear as day: its date set holds that day alone, and one more on either side is near. */
    @ParameterizedTest
    @CsvSource({
        "5,WRITTEN_WITHOUT_CHANGE FOUND_WITHOUT_ENTRY",
        "6,FOUND_AND_WRITTEN",
        "7,FOUND_AND_WRITTEN",
        "8,FOUND_AND_WRITTEN",
        "9,FOUND_WITHOUT_ENTRY WRITTEN_WITHOUT_CHANGE",
        "0,FOUND_WITHOUT_ENTRY",
        "14,FOUND_WITHOUT_ENTRY"
    })
    void anEntryBelongsToTheStepWithinOneRoastDay(int day, String kinds) {
        ProbePeriods periods =
                one().written("bean probe moved", BuiltProbe.day(day)).periods();
        assertEquals(
                List.of(kinds.split(" ")),
                kinds(periods).stream().map(Enum::name).toList());
        if (kinds.equals("FOUND_AND_WRITTEN")) {
            ProbeChange change = periods.changes().get(0);
            assertEquals(BuiltProbe.day(day), change.on(), "the written day counts");
            assertEquals(BuiltProbe.day(7), change.earliest());
            assertEquals(BuiltProbe.day(7), change.latest());
        }
    }

    @Test
    void theNearestOfTwoEntriesIsTakenForTheStepAndTheOtherCutsByItself() {
        ProbePeriods periods = one().written("bean probe moved", BuiltProbe.day(6))
                .written("bean probe replaced", BuiltProbe.day(7))
                .periods();
        assertEquals(
                List.of(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE, ProbeChange.Kind.FOUND_AND_WRITTEN), kinds(periods));
        assertEquals(BuiltProbe.day(7), periods.changes().get(1).on());
    }

    @Test
    void aCleaningOnTheSameOrTheDayBeforeHidesNoChange() {
        for (int cleaned : new int[] {6, 7}) {
            for (boolean cleanedFirst : new boolean[] {true, false}) {
                BuiltProbe still = new BuiltProbe(14);
                if (cleanedFirst) {
                    still = still.written("probe cleaned", BuiltProbe.day(cleaned));
                }
                still = still.written("bean probe moved", BuiltProbe.day(7));
                if (!cleanedFirst) {
                    still = still.written("probe cleaned", BuiltProbe.day(cleaned));
                }
                ProbePeriods periods = still.periods();
                assertEquals(List.of(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE), kinds(periods));
                assertEquals(Optional.of(1), periods.number(still.logbook().batch("B1")));
                assertEquals(Optional.of(2), periods.number(still.logbook().batch("B42")));
            }
        }
    }

    @Test
    void aCleaningMakesNoChangeOfHabitTheProbes() {
        BuiltProbe habit = new BuiltProbe(14).stepAtFirstCrackOnly(7, 4);
        ProbePeriods without = habit.periods();
        assertEquals(List.of(ProbeChange.Kind.ONE_PLACE_ONLY), kinds(without));
        ProbePeriods cleaned = habit.written("probe cleaned", BuiltProbe.day(7)).periods();
        assertEquals(List.of(ProbeChange.Kind.ONE_PLACE_ONLY), kinds(cleaned));
        assertEquals(Optional.of(1), cleaned.number(habit.logbook().batch("B42")), "nothing is cut");
        assertTrue(
                cleaned.changes()
                        .get(0)
                        .words()
                        .contains(
                                "The upkeep says: probe cleaned, which moves no probe. Cannot tell whether the probe is the"
                                        + " reason: it shows at one place of the roast only"),
                cleaned.changes().get(0).words());
        ProbePeriods moved = one().written("probe cleaned", BuiltProbe.day(7)).periods();
        assertEquals(List.of(ProbeChange.Kind.FOUND_WITHOUT_ENTRY), kinds(moved));
        assertTrue(
                moved.changes()
                        .get(0)
                        .words()
                        .contains(
                                "The upkeep says: probe cleaned, which moves no probe. If it was moved or replaced then,"
                                        + " write so."),
                moved.changes().get(0).words());
    }

    @Test
    void aStepThatMayBeTheProbesIsAnErrorOfEarlierReadings() {
        BuiltProbe habit = new BuiltProbe(14).stepAtFirstCrackOnly(7, 4);
        ProbePeriods periods = habit.periods();
        Batch before = habit.logbook().batch("B21");
        Batch after = habit.logbook().batch("B22");
        assertEquals(BuiltProbe.day(6), before.roastDay().orElseThrow());
        assertEquals(0, periods.toToday(before, 200).estimate(), "it is not moved, for it may be a habit");
        assertEquals(4, periods.doubt(before, 200), 0.8);
        assertEquals(0, periods.doubt(after, 200));
        assertTrue(!periods.errorKey(before).equals(periods.errorKey(after)));
        assertEquals(periods.key(before), periods.key(after));
        assertEquals(
                List.of(
                        "It cannot be told whether the bean probe of drum moved on 2025-02-10 (one place only). If it did,"
                                + " readings before that day are off by as much as they stepped, so places on today's probe are"
                                + " told from the batches since, if they are enough. Write in upkeep.csv what was done then."),
                periods.doubts(List.of(before, after)));
        assertEquals(List.of(), one().periods().doubts(List.of(before)));
    }

    @Test
    void aChangeAfterTheLastRoastIsSaid() {
        BuiltProbe built = new BuiltProbe(14).written("bean probe moved", BuiltProbe.day(14));
        ProbePeriods periods = built.periods();
        String said =
                "The upkeep says that the bean probe of drum was changed on 2025-03-17, after the last roast written here:"
                        + " readings are told as the probe before it read them, and \"today's probe\" means that one. What the new one"
                        + " reads shows only once batches are roasted with it.";
        assertTrue(periods.sentences().contains(said), periods.sentences().toString());
        assertEquals(List.of(said), periods.doubts(List.of(built.logbook().batch("B1"))));
        assertEquals(
                List.of(),
                new BuiltProbe(14)
                        .written("bean probe moved", BuiltProbe.day(13))
                        .periods()
                        .doubts(List.of(built.logbook().batch("B1"))));
    }

    @Test
    void aBatchWithoutADateIsOfNoKnownProbeWhereAChangeIsWritten() {
        BuiltProbe built = new BuiltProbe(14).written("bean probe moved", BuiltProbe.day(7));
        Batch undated = Batch.named("undated").machine("drum").build();
        Logbook logbook =
                Logbook.of(parchment.logbook.contents.LogbookContents.ofBatches("undated", List.of(undated)).toBuilder()
                        .upkeep(built.logbook().upkeep())
                        .build());
        ProbePeriods periods = ProbePeriods.of(logbook);
        assertTrue(periods.number(undated).isEmpty());
        assertTrue(!periods.isTodays(undated));
        assertTrue(Double.isNaN(periods.toToday(undated, 200).estimate()));
        Logbook untouched =
                Logbook.of(parchment.logbook.contents.LogbookContents.ofBatches("undated", List.of(undated)));
        assertEquals(Optional.of(1), ProbePeriods.of(untouched).number(undated));
        assertEquals(0, ProbePeriods.of(untouched).toToday(undated, 200).estimate());
    }

    @Test
    void betweenTwoIndicatorsTheOffsetIsStraight() {
        BuiltProbe built = new BuiltProbe(14).step(7, -1).stepAtFirstCrackOnly(7, -4);
        ProbePeriods periods =
                built.written("bean probe moved", BuiltProbe.day(7)).periods();
        Batch old = built.logbook().batch("B1");
        double low = periods.toToday(old, 20).estimate();
        double high = periods.toToday(old, 230).estimate();
        assertEquals(-1, low, 0.6);
        assertEquals(-4, high, 0.8);
        List<Indicator> read = periods.machines().get(0).indicators();
        double from = read.get(0).celsius();
        double quarter = from + 0.25 * (read.get(1).celsius() - from);
        assertEquals(
                low + 0.25 * (high - low), periods.toToday(old, quarter).estimate(), 1e-9, "nearer the turning point");
    }

    @Test
    void aStepIsToldAsAWholeSentenceWithItsEntryAndWithout() {
        ProbeChange written = one().written("bean probe moved", BuiltProbe.day(7))
                .periods()
                .changes()
                .get(0);
        String start = "readings stepped after 2025-02-05 and by 2025-02-10 (90 % date set). ";
        String sizes = " What the probe reads changed by: turning point "
                + MachinePeriods.step(written.offsets().get(0), parchment.quantity.TemperatureUnit.CELSIUS)
                + ", first crack "
                + MachinePeriods.step(written.offsets().get(1), parchment.quantity.TemperatureUnit.CELSIUS)
                + ".";
        assertEquals(start + "The upkeep says: bean probe moved." + sizes, written.words());
        assertTrue(
                sizes.matches(
                        ".*turning point -[23]\\.\\d{1,2} °C \\(-[23]\\.\\d{1,2} to -[23]\\.\\d{1,2}\\), first crack .*"),
                sizes);
        written.offsets().forEach(offset -> near(-3, offset));
        assertTrue(written.chance() <= 0.05, "" + written.chance());
        ProbeChange found = one().periods().changes().get(0);
        assertEquals(
                start + "The upkeep names no work on a probe around then. If the probe was touched, write it down."
                        + sizes,
                found.words());
        assertEquals("2025-02-10, drum: " + found.words(), found.toString());
    }

    @ParameterizedTest
    @CsvSource({"29,false", "30,true", "35,true", "36,false"})
    void otherWorkWithinTheDateSetIsNamed(int daysAfterTheFirst, boolean named) {
        // The last day before the step is the thirtieth, the first after it the thirty-fifth.
        ProbeChange change = one().written("burner cleaned", BuiltProbe.FIRST.plusDays(daysAfterTheFirst))
                .periods()
                .changes()
                .get(0);
        assertEquals(ProbeChange.Kind.FOUND_WITHOUT_ENTRY, change.kind());
        assertEquals(
                named,
                change.words()
                        .contains("The upkeep names no work on a probe around then, but: burner cleaned on "
                                + BuiltProbe.FIRST.plusDays(daysAfterTheFirst)
                                + ". If the probe was touched, write it down."),
                change.words());
    }

    @Test
    void workOnAnotherMachineCountsForNothingHere() {
        ProbePeriods periods = one().written("another drum", "bean probe moved", BuiltProbe.day(7))
                .written("another drum", "burner cleaned", BuiltProbe.day(7))
                .periods();
        assertEquals(List.of(ProbeChange.Kind.FOUND_WITHOUT_ENTRY), kinds(periods));
        assertFalse(periods.changes().get(0).words().contains("burner"));
        assertEquals(
                List.of(ProbeChange.Kind.FOUND_AND_WRITTEN),
                kinds(one().written("", "bean probe moved", BuiltProbe.day(7)).periods()),
                "work without a machine counts for every machine");
    }

    @Test
    void withFewerThanTwoLotsOnBothSidesTheLotCouldBeTheReason() {
        BuiltProbe oneLot = one().ofLots(batch -> "one");
        ProbePeriods periods = oneLot.periods();
        assertEquals(List.of(ProbeChange.Kind.LOT_OR_PROBE), kinds(periods));
        assertTrue(
                periods.changes()
                        .get(0)
                        .words()
                        .contains(
                                " Fewer than two lots were roasted before and after it, so the lot could be the reason as"
                                        + " well as the probe. "),
                periods.changes().get(0).words());
        assertEquals(
                "drum: 1 probe period on 14 roast days",
                periods.machines().get(0).toString());
        assertEquals(
                "1 change of the probe on drum, which makes 1 probe period: 2025-02-10 (lot or probe)",
                periods.toString());
        Batch first = oneLot.logbook().batch("B1");
        assertEquals(Optional.of(1), periods.number(first));
        assertEquals(0, periods.toToday(first, 150).estimate());
        ProbePeriods written =
                oneLot.written("bean probe moved", BuiltProbe.day(7)).periods();
        assertEquals(List.of(ProbeChange.Kind.FOUND_AND_WRITTEN), kinds(written));
        assertTrue(
                written.changes()
                        .get(0)
                        .words()
                        .contains(
                                "The upkeep says: bean probe moved. But fewer than two lots were roasted before and after it,"
                                        + " so the lot could be the reason as well."),
                written.changes().get(0).words());
        // Lots that only touch: one of three is there on both sides of each change.
        assertEquals(
                List.of(ProbeChange.Kind.LOT_OR_PROBE),
                kinds(one().ofLots(batch -> batch % 2 == 0 ? "one" : batch < 21 ? "two" : "three")
                        .periods()));
    }

    @Test
    void aStepAtFirstCrackAloneIsOnePlaceOnly() {
        BuiltProbe built = new BuiltProbe(14).stepAtFirstCrackOnly(7, -3);
        ProbePeriods periods = built.periods();
        assertEquals(List.of(ProbeChange.Kind.ONE_PLACE_ONLY), kinds(periods));
        assertTrue(
                periods.changes()
                        .get(0)
                        .words()
                        .contains(
                                "Cannot tell whether the probe is the reason: it shows at one place of the roast only, and a"
                                        + " new habit of charging or of marking first crack does that too."),
                periods.changes().get(0).words());
        assertEquals(Optional.of(1), periods.number(built.logbook().batch("B42")));
    }

    @Test
    void anEntryWithoutAStepIsMeasuredAtItsOwnDayAndCuts() {
        BuiltProbe built =
                new BuiltProbe(14).written("bean probe moved", BuiltProbe.day(4).minusDays(2));
        ProbePeriods periods = built.periods();
        assertEquals(List.of(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE), kinds(periods));
        ProbeChange change = periods.changes().get(0);
        assertEquals(BuiltProbe.day(4).minusDays(2), change.on());
        assertEquals(change.on(), change.earliest());
        assertEquals(change.on(), change.latest());
        assertTrue(Double.isNaN(change.chance()));
        assertTrue(
                change.words()
                        .startsWith(
                                "no step is visible in the readings by themselves. No change that matters was seen; readings at"
                                        + " first crack are moved up by about 0.1 °C (-0.1 to 0.4). The upkeep says: bean probe moved."),
                change.words());
        Logbook logbook = built.logbook();
        assertEquals(Optional.of(1), periods.number(logbook.batch("B12")));
        assertEquals(Optional.of(2), periods.number(logbook.batch("B13")));
        near(0, periods.toToday(logbook.batch("B12"), 150));
        assertTrue(periods.sentences().contains("No step of the readings of drum was found in 14 roast days."));
    }

    @Test
    void workThatMovesNothingIsMeasuredWithoutCostingTheChangeItsPrecision() {
        ProbePeriods plain = one().periods();
        ProbePeriods cleaned =
                one().written("bean probe cleaned", BuiltProbe.day(3)).periods();
        assertEquals(List.of(ProbeChange.Kind.OTHER_WORK, ProbeChange.Kind.FOUND_WITHOUT_ENTRY), kinds(cleaned));
        assertEquals(plain.changes().get(0).offsets(), cleaned.changes().get(1).offsets());
        near(0, cleaned.changes().get(0).offsets().get(0));
        assertEquals(
                "drum: 2 probe periods on 14 roast days",
                cleaned.machines().get(0).toString());
    }

    @Test
    void aClimbIsNoStepAndIsSaid() {
        BuiltProbe climbing = new BuiltProbe(24);
        climbing.atTurningPoint = day -> 0.4 * day;
        climbing.atFirstCrack = day -> 0.4 * day;
        ProbePeriods periods = climbing.periods();
        assertEquals(List.of(), kinds(periods));
        assertEquals(
                List.of(
                        "No step of the readings of drum was found in 24 roast days.",
                        "Readings of drum followed a slow, steady change, which explains them better than a step does, so no date"
                                + " is given."),
                periods.sentences());
        assertEquals("no change of the probe on drum", periods.toString());
    }

    @Test
    void oneIndicatorIsNotEnoughAndTheSentenceNamesIt() {
        BuiltProbe built = one().written("bean probe moved", BuiltProbe.day(7));
        built.crackWritten = false;
        ProbePeriods periods = built.periods();
        assertFalse(periods.machines().get(0).searched());
        String needs =
                "Cannot tell from the readings of drum whether its probe changed: that needs two of these, each on 10 roast"
                        + " days and 30 batches: turning point, temperature at a written first crack, first reading of a cold machine"
                        + " against the room, bean probe against air probe before charge. There ";
        assertEquals(needs + "is turning point only.", periods.sentences().get(1));
        assertEquals(List.of(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE), kinds(periods));
        near(-3, periods.changes().get(0).offsets().get(0));
        BuiltProbe few = new BuiltProbe(5);
        assertEquals(List.of(needs + "is none."), few.periods().sentences());
    }
}
