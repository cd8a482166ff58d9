package parchment.rendering;

import java.lang.reflect.Array;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.BaseStream;
import org.jspecify.annotations.Nullable;

/** Writes any value as text for a reader: what is in it, where Java would write an address, and no more of it than anybody reads. */
final class PlainText {
    /** So many members of a collection are written; the rest is counted. */
    static final int MEMBERS = 100;

    /** Collections within collections are written down to here. */
    static final int DEPTH = 6;

    /** No member is begun after so much text: a hundred lists of a hundred lists would otherwise fill the page. */
    static final int CHARACTERS = 20_000;

    private static final Pattern ADDRESS = Pattern.compile("[\\w.$/\\[;]+@[0-9a-f]+");

    private final StringBuilder out = new StringBuilder();
    private final Deque<Object> around = new ArrayDeque<>();

    private PlainText() {}

    static String of(@Nullable Object value) {
        PlainText text = new PlainText();
        text.write(value);
        return text.out.toString();
    }

    private void write(@Nullable Object value) {
        if (value == null) {
            out.append("null");
        } else if (value instanceof BaseStream<?, ?>) {
            out.append("a stream");
        } else if (value instanceof Optional<?> optional && optional.isPresent()) {
            within(value, () -> {
                out.append("Optional[");
                write(optional.get());
                out.append("]");
            });
        } else if (value.getClass().isArray()) {
            within(value, () -> array(value));
        } else if (value instanceof Collection<?> collection && isJavas(value)) {
            within(value, () -> members(collection, collection.size(), ", "));
        } else if (value instanceof Map<?, ?> map && isJavas(value)) {
            within(value, () -> map(map));
        } else {
            String text = String.valueOf(value.toString());
            out.append(ADDRESS.matcher(text).matches() ? nameless(value) : text);
        }
    }

    /** Writes what is in something, unless that is being written already, or lies too deep. */
    private void within(Object value, Runnable inside) {
        if (around.stream().anyMatch(each -> each == value)) {
            out.append("(the same ").append(kind(value)).append(" again)");
        } else if (around.size() == DEPTH) {
            out.append("(").append(kind(value)).append(" within)");
        } else {
            around.push(value);
            inside.run();
            around.pop();
        }
    }

    private static String kind(Object value) {
        return value instanceof Optional
                ? "optional"
                : value instanceof Map ? "map" : value.getClass().isArray() ? "array" : "list";
    }

    private void array(Object array) {
        int length = Array.getLength(array);
        boolean rows = array.getClass().getComponentType().isArray(); // An array of arrays is a table: one row a line.
        members(
                () -> new java.util.Iterator<>() {
                    private int next;

                    @Override
                    public boolean hasNext() {
                        return next < length;
                    }

                    @Override
                    public @Nullable Object next() {
                        return Array.get(array, next++);
                    }
                },
                length,
                rows ? ",\n " : ", ");
    }

    private void members(Iterable<? extends @Nullable Object> members, int length, String between) {
        out.append('[');
        int written = 0;
        for (Object member : members) {
            out.append(written == 0 ? "" : between);
            if (written == MEMBERS || out.length() > CHARACTERS) {
                out.append(rest(length));
                break;
            }
            write(member);
            written++;
        }
        out.append(']');
    }

    private void map(Map<?, ?> map) {
        out.append('{');
        int written = 0;
        for (Map.Entry<?, ?> entry : map.entrySet()) {
            out.append(written == 0 ? "" : ", ");
            if (written == MEMBERS || out.length() > CHARACTERS) {
                out.append(rest(map.size()));
                break;
            }
            write(entry.getKey());
            out.append('=');
            write(entry.getValue());
            written++;
        }
        out.append('}');
    }

    private static String rest(int length) {
        return String.format(Locale.ROOT, "... %,d in all", length);
    }

    private static boolean isJavas(Object value) {
        return value.getClass().getName().startsWith("java.");
    }

    private static String nameless(Object value) {
        Class<?> type = value.getClass();
        if (type.isSynthetic() || type.isHidden()) {
            return "a function (->)";
        }
        String name = type.getSimpleName();
        return name.isEmpty() || name.contains("$")
                ? "an object of a class without a name"
                : "an object of type " + name + " (it has no toString() that says what is in it)";
    }
}
