package parchment.rendering;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Knows classes by name, so that none is loaded to find out whether a value is of it. */
final class ClassNames {
    /** What JShell puts before the name of a class that a cell defines. */
    private static final Pattern OF_A_CELL = Pattern.compile("^REPL\\.\\$JShell\\$\\w+\\$");

    private ClassNames() {}

    /** Tells whether the class, or one that it extends or implements, has the name; classes of cells have their own name alone. */
    static boolean has(Class<?> type, String name) {
        for (@Nullable Class<?> each = type; each != null; each = each.getSuperclass()) {
            if (isCalled(each, name)) {
                return true;
            }
            for (Class<?> implemented : each.getInterfaces()) {
                if (has(implemented, name)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isCalled(Class<?> type, String name) {
        String full = type.getName();
        return full.equals(name)
                || full.replace('$', '.').equals(name)
                || full.startsWith("REPL.")
                        && OF_A_CELL.matcher(full).replaceFirst("").equals(name);
    }
}
