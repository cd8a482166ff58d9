package parchment.kernel.cell;

import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import jdk.jshell.execution.DirectExecutionControl;
import jdk.jshell.spi.ExecutionControl;
import jdk.jshell.spi.ExecutionControlProvider;
import jdk.jshell.spi.ExecutionEnv;
import org.jspecify.annotations.Nullable;
import parchment.kernel.stop.CellStop;
import parchment.kernel.stop.CellThread;
import parchment.kernel.stop.CellThrew;
import parchment.kernel.stop.Guarding;

/**
 * Loads and runs what JShell compiles, in this very process on the thread of cells, and keeps the value a snippet gave: JShell itself
 * would keep only its text, which cannot be drawn.
 */
final class CellControl extends DirectExecutionControl {
    private static final Pattern SNIPPET_CLASS = Pattern.compile("REPL\\.\\$JShell\\$\\w+");
    /** What JShell puts before the name of a class that a cell defines. */
    private static final Pattern OF_A_CELL = Pattern.compile("REPL\\.\\$JShell\\$\\w+[.$]");

    private @Nullable Object value;
    private @Nullable Throwable thrown;
    private final Map<String, Class<?>> holders = new HashMap<>();
    private final CellThread thread = new CellThread();
    private final CompileNotice compiling = new CompileNotice();
    private final Guarding guarding = new Guarding();
    private @Nullable ClassLoader loader;

    /** Returns a provider that hands this control to one JShell. */
    ExecutionControlProvider provider() {
        return new ExecutionControlProvider() {
            @Override
            public String name() {
                return "parchment";
            }

            @Override
            public ExecutionControl generate(ExecutionEnv environment, Map<String, String> parameters) {
                return CellControl.this;
            }
        };
    }

    @Override
    public void load(ClassBytecodes[] classes)
            throws ClassInstallException, NotImplementedException, EngineTerminationException {
        ClassBytecodes[] guarded = Arrays.stream(classes)
                .map(c -> new ClassBytecodes(c.name(), guarding.guard(c.bytecodes())))
                .toArray(ClassBytecodes[]::new);
        super.load(guarded);
        if (loader == null && guarded.length > 0) {
            loader = loaderOf(guarded[0].name());
        }
        for (ClassBytecodes loaded : guarded) {
            if (SNIPPET_CLASS.matcher(loaded.name()).matches()) {
                noteVariables(loaded.name());
            }
        }
    }

    private @Nullable ClassLoader loaderOf(String className) {
        try {
            return findClass(className).getClassLoader();
        } catch (ClassNotFoundException e) {
            return null;
        }
    }

    /** Returns what finds the classes that a cell can name; null before the first snippet. */
    @Nullable
    ClassLoader loader() {
        return loader;
    }

    private void noteVariables(String className) {
        try {
            Class<?> holder = findClass(className);
            for (Field field : holder.getDeclaredFields()) {
                if (Modifier.isStatic(field.getModifiers())
                        && !field.isSynthetic()) { // The compiler's own are no variables.
                    holders.put(field.getName(), holder);
                }
            }
        } catch (ClassNotFoundException | LinkageError e) {
            // A class that cannot be linked has no variables to note; JShell reports the reason when it runs.
        }
    }

    @Override
    protected String invoke(Method snippet) throws Exception {
        value = null;
        thrown = null;
        compiling.pause();
        try {
            value = thread.call(() -> {
                // A library of a reader's that looks for its own parts asks the thread where classes are.
                Thread.currentThread().setContextClassLoader(loader);
                try {
                    return snippet.invoke(null);
                } catch (InvocationTargetException e) {
                    throw new CellThrew(Objects.requireNonNull(e.getCause()));
                }
            });
        } catch (CellThrew e) {
            thrown = e.getCause();
            throw new InvocationTargetException(e.forJShell());
        } catch (CellStop stop) {
            thrown = stop;
            throw new InvocationTargetException(stop);
        } finally {
            compiling.resume();
        }
        return "";
    }

    @Override
    public String varValue(String className, String variable) {
        return ""; // JShell asks after each snippet; making text of a large value would be wasted work.
    }

    /** Forgets the last snippet's value, so that it is not kept alive by having been shown. */
    void forget() {
        value = null;
        thrown = null;
    }

    /** Returns the value of the last snippet run; null also when it gave none. */
    @Nullable
    Object value() {
        return value;
    }

    /** Returns what the last snippet run threw, with its causes, or null. */
    @Nullable
    Throwable thrown() {
        return thrown;
    }

    /** Returns which class holds each variable of the session now, by the variable's name. */
    Map<String, Class<?>> holders() {
        return Map.copyOf(holders);
    }

    /** Returns what a variable of the session holds; null also where there is no such variable. */
    @Nullable
    Object valueOf(String variable) {
        Class<?> holder = holders.get(variable);
        if (holder == null) {
            return null;
        }
        try {
            Field field = holder.getDeclaredField(variable);
            field.setAccessible(true);
            return field.get(null);
        } catch (ReflectiveOperationException | RuntimeException | LinkageError e) {
            return null; // It cannot be looked into; what else is known of it is told.
        }
    }

    /** Returns what the variables of the session hold, in no order. */
    Stream<?> values() {
        return holders.keySet().stream().map(this::valueOf).filter(Objects::nonNull);
    }

    /** Returns what tells the reader of a cell that is compiled for long. */
    CompileNotice compiling() {
        return compiling;
    }

    /** Returns the thread that runs what cells do. */
    CellThread thread() {
        return thread;
    }

    /** Returns what the reader is to know of a cell that could not be guarded; told once. */
    Optional<String> untold() {
        return guarding.untold();
    }

    /**
     * Lets go of a variable's value in a class that no longer holds the variable: JShell keeps the class of each snippet for good,
     * and a logbook in a field of each would fill the memory.
     */
    static void release(String variable, Class<?> holder) {
        try {
            Field field = holder.getDeclaredField(variable);
            if (!field.getType().isPrimitive() && !Modifier.isFinal(field.getModifiers())) {
                field.setAccessible(true);
                field.set(null, null);
            }
        } catch (ReflectiveOperationException | RuntimeException e) {
            return; // Kept alive, then; nothing else depends on it.
        }
    }

    /** Returns the type of a variable as a cell can write it whatever is imported; nothing if it cannot be written. */
    static Optional<String> typeOf(String variable, Class<?> holder) {
        try {
            String type = holder.getDeclaredField(variable).getGenericType().getTypeName();
            return Optional.of(OF_A_CELL.matcher(type).replaceAll("").replace('$', '.'));
        } catch (ReflectiveOperationException | LinkageError | RuntimeException e) {
            return Optional.empty();
        }
    }

    /**
     * Copies a variable's value to the class that holds the variable now.
     *
     * @return false if the value does not fit there, because its type is another now
     */
    static boolean carryOver(String variable, Class<?> from, Class<?> to) {
        try {
            Field old = from.getDeclaredField(variable);
            Field now = to.getDeclaredField(variable);
            old.setAccessible(true);
            now.setAccessible(true);
            now.set(null, old.get(null));
            return true;
        } catch (ReflectiveOperationException | RuntimeException e) {
            return false;
        }
    }
}
