package parchment.kernel.cell;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import jdk.jshell.Diag;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import org.jspecify.annotations.Nullable;
import parchment.jars.Network;
import parchment.jars.SessionJars;
import parchment.kernel.imports.CompilePath;
import parchment.kernel.imports.SessionImports;
import parchment.kernel.page.Shown;
import parchment.kernel.source.CellSplitter;
import parchment.kernel.words.CellError;
import parchment.kernel.words.CellExceptions;
import parchment.kernel.words.CompileErrors;
import parchment.kernel.words.LongTexts;
import parchment.rendering.Renderers;

/** What lasts from cell to cell: JShell with what the cells have defined, the imports, and where each snippet was written. */
final class Session {
    private final CellControl control = new CellControl();
    private final CompilePath compilePath = new CompilePath();
    private final Map<String, CellExceptions.Place> places = new HashMap<>();
    private final QuestionsAsked questions = new QuestionsAsked();
    private final PageNotes notes = new PageNotes();
    private final NamedPlaces named = new NamedPlaces();
    private final LongTexts longTexts = new LongTexts();
    private final Renderers renderers = Renderers.explainingErrors(CellExceptions::inWords);
    private final Set<String> failed = new HashSet<>();
    private final JShell shell;
    private final SessionImports imports;
    private final SourceCodeAnalysis analysis;
    private final CellSplitter splitter;
    private final CompileErrors compileErrors;
    private final Variables variables;
    private final SessionJars jars;
    private final AtomicReference<Optional<StartOfSession>> start;

    /** Opens a session that begins with nothing and fetches nothing. */
    Session() {
        this(Network.NEVER, new StartOfSession(Map.of()));
    }

    Session(Network network, StartOfSession start) {
        this.start = new AtomicReference<>(Optional.of(start));
        this.jars = SessionJars.of(new ReadersClassPath(this), network);
        shell = JShell.builder()
                .executionEngine(control.provider(), Map.of())
                .compilerOptions("-proc:none", "-Xlint:none")
                .fileManager(compilePath::govern)
                .build();
        analysis = shell.sourceCodeAnalysis();
        splitter = new CellSplitter(analysis);
        compileErrors = new CompileErrors(analysis, failed);
        variables = new Variables(shell, control, failed);
        imports = new SessionImports(shell, this::loader, this::eval, this::keepingVariables);
    }

    /** Returns the count of what was asked of scores since the session began. */
    QuestionsAsked questions() {
        return questions;
    }

    /** Returns what the running cell has told of the whole page. */
    PageNotes notes() {
        return notes;
    }

    /** Returns the names under which something was shown that may change later. */
    NamedPlaces named() {
        return named;
    }

    /** Returns what knows how long the constant texts of earlier cells are. */
    LongTexts longTexts() {
        return longTexts;
    }

    /** Returns what finds out how a value is shown, with what cells have registered. */
    Renderers renderers() {
        return renderers;
    }

    /** Returns the forms of a value. */
    Shown shown(@Nullable Object value) {
        return Shown.of(renderers.of(value));
    }

    /** Returns an error in words, worked out on the thread of cells, because what was thrown may say it with the cell's own code. */
    CellError inWords(Supplier<CellError> words) {
        AtomicReference<CellError> said = new AtomicReference<>();
        try {
            control.thread().call(() -> {
                said.set(words.get());
                return null;
            });
        } catch (RuntimeException | Error e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
        return Objects.requireNonNull(said.get());
    }

    /** Runs one snippet; where its errors may come of the short class path it began with, once more on the whole one. */
    List<SnippetEvent> eval(String source) {
        List<SnippetEvent> events = shell.eval(source);
        List<Diag> errors = events.stream()
                .filter(event -> event.causeSnippet() == null
                        && (event.status() == Status.REJECTED || event.status() == Status.RECOVERABLE_NOT_DEFINED))
                .flatMap(event -> shell.diagnostics(event.snippet()))
                .toList();
        return compilePath.widenFor(errors, shell) ? shell.eval(source) : events;
    }

    /** Returns what is imported for the cells. */
    SessionImports imports() {
        return imports;
    }

    /** What an import means for variables that are there is looked after as with any snippet. */
    private void keepingVariables(Supplier<List<SnippetEvent>> change) {
        Map<String, Class<?>> before = control.holders();
        variables.afterImport(before, change.get());
    }

    /** There is no loader before there is something to load. */
    private ClassLoader loader() {
        if (control.loader() == null) {
            shell.eval("0;").forEach(event -> variables.dropIfUnnamed(event.snippet()));
        }
        ClassLoader ofCells = control.loader();
        return ofCells != null ? ofCells : ClassLoader.getSystemClassLoader();
    }

    List<Diag> diagnostics(Snippet snippet) {
        return shell.diagnostics(snippet).toList();
    }

    /** Returns what a method or class needs and nobody has defined. */
    List<String> unresolved(jdk.jshell.DeclarationSnippet snippet) {
        return shell.unresolvedDependencies(snippet).toList();
    }

    /** Returns what a method or class needs and nobody has defined, if it was not replaced or completed since. */
    List<String> missing(jdk.jshell.DeclarationSnippet snippet) {
        Snippet.Status status = shell.status(snippet);
        return status == Status.RECOVERABLE_DEFINED || status == Status.RECOVERABLE_NOT_DEFINED
                ? unresolved(snippet)
                : List.of();
    }

    JShell shell() {
        return shell;
    }

    CompilePath compilePath() {
        return compilePath;
    }

    /** Returns the jars that the reader adds. */
    SessionJars jars() {
        return jars;
    }

    /** Returns what is to be done before the first cell; nothing from the second call on. */
    Optional<StartOfSession> takeStart() {
        return start.getAndSet(Optional.empty());
    }

    /** Returns what cells are compiled against now. */
    String classPath() {
        return compilePath.now();
    }

    CellControl control() {
        return control;
    }

    Variables variables() {
        return variables;
    }

    SourceCodeAnalysis analysis() {
        return analysis;
    }

    CellSplitter splitter() {
        return splitter;
    }

    CompileErrors compileErrors() {
        return compileErrors;
    }

    /** Returns where each snippet stands, by its id. */
    Map<String, CellExceptions.Place> places() {
        return places;
    }

    void close() {
        control.thread().close();
        control.compiling().close();
        shell.close();
        compilePath.close();
    }
}
