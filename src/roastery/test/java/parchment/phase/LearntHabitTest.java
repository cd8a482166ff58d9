package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.phase.found.Mark;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;
import parchment.virtual.VirtualRoastery;

class LearntHabitTest {
    private static final Logbook HARBOUR =
            VirtualRoastery.harbour().withSeed(11).withBatches(80).run().opened();

    static Logbook changed(Logbook logbook, UnaryOperator<Batch> change) {
        LogbookContents was = logbook.contents();
        return Logbook.of(was.toBuilder()
                .batches(was.batches().stream().map(change).toList())
                .build());
    }

    /** The same batch with only its drop written. */
    private static Batch unmarked(Batch batch) {
        Batch.Builder bare = Batch.named(batch.name()).conditions(batch.conditions());
        batch.roastedAt().ifPresent(bare::roastedAt);
        batch.lot().ifPresent(bare::lot);
        batch.logged().forEach(quantity -> batch.curve(quantity).ifPresent(curve -> bare.curve(quantity, curve)));
        batch.writtenMark(MarkKind.DROP).ifPresent(drop -> bare.writtenMark(MarkKind.DROP, drop));
        return bare.build();
    }

    @Test
    void assumesCommonPracticeWhereNothingWasWritten() {
        Logbook bare = changed(HARBOUR.only(batch -> batch.name().compareTo("H012") < 0), LearntHabitTest::unmarked);
        LearntHabit habit = LearntHabit.of(bare);
        MarkPrediction predicted = habit.predict(bare.batches().get(0), MarkKind.FIRST_CRACK_START);
        assertEquals(MarkPrediction.Basis.ASSUMED, predicted.basis());
        // 3 °C on one probe and 7 °C between probes.
        assertEquals(Math.sqrt(58), predicted.temperatureStandardError(), 1e-3);
        assertTrue(habit.toString().contains("common practice, no source"), habit.toString());
        assertTrue(MarkReport.of(habit).toString().contains("cannot tell"));
        Mark yellowing = habit.withPredictions(bare.batches().get(0))
                .mark(MarkKind.YELLOWING)
                .orElseThrow();
        assertEquals(Source.ASSUMED, yellowing.source());
        assertTrue(yellowing.standardError() > 15, yellowing.toString());
    }

    @Test
    void keepsWhatWasWrittenAndMarksWhatWasPredicted() {
        Batch batch = HARBOUR.batches().stream()
                .filter(b -> b.writtenMark(MarkKind.FIRST_CRACK_START).isPresent())
                .findFirst()
                .orElseThrow();
        double written =
                batch.writtenMark(MarkKind.FIRST_CRACK_START).orElseThrow().seconds();
        Logbook without = changed(HARBOUR, b -> b.name().equals(batch.name()) ? unmarked(b) : b);
        LearntHabit habit = LearntHabit.of(without);
        Mark crack = habit.withPredictions(without.batch(batch.name()))
                .mark(MarkKind.FIRST_CRACK_START)
                .orElseThrow();
        assertEquals(Source.PREDICTED, crack.source());
        assertTrue(Math.abs(crack.seconds() - written) < 4 * crack.standardError(), crack + " against " + written);
        assertEquals(
                Source.WRITTEN,
                LearntHabit.of(HARBOUR)
                        .withPredictions(batch)
                        .mark(MarkKind.FIRST_CRACK_START)
                        .orElseThrow()
                        .source());
    }

