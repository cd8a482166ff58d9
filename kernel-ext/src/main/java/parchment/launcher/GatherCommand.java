package parchment.launcher;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.gather.Gather;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes a logbook of a strange folder. */
@Command(
        name = "gather",
        description = {
            "Looks at a folder as it is (recordings of any logger, lists of batches, score sheets), shows what it takes each to be and"
                    + " which recording is which row, asks what is open, and writes a new logbook elsewhere.",
            "Given a logbook that it made of the same folder before, it adds what is new and asks nothing again.",
            "Nothing in the old folder is changed."
        },
        mixinStandardHelpOptions = true)
final class GatherCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(paramLabel = "FOLDER", description = "The folder with the files.")
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Option(
            names = "--to",
            paramLabel = "NEW",
            description = "The folder for the new logbook, or the logbook that was made of the same folder before.")
    private @Nullable Path to;

    @Option(
            names = "--answers",
            paramLabel = "FILE",
            description = "Answers from a file, such as an earlier run has left.")
    private @Nullable Path answers;

    @Option(names = "--look", description = "Only shows what would be asked and proposed; writes nothing.")
    private boolean look;

    @Override
    public Integer call() {
        PrintWriter terminal = spec.commandLine().getOut();
        try {
            if (look) {
                return Gather.look(folder, Optional.ofNullable(answers), terminal);
            }
            if (to == null) {
                throw new IllegalArgumentException("Name the folder for the new logbook: --to \"My Roasts\"."
                        + " To see first what would be asked: --look.");
            }
            OutputPlace.newFolder(to);
            return Gather.run(folder, to, Optional.ofNullable(answers), new Terminal(terminal), terminal);
        } finally {
            terminal.flush();
        }
    }

    /** The person at the terminal; nobody once the input has ended. */
    private static final class Terminal implements Gather.Console {
        private final PrintWriter terminal;
        private final BufferedReader typed;

        Terminal(PrintWriter terminal) {
            this.terminal = terminal;
            this.typed = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
        }

        @Override
        public Optional<String> ask(String question) {
            terminal.print(question + " ");
            terminal.flush();
            try {
                Optional<String> answer = Optional.ofNullable(typed.readLine());
                if (System.console() == null) {
                    // Nobody typed the line end that would part the question from what follows.
                    terminal.println(answer.orElse("(no answer)"));
                    terminal.flush();
                }
                return answer;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
