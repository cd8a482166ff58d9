package parchment.kernel.cell;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import jdk.jshell.Snippet;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;
import parchment.jars.Jars;
import parchment.jars.Network;
import parchment.kernel.help.Completions;
import parchment.kernel.help.Inspection;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.source.CellText;
import parchment.kernel.source.Readiness;
import parchment.kernel.stop.CellGuard;
import parchment.kernel.stop.CellStop;
import parchment.kernel.stop.Interrupts;
import parchment.kernel.words.CellExceptions;

/**
 * Runs cells of Java one after the other in one session; what a cell defines, later cells see.
 *
 * <p>The value of the last line is shown in its richest form, with or without a semicolon at its end. Output, pictures and errors go
 * to the {@link CellPage} of the call. No cell takes the session down: an exit, an endless recursion and a lack of memory each end the
 * cell alone.
 *
 * <p>One cell runs at a time; {@link #interrupt} may be called from any thread. It knows nothing of Jupyter.
 */
public final class Evaluator implements AutoCloseable {
    private final Session session;
    private final Interrupts interrupts;
    private final AtomicInteger cells = new AtomicInteger();

    /** In order of arrival: what warms up asks for it again at once, and would otherwise go before a cell that waits. */
    private final ReentrantLock turn = new ReentrantLock(true);

    private Evaluator(Network network, StartOfSession start) {
        CellGuard.rehearse();
        session = new Session(network, start);
        interrupts = new Interrupts(session.control().thread());
    }

    /** Opens a session with the library imported, which fetches nothing. */
    public static Evaluator open() {
        return open(Network.NEVER);
    }

    /** Opens a session with the library imported, which may fetch jars that a cell asks for. */
    public static Evaluator open(Network network) {
        return open(network, System.getenv());
    }

