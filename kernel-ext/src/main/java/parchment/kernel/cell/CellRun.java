package parchment.kernel.cell;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.EvalException;
import jdk.jshell.JShellException;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.UnresolvedReferenceException;
import org.jspecify.annotations.Nullable;
import parchment.kernel.imports.ReaderImports;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.source.CellSplitter.Part;
import parchment.kernel.source.CellSplitter.State;
import parchment.kernel.source.CellText;
import parchment.kernel.stop.CellGuard;
import parchment.kernel.stop.CellStop;
import parchment.kernel.words.CellError;
import parchment.kernel.words.CellExceptions;
import parchment.kernel.words.CompileErrors;
import parchment.kernel.words.LongTexts;
import parchment.kernel.words.Slips;
import parchment.kernel.words.TablesawWords;

/** One run of one cell: its parts in turn, until one fails; then the value of the last. */
final class CellRun {
    private final Session session;
    private final CellText cell;
    private final CellPage page;

    /** What the cell has declared and could not be used as it came. */
    private final List<DeclarationSnippet> unfinished = new ArrayList<>();

    /** What the cell has made so far. */
    private final List<Snippet> made = new ArrayList<>();

    CellRun(Session session, CellText cell, CellPage page) {
        this.session = session;
        this.cell = cell;
        this.page = page;
    }

    Outcome run() {
        CompileNotice compiling = session.control().compiling();
        compiling.begin(page);
        try {
            return runParts();
        } finally {
            compiling.end();
        }
    }

    private Outcome runParts() {
        session.imports().makeFor(cell.code());
        List<Part> parts = session.splitter().split(cell.code());
        Part last = parts.isEmpty() ? null : parts.get(parts.size() - 1);
        if (last != null && last.state() == State.UNFINISHED) {
            return Outcome.failed(CompileErrors.unfinished(cell, last));
        }
        if (parts.size() > 1) {
            // What is not Java at all is told before anything ran: half a cell run is worse than none.
            Part broken = parts.stream().filter(Part::isBroken).findFirst().orElse(null);
            parts = broken == null ? parts : List.of(broken);
        }
        LongTexts asItGoes = session.longTexts().copy();
        for (Part part : parts) {
            Optional<CellError> tooLong = asItGoes.refusal(cell, part);
            if (tooLong.isPresent()) {
                return Outcome.failed(tooLong.get());
            }
            asItGoes.keep(part);
        }
        Outcome outcome = Outcome.FINE;
        try {
            for (int i = 0; i < parts.size() && outcome.fine(); i++) {
                outcome = runPart(parts.get(i), i == parts.size() - 1);
                CellStop.Reason reason = CellGuard.stopping();
                if (reason != null) {
                    letGoAfter(reason);
                    return Outcome.stopped(reason);
                }
            }
        } catch (CellStop stop) { // It came between two parts, or while a value was shown.
            letGoAfter(stop.reason());
            throw stop;
        }
        tellUnfinished();
        return outcome;
    }

    /** What a cell has made that filled the memory is not kept, or the next cell would have none either. */
    private void letGoAfter(CellStop.Reason reason) {
        if (reason == CellStop.Reason.MEMORY) {
            made.forEach(session.variables()::dropFailed);
        }
    }

    /** Only what nothing in the whole cell has defined is told of: methods and types may stand before what they need. */
    private void tellUnfinished() {
        Map<String, List<String>> waiting = new LinkedHashMap<>(); // What is missing, and who waits for it.
        for (DeclarationSnippet declaration : unfinished) {
            List<String> missing = session.missing(declaration);
            if (!missing.isEmpty()) {
                waiting.computeIfAbsent(CompileErrors.names(missing), m -> new ArrayList<>())
                        .add("`" + declaration.name() + "`");
            }
        }
        waiting.forEach(
                (missing, names) -> page.print(CellPage.Stream.STDOUT, CompileErrors.notYet(names, missing) + "\n"));
    }

