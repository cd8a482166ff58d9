package parchment.logbook;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import parchment.sheet.Words;

/**
 * Keeps the first of settings that are written more than once, and tells which stood there again; small and capital letters are one, and
 * so are the signs that stand for an attribute's blank.
 */
final class FirstOfEach extends Properties {
    private static final long serialVersionUID = 1L;

    private final transient Set<String> names = new HashSet<>();
    private final transient Map<String, String> again = new LinkedHashMap<>();

    @Override
    public synchronized @Nullable Object put(Object key, Object value) {
        String name = key.toString().strip().toLowerCase(Locale.ROOT);
        if (names.add(name.startsWith(Settings.SCALE) ? Settings.plain(name) : name)) {
            return super.put(key, value);
        }
        again.putIfAbsent(key.toString().strip(), value.toString().strip());
        return null;
    }

    @Override
    public synchronized void clear() {
        super.clear();
        again.clear();
    }

    void report(ProblemLog problems) {
        again.forEach((key, value) -> problems.add(
                0,
                "",
                "the setting " + Words.quote(key) + " again, as " + Words.quote(value),
                "each setting once, in small or capital letters",
                "the first one read"));
    }
}
