package parchment.logbook;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.sheet.Header;
import parchment.sheet.Words;

/** Reads the settings of a curve layout. */
final class LayoutFile {
    static final List<String> KEYS = List.of(
            "delimiter",
            "decimal",
            "rows.to.skip",
            "headings",
            "time.form",
            "time",
            "bean.temperature",
            "air.temperature",
            "gas",
            "heater.power",
            "airflow",
            "drum.speed");

    /** What layouts of earlier logbooks call the air temperature. */
    private static final String AIR_BEFORE = "environment.temperature";

    private static final String LEFT_OUT = "setting left out";

    private LayoutFile() {}

    static CurveLayout of(Map<String, String> settings, ProblemLog problems) {
        CurveLayout layout = CurveLayout.standard();
        boolean timeOfDay = Header.name(settings.getOrDefault("time.form", "")).equals("time of day");
        for (Map.Entry<String, String> entry : settings.entrySet()) {
            String key = entry.getKey().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", ".");
            if (key.equals(AIR_BEFORE) && !settings.containsKey("air.temperature")) {
                key = "air.temperature";
            }
            if (!KEYS.contains(key)) {
                problems.add(
                        0,
                        "",
                        "a setting " + Words.quote(entry.getKey()),
                        "one of " + String.join(", ", KEYS) + "." + Words.didYouMean(key, KEYS),
                        LEFT_OUT);
                continue;
            }
            layout = with(layout, key, entry.getValue(), timeOfDay, problems);
        }
        return layout;
    }

    private static CurveLayout with(
            CurveLayout layout, String key, String value, boolean timeOfDay, ProblemLog problems) {
        String plain = Header.name(value);
        String expected = "";
        switch (key) {
            case "delimiter" -> {
                Optional<Character> sign = delimiter(plain);
                if (sign.isPresent()) {
                    return layout.withDelimiter(sign.get());
                }
                expected = "comma, semicolon, tab, blank, or one sign";
            }
            case "decimal" -> {
                if (plain.equals("point") || plain.equals("comma")) {
                    return layout.withDecimal(
                            plain.equals("point") ? CurveLayout.Decimal.POINT : CurveLayout.Decimal.COMMA);
                }
                expected = "point or comma";
            }
            case "rows.to.skip" -> {
                if (plain.matches("\\d{1,5}")) {
                    return layout.withRowsSkipped(Integer.parseInt(plain));
                }
                expected = "a number of rows, such as 3";
            }
            case "headings" -> {
                if (plain.equals("yes") || plain.equals("no")) {
                    return layout.withHeadings(
                            plain.equals("yes") ? CurveLayout.Headings.YES : CurveLayout.Headings.NO);
                }
                expected = "yes or no";
            }
            case "time.form" -> {
                if (plain.equals("elapsed") || timeOfDay) {
                    return layout;
                }
                expected = "elapsed or time of day";
            }
            default -> {
                try {
                    return column(layout, key, value, timeOfDay);
                } catch (IllegalArgumentException e) {
                    expected = "a column and its unit, such as 'Sensor 2 [°C]' or '#2 [°C]'. " + e.getMessage();
                }
            }
        }
        problems.add(0, key, Words.quote(value), expected, LEFT_OUT);
        return layout;
    }

    private static CurveLayout column(CurveLayout layout, String key, String value, boolean timeOfDay) {
        int bracket = value.endsWith("]") ? value.lastIndexOf('[') : -1;
        String column = (bracket < 0 ? value : value.substring(0, bracket)).strip();
        String unit = bracket < 0
                ? ""
                : value.substring(bracket + 1, value.length() - 1).strip();
        if (key.equals("time")) {
            return timeOfDay ? layout.withTimeOfDay(column) : layout.withTime(column, unit);
        }
        for (Quantity quantity : Quantity.values()) {
            if (quantity.words().replace(' ', '.').equals(key)) {
                return layout.with(quantity, column, unit);
            }
        }
        throw new IllegalStateException(key);
    }

    private static Optional<Character> delimiter(String name) {
        return switch (name) {
            case "comma" -> Optional.of(',');
            case "semicolon" -> Optional.of(';');
            case "tab", "\\t" -> Optional.of('\t');
            case "blank", "space" -> Optional.of(' ');
            default -> name.length() == 1 && name.charAt(0) != '"' ? Optional.of(name.charAt(0)) : Optional.empty();
        };
    }

    static String print(CurveLayout.Source source) {
        return source.unit().isEmpty() ? source.column() : source.column() + " [" + source.unit() + "]";
    }
}
