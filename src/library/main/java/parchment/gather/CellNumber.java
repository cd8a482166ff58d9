package parchment.gather;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Numbers;

/**
 * Reads a number with the unit that stands beside it in its cell, as in "5 kg", "14,2 %" or "205°C".
 *
 * @param value the number
 * @param unit the unit as written, "" if none stands there
 */
record CellNumber(double value, String unit) {
    private static final Pattern WITH_UNIT =
            Pattern.compile("([+-]?[\\d.,'\\u2019\\u00A0 ]*\\d[.,]?)\\s*([°º]?\\s?\\p{L}{1,4}\\.?|%|[°º])?");
    private static final Pattern TWO_UNITS =
            Pattern.compile("(?i)(\\d+(?:[.,]\\d+)?)\\s*(lbs?|kg)\\.?,?\\s*(\\d+(?:[.,]\\d+)?)\\s*(oz|g|gr|gram)\\.?");
    private static final Pattern POINT_LAST = Pattern.compile("[+-]?\\d{1,3}(,\\d{3})+\\.\\d+");
    private static final Pattern COMMA_LAST = Pattern.compile("[+-]?\\d{1,3}(\\.\\d{3})+,\\d+");
    private static final Pattern GROUPS = Pattern.compile(
            "[+-]?\\d{1,3}([.,'\\u2019 \\u00A0])\\d{3}(\\1\\d{3})+|[+-]?\\d{1,3}(['\\u2019 \\u00A0]\\d{3})+");

    /** Reads a cell; empty if it is no number. */
    static Optional<CellNumber> of(String cell, Numbers.Decimal decimal) {
        double plain = Numbers.parse(cell, decimal);
        if (!Double.isNaN(plain)) {
            return Optional.of(new CellNumber(plain, ""));
        }
        if (cell.isEmpty() || cell.length() > 20 || cell.indexOf(':') >= 0) {
            return Optional.empty();
        }
        Matcher both = TWO_UNITS.matcher(cell.strip());
        if (both.matches()) {
            return twoUnits(both);
        }
        Matcher matcher = WITH_UNIT.matcher(cell.strip());
        if (!matcher.matches()) {
            return Optional.empty();
        }
        double value = figure(matcher.group(1).strip(), decimal);
        String unit = matcher.group(2) == null ? "" : matcher.group(2).replaceAll("[.\\s]", "");
        boolean known = unit.isEmpty() || isUnit(unit);
        return Double.isNaN(value) || !known ? Optional.empty() : Optional.of(new CellNumber(value, unit));
    }

    /** "5 lb 4 oz" is 5.25 lb, and "4 kg 500 g" 4.5 kg; ounces do not go with kilograms. */
    private static Optional<CellNumber> twoUnits(Matcher both) {
        boolean pounds = both.group(2).toLowerCase(Locale.ROOT).startsWith("lb");
        boolean ounces = both.group(4).equalsIgnoreCase("oz");
        double large = Numbers.parse(both.group(1), Numbers.Decimal.EITHER);
        double small = Numbers.parse(both.group(3), Numbers.Decimal.EITHER);
        return pounds == ounces
                ? Optional.of(new CellNumber(large + small / (pounds ? 16 : 1000), pounds ? "lb" : "kg"))
                : Optional.empty();
    }

    private static double figure(String written, Numbers.Decimal decimal) {
        if (POINT_LAST.matcher(written).matches()) {
            return Numbers.parse(written.replace(",", ""), Numbers.Decimal.POINT);
        }
        if (COMMA_LAST.matcher(written).matches()) {
            return Numbers.parse(written.replace(".", "").replace(',', '.'), Numbers.Decimal.POINT);
        }
        if (GROUPS.matcher(written).matches()) {
            return Numbers.parse(written.replaceAll("[^\\d+-]", ""), Numbers.Decimal.POINT);
        }
        return Numbers.parse(written, decimal == Numbers.Decimal.POINT ? Numbers.Decimal.EITHER : decimal);
    }

    /** Returns whether some letters are a unit of a list: masses, temperatures, times, shares. */
    static boolean isUnit(String unit) {
        return unit.toLowerCase(Locale.ROOT)
                .matches("kgs?|kilo|g|gr|gram|lbs?|oz|[°º]?[cfk]?|%|s|sec|sek|min|m|h|hpa|mbar|mb|rpm|g/l");
    }
}