    @Test
    void questionsAMarkThatWasMistypedAndKeepsIt() {
        Batch batch = HARBOUR.batches().stream()
                .filter(b -> b.writtenMark(MarkKind.FIRST_CRACK_START).isPresent())
                .skip(20)
                .findFirst()
                .orElseThrow();
        double written =
                batch.writtenMark(MarkKind.FIRST_CRACK_START).orElseThrow().seconds();
        Logbook mistyped = changed(
                HARBOUR,
                b -> b.name().equals(batch.name())
                        ? b.toBuilder()
                                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(written - 60))
                                .build()
                        : b);
        List<String> before = MarkReport.of(HARBOUR).questions();
        MarkReport report = MarkReport.of(mistyped);
        assertTrue(before.isEmpty(), before.toString());
        assertEquals(1, report.questions().size(), report.questions().toString());
        assertTrue(
                report.questions().get(0).startsWith("Batch " + batch.name() + ": first crack start is written at "));
        assertTrue(report.questions().get(0).contains("It is kept as written"));
        assertFalse(report.text().contains("NaN"));
        assertFalse(report.html().orElseThrow().contains("NaN"));
    }

    @Test
    void saysThatACurveNeverGotThere() {
        Batch batch = HARBOUR.batches().get(3);
        Logbook cut = changed(
                HARBOUR,
                b -> b.name().equals(batch.name())
                        ? unmarked(b).toBuilder()
                                .writtenMark(MarkKind.DROP, Elapsed.seconds(240))
                                .build()
                        : b);
        LearntHabit habit = LearntHabit.of(cut);
        MarkPrediction predicted = habit.predict(cut.batch(batch.name()), MarkKind.FIRST_CRACK_START);
        assertEquals(MarkPrediction.Shape.NEVER_REACHED, predicted.shape());
        assertTrue(predicted.toString().contains("never reached"), predicted.toString());
        assertTrue(habit.withPredictions(cut.batch(batch.name()))
                .mark(MarkKind.FIRST_CRACK_START)
                .isEmpty());
    }

    @Test
    void saysThatABatchIsOfAnotherLogbook() {
        LearntHabit habit = LearntHabit.of(HARBOUR.only(b -> b.name().equals("H001")));
        assertThrows(
                IllegalArgumentException.class,
                () -> habit.predict(Batch.named("X1").build(), MarkKind.YELLOWING));
        assertThrows(IllegalArgumentException.class, () -> habit.predict(HARBOUR.batch("H001"), MarkKind.DROP));
    }

    @Test
    void readsATurningPointThatLiesInAGap() {
        Batch batch = HARBOUR.batches().get(2);
        Curve curve = batch.beanTemperature().orElseThrow();
        double truth =
                Phases.of(batch).mark(MarkKind.TURNING_POINT).orElseThrow().seconds();
        for (double from = 40; from < 100; from += 2) {
            double gap = from;
            int[] kept = IntStream.range(0, curve.size())
                    .filter(i -> curve.secondsAt(i) < gap || curve.secondsAt(i) > gap + 14)
                    .toArray();
            Curve holed = Curve.of(
                    curve.name(),
                    curve.unit(),
                    IntStream.of(kept).mapToDouble(curve::secondsAt).toArray(),
                    IntStream.of(kept).mapToDouble(curve::valueAt).toArray());
            Phases phases = Phases.of(
                    batch.toBuilder().curve(Quantity.BEAN_TEMPERATURE, holed).build());
            // Where the gap hides the turn itself the mark stands at the nearest reading; its error is that of the gap
            // or more.
            Mark turn = phases.mark(MarkKind.TURNING_POINT).orElseThrow();
            assertTrue(turn.seconds() > 30 && turn.seconds() < 130, turn.toString());
            assertEquals(truth, turn.seconds(), 14 + 3 * turn.standardError(), "gap from " + gap);
        }
    }

    @Test
    void usesTheBendOnlyWhereItHelps() {
        Random random = new Random(3);
        double[] errors = new double[160];
        double[] telling = new double[160];
        double[] idle = new double[160];
        List<String> days = new ArrayList<>();
        for (int i = 0; i < 160; i++) {
            double truth = random.nextGaussian();
            errors[i] = truth + 0.3 * random.nextGaussian();
            telling[i] = truth + 0.5 * random.nextGaussian();
            idle[i] = 3 * random.nextGaussian();
            days.add("day " + i / 4);
        }
        // Best weight: the share of the sign's variance that is truth, 1 / (1 + 0.25).
        assertEquals(0.8, SignatureGain.of(errors, telling, days).weight(), 0.1);
        assertEquals(0, SignatureGain.of(errors, idle, days).weight());
        assertTrue(SignatureGain.of(errors, idle, days).toString().contains("not used, weight 0"));
    }

    /** Short version of docs/measurements/marks.md. */
    @Test
    void intervalsHoldWhatWouldHaveBeenWritten() {
        for (MarkStudy.Cell cell :
                MarkStudy.run("short", VirtualRoastery.harbour().withBatches(70), 500, 3)) {
            double error = Math.sqrt(0.09 / cell.marks());
            assertTrue(cell.within90() > 0.86 - 2 * error && cell.within90() < 0.94 + 2 * error, cell.row());
            assertTrue(cell.within50() > 0.42 && cell.within50() < 0.60, cell.row());
            assertTrue(cell.medianSeconds() < 12, cell.row());
        }
    }
}
