package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.jars.Network;
import parchment.kernel.ControlC;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;
import parchment.logbook.contents.Cautions;
import parchment.notebook.Cell;
import parchment.notebook.CellOutput;
import parchment.notebook.HtmlPage;
import parchment.notebook.MarkdownPage;
import parchment.notebook.Notebook;
import parchment.notebook.NotebookRun;
import parchment.notebook.OurPage;
import parchment.notebook.RunNotebook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Runs notebooks on Java alone and writes each with its outputs, and as one HTML page. */
@Command(
        name = "run",
        description = {
            "Runs notebooks without Jupyter and writes, for each, the notebook with its outputs and one HTML page.",
            "Paths in a notebook count from its own folder, as in Jupyter.",
            "Ends with exit code 1 if a cell fails; what was done until then is written, but no Markdown page.",
            "Ctrl-C ends it with exit code 130. Nothing of the notebook whose cells are at work is written; one that is being written"
                    + " by then is written whole."
        },
        mixinStandardHelpOptions = true)
final class RunCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "NOTEBOOK", description = "Notebook files; the tour if none is given.")
    private List<Path> notebooks = List.of();

    @Option(
            names = "--logbook",
            paramLabel = "DIR",
            description = "The logbook folder to read; the demo logbook if not given.")
    private @Nullable Path logbook;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where to write; the folder 'out' of the project if not given.")
    private @Nullable Path out;

    @Option(
            names = "--markdown",
            paramLabel = "DIR",
            description =
                    "Writes each into that folder as a Markdown page too, with its pictures in files beside it: for sites that"
                            + " show Markdown and run no scripts.")
    private @Nullable Path markdown;

    @Option(
            names = "--fetch-jars",
            description =
                    "Lets cells fetch the libraries that they name and this machine lacks; without it, nothing is fetched.")
    private boolean fetchJars;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Places places = Places.here();
        LogbookChoice choice = LogbookChoice.of(logbook, places);
        choice.asProperty();
        Path folder = OutputPlace.named("--out", out, places.home().resolve("out"));
        try (MadeFolders folders = MadeFolders.begin()) {
            Path target = folders.folder(folder, choice);
            Optional<Path> pages = markdown == null
                    ? Optional.empty()
                    : Optional.of(folders.folder(
                            OutputPlace.named("--markdown", markdown, folder).normalize(), choice));
            return run(new Target(target, pages, folders), choice, places);
        }
    }

    /** Where the pages are written, the Markdown ones where they are asked for, and what was made for them. */
    private record Target(Path folder, Optional<Path> pages, MadeFolders made) {}

    private int run(Target target, LogbookChoice choice, Places places) throws IOException, InterruptedException {
        int worst = 0;
        List<Path> toRun = notebooks.isEmpty() ? List.of(places.tour()) : notebooks;
        checkNames(toRun);
        for (Path file : toRun) {
            int code;
            if (NotebooksFolder.isWorkingFolder(file)) {
                code = run(file, target);
            } else {
                check(file, target);
                code = NotebooksFolder.run(
                        file,
                        options(target, choice),
                        places,
                        spec.commandLine().getOut());
            }
            if (code > 1) {
                return code; // Ended from outside, as by Ctrl-C.
            }
            worst = Math.max(worst, code);
        }
        return worst;
    }

    private List<String> options(Target target, LogbookChoice choice) {
        List<String> options = new ArrayList<>(List.of("--out", target.folder().toString()));
        target.pages().ifPresent(folder -> options.addAll(List.of("--markdown", folder.toString())));
        if (fetchJars) {
            options.add("--fetch-jars");
        }
        if (choice.folder() != null) {
            options.addAll(List.of("--logbook", choice.folder().toString()));
        }
        return options;
    }

    /** Two notebooks of one name, from two folders, would be written over each other. */
    private static void checkNames(List<Path> files) {
        Map<String, Path> names = new HashMap<>();
        for (Path file : files) {
            Path other = names.put(nameOf(file), file);
            if (other != null) {
                throw new IllegalArgumentException("The notebooks " + other + " and " + file
                        + " have the same name, so one would take the place of the other. Run them one by one, each with its"
                        + " own --out.");
            }
        }
    }

    private static String nameOf(Path file) {
        return String.valueOf(file.getFileName()).replaceFirst("\\.ipynb$", "");
    }

    /** Returns the notebook, if what it becomes does not take its own place or somebody else's. */
    private static Notebook check(Path file, Target target) throws IOException {
        Notebook notebook = Notebook.read(file);
        Path executed = target.folder().resolve(nameOf(file) + ".ipynb");
        if (Files.exists(executed) && Files.isSameFile(executed, file)) {
            throw new IllegalArgumentException(
                    "The output would take the place of " + file + " itself. Name another folder with --out.");
        }
        RunNotebook.check(executed, notebook);
        OurPage.check(target.folder().resolve(nameOf(file) + ".html"));
        if (target.pages().isPresent()) {
            MarkdownPage.check(file, target.pages().get());
        }
        return notebook;
    }

    private int run(Path file, Target target) throws IOException {
        PrintWriter terminal = spec.commandLine().getOut();
        Notebook notebook = check(file, target);
        terminal.println("Running " + file);
        terminal.flush();
        RunStop stop = new RunStop();
        NotebookRun.Result result;
        List<String> foot;
        // The first Ctrl-C stops the cell; the second ends the program as usual. What is being written by then becomes
        // whole.
        try (ControlC.Taken taken = ControlC.first(stop)) {
            try (Evaluator evaluator = Evaluator.open(fetchJars ? Network.WHEN_ASKED : Network.NEVER)) {
                stop.of(evaluator);
                result = NotebookRun.of(notebook, evaluator).run(new OnTerminal(terminal), stop::isAsked);
                foot = new ArrayList<>(evaluator.questionsAsked());
            }
            if (stop.mayWrite()) {
                target.made().write(() -> write(file, target, result, foot));
            }
        }
        stop.words(file).ifPresent(terminal::println);
        terminal.flush();
        return stop.isAsked() ? RunStop.EXIT_CODE : result.error().isEmpty() ? 0 : 1;
    }

    private void write(Path file, Target target, NotebookRun.Result result, List<String> foot) throws IOException {
        PrintWriter terminal = spec.commandLine().getOut();
        String name = nameOf(file);
        Path executed = target.folder().resolve(name + ".ipynb");
        Path page = target.folder().resolve(name + ".html");
        Cautions.forAPage().stream()
                .filter(caution -> !shows(result.notebook(), caution))
                .forEach(foot::add);
        RunNotebook.write(result.notebook(), executed);
        OurPage.write(page, HtmlPage.of(result.notebook(), name, foot));
        result.error()
                .ifPresent(
                        error -> terminal.println("Cell " + result.failedCell().orElseThrow() + " of " + file
                                + " failed:\n" + error.text().indent(2).stripTrailing()));
        terminal.println("Page:      " + page);
        terminal.println("Notebook:  " + executed);
        if (target.pages().isPresent() && result.error().isPresent()) {
            terminal.println("Markdown:  not written, because a cell failed: it is for pages that are published.");
        } else if (target.pages().isPresent()) {
            terminal.println("Markdown:  "
                    + MarkdownPage.of(result.notebook(), file, target.pages().get())
                            .write());
        }
        terminal.flush();
    }

    private static boolean shows(Notebook notebook, String sentence) {
        return notebook.cells().stream()
                .flatMap(cell -> cell.outputs().stream())
                .anyMatch(output -> output instanceof CellOutput.Result result
                                && result.shown().text().contains(sentence)
                        || output instanceof CellOutput.Display display
                                && display.shown().text().contains(sentence));
    }

    /** One line per cell: its number, its first line, how long it took. */
    private record OnTerminal(PrintWriter terminal) implements NotebookRun.Progress {
        private static final int WIDTH = 58;

        @Override
        public void cellBegins(int number, int of, Cell cell) {
            String line = cell.source().strip().lines().findFirst().orElse("");
            String shown = line.length() > WIDTH ? line.substring(0, WIDTH - 3) + "..." : line;
            terminal.print(String.format(Locale.ROOT, "  %2d of %d  %-" + WIDTH + "s ", number, of, shown));
            terminal.flush();
        }

        @Override
        public void cellEnded(int number, int of, Duration took, Outcome outcome) {
            terminal.println(String.format(
                    Locale.ROOT, "%6.1f s%s", took.toMillis() / 1000.0, outcome.fine() ? "" : "  failed"));
            terminal.flush();
        }
    }
}
