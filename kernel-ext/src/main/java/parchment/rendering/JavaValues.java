package parchment.rendering;

import java.lang.reflect.Array;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.BaseStream;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;
import parchment.display.Table;

/** Shows what Java itself has: members each in its own form, records and rows of numbers as a table, and what text alone says badly. */
final class JavaValues {
    private JavaValues() {}

    /** Returns how the value is shown; nothing where its text says it all. */
    static Optional<Showable> of(Object value, Renderers renderers) {
        if (value instanceof Optional<?> optional) {
            return optional.filter(inner -> isRich(inner, renderers)).map(renderers::of);
        }
        if (value instanceof Collection<?> collection) {
            return ofMembers(collection, collection, renderers);
        }
        if (value.getClass().isArray()) {
            return ofArray(value, renderers);
        }
        if (value instanceof Map<?, ?> map) {
            return ofMap(map, renderers);
        }
        if (value instanceof BaseStream<?, ?> stream) {
            return Optional.of(FirstElements.ofStream(stream, renderers));
        }
        if (value instanceof java.util.Iterator<?> iterator && FirstElements.mayBeTaken(iterator)) {
            return Optional.of(FirstElements.ofIterator(iterator, renderers));
        }
        if (value instanceof Throwable error) {
            return Optional.of(new Renderers.Words(
                    "An error as a value; nothing was thrown here.\n" + String.join("\n", renderers.inWords(error))));
        }
        return Optional.empty();
    }

    private static boolean isRich(@Nullable Object value, Renderers renderers) {
        return value != null
                && (renderers.showsItself(value)
                        || value instanceof Throwable
                        || of(value, renderers).isPresent());
    }

    private static Optional<Showable> ofArray(Object array, Renderers renderers) {
        Class<?> component = array.getClass().getComponentType();
        if (component.isPrimitive()) {
            return Optional.empty();
        }
        return ofMembers(Arrays.asList((Object[]) array), array, renderers);
    }

    /** @param whole what is shown, of which these are the members */
    private static Optional<Showable> ofMembers(Collection<?> members, Object whole, Renderers renderers) {
        if (members.isEmpty()) {
            return Optional.empty();
        }
        if (members.stream().allMatch(renderers::showsItself)) {
            return Optional.of(Members.of(members, renderers));
        }
        if (members.stream().allMatch(Throwable.class::isInstance)) {
            return Optional.of(errors(members, renderers));
        }
        Optional<Table> records = RecordTable.of(members);
        return records.isPresent() ? records.map(Showable.class::cast) : rows(members, whole);
    }

    private static Table errors(Collection<?> members, Renderers renderers) {
        List<Throwable> errors = members.stream()
                .limit(ValueTable.ROWS)
                .map(Throwable.class::cast)
                .toList();
        List<List<String>> words = errors.stream().map(renderers::inWords).toList();
        return ValueTable.titled(
                        ValueTable.counted(members.size(), "error") + ", none of them thrown here", members.size())
                .column("error", row -> words.get(row).get(0))
                .column(
                        "what else is known",
                        row -> String.join(
                                " ", words.get(row).subList(1, words.get(row).size())))
                .table();
    }

    /** Rows of equal length are a table: arrays of arrays, lists of arrays, lists of lists. */
    private static Optional<Showable> rows(Collection<?> members, Object whole) {
        int length = length(members.iterator().next());
        if (length < 1 || members.stream().anyMatch(member -> length(member) != length)) {
            return Optional.empty();
        }
        List<?> rows = members.stream().limit(ValueTable.ROWS).toList();
        String title = "An array of " + ValueTable.counted(members.size(), "row") + " and "
                + ValueTable.counted(length, "column");
        ValueTable table = ValueTable.titled(
                        whole.getClass().isArray() ? title : title.replace("An array", "A list"), members.size())
                .column("row", row -> row);
        IntStream.range(0, length)
                .forEach(column -> table.column(String.valueOf(column), row -> member(rows.get(row), column)));
        Table made = table.table().withNote("Rows and columns count from 0, as in Java.");
        return Optional.of(new Renderers.Page(PlainText.of(whole), made.html().orElseThrow()));
    }

    /** Returns how many cells a row has; -1 if the value is no row of cells. */
    private static int length(@Nullable Object row) {
        if (row == null) {
            return -1;
        }
        if (row.getClass().isArray()) {
            boolean cells = !row.getClass().getComponentType().isArray();
            return cells ? Array.getLength(row) : -1;
        }
        return row instanceof List<?> list && list.stream().noneMatch(JavaValues::isCollection) ? list.size() : -1;
    }

    private static boolean isCollection(@Nullable Object value) {
        return value instanceof Collection
                || value instanceof Map
                || value != null && value.getClass().isArray();
    }

    private static @Nullable Object member(@Nullable Object row, int column) {
        return row instanceof List<?> list ? list.get(column) : row == null ? null : Array.get(row, column);
    }

    private static Optional<Showable> ofMap(Map<?, ?> map, Renderers renderers) {
        if (map.isEmpty()) {
            return Optional.empty();
        }
        if (map.values().stream().allMatch(renderers::showsItself)) {
            return Optional.of(Members.of(map, renderers));
        }
        List<Map.Entry<?, ?>> entries = new ArrayList<>();
        map.entrySet().stream().limit(ValueTable.ROWS).forEach(entries::add);
        String title = String.format(Locale.ROOT, "A map of %,d %s", map.size(), map.size() == 1 ? "entry" : "entries");
        ValueTable table = ValueTable.titled(title, map.size())
                .column("key", row -> entries.get(row).getKey());
        if (entries.size() < map.size() || !RecordTable.add(table, map.values())) {
            table.column("value", row -> entries.get(row).getValue());
        }
        return Optional.of(
                new Renderers.Page(PlainText.of(map), table.table().html().orElseThrow()));
    }

    /** Returns the members as a list that may hold nothing at a place. */
    static List<@Nullable Object> listOf(Collection<?> members, int most) {
        List<@Nullable Object> list = new ArrayList<>();
        for (Object member : members) {
            if (list.size() == most) {
                break;
            }
            list.add(member);
        }
        return list;
    }

    static boolean anyPresent(Collection<?> members) {
        return members.stream().anyMatch(Objects::nonNull);
    }
}
