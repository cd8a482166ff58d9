package parchment.kernel;

import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.protocol.Connection;

/** Starts the kernel that a Jupyter client asks for. */
public final class KernelMain {
    private KernelMain() {}

    /** Takes the connection file's path, as Jupyter gives it. */
    public static void main(String[] arguments) {
        if (arguments.length != 1) {
            System.err.println("The kernel is started by Jupyter, with the path of a connection file.");
            System.exit(2);
        }
        try {
            serve(Path.of(arguments[0]));
        } catch (Exception e) {
            System.err.println(e.getMessage());
            System.exit(2);
        }
    }

    private static void serve(Path connectionFile) throws Exception {
        LastResort.standBy(); // Before there are threads, which take it over as they are made.
        CompletableFuture<Evaluator> evaluator = new CompletableFuture<>();
        Connection connection = Connection.bind(
                connectionFile); // First: a client that finds nobody tries again after a tenth of a second.
        WarmUp.start(evaluator);
        CompletableFuture<Void> ended = new CompletableFuture<>();
        Runnable end = () -> ended.complete(null);
        Kernel kernel = new Kernel(connection, evaluator, end);
        ControlC.every(kernel::interrupt);
        ParentWatch.start(end);
        kernel.start();
        WarmUp.pictures();
        ended.join();
        connection.close();
        Thread.sleep(50); // The last messages leave on a thread of their own.
        System.exit(0);
    }
}
