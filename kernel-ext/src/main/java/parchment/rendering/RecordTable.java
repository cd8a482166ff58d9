package parchment.rendering;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.display.Table;

/** Shows records of one class as a table: a row for each, a column for each component. */
final class RecordTable {
    private RecordTable() {}

    /** Returns the table; nothing if these are not all records of one class that can be looked into. */
    static Optional<Table> of(Collection<?> members) {
        Optional<Class<?>> type = typeOf(members);
        if (type.isEmpty()) {
            return Optional.empty();
        }
        ValueTable table = ValueTable.titled(
                type.get().getSimpleName() + ", " + ValueTable.counted(members.size(), "row"), members.size());
        return add(table, members) ? Optional.of(table.table()) : Optional.empty();
    }

    /** Adds a column for each component; returns false, and adds nothing, if these are not all records of one class. */
    static boolean add(ValueTable table, Collection<?> members) {
        Optional<Class<?>> type = typeOf(members);
        if (type.isEmpty()) {
            return false;
        }
        List<@Nullable Object> rows = JavaValues.listOf(members, ValueTable.ROWS);
        RecordComponent[] components = type.get().getRecordComponents();
        for (RecordComponent component : components) {
            if (!component.getAccessor().trySetAccessible()) {
                return false;
            }
        }
        for (RecordComponent component : components) {
            table.column(component.getName(), row -> rows.get(row) == null ? null : value(component, rows.get(row)));
        }
        return true;
    }

    private static Optional<Class<?>> typeOf(Collection<?> members) {
        List<Class<?>> types = members.stream()
                .filter(Objects::nonNull)
                .<Class<?>>map(Object::getClass)
                .distinct()
                .limit(2)
                .toList();
        boolean one =
                types.size() == 1 && types.get(0).isRecord() && types.get(0).getRecordComponents().length > 0;
        return one ? Optional.of(types.get(0)) : Optional.empty();
    }

    private static @Nullable Object value(RecordComponent component, @Nullable Object of) {
        try {
            Object value = component.getAccessor().invoke(of);
            return value instanceof Optional<?> optional ? optional.orElse(null) : value;
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof Error error) {
                throw error; // A stop of the cell among them.
            }
            return "(" + component.getName() + "() failed: " + e.getCause() + ")";
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }
}
