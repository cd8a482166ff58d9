package parchment.kernel.source;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
public final class Syntax {
    /** How the compiler calls its own errors. */
    private static final String ENDS_TOO_SOON = "compiler.err.premature.eof";

    /** Told at the beginning of what is still being written. */
    private static final String TRY_ALONE = "compiler.err.try.without.catch.finally.or.resource.decls";

    /** The parser needs no other classes; with a class path, each reading would open every jar of the program to look for extensions of the compiler. */
    private static final List<String> NOTHING_ELSE = List.of("-proc:none", "--class-path", "");

    private Syntax() {}

    /** Returns whether the snippet is a statement, an expression, a declaration or an import. */
    public static boolean isJava(String snippet) {
        return read(snippet).isPresent();
    }

    /**
     * A snippet as the compiler's parser reads it.
     *
     * @param tree what it reads
     * @param lead how many characters stand before the snippet in what it was given
     */
    public record Read(CompilationUnitTree tree, SourcePositions places, int lead) {
        /** Returns where in the snippet a part of the tree begins, in characters from 0. */
        public int placeOf(Tree part) {
            return Math.max(0, (int) places.getStartPosition(tree, part) - lead);
        }
    }

    /** Returns the snippet as a statement, an expression, a declaration or an import; nothing if it is none. */
    public static Optional<Read> read(String snippet) {
        return Stream.of("class P { Object p() { ", "class P { ", "class P { Object p = ", "")
                .flatMap(lead -> read(lead, snippet).stream())
                .findFirst();
    }

    private static Optional<Read> read(String lead, String snippet) {
        String end = lead.endsWith("() { ") ? "\n } }" : lead.endsWith("= ") ? "\n; }" : lead.isEmpty() ? "" : "\n }";
        String code = lead.endsWith("= ") ? snippet.strip().replaceFirst(";$", "") : snippet;
        DiagnosticCollector<JavaFileObject> errors = new DiagnosticCollector<>();
        JavacTask task = task(lead + code + end, errors);
        try {
            CompilationUnitTree tree = task.parse().iterator().next();
            boolean fine = errors.getDiagnostics().stream().noneMatch(d -> d.getKind() == Diagnostic.Kind.ERROR);
            return fine
                    ? Optional.of(new Read(tree, Trees.instance(task).getSourcePositions(), lead.length()))
                    : Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns whether more text could make Java of a snippet that is none as it stands: nothing is wrong with it before its end. */
    static boolean mayGoOn(String snippet) {
        Brackets.Open open = Brackets.lastOpen(snippet);
        if (open != null && (open.closing().equals("*/") || open.closing().equals("\"\"\""))) {
            return true;
        }
        return goesWrongAtItsEnd("class P { Object p() { ", snippet)
                || goesWrongAtItsEnd("class P { ", snippet)
                || goesWrongAtItsEnd("class P { Object p = ", snippet)
                || goesWrongAtItsEnd("", snippet);
    }

    private static boolean goesWrongAtItsEnd(String before, String snippet) {
        String code = before + snippet.stripTrailing();
        return errors(code)
                .filter(error -> !TRY_ALONE.equals(error.getCode()))
                .min(Comparator.comparingLong(Diagnostic::getPosition))
                .map(error -> ENDS_TOO_SOON.equals(error.getCode()) || error.getPosition() >= code.length())
                .orElse(true);
    }

    private static Stream<Diagnostic<? extends JavaFileObject>> errors(String source) {
        DiagnosticCollector<JavaFileObject> found = new DiagnosticCollector<>();
        JavacTask task = task(source, found);
        try {
            task.parse();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return found.getDiagnostics().stream().filter(d -> d.getKind() == Diagnostic.Kind.ERROR);
    }

    private static JavacTask task(String source, DiagnosticCollector<JavaFileObject> found) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        return (JavacTask) compiler.getTask(null, null, found, NOTHING_ELSE, null, List.of(new Text(source)));
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
