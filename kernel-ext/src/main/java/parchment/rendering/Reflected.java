package parchment.rendering;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Asks an object whose class was not there when this was compiled, by the names of its public methods. */
final class Reflected {
    private final Object object;

    private Reflected(Object object) {
        this.object = object;
    }

    static Reflected of(Object object) {
        return new Reflected(object);
    }

    boolean has(String method, Class<?>... parameters) {
        return find(object.getClass(), method, parameters).isPresent();
    }

    /** Calls a method without parameters. */
    @Nullable
    Object get(String method) {
        return call(method, new Class<?>[0]);
    }

    /** Calls a method that gives text; empty if it gives none. */
    String text(String method) {
        Object text = get(method);
        return text == null ? "" : text.toString();
    }

    /** Calls a method that gives a whole number. */
    int number(String method) {
        return get(method) instanceof Number number ? number.intValue() : 0;
    }

    /** Calls a method with arguments of those types. */
    @Nullable
    Object call(String method, Class<?>[] parameters, Object... arguments) {
        Method found = find(object.getClass(), method, parameters)
                .orElseThrow(() ->
                        new IllegalStateException("A " + object.getClass().getSimpleName() + " of this version has no "
                                + method + "(), by which it could be shown. Its text is: " + object));
        try {
            return found.invoke(object, arguments);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A method can be called only as a member of a public class, which the object's own need not be. */
    private static Optional<Method> find(@Nullable Class<?> type, String name, Class<?>... parameters) {
        if (type == null) {
            return Optional.empty();
        }
        if (Modifier.isPublic(type.getModifiers())) {
            Optional<Method> here = Arrays.stream(type.getMethods())
                    .filter(method -> method.getName().equals(name)
                            && Arrays.equals(method.getParameterTypes(), parameters)
                            && Modifier.isPublic(method.getDeclaringClass().getModifiers()))
                    .findFirst();
            if (here.isPresent()) {
                return here;
            }
        }
        for (Class<?> implemented : type.getInterfaces()) {
            Optional<Method> there = find(implemented, name, parameters);
            if (there.isPresent()) {
                return there;
            }
        }
        return find(type.getSuperclass(), name, parameters);
    }
}
