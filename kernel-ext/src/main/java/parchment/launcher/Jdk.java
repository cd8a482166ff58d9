package parchment.launcher;

import javax.tools.ToolProvider;

/** The Java that runs this program. */
final class Jdk {
    /** Whether this Java can compile. */
    enum Compiler {
        THERE,
        MISSING
    }

    private Jdk() {}

    /** @throws IllegalStateException if this Java cannot compile, as one that only runs programs cannot */
    static void check() {
        boolean there =
                ModuleLayer.boot().findModule("jdk.jshell").isPresent() && ToolProvider.getSystemJavaCompiler() != null;
        check(there ? Compiler.THERE : Compiler.MISSING);
    }

    static void check(Compiler compiler) {
        if (compiler == Compiler.MISSING) {
            throw new IllegalStateException("This Java (" + System.getProperty("java.version") + ", "
                    + System.getProperty("java.home")
                    + ") only runs programs; cells are compiled as they run, which takes a"
                    + " development kit (JDK), version 17 or later.\n"
                    + "On Debian or Ubuntu:  sudo apt-get install openjdk-17-jdk-headless\n"
                    + "Elsewhere:  https://adoptium.net\n"
                    + "Then run this command again with the java of that JDK.");
        }
    }
}
