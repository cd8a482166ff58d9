package parchment.kernel.stop;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.invoke.MutableCallSite;
import java.lang.reflect.Method;
import org.jspecify.annotations.Nullable;

/**
 * What the classes of a cell call in place of what would harm the session; {@link GuardedBytecode} puts the calls there.
 *
 * <p>As long as nobody asks for a stop, the check is a call site that goes nowhere, which Java's compilers take for nothing at all; asking
 * turns the site round, and Java throws away what it had compiled around it. So a check costs nothing until it is needed.
 *
 * <p>Public only because the classes of a cell live in a package of their own; nothing here is meant to be called by hand.
 */
public final class CellGuard {
    private static final MethodType CHECKING = MethodType.methodType(void.class);
    private static final MethodHandle GO_ON = MethodHandles.empty(CHECKING);
    private static final MethodHandle LOOK = look();
    private static final MutableCallSite SITE = new MutableCallSite(GO_ON);
    private static final MethodHandle CHECK = SITE.dynamicInvoker();
    private static volatile CellStop.@Nullable Reason stopping;

    private CellGuard() {}

    private static MethodHandle look() {
        try {
            return MethodHandles.lookup().findStatic(CellGuard.class, "lookWhetherToStop", CHECKING);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Ends the cell if it was asked to end; called in every method, loop and catch block of a cell. */
    public static void check() {
        try {
            CHECK.invokeExact();
        } catch (RuntimeException | Error e) {
            throw e;
        } catch (Throwable never) {
            throw new IllegalStateException(never);
        }
    }

    private static void lookWhetherToStop() {
        CellStop.Reason reason = stopping;
        if (reason != null) {
            throw new CellStop(reason);
        }
        if (LeftBehind.has(Thread.currentThread())) {
            throw new CellStop(CellStop.Reason.INTERRUPTED);
        }
    }

    /** Stands in for {@link System#exit}: ends the cell, keeps the session. */
    public static void exit(int status) {
        stop(CellStop.Reason.ASKED_TO_EXIT);
        throw new CellStop(CellStop.Reason.ASKED_TO_EXIT);
    }

    /** Stands in for {@link Runtime#exit} and {@link Runtime#halt}. */
    public static void exit(Runtime runtime, int status) {
        exit(status);
    }

    /** Ends the cell if it is about to call an exit by reflection. */
    public static void checkCall(Method method) {
        if (ends(method.getDeclaringClass(), method.getName())) {
            exit(0);
        }
    }

    /** Stands in for the method of a lookup: no handle of an exit is given. */
    public static MethodHandle findStatic(MethodHandles.Lookup lookup, Class<?> owner, String name, MethodType type)
            throws ReflectiveOperationException {
        checkCall(owner, name);
        return lookup.findStatic(owner, name, type);
    }

    /** Stands in for the method of a lookup: no handle of an exit is given. */
    public static MethodHandle findVirtual(MethodHandles.Lookup lookup, Class<?> owner, String name, MethodType type)
            throws ReflectiveOperationException {
        checkCall(owner, name);
        return lookup.findVirtual(owner, name, type);
    }

    /** Stands in for the method of a lookup: no handle of an exit is given. */
    public static MethodHandle unreflect(MethodHandles.Lookup lookup, Method method) throws IllegalAccessException {
        checkCall(method);
        return lookup.unreflect(method);
    }

    /** Stands in for {@link Class#desiredAssertionStatus}: who writes {@code assert} in a notebook wants it looked at. */
    public static boolean desiredAssertionStatus(Class<?> asked) {
        return true;
    }

    private static void checkCall(Class<?> owner, String name) {
        if (ends(owner, name)) {
            exit(0);
        }
    }

    private static boolean ends(Class<?> owner, String name) {
        return owner == System.class && name.equals("exit")
                || owner == Runtime.class && (name.equals("exit") || name.equals("halt"));
    }

    /**
     * Goes once through all that a stop needs. Java makes ready what stands behind a call site when it is first gone through, and in steps
     * while it is new; where that happens at the end of a full stack it fails, and then for good.
     */
    public static void rehearse() {
        Rehearsed.begin();
    }

    /** Done once for the process, as the site is; before any cell runs. */
    private static final class Rehearsed {
        /** More than Java goes through a handle before it makes it over a last time. */
        private static final int TIMES = 300;

        static {
            for (int i = 0; i < TIMES; i++) {
                check();
            }
            stop(CellStop.Reason.INTERRUPTED);
            for (int i = 0; i < TIMES; i++) {
                stopOnce();
            }
            stopping = null;
            stopOnce();
            clear();
            check();
        }

        private static void stopOnce() {
            try {
                check();
            } catch (CellStop expected) {
                return; // This is what a cell would end with.
            }
        }

        private Rehearsed() {}

        static void begin() {
            // Naming the class is all that is needed.
        }
    }

    /** Asks the running cell to end, on whichever threads its code runs. */
    static synchronized void stop(CellStop.Reason reason) {
        stopping = reason;
        turn(LOOK);
    }

    /** Makes ready for the next cell; what an earlier one left behind is still asked to end. */
    static synchronized void clear() {
        stopping = null;
        turn(LeftBehind.isEmpty() ? GO_ON : LOOK);
    }

    private static void turn(MethodHandle target) {
        if (SITE.getTarget() != target) {
            SITE.setTarget(target);
            MutableCallSite.syncAll(new MutableCallSite[] {SITE});
        }
    }

    /** Returns why the running cell was asked to end, or null. */
    public static CellStop.@Nullable Reason stopping() {
        return stopping;
    }
}
