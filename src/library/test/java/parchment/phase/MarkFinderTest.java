package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.phase.found.Mark;
import parchment.phase.found.ProbeReading;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;
import parchment.stats.local.Autocovariance;

/** A record on each side of each rule by which the marks of a batch are put together. */
class MarkFinderTest {
    private static Batch.Builder logged(DoubleUnaryOperator course, double from, double to) {
        return Batch.named("7")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, course, from, to, 2));
    }

    private static Phases of(Batch.Builder batch) {
        return Phases.of(batch.build());
    }

    private static Mark mark(Phases phases, MarkKind kind) {
        return phases.mark(kind).orElseThrow();
    }

    private static DoubleUnaryOperator example(double charge) {
        return t -> ExampleRoast.BEAN.applyAsDouble(t - charge);
    }

    /** The logger's zero is the charge if the curve's is no more than 6 s from it. */
    @ParameterizedTest
    @CsvSource({"4, LOGGED, 0", "-4, LOGGED, 0", "8, FOUND, 8", "-8, FOUND, -8"})
    void aZeroWithinSixSecondsOfTheChargeOnTheCurveIsCharge(double charge, Source source, double zero) {
        Phases phases = of(logged(example(charge), -60, 740));
        assertEquals(source, mark(phases, MarkKind.CHARGE).source());
        assertEquals(zero, phases.chargeOnLogger(), 1);
        assertEquals(source == Source.FOUND ? 1 : 0, phases.notes().size());
        assertEquals(
                source == Source.FOUND ? "onset of the sharp fall" : "the curve falls there too",
                mark(phases, MarkKind.CHARGE).how());
    }

    /** Two readings, or one that is left after a cleaning, are as good as no curve; three are looked at. */
    @ParameterizedTest
    @CsvSource({"0, false", "50, false", "100, true", "600, true"})
    void fewerThanThreeReadingsAreNoCurve(double until, boolean isLookedAt) {
        Phases phases = of(Batch.named("7")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, t -> 100 + 0.2 * t, 0, until, 50))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(700)));
        assertEquals(isLookedAt, phases.clean().isPresent());
        assertEquals(
                isLookedAt ? Source.LOGGED : Source.WRITTEN,
                mark(phases, MarkKind.CHARGE).source());
        assertEquals(700, mark(phases, MarkKind.DROP).seconds());
        assertTrue(phases.mark(MarkKind.TURNING_POINT).isEmpty());
        assertEquals(
                isLookedAt
                        ? List.of()
                        : List.of("Too few readings of the bean temperature can be used (" + (until == 0 ? 1 : 2)
                                + ", 3 are needed): no mark is looked for on the curve."),
                phases.notes());
    }

    /**
     * Without a fall the logger's zero is charge, if the log does not start more than three minutes after it; from 15 s on the log is late.
     */
    @ParameterizedTest
    @CsvSource({
        "180, LOGGED, 4",
        "182, ASSUMED, 15",
        "62, LOGGED, 4",
        "60, LOGGED, 4",
        "16, LOGGED, 4",
        "15, LOGGED, 2",
        "0, LOGGED, 2",
        "-6, LOGGED, 2",
        "-8, LOGGED, 2"
    })
    void withoutAFallTheLoggersZeroIsChargeUnlessTheLogStartsLate(double from, Source source, double error) {
        Phases phases = of(logged(t -> 100 + 0.2 * t, from, 600));
        Mark charge = mark(phases, MarkKind.CHARGE);
        boolean isLate = from > 15;
        String clock = Elapsed.seconds(from).toString();
        assertEquals(source, charge.source());
        assertEquals(source == Source.ASSUMED ? 182 : 0, phases.chargeOnLogger());
        assertEquals(
                source == Source.ASSUMED
                        ? "first reading"
                        : isLate ? "by the file's clock; the log starts " + clock + " late" : "",
                charge.how());
        assertEquals(
                source == Source.ASSUMED
                        ? List.of(
                                "The log starts at 3:02 on the logger's clock and shows no sharp fall; its first reading is taken as"
                                        + " charge.")
                        : isLate
                                ? List.of("The log starts " + clock
                                        + " after charge, by the file's clock; what came before that is missing.")
                                : from < -6
                                        ? List.of(
                                                "No sharp fall shows at charge; the logger's time zero is taken as charge.")
                                        : List.of(),
                phases.notes());
        assertEquals(error, charge.standardError(), 0.1);
    }

    @Test
    void aLogThatEndsBeforeItsZeroStartsAtItsFirstReading() {
        Phases phases = of(logged(t -> 300 + 0.2 * t, -600, -2));
        assertEquals(Source.ASSUMED, mark(phases, MarkKind.CHARGE).source());
        assertEquals(-600, phases.chargeOnLogger());
    }

    @Test
    void withoutACurveChargeIsWhereWrittenTimesCountFrom() {
        Phases phases = of(Batch.named("7").writtenMark(MarkKind.DROP, Elapsed.seconds(600)));
        assertEquals(Source.WRITTEN, mark(phases, MarkKind.CHARGE).source());
        assertEquals(
                "written times count from it", mark(phases, MarkKind.CHARGE).how());
        assertEquals(600, mark(phases, MarkKind.DROP).seconds());
        assertTrue(phases.clean().isEmpty() && phases.bean().isEmpty());
    }

    /** A log of a minute at most holds no drop. */
    @ParameterizedTest
    @CsvSource({"60, false", "62, true"})
    void theEndOfTheLogIsTheDropAfterAMinute(double end, boolean isDrop) {
        Phases phases = of(logged(t -> 100 + 0.2 * t, 0, end));
        assertEquals(isDrop, phases.mark(MarkKind.DROP).isPresent());
        phases.mark(MarkKind.DROP).ifPresent(drop -> {
            assertEquals(Source.ASSUMED, drop.source());
            assertEquals(62, drop.seconds());
            assertEquals("the log ends", drop.how());
        });
    }

    /** A log that counts something else than seconds makes no roast: nothing of it is used, whatever was logged, and that is said. */
    @ParameterizedTest
    @CsvSource({
        "0, 58, 0:58, less than a minute",
        "0, 60, , ",
        "-60, 7200, , ",
        "-60, 7202, 120:02, more than two hours",
        "500, 7800, 121:40, more than two hours"
    })
    void aCurveIsSetAsideWhereItsRoastIsShorterThanAMinuteOrLongerThanTwoHours(
            double from, double to, @Nullable String length, @Nullable String words) {
        Phases phases = of(logged(t -> 100 + 0.01 * t, from, to)
                .curve(Quantity.GAS, ExampleRoast.curve("gas", Unit.SHARE, t -> 50, from, to, 2))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(560)));
        boolean isSetAside = length != null;
        assertEquals(isSetAside, phases.clean().isEmpty());
        assertEquals(isSetAside, phases.bean().isEmpty());
        assertEquals(isSetAside, phases.curve(Quantity.GAS).isEmpty());
        assertEquals(isSetAside || to == 60, phases.mark(MarkKind.DROP).isEmpty());
        assertEquals(560, mark(phases, MarkKind.FIRST_CRACK_START).seconds());
        if (isSetAside) {
            assertEquals(
                    List.of("By its curve this roast takes " + length + " from charge to the end, " + words
                            + ": the curve is set aside, and only what was written counts. Please check the unit of the times in"
                            + " its file."),
                    phases.notes());
            assertEquals(0, phases.chargeOnLogger());
            assertEquals(
                    "The curve is set aside: times and shares can be told from written marks, temperatures and rates of rise"
                            + " cannot.",
                    phases.missing().get(0));
        }
    }

    /** A roast logged in milliseconds, and one in minutes, as if they were seconds; both have a drop as plain as can be. */
    @ParameterizedTest
    @CsvSource({"1000, more than two hours", "0.016666666666666666, less than a minute"})
    void noMarkIsReadOffARoastInMillisecondsOrMinutes(double factor, String words) {
        Curve seconds = ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, falling(), -60, 766, 2);
        double[] times = Arrays.stream(seconds.seconds()).map(t -> factor * t).toArray();
        Phases phases = of(Batch.named("7")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of("bean temperature", Unit.TEMPERATURE, times, seconds.values())));
        assertEquals(
                List.of(MarkKind.CHARGE),
                phases.marks().stream().map(Mark::kind).toList());
        assertTrue(phases.notes().get(0).contains(words), phases.notes()::toString);
    }

    /** A logger that runs on for hours after the drop has logged a roast all the same. */
    @Test
    void aLoggerThatRunsOnAfterTheFallHasLoggedARoast() {
        Phases phases = of(logged(falling(), -60, 9000));
        assertEquals(740, mark(phases, MarkKind.DROP).seconds(), 0.5);
        assertEquals(List.of(), phases.notes());
    }

    /** Between readings 45 s apart a temperature can be told, between such 46 s apart none; the marks' times stand. */
    @ParameterizedTest
    @CsvSource({"45, true", "46, false", "60, false", "120, false"})
    void aLoggerThatReadsMoreSeldomThanEvery45SecondsTellsNoTemperatureAtAMark(double every, boolean tells) {
        Phases phases = of(Batch.named("7")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, ExampleRoast.BEAN, -every, 740, every))
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(360))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600)));
        for (MarkKind kind : List.of(MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START, MarkKind.DROP)) {
            Mark mark = mark(phases, kind);
            assertEquals(tells, mark.beanTemperature().isPresent(), kind.words());
            if (!tells) {
                String why = "no temperature: read every %.0f s, which is too seldom to tell one".formatted(every);
                assertEquals(kind == MarkKind.DROP ? "the log ends; " + why : why, mark.how());
            }
        }
        assertEquals(360, mark(phases, MarkKind.YELLOWING).seconds());
        assertEquals(tells, phases.mark(MarkKind.TURNING_POINT).isPresent());
        assertEquals(
                tells
                        ? List.of()
                        : List.of(String.format(
                                Locale.ROOT,
                                "The bean temperature was read every %.0f s: too seldom to tell the turning point, or a temperature at"
                                        + " a mark. A reading every 45 s or faster tells them.",
                                every)),
                phases.missing());
    }

    /** A reading that is off by 10 °C tells something, one that is off by more nothing. */
    @ParameterizedTest
    @CsvSource({"9.9, true, ''", "10.1, false, 'no temperature: it could be off by 10 °C, more than tells anything'"})
    void aTemperatureWithAnErrorOfMoreThanTenDegreesIsMissing(double error, boolean isRead, String how) {
        CleanCurve curve = CleanCurve.of(ExampleRoast.bean(0, 740));
        double unit =
                SmoothCurve.of(curve, 20, Autocovariance.independent(1)).at(360).valueStandardError();
        SmoothCurve smooth = SmoothCurve.of(curve, 20, Autocovariance.independent(Math.pow(error / unit, 2)));
        Mark written = new Mark(MarkKind.YELLOWING, Elapsed.seconds(360), 10, Source.WRITTEN, Optional.empty(), "");
        Mark mark = new ProbeAtMark(curve, smooth, Optional.empty()).of(written);
        assertEquals(isRead, mark.beanTemperature().isPresent());
        assertEquals(how, mark.how());
    }

    private static DoubleUnaryOperator falling() {
        return t -> t > 740 ? 118 + 110 * Math.exp(-(t - 740) / 12) : ExampleRoast.BEAN.applyAsDouble(t);
    }

    /** A written drop is 2 s exact and rounded to a second, the curve's a tenth: three joint errors are about 6.1 s. */
    @ParameterizedTest
    @CsvSource({"5.8, WRITTEN", "6.5, FOUND", "-5.8, WRITTEN", "-6.5, FOUND"})
    void aWrittenDropStandsWithinThreeJointErrorsOfTheCurves(double off, Source source) {
        Phases phases = of(logged(falling(), -40, 780).writtenMark(MarkKind.DROP, Elapsed.seconds(740 + off)));
        Mark drop = mark(phases, MarkKind.DROP);
        assertEquals(source, drop.source());
        assertEquals(source == Source.FOUND, phases.setAside(MarkKind.DROP).isPresent());
        assertEquals(228, drop.beanTemperature().orElseThrow().celsius(), 0.2);
        assertEquals(
                source == Source.FOUND
                        ? "onset of the fall at the end, written at " + Elapsed.seconds(740 + off)
                        : "temperature read where the curve begins to fall, 6 s " + (off > 0 ? "earlier" : "later"),
                drop.how());
    }

    @Test
    void aDropWithinHalfASecondOfTheCurvesSaysNothingOfIt() {
        Phases phases = of(logged(falling(), -40, 780).writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
        assertEquals("", mark(phases, MarkKind.DROP).how());
        Phases found = of(logged(falling(), -40, 780));
        assertEquals("onset of the fall at the end", mark(found, MarkKind.DROP).how());
        assertEquals(740, mark(found, MarkKind.DROP).seconds(), 0.2);
    }

    /** The smoothed roast ends where the curve falls, whether the pen was late or early; without a fall, with the drop. */
    @Test
    void theRoastIsSmoothedFromChargeToTheFall() {
        Phases phases = of(logged(falling(), -40, 780).writtenMark(MarkKind.DROP, Elapsed.seconds(744)));
        Curve kept = phases.bean().orElseThrow().clean().kept();
        assertEquals(0, kept.secondsAt(0));
        assertEquals(740, kept.secondsAt(kept.size() - 1), 2);
        Phases sooner = of(logged(falling(), -40, 780).writtenMark(MarkKind.DROP, Elapsed.seconds(736)));
        Curve shorter = sooner.bean().orElseThrow().clean().kept();
        assertEquals(740, shorter.secondsAt(shorter.size() - 1), 2);
        Phases cut = of(ExampleRoast.unwritten().writtenMark(MarkKind.DROP, Elapsed.seconds(700)));
        Curve toTheDrop = cut.bean().orElseThrow().clean().kept();
        assertEquals(700, toTheDrop.secondsAt(toTheDrop.size() - 1));
    }

    /** A mark up to 5 s after the last reading is read along the straight line; half a second is not worth a word. */
    @ParameterizedTest
    @CsvSource({
        "740.4, true, ''",
        "740.6, true, temperature carried on along the line for 1 s after the last reading",
        "744.9, true, temperature carried on along the line for 5 s after the last reading",
        "745.1, false, no temperature: the log ends 5 s before"
    })
    void aMarkAMomentAfterTheLogIsReadAlongTheLine(double seconds, boolean isRead, String how) {
        Mark drop =
                mark(of(ExampleRoast.unwritten().writtenMark(MarkKind.DROP, Elapsed.seconds(seconds))), MarkKind.DROP);
        assertEquals(isRead, drop.probe().isPresent());
        assertEquals(how, drop.how());
        drop.beanTemperature().ifPresent(t -> assertEquals(228 + 0.2 * (seconds - 740), t.celsius(), 0.02));
    }

    /** Two readings are a moment, of 10 s at most: 8 s where 4 s lie between readings, 10 s where 6, 20 or 30 s do. */
    @ParameterizedTest
    @CsvSource({"4, 7.9, true", "4, 8.1, false", "6, 9.9, true", "6, 10.1, false", "30, 9.9, true", "30, 10.1, false"})
    void aMomentIsTwoReadingsLongOnASlowLoggerButNoMoreThanTenSeconds(double every, double later, boolean isRead) {
        Batch.Builder slow = Batch.named("7")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, ExampleRoast.BEAN, -60, 720, every))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(720 + later));
        assertEquals(isRead, mark(of(slow), MarkKind.DROP).probe().isPresent());
    }

    /** The rate may bend by 10 °C/min within a minute, spread evenly: an interval before the last reading, and on from it. */
    @ParameterizedTest
    @CsvSource({"2, 4.9, 0.035", "6, 9.9, 0.174", "30, 9.9, 0.555"})
    void aTemperatureCarriedOnIsAsUncertainAsTheRateMayBend(double every, double later, double bend) {
        Batch.Builder slow = Batch.named("7")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, t -> 100 + t / 6, 0, 720, every))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(720 + later));
        ProbeReading probe = mark(of(slow), MarkKind.DROP).probe().orElseThrow();
        assertEquals(220 + later / 6, probe.celsius(), 0.01);
        assertEquals(bend, probe.standardError(), 0.02 * bend + 0.001);
    }

    /** Where the log goes on after the drop, the last reading before it may lie one interval and a half back: 30 s of 20. */
    @ParameterizedTest
    @CsvSource({
        "729.9, true, temperature carried on along the line for 30 s after the last reading",
        "730.1, false, no temperature: the last reading is 30 s before"
    })
    void aDropBetweenTwoReadingsIsReadAlongTheLine(double drop, boolean isRead, String how) {
        double[] seconds = IntStream.range(0, 41)
                .mapToDouble(i -> i < 36 ? 20 * i : 745 + 20 * (i - 36))
                .toArray();
        double[] celsius = Arrays.stream(seconds).map(t -> 100 + t / 6).toArray();
        Mark mark = mark(
                of(Batch.named("7")
                        .curve(
                                Quantity.BEAN_TEMPERATURE,
                                Curve.of("bean temperature", Unit.TEMPERATURE, seconds, celsius))
                        .writtenMark(MarkKind.DROP, Elapsed.seconds(drop))),
                MarkKind.DROP);
        assertEquals(isRead, mark.probe().isPresent());
        assertEquals(how, mark.how());
    }

    /** A temperature long after the log's end is nowhere near known: the line to it would be a guess. */
    @Test
    void marksLongAfterTheEndOfASparseLogHaveNoTemperatureAndSayWhy() {
        Phases phases = of(Batch.named("7")
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of("bean temperature", Unit.TEMPERATURE, new double[] {0, 90, 300, 500}, new double[] {
                            200, 90, 150, 190
                        }))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(615))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(730)));
        Mark crack = mark(phases, MarkKind.FIRST_CRACK_START);
        Mark drop = mark(phases, MarkKind.DROP);
        assertEquals(615, crack.seconds());
        assertEquals(730, drop.seconds());
        assertEquals(Optional.empty(), crack.beanTemperature());
        assertEquals(Optional.empty(), drop.beanTemperature());
        assertEquals("no temperature: the log ends 115 s before", crack.how());
        assertEquals("no temperature: the log ends 230 s before", drop.how());
    }

    @Test
    void chargeHasNoReadingOfTheProbeAndAWrittenTurningPointStands() {
        Phases phases = of(ExampleRoast.written().writtenMark(MarkKind.TURNING_POINT, Elapsed.seconds(80)));
        assertEquals(Optional.empty(), mark(phases, MarkKind.CHARGE).probe());
        assertEquals(80, mark(phases, MarkKind.TURNING_POINT).seconds());
        assertEquals(Source.WRITTEN, mark(phases, MarkKind.TURNING_POINT).source());
        assertEquals(
                ExampleRoast.BEAN.applyAsDouble(80),
                mark(phases, MarkKind.TURNING_POINT)
                        .beanTemperature()
                        .orElseThrow()
                        .celsius(),
                0.05);
        Phases found = of(ExampleRoast.written());
        assertEquals(
                "lowest smoothed reading", mark(found, MarkKind.TURNING_POINT).how());
    }

    /** Of marks after an assumed drop none is set aside: the log may have ended too soon. */
    @Test
    void anAssumedDropContradictsNothing() {
        Phases phases = of(ExampleRoast.unwritten().writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(760)));
        assertEquals(Source.ASSUMED, mark(phases, MarkKind.DROP).source());
        assertEquals(760, mark(phases, MarkKind.FIRST_CRACK_START).seconds());
    }

    /** Two marks in the wrong order, one of them after the drop: only that one goes. */
    @Test
    void whatLiesAfterTheDropGoesBeforeTheOthersAreHeldAgainstEachOther() {
        Phases phases = of(Batch.named("7")
                .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(800))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(600))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(740)));
        assertTrue(phases.setAside(MarkKind.YELLOWING).isPresent());
        assertEquals(600, mark(phases, MarkKind.FIRST_CRACK_START).seconds());
        assertEquals(List.of(MarkKind.YELLOWING), phases.questioned());
    }
}
