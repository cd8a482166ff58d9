package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A short version of {@link PathBatchesStudy}: the batches that would tell are added to the logbook that asked for them, and tell. */
@Tag("holds-for-any")
class PathBatchesTest {
    @Test
    void theNamedBatchesTellWhatTheyPromise() {
        PathBatchesStudy.Count count = PathBatchesStudy.count(1, 1, 1);
        assertEquals(1, count.named(), count.toString());
        assertTrue(count.finish() == 1, count.toString());
        assertTrue(count.added() == 1, count.toString());
    }
}
