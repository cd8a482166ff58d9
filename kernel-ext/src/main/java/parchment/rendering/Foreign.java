package parchment.rendering;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import parchment.display.Showable;

/** What is known of the classes of other libraries, by their names; a library is loaded by whoever made the value, never from here. */
final class Foreign {
    private static final Map<String, Function<Object, Showable>> KNOWN = Map.of(
            "tech.tablesaw.table.Relation", value -> ForeignTables.ofTablesaw(value),
            "smile.data.DataFrame", value -> ForeignTables.ofSmile(value),
            "org.knowm.xchart.internal.chartpart.Chart", value -> ForeignChart.of(value),
            "java.awt.Image", value -> Pictures.of(value));

    private Foreign() {}

    static boolean knows(Class<?> type) {
        return !isPlain(type) && KNOWN.keySet().stream().anyMatch(name -> ClassNames.has(type, name));
    }

    static Optional<Showable> of(Object value) {
        Class<?> type = value.getClass();
        if (isPlain(type)) {
            return Optional.empty();
        }
        return KNOWN.entrySet().stream()
                .filter(known -> ClassNames.has(type, known.getKey()))
                .findFirst()
                .map(known -> known.getValue().apply(value));
    }

    /** Most values are; nothing need be looked up for them. */
    private static boolean isPlain(Class<?> type) {
        String name = type.getName();
        return type.isArray() || name.startsWith("java.lang.") || name.startsWith("java.util.");
    }
}
