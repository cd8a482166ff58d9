package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.file.WholeFile;
import parchment.virtual.RoastPlan;
import parchment.virtual.Scenario;
import parchment.virtual.SealedTruth;
import parchment.virtual.VirtualClass;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Seed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes logbooks of invented roasteries, for one person or for a class. */
@Command(
        name = "roastery",
        description = {
            "Makes a logbook of an invented roastery whose truth is known, and lays the sealed truth beside it.",
            "Invented machine: do not roast. Scenarios: docs/virtual-roastery.md."
        },
        synopsisSubcommandLabel = "[COMMAND]",
        mixinStandardHelpOptions = true,
        subcommands = {
            RoasteryCommand.Scenarios.class,
            RoasteryCommand.Roast.class,
            RoasteryCommand.ForClass.class,
            RoasteryCommand.OpenTruth.class
        })
final class RoasteryCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private Year year;

    @Option(names = "--out", paramLabel = "DIR", description = "The folder for the logbook; new or empty.")
    private @Nullable Path out;

    /** Which roastery, and which of its possible years. */
    static final class Year {
        @Option(
                names = "--scenario",
                paramLabel = "FILE",
                defaultValue = "harbour",
                description =
                        "A scenario file, or the name of one that comes with the library; ${DEFAULT-VALUE} if none.")
        @SuppressWarnings("NullAway.Init")
        private String scenario;

        @Option(names = "--seed", paramLabel = "N", description = "A whole number; equal seeds make equal years.")
        private @Nullable String seed;

        @Option(names = "--batches", paramLabel = "N", description = "How many batches; as the scenario says if none.")
        private @Nullable Integer batches;

        Scenario chosen() throws IOException {
            Path file = Path.of(scenario);
            return !Scenario.builtIn().contains(scenario) && Files.exists(file) ? Scenario.read(file) : named(scenario);
        }

        private static Scenario named(String scenario) {
            if (scenario.contains(".") || scenario.contains("/")) {
                throw new IllegalArgumentException("There is no scenario file " + scenario + ".");
            }
            return Scenario.named(scenario);
        }

        VirtualRoastery roastery() throws IOException {
            VirtualRoastery roastery = VirtualRoastery.of(chosen());
            if (seed != null) {
                roastery = roastery.withSeed(Seed.parse(seed));
            }
            return batches == null ? roastery : roastery.withBatches(batches);
        }
    }

    @Override
    public Integer call() throws IOException {
        if (out == null) {
            throw new IllegalArgumentException("Name the folder for the logbook: --out DIR.");
        }
        OutputPlace.newFolder(out);
        checkTruth(beside(out));
        VirtualLogbook logbook = year.roastery().write(out);
        PrintWriter terminal = spec.commandLine().getOut();
        terminal.println("Wrote " + out + ": " + logbook);
        seal(logbook, beside(out), terminal);
        return 0;
    }

    /** Only an earlier truth is written over: one that the same command has left, perhaps of a folder that was taken away since. */
    private static void checkTruth(Path file) throws IOException {
        if (Files.exists(file)) {
            SealedTruth.open(file);
        }
    }

    /** Lays the truth where the person can find it, and says what its seal is worth. */
    private static void seal(VirtualLogbook logbook, Path file, PrintWriter terminal) throws IOException {
        SealedTruth truth = logbook.truth();
        WholeFile.at(file).write(truth.sealedText());
        terminal.println("Its truth is in " + file
                + (logbook.seed().isSecret()
                        ? ". Keep it until the envelope is opened."
                        : ", sealed against accident only: whoever has the file or the seed can open it."));
        terminal.println("Seal (SHA-256): " + truth.seal());
        terminal.flush();
    }

    private static Path beside(Path folder) {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return folder.toAbsolutePath().normalize().resolveSibling((name == null ? "logbook" : name) + "-truth.json");
    }

    /** Lists or prints the scenarios that come with the library. */
    @Command(
            name = "scenarios",
            description = "Lists the scenarios that come with the library, or prints one, to begin your own from.",
            mixinStandardHelpOptions = true)
    static final class Scenarios implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Parameters(arity = "0..1", paramLabel = "NAME", description = "The scenario to print.")
        private @Nullable String name;

        @Override
        public Integer call() {
            PrintWriter terminal = spec.commandLine().getOut();
            if (name == null) {
                Scenario.builtIn()
                        .forEach(each -> terminal.println(
                                each + ": " + Scenario.named(each).description()));
                terminal.println(VirtualLogbook.WARNING);
            } else {
                terminal.print(Scenario.named(name).text());
            }
            terminal.flush();
            return 0;
        }
    }

    /** Roasts and cups planned batches on the invented machine. */
    @Command(
            name = "roast",
            description = {
                "Roasts the batches of a plan on the invented machine, after the roastery's last batch, and cups them blind.",
                "For a student of a class name the teacher's folder and the student; otherwise scenario, seed and batches."
            },
            mixinStandardHelpOptions = true)
    static final class Roast implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Mixin
        @SuppressWarnings("NullAway.Init")
        private Year year;

        @Option(
                names = "--plan",
                required = true,
                paramLabel = "PLAN.csv",
                description =
                        "The plan: lot, drop temperature [°C] and, if wanted, charge temperature [°C], habit and more.")
        @SuppressWarnings("NullAway.Init")
        private Path plan;

        @Option(names = "--teacher", paramLabel = "DIR", description = "The teacher's folder of a class.")
        private @Nullable Path teacher;

        @Option(names = "--student", paramLabel = "NAME", description = "The student whose plan it is.")
        private @Nullable String student;

        @Option(
                names = "--out",
                required = true,
                paramLabel = "DIR",
                description = "The folder for the batches; new or empty.")
        @SuppressWarnings("NullAway.Init")
        private Path out;

        @Override
        public Integer call() throws IOException {
            if ((teacher == null) != (student == null)) {
                throw new IllegalArgumentException("For a class both are needed: --teacher DIR and --student NAME.");
            }
            OutputPlace.newFolder(out);
            RoastPlan read = RoastPlan.read(plan);
            VirtualRoastery roastery = teacher == null || student == null
                    ? year.roastery()
                    : VirtualClass.open(teacher).roastery(student);
            Path truth =
                    teacher == null ? beside(out) : teacher.resolve(beside(out).getFileName());
            checkTruth(truth);
            VirtualLogbook logbook = roastery.roast(read);
            if (teacher != null) { // Folders of one name in two places would share it.
                logbook.truth().checkPlace(truth);
            }
            logbook.writeTo(out);
            PrintWriter terminal = spec.commandLine().getOut();
            terminal.println("Wrote " + out + ": " + logbook);
            seal(logbook, truth, terminal);
            return 0;
        }
    }

    /** Makes a class. */
    @Command(
            name = "class",
            description = {
                "Makes a logbook with a secret seed for each student, and seals their truths.",
                "Hand out the folder 'students'. Keep the folder 'teacher', in which are the seeds and the sealed truths.",
                "Each logbook's README carries the seal of its truth."
            },
            mixinStandardHelpOptions = true)
    static final class ForClass implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Mixin
        @SuppressWarnings("NullAway.Init")
        private Year year;

        @Mixin
        @SuppressWarnings("NullAway.Init")
        private StudentNames students;

        @Option(
                names = "--out",
                required = true,
                paramLabel = "DIR",
                description = "The folder for the class; new or empty.")
        @SuppressWarnings("NullAway.Init")
        private Path out;

        @Override
        public Integer call() throws IOException {
            if (year.seed != null) {
                throw new IllegalArgumentException("A class draws a secret seed for each student; leave --seed out.");
            }
            OutputPlace.newFolder(out);
            Scenario scenario = year.chosen();
            int batches = year.batches == null ? VirtualRoastery.of(scenario).batches() : year.batches;
            VirtualClass made = VirtualClass.write(scenario, students.listed(), batches, out);
            PrintWriter terminal = spec.commandLine().getOut();
            terminal.println("Wrote " + out + ": " + made);
            terminal.println("Hand out: " + out.resolve("students"));
            terminal.println("Keep: " + out.resolve("teacher") + ". Whoever has it knows every truth.");
            if (!made.openInTheText().isEmpty()) {
                terminal.println("Not sealed, because the scenario's text says it: the true surface of "
                        + String.join(", ", made.openInTheText()) + ". 'surface = drawn' leaves it to the seed.");
            }
            terminal.flush();
            return 0;
        }
    }

    /** Opens an envelope. */
    @Command(
            name = "open-truth",
            description =
                    "Opens a sealed truth and prints it; with --seal only if the file is the one that was sealed.",
            mixinStandardHelpOptions = true)
    static final class OpenTruth implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Parameters(paramLabel = "FILE", description = "The sealed file.")
        @SuppressWarnings("NullAway.Init")
        private Path file;

        @Option(names = "--seal", paramLabel = "SHA-256", description = "The seal that was handed out.")
        private @Nullable String seal;

        @Override
        public Integer call() throws IOException {
            SealedTruth truth = seal == null ? SealedTruth.open(file) : SealedTruth.open(file, seal);
            PrintWriter terminal = spec.commandLine().getOut();
            if (seal != null) {
                terminal.println("The seal is whole.");
            }
            terminal.print(truth.text());
            terminal.flush();
            return 0;
        }
    }
}
