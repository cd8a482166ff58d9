package parchment.launcher;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;

/**
 * Does something else than end at the first Ctrl-C.
 *
 * <p>Java has no supported way to take a signal; {@code sun.misc.Signal} (module jdk.unsupported, kept for this) is reached by
 * reflection, so that where it is missing Ctrl-C simply ends the program as usual.
 */
final class ControlC {
    private ControlC() {}

    /** Runs the action at the next Ctrl-C; the one after acts as usual. Close the result to have Ctrl-C as usual again. */
    static AutoCloseable first(Runnable action) {
        try {
            Class<?> signal = Class.forName("sun.misc.Signal");
            Class<?> handler = Class.forName("sun.misc.SignalHandler");
            Object interrupt = signal.getConstructor(String.class).newInstance("INT");
            Object usual = handler.getField("SIG_DFL").get(null);
            var handle = signal.getMethod("handle", signal, handler);
            InvocationHandler once = (proxy, method, arguments) -> {
                if (method.getName().equals("handle")) {
                    handle.invoke(null, interrupt, usual);
                    action.run();
                    return null;
                }
                return method.getName().equals("hashCode") ? System.identityHashCode(proxy) : null;
            };
            Object taken = Proxy.newProxyInstance(ControlC.class.getClassLoader(), new Class<?>[] {handler}, once);
            handle.invoke(null, interrupt, taken);
            return () -> handle.invoke(null, interrupt, usual);
        } catch (ReflectiveOperationException | IllegalArgumentException e) {
            return () -> {};
        }
    }
}