    static Evaluator open(Network network, Map<String, String> environment) {
        return new Evaluator(network, new StartOfSession(environment));
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
    public Outcome run(int number, String code, CellPage page) {
        return run(number, code, page, () -> false);
    }

    /**
     * Runs a cell unless it was asked to stop before it could begin: an interrupt may come while the session is still getting ready.
     *
     * @param stopAsked says whether it was; {@link #interrupt} is to be called after this has become true
     */
    public Outcome run(int number, String code, CellPage page, BooleanSupplier stopAsked) {
        turn.lock();
        try {
            return runGuarded(number, code, page, stopAsked);
        } catch (
                ThreadDeath
                        late) { // A stop meant for the cell's own code may arrive just after the thread has left it.
            interrupts.end();
            session.control().forget();
            return Outcome.stopped(CellStop.Reason.INTERRUPTED);
        } finally {
            turn.unlock();
        }
    }

    private Outcome runGuarded(int number, String code, CellPage page, BooleanSupplier stopAsked) {
        CellText cell = new CellText(number, code.replace("\r\n", "\n"));
        return guarded(cell, page, stopAsked, () -> {
            session.takeStart().ifPresent(start -> begin(start, page));
            return new WrittenCell(session, page).run(cell);
        });
    }

    /** Runs what a control is to do when a person has set it: as part of no cell, but guarded, stopped and explained like one. */
    public Outcome act(CellPage page, Runnable work, BooleanSupplier stopAsked) {
        CellText none = new CellText(0, "");
        turn.lock();
        try {
            return guarded(none, page, stopAsked, () -> new CallbackRun(session, none, work).run());
        } catch (ThreadDeath late) { // As after a cell.
            interrupts.end();
            return Outcome.stopped(CellStop.Reason.INTERRUPTED);
        } finally {
            turn.unlock();
        }
    }

    /** Returns how the session shows a value; also while a cell runs. */
    public Shown shown(@Nullable Object value) {
        return session.shown(value);
    }

    private Outcome guarded(CellText cell, CellPage page, BooleanSupplier stopAsked, Supplier<Outcome> work) {
        long begin = System.nanoTime();
        interrupts.begin();
        session.questions().beginCell();
        session.notes().beginCell();
        try (Jars.InPlace jars = Jars.on(session.jars());
                CellStreams streams = new CellStreams(page);
                CellThreads threads = new CellThreads();
                Display.Shown shown = Display.on(new PageTarget(page, session));
                Settling settling = Interrupts::settle) {
            if (stopAsked.getAsBoolean()) {
                return Outcome.stopped(CellStop.Reason.INTERRUPTED);
            }
            Outcome outcome = work.get();
            Optional<String> left = session.control().thread().leftInside();
            if (left.isPresent()) {
                return Outcome.leftBehind(left.get());
            }
            session.notes().shown().forEach(page::pageNote);
            List<String> foot = session.questions().foot();
            if (!foot.isEmpty()) {
                page.foot(QuestionsAsked.shown(foot));
            }
            return outcome;
        } catch (CellStop stop) {
            return session.control()
                    .thread()
                    .leftInside()
                    .map(Outcome::leftBehind)
                    .orElseGet(() -> Outcome.stopped(stop.reason()));
        } catch (VirtualMachineError e) { // Thrown while compiling or showing, outside the snippet itself.
            return Outcome.failed(CellExceptions.explain(e, null, session.places(), cell));
        } finally {
            interrupts.end();
            session.control().forget();
            page.ran(Duration.ofNanos(System.nanoTime() - begin));
        }
    }

    /** What goes wrong with what every session begins with is told, and the reader's own cell runs all the same. */
    private void begin(StartOfSession start, CellPage page) {
        if (start.namesJars()) {
            start.loadJars(session.jars(), page);
        }
        start.cells(page).ifPresent(cells -> {
            CellText text = new CellText(0, cells.code(), cells.code(), "Start-up cells");
            Outcome outcome = new WrittenCell(session, page).run(text);
            WrittenCell.in("the start-up cells '" + cells.file() + "'", outcome)
                    .error()
                    .ifPresent(error -> page.print(CellPage.Stream.STDERR, error.text() + "\n"));
        });
    }

    /** Is closed first, so that what threads of the cell say at their end still goes to its page. */
    @FunctionalInterface
    private interface Settling extends AutoCloseable {
        @Override
        void close();
    }

    /** Returns what the number of questions put to scores in this session means, in sentences; empty if none was put. */
    public List<String> questionsAsked() {
        return session.questions().ofSession();
    }

    /** Does what the first cells would otherwise wait for, in steps between which a cell may run. */
    public void warmUp() {
        inTurn(() -> runSilently("1 + 1"));
        while (inTurn(() -> session.imports().makeOneMore())) {
            // Each turn makes one.
        }
    }

    private <T> T inTurn(Supplier<T> work) {
        turn.lock();
        try {
            return work.get();
        } finally {
            turn.unlock();
        }
    }

    private boolean runSilently(String code) {
        session.splitter()
                .split(code)
                .forEach(part -> session.eval(part.source())
                        .forEach(event -> session.variables().dropIfUnnamed(event.snippet())));
        session.shown(session.control().value());
        session.control().forget();
        return true;
    }

    /** Stops the running cell, from any thread; does nothing if none runs. */
    public void interrupt() {
        interrupts.interrupt();
    }

    /** Returns what could be written at the cursor, as {@link Completions} says. */
    public Completions complete(String code, int cursor) {
        return PercentLines.namesAt(code, cursor)
                .orElseGet(() -> inTurn(() -> {
                    session.imports().makeRest();
                    return Completions.at(
                            session.analysis(), session.control()::values, PercentLines.blanked(code), cursor);
                }));
    }

    /** Returns what is known of the name at the cursor, as {@link Inspection} says; null if it names nothing. */
    public @Nullable Shown inspect(String code, int cursor) {
        turn.lock();
        try {
            session.imports().makeRest();
            return new Inspection(session.shell(), session.splitter(), session.classPath(), session.control()::valueOf)
                    .at(PercentLines.blanked(code), cursor);
        } finally {
            turn.unlock();
        }
    }

    /** Tells whether a cell could run as it stands, for consoles that run on the Enter key. */
    public Readiness readiness(String code) {
        String java = PercentLines.blanked(code);
        return inTurn(() -> Readiness.of(
                session.splitter().split(java),
                java,
                session.control().holders().keySet()));
    }

    /** Tells whether a text is one expression, so that running it can give a value and defines nothing. */
    public boolean isExpression(String code) {
        List<Snippet> snippets = inTurn(() -> session.analysis().sourceToSnippets(code));
        return snippets.size() == 1 && snippets.get(0).kind() == Snippet.Kind.EXPRESSION
                || snippets.size() == 1 && snippets.get(0).subKind() == Snippet.SubKind.TEMP_VAR_EXPRESSION_SUBKIND;
    }

    @Override
    public void close() {
        session.close();
    }
}
