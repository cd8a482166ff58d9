package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import parchment.file.Rights;
import parchment.kernel.install.KernelSpec;
import parchment.virtual.classroom.ClassSecrets;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes the file that a roaster unpacks: the release with a Java of its own. */
@picocli.CommandLine.Command(
        name = "release",
        description = {
            "Makes the file for those who want no build: the release with a Java of its own, named by version and system, such as"
                    + " parchment-0.1.0-linux-amd64.zip, and its SHA-256 beside it.",
            "For the system it is made on, from a clone; the Java is cut out of the JDK that runs this. Tried on Linux only."
        },
        mixinStandardHelpOptions = true)
final class ReleaseCommand implements Callable<Integer> {
    /** The folders of a clone that go into a release whole, whatever was laid into them. */
    private static final List<String> WHOLE = List.of("notebooks", "datasets", "docs");

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--to",
            paramLabel = "DIR",
            description = "The folder for the file; the folder 'out' of the project if not given.")
    private @Nullable Path target;

    @Option(
            names = "--skip-build",
            description = "Takes the release that the last 'mvn verify' or this command built, as it is.")
    private boolean skipBuild;

    @Option(names = "--from-copy", hidden = true)
    private boolean fromCopy;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Places places = Places.here();
        check(places);
        Path folder = (target != null ? target : places.home().resolve("out"))
                .toAbsolutePath()
                .normalize();
        OutputPlace.outsideLogbooks(folder);
        if (!skipBuild && !fromCopy) {
            return FromCopy.run(places, List.of("release", "--from-copy", "--to", folder.toString()));
        }
        Rights.USUAL.makeFolder(folder);
        if (!skipBuild) {
            say("Building the release; this takes a minute or two ...");
            build(places);
        }
        pack(built(places), folder);
        return 0;
    }

    private static void check(Places places) throws IOException {
        if (!Files.exists(places.home().resolve("pom.xml"))) {
            throw new IllegalStateException("A release is made from the sources, and " + places.home()
                    + " holds none: run ./parchment release in a clone. To pack an unpacked release for machines without a"
                    + " network: ./parchment stick.");
        }
        for (String part : WHOLE) {
            ClassSecrets.refuseIn(places.home().resolve(part), "packed");
        }
    }

    private static void build(Places places) throws IOException, InterruptedException {
        List<Path> maven = Command.onPath("mvn");
        if (maven.isEmpty()) {
            throw new IllegalStateException("Making a release needs Apache Maven (the command mvn), which is not on the"
                    + " search path. Those who use the release need none.");
        }
        ProcessBuilder builder = new ProcessBuilder(
                        maven.get(0).toString(), "-q", "-B", "-DskipTests", "-Dspotless.check.skip=true", "verify")
                .directory(places.home().toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        if (Command.run(builder) != 0) {
            throw new IllegalStateException("The build failed; the lines above say why.");
        }
    }

    private static Path built(Places places) throws IOException {
        Path folder = places.home().resolve("kernel-ext").resolve("target");
        Optional<Path> newest = Optional.empty();
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.list(folder)) {
                newest = files.filter(file -> String.valueOf(file.getFileName()).matches("parchment-[0-9.]+\\.zip"))
                        .max(java.util.Comparator.comparing(
                                file -> file.toFile().lastModified()));
            }
        }
        return newest.orElseThrow(() -> new IllegalStateException("There is no parchment-VERSION.zip in " + folder
                + ". Without --skip-build this command builds it; so does 'mvn verify'."));
    }

    private void pack(Path plain, Path folder) throws IOException, InterruptedException {
        ReleaseZip release = new ReleaseZip(plain);
        Path work = Files.createTempDirectory("parchment-release");
        try {
            say("Cutting down the Java " + Runtime.version().feature() + " at " + System.getProperty("java.home")
                    + " ...");
            Path java = work.resolve(Places.JAVA);
            CarriedJava.make(java);
            say("Packing ...");
            Path file = release.with(java, folder.resolve(release.nameHere()));
            Path sum = ReleaseZip.writeSum(file);
            say(String.format(Locale.ROOT, "Release:  %s, %.0f MB", file, Files.size(file) / 1e6));
            say("SHA-256:  " + sum);
            say("It runs on " + ThisSystem.name()
                    + " without a JDK: unpack it and type ./parchment open in its folder.");
        } finally {
            KernelSpec.delete(work);
        }
    }

    private void say(String line) {
        PrintWriter terminal = spec.commandLine().getOut();
        terminal.println(line);
        terminal.flush();
    }
}
