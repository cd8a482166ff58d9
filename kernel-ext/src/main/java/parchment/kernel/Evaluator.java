package parchment.kernel;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import jdk.jshell.Diag;
import jdk.jshell.EvalException;
import jdk.jshell.JShell;
import jdk.jshell.JShellException;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.UnresolvedReferenceException;
import jdk.jshell.VarSnippet;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;
import parchment.kernel.CellSplitter.Part;
import parchment.kernel.CellSplitter.State;

/**
 * Runs cells of Java one after the other in one session; what a cell defines, later cells see.
 *
 * <p>The value of the last line is shown in its richest form. Output, pictures and errors go to the {@link CellPage} of the call. No
 * cell takes the session down: an exit, an endless recursion, endless printing and a lack of memory each end the cell alone.
 *
 * <p>One cell runs at a time; {@link #interrupt} may be called from any thread. It knows nothing of Jupyter.
 */
public final class Evaluator implements AutoCloseable {
    private final CellControl control = new CellControl();
    private final Imports imports = new Imports();
    private final CompilePath compilePath = new CompilePath();
    private final JShell shell;
    private final SourceCodeAnalysis analysis;
    private final CellSplitter splitter;
    private final CompileErrors compileErrors;
    private final Interrupts interrupts = new Interrupts(control);
    private final Map<String, CellExceptions.Place> places = new HashMap<>();
    private final AtomicInteger cells = new AtomicInteger();

    private Evaluator() {
        shell = JShell.builder()
                .executionEngine(control.provider(), Map.of())
                .compilerOptions("-proc:none", "-Xlint:none")
                .build();
        shell.addToClasspath(compilePath.first()); // Given as an option it could not be widened later.
        analysis = shell.sourceCodeAnalysis();
        splitter = new CellSplitter(analysis);
        compileErrors = new CompileErrors(analysis);
    }

    /** Opens a session with the library imported. */
    public static Evaluator open() {
        return new Evaluator();
    }

    /** Runs a cell under the next number from 1. */
    public Outcome run(String code, CellPage page) {
        return run(cells.incrementAndGet(), code, page);
    }

    /**
     * Runs a cell.
     *
     * @param number the number that the notebook gives the cell; later errors refer to it
     * @param code the cell as written
     * @param page where its output goes
     */
    public synchronized Outcome run(int number, String code, CellPage page) {
        try {
            return runGuarded(number, code, page);
        } catch (
                ThreadDeath
                        late) { // A stop meant for the cell's own code may arrive just after the thread has left it.
            interrupts.end();
            control.forget();
            return stopped(CellStop.Reason.INTERRUPTED);
        }
    }

    private Outcome runGuarded(int number, String code, CellPage page) {
        CellText cell = new CellText(number, code.replace("\r\n", "\n"));
        interrupts.begin();
        try (CellStreams streams = new CellStreams(page);
                Display.Shown shown = Display.on(new PageTarget(page))) {
            return runParts(cell, page);
        } catch (CellStop stop) {
            return stopped(stop.reason());
        } catch (VirtualMachineError e) { // Thrown while compiling or showing, outside the snippet itself.
            return Outcome.failed(CellExceptions.explain(e, null, places, cell));
        } finally {
            interrupts.end();
            control.forget();
        }
    }

    private Outcome runParts(CellText cell, CellPage page) {
        makeImports(cell.code());
        List<Part> parts = splitter.split(cell.code());
        Part last = parts.isEmpty() ? null : parts.get(parts.size() - 1);
        if (last != null && last.state() == State.UNFINISHED) {
            return Outcome.failed(CompileErrors.unfinished(cell, last));
        }
        if (parts.size() > 1) {
            // What is not Java at all is told before anything ran: half a cell run is worse than none.
            Part broken = parts.stream().filter(Part::isBroken).findFirst().orElse(null);
            parts = broken == null ? parts : List.of(broken);
        }
        for (int i = 0; i < parts.size(); i++) {
            Outcome outcome = runPart(cell, parts.get(i), page, i == parts.size() - 1);
            CellStop.Reason reason = CellGuard.stopping();
            if (reason != null) {
                return stopped(reason);
            }
            if (!outcome.fine()) {
                return outcome;
            }
        }
        return Outcome.FINE;
    }

