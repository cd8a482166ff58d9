package parchment.virtual;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.display.answer.Spelling;

/** Reads one section of a scenario whose lines have been checked. */
final class ScenarioSection {
    /** A value and the line it stands on. */
    record Entry(String value, int line) {}

    private final SectionKind kind;
    private final String title;
    private final String place;
    private final Map<String, Entry> entries;

    /**
     * @param place the file and the heading's line, for messages
     */
    ScenarioSection(SectionKind kind, String title, String place, Map<String, Entry> entries) {
        this.kind = kind;
        this.title = title;
        this.place = place;
        this.entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }

    SectionKind kind() {
        return kind;
    }

    String title() {
        return title;
    }

    LocalDate day() {
        return LocalDate.parse(title);
    }

    boolean has(String key) {
        setting(key);
        return entries.containsKey(key);
    }

    String text(String key) {
        return value(key).orElseThrow();
    }

    String choice(String key) {
        return value(key).orElseThrow().toLowerCase(Locale.ROOT);
    }

    String textOr(String key, String otherwise) {
        return entries.containsKey(setting(key).key()) ? text(key) : otherwise;
    }

    double number(String key) {
        return Double.parseDouble(value(key).orElseThrow());
    }

    double numberOr(String key, double otherwise) {
        return has(key) ? number(key) : otherwise;
    }

    int whole(String key) {
        return Integer.parseInt(value(key).orElseThrow());
    }

    /** Returns per cents as a share, the number nearest to the decimal that was written. */
    double share(String key) {
        return new BigDecimal(value(key).orElseThrow()).movePointLeft(2).doubleValue();
    }

    double shareOr(String key, double otherwise) {
        return has(key) ? share(key) : otherwise;
    }

    LocalDate date(String key) {
        return LocalDate.parse(value(key).orElseThrow());
    }

    LocalDate dateOr(String key, LocalDate otherwise) {
        return has(key) ? date(key) : otherwise;
    }

    /**
     * Returns points in the order of the attributes, the given ones where none are named.
     *
     * @throws IllegalArgumentException if an attribute is unknown or its points are no number
     */
    List<Double> points(String key, List<String> attributes, List<Double> otherwise) {
        if (!has(key)) {
            return otherwise;
        }
        List<Double> points = new ArrayList<>(otherwise);
        for (String part : text(key).split(",")) {
            String pair = part.strip();
            int blank = pair.lastIndexOf(' ');
            String name = blank < 0 ? pair : pair.substring(0, blank).strip();
            int index = attributes.indexOf(name);
            if (index < 0) {
                throw wrong(
                        key,
                        "names the attribute '" + name + "', which has no section [attribute: " + name + "]."
                                + Spelling.question(name, attributes));
            }
            try {
                points.set(index, new BigDecimal(pair.substring(blank + 1)).doubleValue());
            } catch (NumberFormatException e) {
                throw wrong(key, "expects " + setting(key).expected() + ", but was given '" + pair + "'.");
            }
        }
        return points;
    }

    /** Returns an error that points to the line of a key. */
    IllegalArgumentException wrong(String key, String words) {
        Entry entry = entries.get(key);
        String where = entry == null ? place : place.replaceAll("line [0-9]+$", "line " + entry.line());
        return new IllegalArgumentException(where + ": '" + setting(key).written() + "' " + words);
    }

    private Optional<String> value(String key) {
        Setting setting = setting(key);
        Entry entry = entries.get(key);
        if (entry != null) {
            return Optional.of(entry.value());
        }
        return setting.fallback().startsWith("(") ? Optional.empty() : Optional.of(setting.fallback());
    }

    private Setting setting(String key) {
        return kind.setting(key)
                .orElseThrow(() -> new IllegalStateException("[" + kind.word() + "] has no setting " + key));
    }
}
