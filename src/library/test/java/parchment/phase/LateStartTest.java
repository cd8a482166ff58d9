package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.BatchConditions;
import parchment.phase.found.ChargeTemperature;
import parchment.phase.found.Mark;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** A log that shows no charge and begins well above 0: a record on each side of each rule. */
class LateStartTest {
    private static final String CONTRADICTS =
            "The drop is written at %s, which fits a log that starts at charge; by the file's clock, which starts at %s, it would be"
                    + " at 12:20. Please check the clock of the file.";

    /** The example roast, its drop at 740 s, logged every two seconds from a time since charge on. */
    private static Batch.Builder from(double seconds) {
        return Batch.named("7").curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(seconds, 740));
    }

    private static Batch.Builder from(double seconds, double drop) {
        return from(seconds).writtenMark(MarkKind.DROP, Elapsed.seconds(drop));
    }

    private static Phases of(Batch.Builder batch) {
        return Phases.of(batch.build());
    }

    private static Mark mark(Phases phases, MarkKind kind) {
        return phases.mark(kind).orElseThrow();
    }

    @Test
    void theFilesClockHoldsWhereTheLoggerWasSwitchedOnLate() {
        Phases phases = of(from(66, 740).writtenMark(MarkKind.YELLOWING, Elapsed.seconds(360)));
        assertEquals(0, phases.chargeOnLogger());
        assertEquals(
                "charge at 0:00 ± 4 s, the logger's time zero (by the file's clock; the log starts 1:06 late, and the written drop"
                        + " fits)",
                mark(phases, MarkKind.CHARGE).toString());
        assertEquals(
                List.of("The log starts 1:06 after charge, by the file's clock; what came before that is missing."),
                phases.notes());
        assertEquals(List.of(), phases.questions());
        assertEquals(Optional.empty(), phases.mark(MarkKind.TURNING_POINT));
        assertTrue(
                phases.missing()
                        .contains(
                                "The log starts too late to show the charge and the turning point. The mean rate of drying is"
                                        + " missing with them."),
                phases.missing().toString());
        // 80 + 0.2 · 360 °C; from the first reading on, 66 s later, it would be 165.
        assertEquals(
                152,
                mark(phases, MarkKind.YELLOWING).beanTemperature().orElseThrow().celsius(),
                0.05);
        assertTrue(phases.drying().orElseThrow().meanRateOfRise().isMissing());
    }

    @ParameterizedTest
    @CsvSource({
        "16, by the file's clock; the log starts 0:16 late, 4",
        "15, '', 2",
        "0, '', 2",
        "-40, the curve falls there too, 2"
    })
    void aLogIsLateFromMoreThanFifteenSecondsOn(double from, String how, double error) {
        Phases phases = of(from(from));
        assertEquals(how, mark(phases, MarkKind.CHARGE).how());
        assertEquals(error, mark(phases, MarkKind.CHARGE).standardError(), 0.1);
        assertEquals(0, phases.chargeOnLogger());
        assertEquals(from <= 15, phases.isChargeLogged());
    }

    @ParameterizedTest
    @CsvSource({"180, LOGGED", "182, ASSUMED"})
    void aClockThatBeginsMoreThanThreeMinutesAfterItsZeroCountsFromSomethingElse(double from, Source source) {
        Phases phases = of(from(from));
        assertEquals(source, mark(phases, MarkKind.CHARGE).source());
        assertEquals(source == Source.LOGGED ? 0 : 182, phases.chargeOnLogger());
        assertFalse(phases.isChargeLogged());
        // A written drop bears the clock out, however late it begins.
        assertEquals(0, of(from(from, 740)).chargeOnLogger());
    }

    /** Three joint errors of 5 s for a logger that is stopped at the drop and 2 s, rounded to a second, for the pen: 16.2 s. */
    @ParameterizedTest
    @CsvSource({
        "740, CONFIRMED",
        "756, CONFIRMED",
        "724, CONFIRMED",
        "757, BELIEVED",
        "723, BELIEVED",
        "798, BELIEVED",
        "691, BELIEVED",
        "690, CONTRADICTED",
        "674, CONTRADICTED",
        "658, CONTRADICTED",
        "657, BELIEVED"
    })
    void theWrittenDropBearsTheClockOutOrContradictsIt(double drop, LateStart.Verdict verdict) {
        Phases phases = of(from(66, drop));
        boolean isContradicted = verdict == LateStart.Verdict.CONTRADICTED;
        assertEquals(
                isContradicted ? Source.ASSUMED : Source.LOGGED,
                mark(phases, MarkKind.CHARGE).source());
        assertEquals(isContradicted ? 66 : 0, phases.chargeOnLogger());
        assertEquals(
                switch (verdict) {
                    case CONFIRMED -> "by the file's clock; the log starts 1:06 late, and the written drop fits";
                    case BELIEVED -> "by the file's clock; the log starts 1:06 late";
                    default -> "first reading";
                },
                mark(phases, MarkKind.CHARGE).how());
    }

    @Test
    void aDropThatFitsALogFromChargeOnKeepsTheFirstReadingAndAsks() {
        assertEquals(
                List.of(
                        "The log starts at 1:06 on the logger's clock and shows no sharp fall; its first reading is taken as charge.",
                        String.format(CONTRADICTS, "11:14", "1:06")),
                of(from(66, 674)).notes());
        // Up to a minute the logger's zero has always been taken as charge; it stays so, and the doubt is told.
        Phases early = of(from(40, 700));
        assertEquals(0, early.chargeOnLogger());
        assertEquals("", mark(early, MarkKind.CHARGE).how());
        assertEquals(List.of(String.format(CONTRADICTS, "11:40", "0:40")), early.notes());
    }

    /**
     * The log goes on for a minute after the drop; what counts is the fall, not the last reading: 734 s would fit a log of 800 - 66 s that
     * starts at charge.
     */
    @ParameterizedTest
    @CsvSource({
        "740, 'by the file''s clock; the log starts 1:06 late, and the written drop fits', false",
        "734, 'by the file''s clock; the log starts 1:06 late, and the written drop fits', false",
        "800, by the file's clock; the log starts 1:06 late, true",
        "674, first reading, false"
    })
    void whereTheCurveFallsTheWrittenDropIsHeldAgainstTheFall(double drop, String how, boolean isSetAside) {
        Curve curve = ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> t > 740 ? 228 - 60 * (1 - Math.exp((740 - t) / 30)) : ExampleRoast.BEAN.applyAsDouble(t),
                66,
                800,
                2);
        Phases phases = of(Batch.named("7")
                .curve(Quantity.BEAN_TEMPERATURE, curve)
                .writtenMark(MarkKind.DROP, Elapsed.seconds(drop)));
        assertEquals(how, mark(phases, MarkKind.CHARGE).how());
        assertEquals(isSetAside, phases.setAside(MarkKind.DROP).isPresent());
    }

    @ParameterizedTest
    @CsvSource({"15, ''", "16, by the file's clock; the log starts 0:40 late"})
    void aClockThatRunsBeforeTheBeanProbeIsReadIsNotLate(double air, String how) {
        Curve other = ExampleRoast.curve("air temperature", Unit.TEMPERATURE, t -> 200, air, 740, 2);
        assertEquals(
                how,
                mark(of(from(40).curve(Quantity.AIR_TEMPERATURE, other)), MarkKind.CHARGE)
                        .how());
    }

    /** The turn of the example is at 74.9 s, its window 15 s to either side. */
    @ParameterizedTest
    @CsvSource({"58, true", "62, false"})
    void theTurningPointIsReadOnlyWhereTheLogHoldsTheFallBeforeIt(double from, boolean isRead) {
        Phases phases = of(from(from));
        assertEquals(isRead, phases.mark(MarkKind.TURNING_POINT).isPresent());
        phases.mark(MarkKind.TURNING_POINT)
                .ifPresent(turn -> assertEquals(ExampleRoast.TURNING_POINT_SECONDS, turn.seconds(), 1));
    }

    @Test
    void aWrittenChargeTemperatureIsNotHeldAgainstALogThatDoesNotHoldTheCharge() {
        BatchConditions none = BatchConditions.NOT_WRITTEN;
        BatchConditions charged = new BatchConditions(
                none.greenMass(),
                none.roastedMass(),
                Optional.of(Temperature.celsius(181)),
                none.greenTemperature(),
                none.roomTemperature(),
                none.roomHumidity(),
                none.roomPressure(),
                none.warmUp());
        // By the clock, assumed, and on the other side of the rule.
        for (double from : new double[] {16, 66, 182, 0, -40}) {
            Phases phases = of(from(from).conditions(charged));
            assertEquals(from <= 15, phases.isChargeLogged());
            assertEquals(from > 15, ChargeTemperature.asLogged(phases).isMissing());
            assertEquals(181, ChargeTemperature.of(phases).value());
            assertEquals(
                    from <= 15, KnownMoments.chargeTemperature().look(phases).isPresent(), "from " + from);
        }
        assertEquals(
                "charge temperature was not written, and the log does not hold the charge.",
                ChargeTemperature.of(of(from(66))).whyMissing());
        // Without a curve what was written is looked at.
        Phases written = of(Batch.named("8").conditions(charged));
        assertTrue(KnownMoments.chargeTemperature().look(written).isPresent());
    }
}
