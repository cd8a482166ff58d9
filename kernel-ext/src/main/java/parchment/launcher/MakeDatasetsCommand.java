package parchment.launcher;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.virtual.MakeDatasets;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Makes the demo logbooks anew. */
@Command(
        name = "make-datasets",
        description = "Makes the demo logbooks anew, bit for bit as they were delivered.",
        mixinStandardHelpOptions = true)
final class MakeDatasetsCommand implements Callable<Integer> {
    @Option(
            names = "--to",
            paramLabel = "DIR",
            description = "The folder to write them into; datasets if none is given.")
    private @Nullable Path to;

    @Override
    public Integer call() throws IOException {
        Path folder = to == null ? Places.here().home().resolve("datasets") : to;
        MakeDatasets.write(OutputPlace.outsideLogbooks(folder), System.out);
        return 0;
    }
}
