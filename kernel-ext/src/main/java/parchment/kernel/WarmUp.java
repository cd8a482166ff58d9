package parchment.kernel;

import java.util.concurrent.CompletableFuture;
import parchment.chart.Axis;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.jars.Network;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Shown;

/** Does, while the client still greets the kernel, what the first cell would otherwise wait for. */
final class WarmUp {
    private WarmUp() {}

    /** Makes the evaluator ready on a thread of its own, and completes the future. */
    static void start(CompletableFuture<Evaluator> ready) {
        daemon("evaluator", () -> {
            try {
                Evaluator evaluator = Evaluator.open(Network.WHEN_ASKED);
                ready.complete(evaluator);
                evaluator.warmUp();
            } catch (RuntimeException | Error e) {
                ready.completeExceptionally(e);
                throw e;
            }
        });
    }

    /** Makes ready what a first chart needs, once the client has been answered: until then there is other work for every processor. */
    static void pictures() {
        daemon("pictures", WarmUp::draw);
    }

    /** Draws what nobody sees, so that the first picture that somebody waits for finds its classes loaded. */
    private static void draw() {
        double[] line = {0, 1, 2};
        Shown.of(Plot.of("Warming up", Axis.clock("time"), Axis.number("number", "units"))
                .with(Line.of("line", line, line)));
    }

    private static void daemon(String name, Runnable work) {
        Thread thread = new Thread(null, work, name, 4L << 20);
        thread.setDaemon(true);
        thread.start();
    }
}
