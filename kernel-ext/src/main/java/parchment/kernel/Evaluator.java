package parchment.kernel;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;

/**
 * Runs cells of Java one after the other in one session; what a cell defines, later cells see.
 *
 * <p>The value of the last line is shown in its richest form, with or without a semicolon at its end. Output, pictures and errors go
 * to the {@link CellPage} of the call. No cell takes the session down: an exit, an endless recursion, endless printing and a lack of
 * memory each end the cell alone.
 *
 * <p>One cell runs at a time; {@link #interrupt} may be called from any thread. It knows nothing of Jupyter.
 */
public final class Evaluator implements AutoCloseable {
    private final Session session = new Session();
    private final Interrupts interrupts = new Interrupts(session.control());
    private final AtomicInteger cells = new AtomicInteger();

    private Evaluator() {}

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
    public Outcome run(int number, String code, CellPage page) {
        return run(number, code, page, () -> false);
    }

    /**
     * Runs a cell unless it was asked to stop before it could begin: an interrupt may come while the session is still getting ready.
     *
     * @param stopAsked says whether it was; {@link #interrupt} is to be called after this has become true
     */
    synchronized Outcome run(int number, String code, CellPage page, BooleanSupplier stopAsked) {
        try {
            return runGuarded(number, code, page, stopAsked);
        } catch (
                ThreadDeath
                        late) { // A stop meant for the cell's own code may arrive just after the thread has left it.
            interrupts.end();
            session.control().forget();
            return Outcome.stopped(CellStop.Reason.INTERRUPTED);
        }
    }

    private Outcome runGuarded(int number, String code, CellPage page, BooleanSupplier stopAsked) {
        CellText cell = new CellText(number, code.replace("\r\n", "\n"));
        return guarded(cell, page, stopAsked, () -> new CellRun(session, cell, page).run());
    }

    /** Runs what a control is to do when a person has set it: as part of no cell, but guarded, stopped and explained like one. */
    synchronized Outcome act(CellPage page, Runnable work, BooleanSupplier stopAsked) {
        CellText none = new CellText(0, "");
        try {
            return guarded(none, page, stopAsked, () -> new CallbackRun(session, none, work).run());
        } catch (ThreadDeath late) { // As after a cell.
            interrupts.end();
            return Outcome.stopped(CellStop.Reason.INTERRUPTED);
        }
    }

    private Outcome guarded(CellText cell, CellPage page, BooleanSupplier stopAsked, Supplier<Outcome> work) {
        interrupts.begin();
        session.questions().beginCell();
        session.notes().beginCell();
        try (CellStreams streams = new CellStreams(page);
                CellThreads threads = new CellThreads();
                Display.Shown shown = Display.on(new PageTarget(page, session.questions(), session.notes()))) {
            if (stopAsked.getAsBoolean()) {
                return Outcome.stopped(CellStop.Reason.INTERRUPTED);
            }
            Outcome outcome = work.get();
            session.notes().shown().forEach(page::pageNote);
            List<String> foot = session.questions().foot();
            if (!foot.isEmpty()) {
                page.foot(QuestionsAsked.shown(foot));
            }
            return outcome;
        } catch (CellStop stop) {
            return Outcome.stopped(stop.reason());
        } catch (VirtualMachineError e) { // Thrown while compiling or showing, outside the snippet itself.
            return Outcome.failed(CellExceptions.explain(e, null, session.places(), cell));
        } finally {
            interrupts.end();
            session.control().forget();
        }
    }

    /** Returns what the number of questions put to scores in this session means, in sentences; empty if none was put. */
    public List<String> questionsAsked() {
        return session.questions().ofSession();
    }

    /** Does what the first cells would otherwise wait for, in steps between which a cell may run. */
    void warmUp() {
        synchronized (this) {
            session.importFor("List");
            runSilently("1 + 1");
        }
        boolean more = true;
        while (more) {
            synchronized (this) {
                more = session.importOneMore();
            }
        }
    }

    private void runSilently(String code) {
        session.splitter()
                .split(code)
                .forEach(part -> session.eval(part.source())
                        .forEach(event -> session.variables().dropIfUnnamed(event.snippet())));
        Shown.of(session.control().value());
        session.control().forget();
    }

    /** Stops the running cell, from any thread; does nothing if none runs. */
    public void interrupt() {
        interrupts.interrupt();
    }

    /** Returns what could be written at the cursor, as {@link Completions} says. */
    public synchronized Completions complete(String code, int cursor) {
        session.importRest();
        return Completions.at(session.analysis(), session.control()::values, code, cursor);
    }

    /** Returns what is known of the name at the cursor, as {@link Inspection} says; null if it names nothing. */
    public synchronized @Nullable Shown inspect(String code, int cursor) {
        session.importRest();
        return Inspection.at(session, code, cursor);
    }

    /** Tells whether a cell could run as it stands, for consoles that run on the Enter key. */
    public synchronized Readiness readiness(String code) {
        return Readiness.of(session.splitter().split(code), code);
    }

    @Override
    public void close() {
        session.close();
    }
}
