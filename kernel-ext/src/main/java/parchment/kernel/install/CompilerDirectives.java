package parchment.kernel.install;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import parchment.file.WholeFile;

/**
 * Tells Java to keep its slow, thorough compilation for the library's and the cells' own code.
 *
 * <p>A cell's compiler is itself Java code that runs cold; on a small machine the thorough compilation of it takes a processor away
 * from the first cells, and never pays back. The platform's own classes still end up thoroughly compiled where they are part of a
 * hot method of ours. Measured in docs/measurements/kernel-start.md.
 *
 * @see <a href="https://openjdk.org/jeps/165">JEP 165: Compiler Control</a>
 */
final class CompilerDirectives {
    private static final String FILE = "compiler-directives.json";

    private CompilerDirectives() {}

    static void write(Path folder) throws IOException {
        WholeFile.at(folder.resolve(FILE)).write("""
                [{
                  match: ["com/sun/*.*", "jdk/*.*", "java/*.*", "javax/*.*", "sun/*.*", "zmq/*.*", "org/zeromq/*.*",
                    "com/google/*.*"],
                  c2: { Exclude: true }
                }]
                """);
    }

    static List<String> flags(Path folder) {
        return List.of(
                "-XX:+UnlockDiagnosticVMOptions",
                "-XX:-DisplayVMOutput", // Or each start would print how many directives there are.
                "-XX:CompilerDirectivesFile=" + folder.resolve(FILE));
    }
}
