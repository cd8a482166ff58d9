package parchment.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** A kernel whose own threads are gone ends, so that its client can start another. */
class LastResortTest {
    @Test
    void theProcessEndsOnlyWhenAThreadThatAnswersDiesForLackOfMemory() {
        AtomicInteger ended = new AtomicInteger();
        LastResort last = new LastResort(ended::incrementAndGet);
        for (String needed : List.of("iothread-2", "reaper-1", "shell", "control", "heartbeat")) {
            last.uncaughtException(new Thread(needed), new OutOfMemoryError());
        }
        assertEquals(5, ended.get());
        last.uncaughtException(new Thread("a cell's own"), new OutOfMemoryError("of a test"));
        last.uncaughtException(new Thread("shell"), new IllegalStateException("of a test"));
        assertEquals(5, ended.get());
    }
}
