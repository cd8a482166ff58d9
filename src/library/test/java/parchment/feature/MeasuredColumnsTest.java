package parchment.feature;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.feature.path.Measured;
import parchment.logbook.Logbook;
import parchment.quantity.Unit;

@Tag("holds-for-any")
class MeasuredColumnsTest {
    private static Logbook hillside() {
        return Logbook.open(Path.of("..", "datasets", "hillside"));
    }

    @Test
    void measuresAFeatureOncePerBatchOfALogbook() {
        AtomicInteger asked = new AtomicInteger();
        Feature counting = Feature.of("counted", Unit.COUNT, "counts how often it is asked for", path -> {
            asked.incrementAndGet();
            return Measured.exact(1);
        });
        Logbook logbook = hillside();
        BatchTable first = BatchTable.of(logbook, counting);
        BatchTable second = BatchTable.of(logbook, Features.dropTemperature(), counting);
        assertEquals(logbook.batches().size(), asked.get());
        assertArrayEquals(first.values(counting), second.values(counting));
        assertSame(first.paths().get(0), second.paths().get(0));
    }

    @Test
    void aFilteredLogbookIsMeasuredAnew() {
        Logbook logbook = hillside();
        Logbook earlier = logbook.only(
                batch -> !batch.name().equals(logbook.lastWithCurve().name()));
        BatchTable all = BatchTable.of(logbook, Features.batchOfTheDay());
        BatchTable some = BatchTable.of(earlier, Features.batchOfTheDay());
        assertNotSame(all.paths().get(0), some.paths().get(0));
        assertEquals(all.size() - 1, some.size());
    }

    @Test
    void aFeatureMayAskForATableOfTheSameLogbook() {
        Logbook logbook = hillside();
        Feature nested = Feature.of(
                "nested",
                Unit.COUNT,
                "asks for another table",
                path -> Measured.exact(
                        BatchTable.of(logbook, Features.dropTemperature()).size()));
        assertEquals(logbook.batches().size(), BatchTable.of(logbook, nested).values(nested)[0]);
    }
}
