package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Problem;

class OpenedLogbookTest {
    @Test
    void memoryHoldsWhatTheFilesHold(@TempDir Path folder) throws IOException {
        for (VirtualLogbook made : List.of(
                VirtualRoastery.harbour().withSeed(4).withBatches(60).run(),
                VirtualRoastery.hillside().withSeed(4).withBatches(12).run())) {
            Path target = folder.resolve(made.name());
            made.writeTo(target);
            Logbook read = Logbook.open(target);
            Logbook opened = made.opened();
            assertEquals(read.name(), opened.name());
            assertEquals(read.readerUnit(), opened.readerUnit());
            assertEquals(Logbook.Provenance.INVENTED, read.provenance());
            assertEquals(Logbook.Provenance.INVENTED, opened.provenance());
            assertEquals(read.attributes(), opened.attributes());
            assertEquals(read.cups(), opened.cups());
            for (int i = 0; i < read.lots().size(); i++) {
                Lot one = read.lots().get(i);
                Lot other = opened.lots().get(i);
                assertEquals(one.name(), other.name());
                assertEquals(one.arrivedOn(), other.arrivedOn());
                assertEquals(one.moisture().orElseThrow(), other.moisture().orElseThrow(), 1e-9);
                assertEquals(one.density().orElseThrow(), other.density().orElseThrow(), 1e-9);
            }
            for (CupScores cup : read.cups()) {
                assertEquals(
                        read.cupping(cup.cupping()).map(Cupping::blind),
                        opened.cupping(cup.cupping()).map(Cupping::blind));
            }
            assertEquals(read.upkeep(), opened.upkeep());
            assertEquals(read.batches().size(), opened.batches().size());
            for (Batch batch : opened.batches()) {
                same(read.batch(batch.name()), batch);
            }
        }
    }

    private static void same(Batch read, Batch opened) {
        assertEquals(read.roastedAt(), opened.roastedAt(), read.name());
        assertEquals(read.lot(), opened.lot(), read.name());
        assertEquals(read.machine(), opened.machine(), read.name());
        assertEquals(read.operator(), opened.operator(), read.name());
        assertEquals(read.conditions(), opened.conditions(), read.name());
        assertEquals(read.plan(), opened.plan(), read.name());
        for (Batch.Label label : Batch.Label.values()) {
            assertEquals(read.label(label), opened.label(label), read.name());
        }
        for (MarkKind kind : MarkKind.values()) {
            assertEquals(read.writtenMark(kind), opened.writtenMark(kind), read.name() + ", " + kind);
        }
        for (Quantity quantity : Quantity.values()) {
            assertEquals(
                    read.curve(quantity).isPresent(), opened.curve(quantity).isPresent(), read.name());
            read.curve(quantity)
                    .ifPresent(curve -> same(curve, opened.curve(quantity).orElseThrow()));
        }
    }

    private static void same(Curve read, Curve opened) {
        assertEquals(read.name(), opened.name());
        assertEquals(read.unit(), opened.unit());
        assertArrayEquals(read.seconds(), opened.seconds(), 1e-9);
        assertArrayEquals(read.values(), opened.values(), 1e-9);
    }

    @Test
    void theCommittedLogbooksOpenWithNoProblemButBrokenReadings() {
        Path datasets = Path.of(java.nio.file.Files.isDirectory(Path.of("datasets")) ? "datasets" : "../datasets");
        for (String name : MakeDatasets.all().keySet()) {
            Logbook logbook = Logbook.open(datasets.resolve(name));
            assertEquals(
                    MakeDatasets.all().get(name).run().batches().size(),
                    logbook.batches().size());
            for (Problem problem : logbook.problems()) {
                assertTrue(problem.found().contains("999.9"), problem.toString());
            }
        }
    }
}