    private Outcome runPart(CellText cell, Part part, CellPage page, boolean showsValue) {
        control.forget();
        Map<String, Class<?>> before = control.holders();
        List<SnippetEvent> events = eval(part.source());
        SnippetEvent main = events.stream()
                .filter(event -> event.causeSnippet() == null)
                .findFirst()
                .orElse(null);
        if (main == null) {
            return Outcome.FINE;
        }
        Snippet snippet = main.snippet();
        places.put(snippet.id(), new CellExceptions.Place(cell, part.offset()));
        keepOtherVariables(before, snippet, page);
        events.forEach(event -> tellWhatIsLost(event, page));
        if (main.status() == Status.REJECTED) {
            List<Diag> diagnostics = shell.diagnostics(snippet).toList();
            importRest(); // So that a name that was meant can be found.
            return Outcome.failed(compileErrors.explain(cell, part, diagnostics));
        }
        JShellException exception = main.exception();
        Throwable thrown = control.thrown();
        if (exception instanceof UnresolvedReferenceException unresolved) {
            List<String> missing =
                    shell.unresolvedDependencies(unresolved.getSnippet()).toList();
            return Outcome.failed(CellExceptions.unresolved(unresolved, missing, cell));
        }
        if (thrown instanceof CellStop || thrown instanceof ThreadDeath) {
            return Outcome.FINE; // The caller looks at the reason.
        }
        if (exception instanceof EvalException traced) {
            return Outcome.failed(CellExceptions.explain(thrown == null ? traced : thrown, traced, places, cell));
        }
        if (main.status() == Status.RECOVERABLE_DEFINED || main.status() == Status.RECOVERABLE_NOT_DEFINED) {
            List<String> missing = shell.unresolvedDependencies((jdk.jshell.DeclarationSnippet) snippet)
                    .toList();
            page.print(
                    CellPage.Stream.STDERR,
                    compileErrors.notYet(((jdk.jshell.DeclarationSnippet) snippet).name(), missing) + "\n");
        }
        if (showsValue && hasValue(snippet)) {
            return show(cell, page, snippet);
        }
        dropIfUnnamed(snippet);
        return Outcome.FINE;
    }

    private List<SnippetEvent> eval(String source) {
        List<SnippetEvent> events = shell.eval(source);
        List<Diag> errors = events.stream()
                .filter(event -> event.causeSnippet() == null && event.status() == Status.REJECTED)
                .flatMap(event -> shell.diagnostics(event.snippet()))
                .toList();
        return compilePath.widenFor(errors, shell) ? shell.eval(source) : events;
    }

    private void makeImports(String code) {
        for (String type : Imports.typesDeclaredIn(code)) {
            // JShell would refuse every later cell if a type of the cell's own and an imported one had the same name.
            shell.imports()
                    .filter(imported ->
                            !imported.isStatic() && imported.fullname().endsWith("." + type))
                    .toList()
                    .forEach(shell::drop);
        }
        imports.neededBy(code).forEach(shell::eval);
    }

    private void importRest() {
        while (importOneMore()) {
            // Each call makes one.
        }
    }

    private boolean importOneMore() {
        String declaration = imports.next();
        if (declaration != null) {
            shell.eval(declaration);
        }
        return declaration != null;
    }

    private Outcome show(CellText cell, CellPage page, Snippet snippet) {
        Object value = control.value();
        try {
            // The value's own code makes its picture and text, so it can fail, and can be stopped, like any code of the
            // cell.
            control.asUserCode(() -> page.result(Shown.of(value)));
            return Outcome.FINE;
        } catch (CellStop stop) {
            throw stop;
        } catch (ThreadDeath death) {
            return Outcome.FINE;
        } catch (RuntimeException | Error e) {
            return Outcome.failed(CellExceptions.explain(e, null, places, cell));
        } finally {
            dropIfUnnamed(snippet);
        }
    }

    private static boolean hasValue(Snippet snippet) {
        SubKind kind = snippet.subKind();
        return kind == SubKind.TEMP_VAR_EXPRESSION_SUBKIND
                || kind == SubKind.VAR_VALUE_SUBKIND
                || kind == SubKind.ASSIGNMENT_SUBKIND
                || kind == SubKind.OTHER_EXPRESSION_SUBKIND;
    }

