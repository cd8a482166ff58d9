package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.BatchConditions;
import parchment.phase.found.Mark;
import parchment.phase.found.Phase;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class PhasesTest {
    private static Phases of(Batch.Builder batch) {
        return Phases.of(batch.build());
    }

    private static Mark mark(Phases phases, MarkKind kind) {
        return phases.mark(kind).orElseThrow();
    }

    @Test
    void agreesWithAHandComputedRoast() {
        Phases phases = of(ExampleRoast.written());
        Mark turn = mark(phases, MarkKind.TURNING_POINT);
        assertEquals(ExampleRoast.TURNING_POINT_SECONDS, turn.seconds(), 0.5);
        assertEquals(Source.FOUND, turn.source());
        assertEquals(99.979, turn.probe().orElseThrow().celsius(), 0.05);

        Phase drying = phases.drying().orElseThrow();
        assertEquals(360, drying.duration().seconds());
        assertEquals(360.0 / 740, drying.share().value(), 1e-12);
        // (152.000 - 99.979) °C in 360 - 74.893 s.
        assertEquals(10.948, drying.meanRateOfRise().value(), 0.02);

        Phase browning = phases.browning().orElseThrow();
        assertEquals(240, browning.duration().seconds());
        assertEquals(240.0 / 740, browning.share().value(), 1e-12);
        assertEquals(152, browning.startTemperature().value(), 0.01);
        assertEquals(200, browning.endTemperature().value(), 0.01);
        assertEquals(12, browning.meanRateOfRise().value(), 0.01);

        Phase development = phases.development().orElseThrow();
        assertEquals(140, development.duration().seconds());
        assertEquals(140.0 / 740, development.share().value(), 1e-12);
        assertEquals(12, development.meanRateOfRise().value(), 0.01);
        assertEquals(
                228, mark(phases, MarkKind.DROP).beanTemperature().orElseThrow().celsius(), 0.01);
        assertTrue(phases.missing().isEmpty(), phases.missing().toString());
        assertTrue(phases.questions().isEmpty(), phases.questions().toString());
    }

    @Test
    void carriesTheErrorsOfMarksIntoTimesAndShares() {
        // Errors of 10 s at yellowing, 5 s at first crack, 2 s at charge and drop; each mark is also rounded to a
        // second.
        Phases phases = of(ExampleRoast.written());
        double rounding = 1.0 / 12;
        assertEquals(
                Math.sqrt(4 + 100 + 2 * rounding), phases.drying().orElseThrow().durationStandardError(), 1e-12);
        assertEquals(
                Math.sqrt(100 + 25 + 2 * rounding),
                phases.browning().orElseThrow().durationStandardError(),
                1e-12);
        // s = (drop - crack) / (drop - charge): derivatives (1 - s)/740 at drop, -1/740 at crack, s/740 at charge.
        double s = 140.0 / 740;
        double expected = Math.sqrt((4 + rounding) * ((1 - s) * (1 - s) + s * s) + 25 + rounding) / 740;
        assertEquals(expected, phases.development().orElseThrow().share().standardError(), 1e-12);
        // The bean temperature at yellowing is as uncertain as 10 s at 0.2 °C/s.
        assertEquals(2, mark(phases, MarkKind.YELLOWING).beanTemperatureStandardError(), 0.01);
    }

    @Test
    void theSharesOfAWholeRoastAddUpToOne() {
        Phases phases = of(ExampleRoast.written());
        assertEquals(
                1, phases.list().stream().mapToDouble(p -> p.share().value()).sum(), 1e-12);
    }

    @Test
    void aLateMarkHardlyMovesTheMeanRateWhereTheCurveIsStraight() {
        Phase browning = of(ExampleRoast.written()).browning().orElseThrow();
        assertTrue(browning.meanRateOfRise().standardError() < 0.02, browning.toString());
    }

    @Test
    void findsChargeWhereTheLoggerStartedEarlier() {
        // The logger was started 85 s before charge.
        Curve late = ExampleRoast.bean(-85, 740).withZeroAt(-85);
        Phases phases = of(ExampleRoast.written().curve(Quantity.BEAN_TEMPERATURE, late));
        assertEquals(Source.FOUND, mark(phases, MarkKind.CHARGE).source());
        assertEquals(85, phases.chargeOnLogger(), 2);
        assertEquals(1, phases.notes().size());
        assertTrue(
                phases.notes().get(0).startsWith("The curve shows the charge at 1:2"),
                phases.notes().get(0));
        assertEquals(
                ExampleRoast.TURNING_POINT_SECONDS,
                mark(phases, MarkKind.TURNING_POINT).seconds(),
                2);
        assertEquals(200, phases.browning().orElseThrow().endTemperature().value(), 0.5);
        Curve since = phases.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
        assertEquals(-phases.chargeOnLogger(), since.secondsAt(0), 1e-9);
    }

    @Test
    void doesNotTakeTheWarmingUpForARoast() {
        // Ten minutes of warming from 25 °C to 180 °C stand before the charge.
        Curve day = ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> t < -30 ? 180 - 155 * (-30 - t) / 600 : ExampleRoast.BEAN.applyAsDouble(t),
                -630,
                740,
                2);
        Phases phases = of(ExampleRoast.unwritten().curve(Quantity.BEAN_TEMPERATURE, day.withZeroAt(-630)));
        assertEquals(630, phases.chargeOnLogger(), 2);
    }

    @Test
    void takesTheLoggersZeroWhereTheCurveAgrees() {
        Mark charge = mark(of(ExampleRoast.written()), MarkKind.CHARGE);
        assertEquals(Source.LOGGED, charge.source());
        assertEquals("charge at 0:00 ± 2 s, the logger's time zero (the curve falls there too)", charge.toString());
    }

    @Test
    void findsTheDropWhereTheCurveFallsForGood() {
        Curve longer = ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> t > 740 ? 228 - 1.5 * (t - 740) : ExampleRoast.BEAN.applyAsDouble(t),
                -40,
                800,
                2);
        Mark drop = mark(of(ExampleRoast.unwritten().curve(Quantity.BEAN_TEMPERATURE, longer)), MarkKind.DROP);
        assertEquals(740, drop.seconds(), 2);
        assertEquals(Source.FOUND, drop.source());
        assertEquals(228, drop.beanTemperature().orElseThrow().celsius(), 0.5);
    }

    @Test
    void takesTheEndOfTheLogForTheDropAndSaysSo() {
        Mark drop = mark(of(ExampleRoast.unwritten()), MarkKind.DROP);
        assertEquals(740, drop.seconds());
        assertEquals(Source.ASSUMED, drop.source());
        assertEquals("drop at 12:20 ± 5 s, assumed (the log ends), bean temperature 228.0 °C", drop.toString());
    }

    @Test
    void saysWhatLacksAndWhatCanBeSaidWithoutIt() {
        Phases none = of(ExampleRoast.unwritten());
        assertTrue(none.list().isEmpty());
        assertEquals(
                List.of(
                        "Yellowing and first crack start were not written, so no phase can be told. Without them the drop at"
                                + " 12:20 is known, its temperature, and times and rates at any bean temperature."),
                none.missing());

        Phases noYellowing = of(ExampleRoast.unwritten().writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.of(10, 0)));
        assertTrue(noYellowing.development().isPresent());
        assertEquals(
                List.of(
                        "Yellowing was not written, so drying and browning cannot be told apart; together they took until first"
                                + " crack at 10:00."),
                noYellowing.missing());

        Phases noCrack = of(ExampleRoast.unwritten().writtenMark(MarkKind.YELLOWING, Elapsed.of(6, 0)));
        assertTrue(noCrack.drying().isPresent());
        assertEquals(
                List.of(
                        "First crack start was not written, so browning and development cannot be told apart; from yellowing"
                                + " to drop it took 6:20."),
                noCrack.missing());
    }

    @Test
    void tellsTimesWithoutACurve() {
        Phases phases = of(Batch.named("7")
                .writtenMark(MarkKind.YELLOWING, Elapsed.of(6, 0))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.of(10, 0))
                .writtenMark(MarkKind.DROP, Elapsed.of(12, 20)));
        assertEquals(140.0 / 740, phases.development().orElseThrow().share().value(), 1e-12);
        assertTrue(phases.development().orElseThrow().meanRateOfRise().isMissing());
        assertEquals(
                "No bean temperature was logged: times and shares can be told from written marks, temperatures and rates of rise"
                        + " cannot.",
                phases.missing().get(0));
        assertFalse(phases.html().orElseThrow().isBlank());
    }

    @Test
    void meetsABatchOfWhichNothingIsKnown() {
        Phases phases = of(Batch.named("empty"));
        assertEquals("Phases of batch empty: no phase known, no drop.", phases.toString());
        assertEquals(3, phases.missing().size());
        assertFalse(phases.text().isBlank());
    }

    @Test
    void keepsMarksThatAreInTheWrongOrderByNoMoreThanTheirErrorsAndQuestionsThem() {
        Phases phases = of(ExampleRoast.unwritten()
                .writtenMark(MarkKind.YELLOWING, Elapsed.of(6, 0))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.of(12, 22))
                .writtenMark(MarkKind.DROP, Elapsed.of(12, 20)));
        assertEquals(742, mark(phases, MarkKind.FIRST_CRACK_START).seconds());
        Mark drop = mark(phases, MarkKind.DROP);
        assertEquals(740, drop.seconds());
        assertEquals(Source.WRITTEN, drop.source());
        assertEquals(228, drop.beanTemperature().orElseThrow().celsius(), 0.01);
        assertEquals(
                List.of(
                        "First crack start at 12:22 (written by the roaster) lies 2 s after drop at 12:20 (written by the roaster), no"
                                + " more than both may be off (5 s and 2 s). Both are kept; please check first crack start."),
                phases.questions());
        assertEquals(
                List.of(
                        "The development phase is missing: its end (drop at 12:20) does not lie after its start (first crack start"
                                + " at 12:22)."),
                phases.missing());
    }

    @Test
    void setsAsideWhatLiesAfterTheDropByMoreThanBothMayBeOff() {
        Phases phases = of(ExampleRoast.unwritten()
                .writtenMark(MarkKind.YELLOWING, Elapsed.of(6, 0))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.of(12, 40))
                .writtenMark(MarkKind.DROP, Elapsed.of(12, 20)));
        assertEquals(740, mark(phases, MarkKind.DROP).seconds());
        assertTrue(phases.mark(MarkKind.FIRST_CRACK_START).isEmpty());
        assertEquals(
                760, phases.setAside(MarkKind.FIRST_CRACK_START).orElseThrow().seconds());
        assertEquals(
                List.of(
                        "First crack start is written at 12:40, 20 s after the drop at 12:20 (written by the roaster): more than both"
                                + " may be off. It is set aside; please check the batch's row."),
                phases.questions());
        assertEquals(
                List.of(
                        "First crack start was written at 12:40 and set aside, so browning and development cannot be told apart; from"
                                + " yellowing to drop it took 6:20."),
                phases.missing());
    }

    @Test
    void threeJointErrorsApartIsTheBorderBetweenQuestioningAndSettingAside() {
        // 5 s and 2 s, each rounded to a second: 3 √(25 + 4 + 2/12) = 16.2 s.
        for (int late : new int[] {16, 17}) {
            Phases phases = of(Batch.named("7")
                    .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(740 + late))
                    .writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
            assertEquals(late == 16, phases.mark(MarkKind.FIRST_CRACK_START).isPresent());
            assertEquals(late == 17, phases.setAside(MarkKind.FIRST_CRACK_START).isPresent());
            assertEquals(1, phases.questions().size());
        }
    }

    @Test
    void setsAsideBothOfTwoMarksOfWhichEitherMayBeTheWrongOne() {
        Phases phases = of(Batch.named("7")
                .writtenMark(MarkKind.YELLOWING, Elapsed.of(9, 0))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.of(8, 10))
                .writtenMark(MarkKind.DROP, Elapsed.of(9, 19)));
        assertEquals(
                List.of(
                        "Yellowing is written at 9:00, in the wrong order with first crack start at 8:10 by more than both may be off."
                                + " Which is right cannot be told: they are set aside; please check the batch's row.",
                        "First crack start is written at 8:10, in the wrong order with yellowing at 9:00 by more than both may be off."
                                + " Which is right cannot be told: they are set aside; please check the batch's row."),
                phases.questions());
        assertTrue(
                phases.missing()
                        .get(1)
                        .startsWith(
                                "Yellowing was written at 9:00 and set aside, first crack start was written at 8:10 and set aside,"
                                        + " so no phase can be told."),
                phases.missing().toString());
        assertEquals(559, mark(phases, MarkKind.DROP).seconds());
    }

    @Test
    void letsFirstCrackFadeIntoTheSecond() {
        Phases phases = of(Batch.named("7")
                .writtenMark(MarkKind.FIRST_CRACK_END, Elapsed.of(9, 40))
                .writtenMark(MarkKind.SECOND_CRACK_START, Elapsed.of(9, 0))
                .writtenMark(MarkKind.DROP, Elapsed.of(10, 0)));
        assertTrue(phases.questions().isEmpty(), phases.questions().toString());
    }

    @Test
    void readsADropThatWasWrittenLateWhereTheCurveBeginsToFall() {
        // A fall of 1.5 °C/s, of which only 14 s are logged; the pen was 4 s late and 6 °C too low.
        Curve longer = falling(754);
        Phases phases = of(ExampleRoast.written()
                .curve(Quantity.BEAN_TEMPERATURE, longer)
                .writtenMark(MarkKind.DROP, Elapsed.seconds(744)));
        Mark drop = mark(phases, MarkKind.DROP);
        assertEquals(744, drop.seconds());
        assertEquals(Source.WRITTEN, drop.source());
        assertEquals(228, drop.beanTemperature().orElseThrow().celsius(), 0.2);
        assertEquals("temperature read where the curve begins to fall, 4 s earlier", drop.how());
        // The instant is the curve's, known to a fraction of a second at 0.2 °C/s, not the pen's.
        assertTrue(drop.beanTemperatureStandardError() < 0.2, drop.toString());
        assertTrue(phases.questions().isEmpty(), phases.questions().toString());
    }

    private static Curve falling(double until) {
        return ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> t > 740 ? 228 - 1.5 * (t - 740) : ExampleRoast.BEAN.applyAsDouble(t),
                -40,
                until,
                2);
    }

    /** A twentieth of a degree of noise, as a calm probe has it. */
    private static Curve noisy(DoubleUnaryOperator course, double until) {
        Random random = new Random(5);
        return ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> course.applyAsDouble(t) + 0.05 * random.nextGaussian(),
                -40,
                until,
                2);
    }

    @Test
    void aFallAtTheEndCountsFromSixDegreesAMinuteOn() {
        for (double rate : new double[] {5, 7}) {
            Curve curve = noisy(t -> t > 740 ? 228 - rate / 60 * (t - 740) : ExampleRoast.BEAN.applyAsDouble(t), 800);
            Mark drop = mark(of(ExampleRoast.unwritten().curve(Quantity.BEAN_TEMPERATURE, curve)), MarkKind.DROP);
            assertEquals(rate > 6 ? Source.FOUND : Source.ASSUMED, drop.source());
        }
    }

    @Test
    void aFallOfLessThanADegreeAndAHalfIsNotTheDrop() {
        for (double deep : new double[] {1.2, 2.8}) {
            Curve curve = noisy(
                    t -> t > 740 ? 228 - Math.min(deep, 0.5 * (t - 740)) : ExampleRoast.BEAN.applyAsDouble(t), 752);
            Mark drop = mark(of(ExampleRoast.unwritten().curve(Quantity.BEAN_TEMPERATURE, curve)), MarkKind.DROP);
            assertEquals(deep > 1.5 ? Source.FOUND : Source.ASSUMED, drop.source());
        }
    }

    @Test
    void aFallAtChargeCountsFromFifteenDegreesOn() {
        for (double deep : new double[] {14, 16}) {
            Curve curve = ExampleRoast.curve(
                    "bean temperature",
                    Unit.TEMPERATURE,
                    t -> t < 300 ? 150 : t < 340 ? 150 - deep * (t - 300) / 40 : 150 - deep + 0.2 * (t - 340),
                    200,
                    900,
                    2);
            Phases phases = of(Batch.named("7").curve(Quantity.BEAN_TEMPERATURE, curve));
            assertEquals(
                    deep > 15 ? Source.FOUND : Source.ASSUMED,
                    mark(phases, MarkKind.CHARGE).source());
        }
    }

    @Test
    void showsAWrittenChargeTemperatureInTheRowOfCharge() {
        Batch.Builder batch = ExampleRoast.written().conditions(charged(Temperature.celsius(181.5)));
        String text = of(batch).text();
        assertTrue(text.contains("181.5"), text);
        assertTrue(text.contains("that of charge is the charge temperature as written."), text);
        assertFalse(of(ExampleRoast.written()).text().contains("as written"));
    }

    private static BatchConditions charged(Temperature temperature) {
        BatchConditions none = BatchConditions.NOT_WRITTEN;
        return new BatchConditions(
                none.greenMass(),
                none.roastedMass(),
                Optional.of(temperature),
                none.greenTemperature(),
                none.roomTemperature(),
                none.roomHumidity(),
                none.roomPressure(),
                none.warmUp());
    }

    @Test
    void questionsAMarkAfterTheEndOfTheLog() {
        Phases phases = of(ExampleRoast.written().writtenMark(MarkKind.DROP, Elapsed.of(13, 0)));
        assertEquals(
                List.of("Drop is written at 13:00, but the log ends at 12:20: there is no reading then."),
                phases.questions());
        assertTrue(mark(phases, MarkKind.DROP).probe().isEmpty());
    }

    @Test
    void takesTheCurvesDropWhereItContradictsTheWrittenOneByMoreThanBothMayBeOff() {
        for (int off : new int[] {30, -30}) {
            Phases phases = of(ExampleRoast.written()
                    .curve(Quantity.BEAN_TEMPERATURE, falling(800))
                    .writtenMark(MarkKind.DROP, Elapsed.seconds(740 + off)));
            Mark drop = mark(phases, MarkKind.DROP);
            assertEquals(740, drop.seconds(), 1);
            assertEquals(Source.FOUND, drop.source());
            assertEquals(228, drop.beanTemperature().orElseThrow().celsius(), 0.2);
            assertEquals(740 + off, phases.setAside(MarkKind.DROP).orElseThrow().seconds());
            assertEquals(
                    List.of(
                            off > 0
                                    ? "The drop is written at 12:50, but the curve falls from 12:20 on (30 s earlier), further off than"
                                            + " both may be. The curve's drop is used; please check the row: the two clocks may differ."
                                    : "The drop is written at 11:50, but the curve falls from 12:20 on (30 s later), further off than"
                                            + " both may be. The curve's drop is used; please check the row: the two clocks may differ."),
                    phases.questions());
        }
    }

    @Test
    void readsADropThatWasWrittenAMomentAfterTheLogEnds() {
        Mark drop = mark(of(ExampleRoast.written().writtenMark(MarkKind.DROP, Elapsed.seconds(743))), MarkKind.DROP);
        assertEquals(228.6, drop.beanTemperature().orElseThrow().celsius(), 0.05);
        assertEquals("temperature carried on along the line for 3 s after the last reading", drop.how());
    }

    @Test
    void theTurningPointHoldsTheTruthUnderNoise() {
        // 300 curves with noise of 0.15 °C that neighbours share by half, rounded to 0.1 °C; Monte-Carlo error of a
        // share near 95 % is
        // 1.3 points. A standard error may be too wide here, not too narrow.
        int inside = 0;
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            double[] wander = {0};
            Curve noisy = ExampleRoast.curve(
                    "bean temperature",
                    Unit.TEMPERATURE,
                    t -> {
                        wander[0] = 0.5 * wander[0] + Math.sqrt(0.75) * 0.15 * random.nextGaussian();
                        return Math.rint(10 * (ExampleRoast.BEAN.applyAsDouble(t) + wander[0])) / 10;
                    },
                    -40,
                    740,
                    2);
            Mark turn =
                    mark(of(ExampleRoast.written().curve(Quantity.BEAN_TEMPERATURE, noisy)), MarkKind.TURNING_POINT);
            double off = Math.abs(turn.seconds() - ExampleRoast.TURNING_POINT_SECONDS);
            inside += off <= 1.96 * turn.standardError() ? 1 : 0;
            assertTrue(off < 6, "turning point off by " + off + " s with seed " + seed);
        }
        assertTrue(inside >= 0.92 * 300, "95 % intervals held the turning point in " + inside + " of 300");
    }

    @Test
    void readsTheSameFromALogbookInFahrenheit() {
        Phases celsius = of(ExampleRoast.written());
        Phases fahrenheit = of(ExampleRoast.written().readerUnit(TemperatureUnit.FAHRENHEIT));
        assertEquals(
                mark(celsius, MarkKind.DROP).beanTemperature(),
                mark(fahrenheit, MarkKind.DROP).beanTemperature());
        assertTrue(fahrenheit.text().contains("bean temperature [°F]"), fahrenheit.text());
        assertTrue(fahrenheit.text().contains("442.4"), fahrenheit.text());
    }

    @Test
    void shiftsInTimeChangeNothing() {
        Phases here = of(ExampleRoast.written());
        for (double by : new double[] {300, 3600, 41_111}) {
            Phases there = of(ExampleRoast.written()
                    .curve(
                            Quantity.BEAN_TEMPERATURE,
                            ExampleRoast.bean(-40, 740).withZeroAt(-by)));
            // Found on the curve instead of logged.
            assertEquals(by, there.chargeOnLogger(), 0.05);
            assertEquals(
                    mark(here, MarkKind.TURNING_POINT).seconds(),
                    there.chargeOnLogger()
                            - by
                            + mark(there, MarkKind.TURNING_POINT).seconds(),
                    0.01);
        }
    }

    @Test
    void escapesWhatCameFromAFile() {
        String html = Phases.of(Batch.named("<script>").build()).html().orElseThrow();
        assertFalse(html.contains("<script>"), html);
    }
}
