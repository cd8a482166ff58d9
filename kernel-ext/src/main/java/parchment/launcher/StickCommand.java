package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import parchment.file.WholeFile;
import parchment.kernel.install.KernelSpec;
import parchment.virtual.classroom.ClassSecrets;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Packs the program with a Java and a Jupyter of its own, for machines without a network. */
@picocli.CommandLine.Command(
        name = "stick",
        description = {
            "Packs this release with the Java and the Jupyter that it needs into one file for a memory stick, for machines of"
                    + " the same system without a network and without administrator rights.",
            "Needs a network itself, to fetch Jupyter. How a class starts from a stick: docs/class.md."
        },
        mixinStandardHelpOptions = true)
final class StickCommand implements Callable<Integer> {
    /**
     * What goes in: the parts of a release, and nothing that was laid beside them since. What was laid into one of the folders that go in
     * whole goes along, because nothing tells it from what the release brought there.
     */
    private static final List<Pattern> GOES_IN = Stream.of(
                    "parchment(\\.cmd|-kernel\\.jar)?",
                    "(README|CHANGES|DEVELOPERS|THIRD-PARTY)\\.md|LICENSE",
                    "lib/[^/]+\\.jar",
                    "(licences|docs|classes)/.+",
                    "sources/(pom\\.xml|DEVELOPERS\\.md|LICENSE|parchment(\\.cmd)?|(src|kernel-ext)/.+)",
                    "datasets/(README\\.md|(harbour|hillside)(/.+|-truth\\.json))",
                    "notebooks/(README\\.md|(lessons/)?[^/]+\\.ipynb)")
            .map(Pattern::compile)
            .toList();

    /** What holds the answers to the lessons. */
    private static final Pattern ANSWERS =
            Pattern.compile("notebooks/lessons/(teacher/[^/]+\\.ipynb|source/[^/]+\\.txt)");

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--to",
            required = true,
            paramLabel = "DIR",
            description = "The folder for the file, such as the stick.")
    @SuppressWarnings("NullAway.Init")
    private Path target;

    @Option(names = "--without-jupyter", description = "Leaves Jupyter out, for machines that have one already.")
    private boolean withoutJupyter;

    @Option(
            names = "--with-answers",
            description = "Takes the teacher's editions of the lessons along; they stay behind otherwise.")
    private boolean withAnswers;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Places places = Places.here();
        check(places);
        PrintWriter terminal = spec.commandLine().getOut();
        String name = places.home().getFileName() + "-" + ThisSystem.name();
        Path work = Files.createTempDirectory("parchment-stick");
        try {
            Path folder = work.resolve(name);
            say(terminal, "Copying the release ...");
            FolderCopy.only(places.home(), folder, this::goesIn);
            say(
                    terminal,
                    "Taking the Java " + Runtime.version().feature() + " at " + System.getProperty("java.home")
                            + " along ...");
            CarriedJava.along(places, folder.resolve(Places.JAVA));
            if (!withoutJupyter) {
                new CarriedPython(folder.resolve(Places.PYTHON)).make(terminal);
            }
            Path file = target.toAbsolutePath().normalize().resolve(name + ".tar.gz");
            say(terminal, "Packing ...");
            pack(work, name, file);
            terminal.println("Done: " + file + ", " + megabytes(file) + " MB.");
            terminal.println();
            terminal.println("On each machine (" + ThisSystem.name() + "), in a terminal, with the stick in it:");
            terminal.println("  cd");
            terminal.println("  tar -xzf \"" + file + "\"");
            terminal.println("  " + name + "/parchment open");
            terminal.println("The file's own place on that machine may be another: drag it into the terminal.");
            terminal.flush();
            return 0;
        } finally {
            KernelSpec.delete(work);
        }
    }

    private boolean goesIn(String place) {
        return goesIn(place, withAnswers ? Answers.PACKED : Answers.LEFT_BEHIND);
    }

    /** Says whether the answers to the lessons go in. */
    enum Answers {
        PACKED,
        LEFT_BEHIND
    }

    /** Tells whether a file goes in, by its place in the release, written with slashes. */
    static boolean goesIn(String place, Answers answers) {
        return GOES_IN.stream().anyMatch(part -> part.matcher(place).matches())
                || answers == Answers.PACKED && ANSWERS.matcher(place).matches();
    }

    private void check(Places places) throws IOException {
        if (!System.getProperty("os.name").equals("Linux")) {
            throw new IllegalStateException("A stick is packed for Linux only so far, on Linux."
                    + " docs/class.md says how to make a folder by hand for other systems.");
        }
        if (!Files.isRegularFile(places.home().resolve("parchment-kernel.jar"))) {
            throw new IllegalStateException("A stick is packed from a release, and " + places.home()
                    + " is none. 'mvn verify' makes the release as kernel-ext/target/parchment-VERSION.zip:"
                    + " unpack it elsewhere and run its ./parchment stick.");
        }
        if (!Files.isDirectory(target)) {
            throw new IllegalArgumentException(
                    "There is no folder " + target.toAbsolutePath() + " to put the file into.");
        }
        OutputPlace.outsideLogbooks(target);
        ClassSecrets.refuseIn(places.home(), "packed");
    }

    /** A stick's own file system often knows neither links nor the right to run a file; inside an archive both survive. */
    private static void pack(Path work, String name, Path file) throws IOException {
        WholeFile.at(file).make(aside -> {
            Command.Told told;
            try {
                told = Command.tell(
                        new ProcessBuilder("tar", "-czf", aside.toString(), "-C", work.toString(), name), line -> {});
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IOException("Packing was stopped before it was done.", e);
            }
            if (told.exitCode() != 0) {
                throw new IOException("the program tar stopped with \"" + String.join(" ", told.lines()) + "\"");
            }
        });
    }

    private static String megabytes(Path file) throws IOException {
        return String.format(Locale.ROOT, "%.0f", Files.size(file) / 1e6);
    }

    private static void say(PrintWriter terminal, String line) {
        terminal.println(line);
        terminal.flush();
    }
}
