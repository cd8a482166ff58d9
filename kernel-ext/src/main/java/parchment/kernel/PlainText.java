package parchment.kernel;

import java.lang.reflect.Array;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.BaseStream;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Writes any value as text for a reader: what is in it, where Java would write an address. */
final class PlainText {
    /** So many members of a collection are written; the rest is counted. */
    private static final int MEMBERS = 100;

    private static final Pattern ADDRESS = Pattern.compile("[\\w.$/\\[;]+@[0-9a-f]+");

    private PlainText() {}

    static String of(@Nullable Object value) {
        if (value == null) {
            return "null";
        }
        if (value instanceof BaseStream<?, ?>) {
            return "a stream that was not read: end it with .toList() to see what is in it";
        }
        if (value.getClass().isArray()) {
            return array(value);
        }
        if (value instanceof Collection<?> collection && isJavas(value)) {
            return list(collection, collection.size());
        }
        if (value instanceof Map<?, ?> map && isJavas(value)) {
            return map(map);
        }
        String text = String.valueOf(value.toString());
        return ADDRESS.matcher(text).matches() ? nameless(value) : text;
    }

    private static String array(Object array) {
        int length = Array.getLength(array);
        List<Object> members = new ArrayList<>();
        for (int i = 0; i < Math.min(length, MEMBERS); i++) {
            members.add(Array.get(array, i));
        }
        Class<?> member = array.getClass().getComponentType();
        return member.isArray() ? rows(members, length) : list(members, length);
    }

    /** An array of arrays is a table: one row a line. */
    private static String rows(List<Object> rows, int length) {
        return rows.stream()
                .map(PlainText::of)
                .collect(Collectors.joining(",\n ", "[", length > rows.size() ? ",\n " + rest(length) + "]" : "]"));
    }

    private static String list(Collection<?> members, int length) {
        return members.stream()
                .limit(MEMBERS)
                .map(PlainText::member)
                .collect(Collectors.joining(", ", "[", length > MEMBERS ? ", " + rest(length) + "]" : "]"));
    }

    private static String map(Map<?, ?> map) {
        return map.entrySet().stream()
                .limit(MEMBERS)
                .map(entry -> member(entry.getKey()) + "=" + member(entry.getValue()))
                .collect(Collectors.joining(", ", "{", map.size() > MEMBERS ? ", " + rest(map.size()) + "}" : "}"));
    }

    /** What is inside something inside is written as Java writes it, for a collection may hold itself. */
    private static String member(@Nullable Object member) {
        return member != null && member.getClass().isArray() ? of(member) : String.valueOf(member);
    }

    private static String rest(int length) {
        return String.format(java.util.Locale.ROOT, "... %,d in all", length);
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
