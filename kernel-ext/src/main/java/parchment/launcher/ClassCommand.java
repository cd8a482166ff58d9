package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.lesson.ClassResults;
import parchment.lesson.Classroom;
import parchment.lesson.HandedInPlans;
import parchment.lesson.RoastedPlan;
import parchment.lesson.sheet.HandedInPlan;
import parchment.notebook.OurPage;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.classroom.ClassSecrets;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Runs a class with the lessons from the terminal: seeds, folders to hand out, answers, plans. */
@Command(
        name = "class",
        description = {
            "Runs a class with the lessons: draws secret seeds, makes the folders to hand out, marks what comes back, roasts plans.",
            "Invented machine: do not roast. How a class goes: docs/class.md."
        },
        synopsisSubcommandLabel = "COMMAND",
        mixinStandardHelpOptions = true,
        subcommands = {
            ClassCommand.Prepare.class,
            ClassCommand.HandOut.class,
            ClassCommand.Collect.class,
            ClassCommand.RoastPlans.class
        })
final class ClassCommand implements Callable<Integer> {
    private static final String LESSON_ZERO = "0-start-here.ipynb";

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Override
    public Integer call() {
        throw new ParameterException(spec.commandLine(), "Say what to do: prepare, hand-out, collect or roast-plans.");
    }

