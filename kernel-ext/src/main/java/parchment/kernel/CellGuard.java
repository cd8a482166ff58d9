package parchment.kernel;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.Method;
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

    private static void checkCall(Class<?> owner, String name) {
        if (ends(owner, name)) {
            exit(0);
        }
    }

    private static boolean ends(Class<?> owner, String name) {
        return owner == System.class && name.equals("exit")
                || owner == Runtime.class && (name.equals("exit") || name.equals("halt"));
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
