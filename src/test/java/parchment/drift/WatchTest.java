package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.BatchConditions;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookContents;
import parchment.quantity.Mass;

class WatchTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    /** A logbook of one lot whose green masses are the given numbers, one batch a day. */
    private static Logbook masses(double... kilograms) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < kilograms.length; i++) {
            batches.add(Batch.named("B" + (i + 1))
                    .roastedAt(LocalDate.of(2025, 1, 1)
                            .plusDays(i)
                            .atTime(LocalTime.NOON)
                            .atOffset(ZoneOffset.UTC))
                    .lot("one")
                    .conditions(BatchConditions.NOT_WRITTEN.withGreenMass(Mass.kilograms(kilograms[i])))
                    .build());
        }
        return Logbook.of(LogbookContents.ofBatches("drawn", batches));
    }

    @Test
    void agreesWithTheFlowRatesOfTheHandbook() {
        // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 "Individuals Control Charts": ten flow rates; mean
        // 50.81, mean moving
        // range 1.8778, limits 45.8157 and 55.8045 (with d2 = 1.128; ours is the exact 2/sqrt(pi), which moves them by
        // under 0.003).
        Watch watch =
                Watch.of(masses(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1), Features.greenMass());
        assertTrue(watch.hasLimits(), watch.toString());
        assertEquals(50.81, watch.single().orElseThrow().center(), 1e-9);
        assertEquals(45.8157, watch.single().orElseThrow().lowerLimit(), 0.003);
        assertEquals(55.8045, watch.single().orElseThrow().upperLimit(), 0.003);
    }

    @Test
    void seesAShiftThatStays() {
        double[] values = new double[40];
        for (int i = 0; i < values.length; i++) {
            values[i] = 2 + 0.01 * Math.sin(i * 2.4) + (i >= 25 ? 0.012 : 0);
        }
        Watch watch = Watch.of(masses(values), Features.greenMass());
        assertEquals(20, watch.stable().size());
        assertTrue(watch.alarms().stream().anyMatch(a -> a.kind() != Watch.Kind.SINGLE_BATCH), watch.toString());
        assertTrue(watch.toString().contains("a shift shows since batch B"), watch.toString());
        assertTrue(watch.text().contains("once in 370 batches"), watch.text());
    }

    @Test
    void setsNoLimitsFromNineBatches() {
        Watch watch = Watch.of(masses(1, 2, 1, 2, 1, 2, 1, 2, 1), Features.greenMass());
        assertFalse(watch.hasLimits());
        assertTrue(watch.toString().startsWith("Cannot set limits for green mass"), watch.toString());
        assertTrue(watch.alarms().isEmpty());
    }

    @Test
    void watchesProbeReadingsSinceTheProbeWasMovedOnly() {
        Watch watch = Watch.of(HARBOUR.ofLot("Low Orchard"), Features.firstCrackTemperature());
        assertTrue(watch.batches().stream()
                .allMatch(b -> !b.roastDay().orElseThrow().isBefore(LocalDate.of(2024, 10, 7))));
        Watch times = Watch.of(HARBOUR.ofLot("Low Orchard"), Features.browningTime());
        assertTrue(times.batches().size() > watch.batches().size());
    }

    @Test
    void twinsAreMeantAlikeAndGiveTheRepeatability() {
        Twins twins = Twins.of(HARBOUR);
        for (Twins.Group group : twins.groups()) {
            Batch first = group.batches().get(0);
            for (Batch other : group.batches()) {
                assertEquals(first.lot(), other.lot());
                assertEquals(
                        first.conditions().greenMass().orElseThrow().kilograms(),
                        other.conditions().greenMass().orElseThrow().kilograms(),
                        0.03 * 2.5);
            }
        }
        Repeatability repeatability = twins.repeatability(Features.browningTime());
        double deviation = repeatability.standardDeviation().orElseThrow();
        assertTrue(repeatability.interval(0.90).contains(deviation));
        assertTrue(repeatability.degreesOfFreedom() == repeatability.batches() - repeatability.groups());
        Repeatability none = Twins.of(masses(2, 3)).repeatability(Features.greenMass());
        assertTrue(none.toString().startsWith("Cannot tell how repeatable"), none.toString());
    }

    @Test
    void repeatabilityAgreesWithTheWorkedFormula() {
        // Pooled standard deviation of 2.00, 2.02, 2.04 and of 3.00, 3.04: sqrt((0.0008 + 0.0008) / 3), by hand.
        Repeatability r = Twins.of(masses(2.00, 2.02, 2.04, 3.00, 3.04)).repeatability(Features.greenMass());
        assertEquals(Math.sqrt(0.0016 / 3), r.standardDeviation().orElseThrow(), 1e-12);
        assertEquals(3, r.degreesOfFreedom());
        // Chi-squared with 3 degrees of freedom: 0.352 (5 %) and 7.815 (95 %), printed tables.
        assertEquals(Math.sqrt(0.0016 / 7.815), r.interval(0.90).lower(), 1e-5);
        assertEquals(Math.sqrt(0.0016 / 0.352), r.interval(0.90).upper(), 1e-4);
    }

    @Test
    void saysWhetherABatchIsLikeItsLotsOthers() {
        Usual usual = Usual.of(HARBOUR.batch("H240"), HARBOUR);
        assertEquals(Usual.Verdict.LIKE_THE_OTHERS, usual.verdict(), usual.toString());
        List<Batch> some =
                HARBOUR.batches().stream().filter(b -> b.name().endsWith("5")).toList();
        long odd = some.stream()
                .filter(b -> Usual.of(b, HARBOUR).compared().stream().anyMatch(Usual.Compared::unlike))
                .count();
        // All features of the next batch in 95 of 100 cases, if they are normal; some are not.
        assertTrue(odd <= 0.25 * some.size(), odd + " batches");
        Logbook hillside = Logbook.open(Path.of("..", "datasets", "hillside"));
        Usual few = Usual.of(hillside.batch("K040"), hillside);
        assertEquals(Usual.Verdict.CANNOT_TELL, few.verdict());
        assertTrue(few.toString().contains("8 are needed"), few.toString());
    }

    @Test
    void anOutlierIsNamedWithItsUsual() {
        Logbook harbour = HARBOUR;
        Batch batch = harbour.batch("H200").toBuilder()
                .conditions(new BatchConditions(
                        harbour.batch("H200").conditions().greenMass(),
                        harbour.batch("H200").conditions().greenMass().map(m -> Mass.kilograms(0.6 * m.kilograms())),
                        harbour.batch("H200").conditions().chargeTemperature(),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()))
                .build();
        LogbookContents c = harbour.contents();
        List<Batch> batches = c.batches().stream()
                .map(b -> b.name().equals("H200") ? batch : b)
                .toList();
        Logbook changed = Logbook.of(c.toBuilder().batches(batches).build());
        Usual usual = Usual.of(batch, changed.ofLot(batch.lot().orElseThrow()));
        assertEquals(Usual.Verdict.UNLIKE_THE_OTHERS, usual.verdict());
        assertTrue(usual.toString().contains("mass loss"), usual.text());
    }

    /** Short version of the table in docs/measurements/drift.md, where the rule of before called 19 in 100. */
    @Test
    void anOrdinaryBatchIsSeldomCalledUnlikeTheOthers() {
        int batches = 0;
        int unlike = 0;
        for (long seed = 1; seed <= 3; seed++) {
            for (Map.Entry<String, UsualStudy.Count> group :
                    UsualStudy.counted("harbour", seed).entrySet()) {
                if (group.getKey().startsWith("ordinary")) {
                    batches += group.getValue().batches();
                    unlike += group.getValue().byFeature();
                }
            }
        }
        assertTrue(batches > 150, batches + " batches");
        assertTrue(unlike <= 0.1 * batches, unlike + " of " + batches);
    }

    @Test
    void greenCoffeeForAnOrderFollowsTheMassLoss() {
        GreenNeeded needed = GreenNeeded.of("Cinder Ridge", Mass.kilograms(12), HARBOUR);
        assertTrue(needed.interval().contains(needed.kilograms()));
        assertTrue(needed.kilograms() > 13 && needed.kilograms() < 15, needed.toString());
        GreenNeeded twice = GreenNeeded.of("Cinder Ridge", Mass.kilograms(24), HARBOUR);
        assertEquals(2 * needed.kilograms(), twice.kilograms(), 1e-9);
    }

    @Test
    void sharesOfVarianceAddUpAndKeepWithinTheirIntervals() {
        VarianceShares shares = VarianceShares.of(Features.browningTime(), HARBOUR);
        assertEquals(
                1,
                shares.shares().stream()
                        .mapToDouble(VarianceShares.Share::share)
                        .sum(),
                1e-9);
        shares.shares().forEach(s -> assertTrue(s.interval().contains(s.share()), s.toString()));
        assertTrue(shares.toString().contains("lots"), shares.toString());
        VarianceShares few = VarianceShares.of(Features.greenMass(), masses(1, 2, 3));
        assertTrue(few.toString().startsWith("Cannot tell where green mass differs"), few.toString());
    }
}
