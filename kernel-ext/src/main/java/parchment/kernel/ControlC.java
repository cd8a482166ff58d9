package parchment.kernel;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Does something else than end at Ctrl-C (the interrupt signal).
 *
 * <p>Java has no supported way to take a signal; {@code sun.misc.Signal} (module jdk.unsupported, kept for this) is reached by
 * reflection, so that where it is missing Ctrl-C simply ends the program as usual.
 */
public final class ControlC {
    private ControlC() {}

    /** Runs the action at the next Ctrl-C; the one after acts as before. Close the result to have Ctrl-C as before at once. */
    public static Taken first(Runnable action) {
        return take(action, true);
    }

    /** Runs the action at every Ctrl-C. */
    public static Taken every(Runnable action) {
        return take(action, false);
    }

    private static Taken take(Runnable action, boolean once) {
        try {
            Class<?> signal = Class.forName("sun.misc.Signal");
            Class<?> handler = Class.forName("sun.misc.SignalHandler");
            Object interrupt = signal.getConstructor(String.class).newInstance("INT");
            // What Java itself does, which ends the program in order, is known once it has been replaced.
            AtomicReference<Object> usual =
                    new AtomicReference<>(handler.getField("SIG_DFL").get(null));
            var handle = signal.getMethod("handle", signal, handler);
            InvocationHandler taking = (proxy, method, arguments) -> switch (method.getName()) {
                case "handle" -> {
                    if (once) {
                        handle.invoke(null, interrupt, usual.get());
                    }
                    action.run();
                    yield null;
                }
                case "hashCode" -> System.identityHashCode(proxy);
                case "equals" -> arguments != null && proxy == arguments[0];
                default -> "an action at Ctrl-C";
            };
            usual.set(handle.invoke(
                    null,
                    interrupt,
                    Proxy.newProxyInstance(ControlC.class.getClassLoader(), new Class<?>[] {handler}, taking)));
            return () -> {
                try {
                    handle.invoke(null, interrupt, usual.get());
                } catch (ReflectiveOperationException e) {
                    throw new IllegalStateException(e);
                }
            };
        } catch (ReflectiveOperationException | IllegalArgumentException e) {
            return () -> {};
        }
    }

    /** Gives Ctrl-C the meaning back that it had before when closed. */
    @FunctionalInterface
    public interface Taken extends AutoCloseable {
        @Override
        void close();
    }
}
