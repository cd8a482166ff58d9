package parchment.kernel;

import java.util.List;
import java.util.concurrent.CompletableFuture;

/** Does, while the client still greets the kernel, what the first cell would otherwise wait for. */
final class WarmUp {
    /** Classes that the first picture needs; a name that is not there is passed over. */
    private static final List<String> FOR_PICTURES = List.of("parchment.chart.Chart", "parchment.logbook.Logbook");

    private WarmUp() {}

    /** Makes the evaluator ready on a thread of its own, and completes the future. */
    static void start(CompletableFuture<Evaluator> ready) {
        daemon("evaluator", () -> {
            try {
                ready.complete(Evaluator.open());
            } catch (RuntimeException | Error e) {
                ready.completeExceptionally(e);
                throw e;
            }
        });
        daemon("pictures", () -> FOR_PICTURES.forEach(WarmUp::load));
    }

    private static void load(String name) {
        try {
            Class.forName(name);
        } catch (ClassNotFoundException | LinkageError e) {
            return; // Then nothing needs it.
        }
    }

    private static void daemon(String name, Runnable work) {
        Thread thread = new Thread(null, work, name, 4L << 20);
        thread.setDaemon(true);
        thread.start();
    }
}
