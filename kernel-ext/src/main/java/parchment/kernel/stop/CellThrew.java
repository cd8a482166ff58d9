package parchment.kernel.stop;

import java.util.Arrays;
import java.util.Objects;
import jdk.jshell.spi.SPIResolutionException;

/**
 * What a cell threw, as its cause. Its methods may be the cell's own, which fail, give nothing or never end: so they are called on the
 * thread of cells alone, where they can be stopped, and JShell is given this in its place.
 */
public final class CellThrew extends Exception {
    private static final long serialVersionUID = 1L;

    public CellThrew(Throwable thrown) {
        super("", thrown, false, true);
        setStackTrace(trace(thrown));
    }

    /** Returns what JShell may ask for its text and its trace. */
    public Throwable forJShell() {
        Throwable thrown = getCause();
        if (thrown instanceof SPIResolutionException || thrown instanceof CellStop) {
            return thrown; // JShell's own, and ours.
        }
        Exception trace = new Exception("");
        trace.setStackTrace(getStackTrace());
        return trace;
    }

    /** Returns where something was thrown; nothing where it does not say. */
    public static StackTraceElement[] trace(Throwable thrown) {
        try {
            StackTraceElement[] trace = thrown.getStackTrace();
            return trace == null
                    ? new StackTraceElement[0]
                    : Arrays.stream(trace).filter(Objects::nonNull).toArray(StackTraceElement[]::new);
        } catch (CellStop | ThreadDeath stop) {
            throw stop;
        } catch (RuntimeException | Error e) {
            return new StackTraceElement[0];
        }
    }
}
