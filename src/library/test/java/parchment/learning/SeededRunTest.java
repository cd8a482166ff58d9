package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class SeededRunTest {
    @Test
    @Timeout(30)
    void whatWasStoppedAndGoesOnStillKeepsTheNextRunWaiting() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch released = new CountDownLatch(1);
        CompletableFuture<Throwable> said = new CompletableFuture<>();
        Thread first = new Thread(() -> said.complete(assertThrows(
                CancellationException.class,
                () -> SeededRun.of(1, () -> {
                    begun.countDown();
                    boolean waiting = true;
                    while (waiting) { // As the library's own work, which hears of no stop.
                        try {
                            released.await();
                            waiting = false;
                        } catch (InterruptedException goesOn) {
                            continue;
                        }
                    }
                    return 1;
                }))));
        first.start();
        begun.await();
        first.interrupt();
        said.get(10, TimeUnit.SECONDS);
        CompletableFuture<Integer> second = CompletableFuture.supplyAsync(() -> SeededRun.of(2, () -> 2));
        Thread.sleep(100);
        assertFalse(second.isDone(), "it ran beside the one that was stopped");
        released.countDown();
        assertEquals(2, second.get(10, TimeUnit.SECONDS));
    }
}
