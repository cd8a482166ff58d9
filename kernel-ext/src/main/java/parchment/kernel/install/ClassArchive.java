package parchment.kernel.install;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * An archive of loaded classes (class data sharing; from Java 25 the ahead-of-time cache), made by a rehearsal of what a session
 * begins with.
 *
 * @see <a href="https://openjdk.org/jeps/350">JEP 350: Dynamic CDS archives</a>
 * @see <a href="https://openjdk.org/jeps/514">JEP 514: Ahead-of-time command-line ergonomics</a>
 */
final class ClassArchive {
    private static final long LONGEST_S = 120;

    private ClassArchive() {}

    /** Makes the archive in the folder of the jar; returns the setting that uses it, or nothing if this Java could not make one. */
    static Optional<String> make(Path java, Path home, String jar) throws IOException, InterruptedException {
        boolean cache = Runtime.version().feature() >= 25;
        Path archive = home.resolve(cache ? "classes.aot" : "classes.jsa");
        List<String> command = new ArrayList<>(List.of(java.toString()));
        command.addAll(KernelSpec.flags(home));
        command.add((cache ? "-XX:AOTCacheOutput=" : "-XX:ArchiveClassesAtExit=") + archive);
        command.addAll(List.of("-Xlog:disable", "-cp", home.resolve(jar).toString(), Rehearsal.class.getName()));
        Process rehearsal = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.to(nowhere()))
                .start();
        if (!rehearsal.waitFor(LONGEST_S, TimeUnit.SECONDS)) {
            rehearsal.destroyForcibly();
        }
        if (!Files.exists(archive)) {
            return Optional.empty();
        }
        return Optional.of((cache ? "-XX:AOTCache=" : "-XX:SharedArchiveFile=") + archive);
    }

    private static File nowhere() {
        return new File(File.separatorChar == '\\' ? "NUL" : "/dev/null");
    }
}