    private static Path existing(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new IllegalArgumentException("There is no folder " + folder + ".");
        }
        return folder;
    }

    /** Where the secret seeds are. */
    static final class TeachersFolder {
        @Option(
                names = "--teacher",
                required = true,
                paramLabel = "DIR",
                description = "The teacher's folder, with the secret seeds. Never hand it out.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;
    }

    /** Draws the seeds. */
    @Command(
            name = "prepare",
            description = "Draws a secret seed for each student and writes them into the teacher's folder.",
            mixinStandardHelpOptions = true)
    static final class Prepare implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Mixin
        @SuppressWarnings("NullAway.Init")
        private TeachersFolder teacher;

        @Mixin
        @SuppressWarnings("NullAway.Init")
        private StudentNames students;

        @Override
        public Integer call() throws IOException {
            Classroom classroom = Classroom.prepare(students.listed(), OutputPlace.outsideLogbooks(teacher.folder));
            PrintWriter terminal = spec.commandLine().getOut();
            terminal.println("Prepared " + teacher.folder + ": " + classroom + ".");
            terminal.println("Whoever has this folder knows every truth: keep it, and keep a copy.");
            terminal.println("Next: parchment class hand-out 1 --teacher " + teacher.folder + " --to STUDENTS");
            terminal.flush();
            return 0;
        }
    }

    /** Makes the students' folders of one lesson or of all. */
    @Command(
            name = "hand-out",
            description =
                    "Makes each student's folder of a lesson: a logbook of their own, and the notebook that opens it.",
            mixinStandardHelpOptions = true)
    static final class HandOut implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Mixin
        @SuppressWarnings("NullAway.Init")
        private TeachersFolder teacher;

        @Parameters(paramLabel = "LESSON", description = "The lesson's number, or 'all'.")
        @SuppressWarnings("NullAway.Init")
        private String lesson;

        @Option(names = "--to", required = true, paramLabel = "DIR", description = "Where the folders are made.")
        @SuppressWarnings("NullAway.Init")
        private Path out;

        @Override
        public Integer call() throws IOException {
            Classroom classroom = Classroom.open(teacher.folder);
            List<Integer> chosen = lessons();
            ClassSecrets.refuseIn(out, "handed out");
            Path notebooks = Places.here().notebooks().resolve("lessons");
            PrintWriter terminal = spec.commandLine().getOut();
            OutputPlace.outsideLogbooks(out);
            for (int each : chosen) {
                long before = classroom.handedOut(each, out);
                classroom.handOut(each, notebooks, out);
                terminal.println(
                        "Lesson " + each + ": folders for a " + classroom + " in " + out + ", seals in seals-lesson-"
                                + each + ".csv."
                                + (before == 0 ? "" : " There already, and left as they are: " + before + "."));
                terminal.flush();
            }
            if (lesson.equals("all")) {
                classroom.handOutStart(notebooks.resolve(LESSON_ZERO), out);
                terminal.println("Lesson 0 is in each folder too; it is the same for everybody.");
            }
            terminal.println("Give out the folders and the seals. The truths stay in " + teacher.folder + ".");
            terminal.flush();
            return 0;
        }

        private List<Integer> lessons() {
            List<Integer> all = Classroom.lessons();
            if (lesson.equals("all")) {
                return all;
            }
            return all.stream()
                    .filter(each -> lesson.equals(each.toString()))
                    .findFirst()
                    .map(List::of)
                    .orElseThrow(() -> new IllegalArgumentException("A lesson to hand out has a number from 1 to "
                            + all.size() + ", or is 'all'; found '" + lesson + "'."));
        }
    }

    /** Marks what came back. */
    @Command(
            name = "collect",
            description = "Marks every sheet of answers in a folder and shows who found what.",
            mixinStandardHelpOptions = true)
    static final class Collect implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Parameters(
                paramLabel = "DIR",
                description = "The folder with what was handed in; folders inside it are searched.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;

        @Option(
                names = "--teacher",
                paramLabel = "DIR",
                description = "The teacher's folder; leave it out if the students chose numbers of their own.")
        private @Nullable Path teacher;

        @Option(names = "--page", paramLabel = "FILE", description = "Writes the result as a page too.")
        private @Nullable Path page;

        @Option(
                names = "--envelopes",
                paramLabel = "DIR",
                description = "Writes each student's opened envelopes as pages, a folder for each, to be given back.")
        private @Nullable Path envelopes;

        @Override
        public Integer call() throws IOException {
            if (envelopes != null) {
                ClassSecrets.refuseIn(envelopes, "given back");
            }
            ClassResults results = teacher == null
                    ? ClassResults.read(existing(folder))
                    : Classroom.open(teacher).collect(existing(folder));
            PrintWriter terminal = spec.commandLine().getOut();
            terminal.println(results.text());
            if (page != null) {
                OurPage.write(OutputPlace.outsideLogbooks(page), PrintedPage.of("Who found what", results));
                terminal.println("Page:      " + page.toAbsolutePath());
            }
            if (envelopes != null) {
                EnvelopePages.write(results.envelopes(), envelopes);
                terminal.println(
                        results.envelopes().isEmpty()
                                ? "Envelopes: none, for no student has a sheet that could be marked."
                                : "Envelopes: " + envelopes.toAbsolutePath());
            }
            terminal.flush();
            return 0;
        }
    }

    /** Roasts what the students planned in the last lesson. */
    @Command(
            name = "roast-plans",
            description = {
                "Roasts and cups every plan-STUDENT.csv of a folder on the invented machine, a folder for each student to be given back.",
                "A plan that cannot be roasted is named, and the others go on."
            },
            mixinStandardHelpOptions = true)
    static final class RoastPlans implements Callable<Integer> {
        @Spec
        @SuppressWarnings("NullAway.Init")
        private CommandSpec spec;

        @Mixin
        @SuppressWarnings("NullAway.Init")
        private TeachersFolder teacher;

        @Parameters(paramLabel = "DIR", description = "The folder with the plans; folders inside it are searched.")
        @SuppressWarnings("NullAway.Init")
        private Path folder;

        @Option(names = "--to", required = true, paramLabel = "DIR", description = "Where the folders are made.")
        @SuppressWarnings("NullAway.Init")
        private Path out;

        @Override
        public Integer call() throws IOException {
            HandedInPlans handedIn = HandedInPlans.in(existing(folder));
            List<HandedInPlan> plans = handedIn.plans();
            if (plans.isEmpty() && handedIn.refused().isEmpty()) {
                throw new IllegalArgumentException(
                        "The folder " + folder
                                + " has no plan: expected files such as plan-student-01.csv, as lesson.handInPlan(...) writes them.");
            }
            OutputPlace.outsideLogbooks(out);
            Classroom classroom = Classroom.open(teacher.folder);
            ClassSecrets.refuseIn(out, "given back");
            PrintWriter terminal = spec.commandLine().getOut();
            int left = 0;
            int there = 0;
            for (HandedInPlan plan : plans) {
                try {
                    String student = classroom.known(plan.student());
                    RoastedPlan roasted = classroom.roastedPlan(student, plan.file(), out.resolve(student));
                    there += roasted.before() == RoastedPlan.Before.WHOLE ? 1 : 0;
                    terminal.println(roasted);
                } catch (IOException | RuntimeException e) { // Whatever is wrong with a plan, the others go on.
                    left++;
                    terminal.println("Not roasted: " + why(plan.file(), e));
                }
                terminal.flush();
            }
            handedIn.refused().forEach(each -> terminal.println("Not looked into: " + each));
            List<String> without = handedIn.without(classroom.students()).stream()
                    .filter(student -> Files.notExists(out.resolve(student))) // Of an earlier time.
                    .toList();
            if (!without.isEmpty()) {
                terminal.println("No plan handed in: " + String.join(", ", without) + ".");
            }
            terminal.println("Plans roasted: " + (plans.size() - left - there) + " of " + plans.size() + ". "
                    + (there == 0 ? "" : "There already, and left as they are: " + there + ". ")
                    + VirtualLogbook.WARNING);
            terminal.flush();
            return left == 0 && handedIn.refused().isEmpty() ? 0 : 1;
        }

        /** Says what is wrong with a plan, its file named once. */
        private static String why(Path file, Exception e) {
            String name = harmless(String.valueOf(file.getFileName()));
            String words = harmless(Words.of(e));
            String whole = harmless(file.toString());
            String said = words.startsWith(whole) ? name + words.substring(whole.length()) : words;
            return said.startsWith(name) ? said : name + ": " + said;
        }

        /** A cell or a name may steer a terminal. */
        private static String harmless(String text) {
            return text.replaceAll("[\\p{Cntrl}&&[^\n]]", "?");
        }
    }
}
