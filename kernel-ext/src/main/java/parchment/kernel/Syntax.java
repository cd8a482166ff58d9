package parchment.kernel;

import com.sun.source.util.JavacTask;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.List;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/**
 * Tells whether a snippet can be read as Java at all, without running or even understanding it.
 *
 * <p>JShell's own answer counts brackets and stops at the first token that could end a statement, so a text without its closing
 * quote is whole to it. Here the compiler's parser reads the snippet as each thing a snippet can be.
 */
final class Syntax {
    private Syntax() {}

    /** Returns whether the snippet is a statement, an expression, a declaration or an import. */
    static boolean isJava(String snippet) {
        String expression = snippet.strip().replaceFirst(";$", "");
        return parses("class P { Object p() { " + snippet + "\n } }")
                || parses("class P { " + snippet + "\n }")
                || parses("class P { Object p = " + expression + "\n; }")
                || parses(snippet);
    }

    private static boolean parses(String source) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        DiagnosticCollector<JavaFileObject> found = new DiagnosticCollector<>();
        JavacTask task =
                (JavacTask) compiler.getTask(null, null, found, List.of("-proc:none"), null, List.of(new Text(source)));
        try {
            task.parse();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found.getDiagnostics().stream().noneMatch(d -> d.getKind() == Diagnostic.Kind.ERROR);
    }

    private static final class Text extends SimpleJavaFileObject {
        private final String source;

        Text(String source) {
            super(URI.create("text:///P.java"), Kind.SOURCE);
            this.source = source;
        }

        @Override
        public CharSequence getCharContent(boolean ignoreEncodingErrors) {
            return source;
        }
    }
}