    private Outcome runPart(Part part, boolean showsValue) {
        if (Slips.isLost(part.source())) {
            return Outcome.failed(CompileErrors.lost(cell, part));
        }
        CellControl control = session.control();
        control.forget();
        Map<String, Class<?>> before = control.holders();
        Optional<ReaderImports.Declared> imported = ReaderImports.in(part.source());
        imported.ifPresent(session.imports()::makeRoomFor);
        List<SnippetEvent> events = session.eval(part.source());
        control.untold().ifPresent(line -> page.print(CellPage.Stream.STDERR, line + "\n"));
        SnippetEvent main = events.stream()
                .filter(event -> event.causeSnippet() == null)
                .findFirst()
                .orElse(null);
        if (main == null) {
            return Outcome.FINE;
        }
        Snippet snippet = main.snippet();
        made.add(snippet);
        session.places().put(snippet.id(), new CellExceptions.Place(cell, part.offset()));
        session.variables().afterRun(before, snippet, events, page);
        if (main.status() == Status.REJECTED || notCompiled(main)) {
            imported.ifPresent(session.imports()::takeRoomBack);
            List<jdk.jshell.Diag> diagnostics = session.diagnostics(snippet);
            session.imports().makeRest(); // So that a name that was meant can be found.
            return Outcome.failed(session.compileErrors().explain(cell, part, diagnostics));
        }
        imported.ifPresent(declared -> session.imports().made(declared, cell.code()));
        session.longTexts().keep(part);
        if (main.exception() != null || control.thrown() != null) {
            session.variables().dropFailed(snippet);
            return failure(main.exception());
        }
        boolean waits = main.status() == Status.RECOVERABLE_DEFINED || main.status() == Status.RECOVERABLE_NOT_DEFINED;
        if (waits && snippet instanceof DeclarationSnippet declared) {
            unfinished.add(declared);
        }
        if (showsValue && hasValue(snippet) && !isWayOut(control.value())) {
            return show(snippet);
        }
        session.variables().dropIfUnnamed(snippet);
        return Outcome.FINE;
    }

    /** JShell keeps what could not be made a class, as if a name in it were still to come; it is not there, and has no value. */
    private boolean notCompiled(SnippetEvent main) {
        return main.status() == Status.RECOVERABLE_NOT_DEFINED
                && !(main.snippet() instanceof DeclarationSnippet declared
                        && !session.unresolved(declared).isEmpty());
    }

    private Outcome failure(@Nullable JShellException exception) {
        Throwable thrown = session.control().thrown();
        if (exception instanceof UnresolvedReferenceException unresolved) {
            List<String> missing = session.unresolved(unresolved.getSnippet());
            return Outcome.failed(CellExceptions.unresolved(unresolved, missing));
        }
        if (thrown instanceof CellStop || thrown instanceof ThreadDeath && CellGuard.stopping() != null) {
            return Outcome.FINE; // The caller looks at the reason.
        }
        EvalException traced = exception instanceof EvalException evaluated ? evaluated : null;
        Throwable told = thrown != null ? thrown : traced;
        if (told == null) {
            return Outcome.FINE;
        }
        CellError error = session.inWords(() -> CellExceptions.explain(
                TablesawWords.inOurs(told, session.control().values()), traced, session.places(), cell));
        return Outcome.failed(
                told instanceof OutOfMemoryError
                        ? error.withLines(session.variables().howToFree(cell.code()))
                        : error);
    }

    private Outcome show(Snippet snippet) {
        Object value = session.control().value();
        session.control().compiling().pause();
        try {
            // The value's own code makes its picture and text, so it can fail, and can be stopped, like any code of the
            // cell.
            AtomicReference<Shown> shown = new AtomicReference<>();
            session.control().thread().call(() -> {
                shown.set(session.shown(value));
                return null;
            });
            CellStreams.tellWhatIsCutSoFar();
            page.result(Objects.requireNonNull(shown.get()));
            return Outcome.FINE;
        } catch (CellStop stop) {
            throw stop;
        } catch (Exception | Error e) {
            return Outcome.failed(session.inWords(() -> CellExceptions.notShown(e, value, cell)));
        } finally {
            session.variables().dropIfUnnamed(snippet);
        }
    }

    /** {@code System.out.printf(...)} gives back what it has printed to, which is no answer to anything. */
    private static boolean isWayOut(@Nullable Object value) {
        return value != null && (value == System.out || value == System.err);
    }

    private static boolean hasValue(Snippet snippet) {
        SubKind kind = snippet.subKind();
        return kind == SubKind.TEMP_VAR_EXPRESSION_SUBKIND
                || kind == SubKind.VAR_VALUE_SUBKIND
                || kind == SubKind.ASSIGNMENT_SUBKIND
                || kind == SubKind.OTHER_EXPRESSION_SUBKIND;
    }
}