    /** JShell keeps the value of a bare expression in a variable that nobody asked for. */
    private void dropIfUnnamed(Snippet snippet) {
        if (snippet.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND && snippet instanceof VarSnippet variable) {
            Class<?> holder = control.holders().get(variable.name());
            shell.drop(snippet);
            if (holder != null) {
                CellControl.release(variable.name(), holder);
            }
        }
    }

    /**
     * Lets go of the old value of a variable that was defined anew, and keeps the values of those made from it: JShell would set
     * {@code var evidence = f(logbook)} to null when the cell that defines {@code logbook} runs once more.
     */
    private void keepOtherVariables(Map<String, Class<?>> before, Snippet defined, CellPage page) {
        String own = defined instanceof VarSnippet variable ? variable.name() : "";
        control.holders().forEach((name, holder) -> {
            Class<?> old = before.get(name);
            if (old == null || old == holder) {
                return;
            }
            if (!name.equals(own) && !CellControl.carryOver(name, old, holder)) {
                tellLost(name, page);
            }
            CellControl.release(name, old);
        });
    }

    private static void tellWhatIsLost(SnippetEvent event, CellPage page) {
        if (event.causeSnippet() != null
                && event.previousStatus() == Status.VALID
                && (event.status() == Status.RECOVERABLE_DEFINED || event.status() == Status.RECOVERABLE_NOT_DEFINED)
                && event.snippet() instanceof VarSnippet variable) {
            tellLost(variable.name(), page);
        }
    }

    private static void tellLost(String variable, CellPage page) {
        page.print(
                CellPage.Stream.STDERR,
                "`" + variable + "` is empty now, because what it was made from has changed: run its cell again.\n");
    }

    private static Outcome stopped(CellStop.Reason reason) {
        String message = switch (reason) {
            case INTERRUPTED -> "Interrupted: the cell was stopped before its end.";
            case ASKED_TO_EXIT ->
                "The cell asked Java to exit, which would end the whole session; only the cell was ended."
                        + " To start afresh, restart the kernel from the notebook's menu.";
            case TOO_MUCH_OUTPUT ->
                String.format(
                        java.util.Locale.ROOT,
                        "The cell was stopped: it printed more than a page can hold (%,d lines or %,d characters).",
                        CellStreams.MOST_LINES,
                        CellStreams.MOST_CHARACTERS);
        };
        String name = switch (reason) {
            case INTERRUPTED -> "Interrupted";
            case ASKED_TO_EXIT -> "Exit refused";
            case TOO_MUCH_OUTPUT -> "Too much output";
        };
        return Outcome.failed(new CellError(name, message, List.of(message)));
    }

    /** Does what the first cells would otherwise wait for, in steps between which a cell may run. */
    void warmUp() {
        synchronized (this) {
            imports.neededBy("List").forEach(shell::eval);
            runSilently("1 + 1");
        }
        boolean more = true;
        while (more) {
            synchronized (this) {
                more = importOneMore();
            }
        }
    }

    private void runSilently(String code) {
        splitter.split(code)
                .forEach(part -> shell.eval(part.source()).forEach(event -> dropIfUnnamed(event.snippet())));
        Shown.of(control.value());
        control.forget();
    }

    /** Stops the running cell, from any thread; does nothing if none runs. */
    public void interrupt() {
        interrupts.interrupt();
    }

    /** Returns what could be written at the cursor, as {@link Completions} says. */
    public synchronized Completions complete(String code, int cursor) {
        importRest();
        return Completions.at(analysis, code, cursor);
    }

    /** Returns the signatures and, where known, the documentation of what stands at the cursor. */
    public synchronized @Nullable Shown inspect(String code, int cursor) {
        importRest();
        return Inspection.at(analysis, code, cursor);
    }

    /** Tells whether a cell could run as it stands, for consoles that run on the Enter key. */
    public synchronized Readiness readiness(String code) {
        return Readiness.of(splitter.split(code), code);
    }

    @Override
    public void close() {
        shell.close();
    }
}
