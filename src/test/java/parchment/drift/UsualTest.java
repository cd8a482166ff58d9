package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
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

class UsualTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

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
}
