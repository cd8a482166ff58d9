package parchment.kernel;

import org.jspecify.annotations.Nullable;

/**
 * What the classes of a cell call in place of what would harm the session; {@link GuardedBytecode} puts the calls there.
 *
 * <p>Public only because the classes of a cell live in a package of their own; nothing here is meant to be called by hand.
 */
public final class CellGuard {
    private static volatile CellStop.@Nullable Reason stopping;

    private CellGuard() {}

    /** Ends the cell if it was asked to end; called in every loop and every catch block of a cell. */
    public static void check() {
        CellStop.Reason reason = stopping;
        if (reason != null) {
            throw new CellStop(reason);
        }
    }

    /** Stands in for {@link System#exit}: ends the cell, keeps the session. */
    public static void exit(int status) {
        stopping = CellStop.Reason.ASKED_TO_EXIT;
        throw new CellStop(CellStop.Reason.ASKED_TO_EXIT);
    }

    /** Stands in for {@link Runtime#exit} and {@link Runtime#halt}. */
    public static void exit(Runtime runtime, int status) {
        exit(status);
    }

    /** Asks every loop of the running cell to end. */
    static void stop(CellStop.Reason reason) {
        stopping = reason;
    }

    /** Makes ready for the next cell. */
    static void clear() {
        stopping = null;
    }

    /** Returns why the running cell was asked to end, or null. */
    static CellStop.@Nullable Reason stopping() {
        return stopping;
    }
}
