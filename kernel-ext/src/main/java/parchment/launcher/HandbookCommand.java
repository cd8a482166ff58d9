package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.handbook.Handbook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes the handbook and opens it. */
@Command(
        name = "handbook",
        description = {
            "Makes the handbook a folder of pages that need no network, and opens its contents in your browser.",
            "The pages can be copied anywhere, and printed."
        },
        mixinStandardHelpOptions = true)
final class HandbookCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--to",
            paramLabel = "DIR",
            description = "Where to write; the folder 'out/handbook' of the project if not given.")
    private @Nullable Path to;

    @Option(names = "--no-browser", description = "Writes the pages and says where, without opening a browser.")
    private boolean noBrowser;

    @Override
    public Integer call() throws IOException {
        Places places = Places.here();
        Path folder = to != null
                ? to.toAbsolutePath().normalize()
                : places.home().resolve("out").resolve("handbook");
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new IllegalArgumentException(
                    "The handbook is a folder of pages, but " + folder + " is a file. Name another with --to.");
        }
        OutputPlace.outsideLogbooks(folder);
        Handbook handbook = Handbook.of(places.home());
        Path contents = handbook.writeTo(folder);
        PrintWriter terminal = spec.commandLine().getOut();
        terminal.println(handbook + ".");
        terminal.println("Contents:  " + contents);
        places.classPages().ifPresent(classes -> terminal.println("Classes:   " + classes));
        if (!noBrowser && !Browser.open(contents)) {
            terminal.println("No browser could be opened from here; open that file in one.");
        }
        terminal.flush();
        return 0;
    }
}
