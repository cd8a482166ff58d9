package parchment.gather;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Header;
import parchment.sheet.Numbers;

/** What a proposal of a column's meaning looks at: its heading and what its values look like. */
final class ColumnValues {
    private static final Pattern UNIT_AT_END = Pattern.compile(
            "(?i).*[\\s_/,-](kgs?|g|gr|grams?|lbs?|oz|[°º]\\s?[cfk]|[cf]|%|s|secs?|sek|min|mins|min:s|mm:ss|m:ss|h:mm)\\.?$");
    private static final Pattern BRACKETS = Pattern.compile("[\\[(]([^\\])]{1,8})[\\])]");
    private static final double MOSTLY = 0.85;

    private final int place;
    private final String heading;
    private final TradeWords.Named named;
    private final List<String> cells;
    private final int[] forms = new int[CellForm.values().length];
    private final double[] numbers;
    private final double[] written;
    private final Map<Character, ThreeDigits> digits;
    private final Numbers.Decimal decimal;
    private final String unit;
    private final int distinct;
    private final int wordCount;

    private ColumnValues(FoundTable table, int place, String known) {
        this.place = place;
        this.heading = table.headings().get(place);
        this.named = TradeWords.of(heading);
        this.cells = table.column(place);
        this.decimal = table.sheet().decimal();
        this.numbers = new double[cells.size()];
        TreeMap<String, Integer> units = new TreeMap<>();
        String[] own = new String[numbers.length];
        Set<String> different = new HashSet<>();
        int words = 0;
        for (int i = 0; i < numbers.length; i++) {
            CellForm form = CellForm.of(cells.get(i));
            forms[form.ordinal()]++;
            numbers[i] = Double.NaN;
            if (form == CellForm.NUMBER) {
                Optional<CellNumber> number = CellNumber.of(cells.get(i), decimal);
                numbers[i] = number.map(CellNumber::value).orElse(Double.NaN);
                own[i] = number.map(n -> plainUnit(n.unit())).orElse("");
                if (!own[i].isEmpty()) {
                    units.merge(own[i], 1, Integer::sum);
                }
            }
            if (form != CellForm.BLANK) {
                different.add(cells.get(i).toLowerCase(Locale.ROOT));
                words += cells.get(i).strip().split("\\s+").length;
            }
        }
        distinct = different.size();
        wordCount = words;
        unit = (known.isEmpty() ? statedUnit(heading) : Optional.of(known))
                .or(() -> units.entrySet().stream()
                        .max(Map.Entry.comparingByValue())
                        .filter(most -> 2 * alike(units, most.getKey()) > count(CellForm.NUMBER))
                        .map(Map.Entry::getKey))
                .orElse("");
        digits = digits(table);
        for (int i = 0; i < numbers.length; i++) {
            boolean thousands = !Double.isNaN(numbers[i]) && digits(i) == ThreeDigits.THOUSANDS;
            numbers[i] = thousands ? Math.round(1000 * numbers[i]) : numbers[i];
        }
        written = numbers.clone();
        convert(own);
    }

    private Map<Character, ThreeDigits> digits(FoundTable table) {
        Map<Character, ThreeDigits> found = new TreeMap<>();
        for (String cell : cells) {
            if (ThreeDigits.isAmbiguous(cell)) {
                found.computeIfAbsent(ThreeDigits.sign(cell), sign -> ThreeDigits.of(table, place, sign, unit));
            }
        }
        return found;
    }

    /** Returns what the three digits behind a row's point or comma are; decimals where there are none. */
    ThreeDigits digits(int row) {
        return ThreeDigits.isAmbiguous(cells.get(row))
                ? digits.getOrDefault(ThreeDigits.sign(cells.get(row)), ThreeDigits.DECIMALS)
                : ThreeDigits.DECIMALS;
    }

    /** Returns how many cells carry a unit that can be converted to the given one, itself among them. */
    private static int alike(Map<String, Integer> units, String unit) {
        return units.entrySet().stream()
                .filter(each -> each.getKey().equals(unit)
                        || CellUnit.between(each.getKey(), unit).isPresent())
                .mapToInt(Map.Entry::getValue)
                .sum();
    }

    /** One column may hold "4,5 kg" and "900 g": each is what its own unit says. */
    private void convert(String[] own) {
        for (int i = 0; i < numbers.length; i++) {
            double bare = written[i];
            if (own[i] != null && !own[i].equals(unit)) {
                numbers[i] = CellUnit.between(own[i], unit)
                        .map(conversion -> conversion.of(bare))
                        .orElse(bare);
            }
        }
    }

    /** Returns whether a row's number carries a unit of its own. */
    boolean hasUnit(int row) {
        return CellNumber.of(cells.get(row), decimal)
                .filter(n -> !n.unit().isEmpty())
                .isPresent();
    }

    static ColumnValues of(FoundTable table, int place) {
        return new ColumnValues(table, place, "");
    }

    /** Returns the values of a column whose unit was found or answered; "" if it is not known. */
    static ColumnValues of(FoundTable table, int place, String unit) {
        return new ColumnValues(table, place, unit);
    }

    /** Returns the unit that a heading states, as the logbook writes it. */
    static Optional<String> statedUnit(String heading) {
        Header header = Header.parse(heading);
        if (header.brackets() != Header.Brackets.NONE) {
            return Optional.of(plainUnit(header.unit())).filter(unit -> !unit.isEmpty());
        }
        // The name of a group may have the unit: "Weights (lb) green".
        Matcher inside = BRACKETS.matcher(header.written());
        if (inside.find() && CellNumber.isUnit(inside.group(1).strip())) {
            return Optional.of(plainUnit(inside.group(1)));
        }
        Matcher end = UNIT_AT_END.matcher(" " + header.written());
        if (end.matches()) {
            return Optional.of(plainUnit(end.group(1)));
        }
        return header.written().contains("%")
                ? Optional.of("%")
                : TradeWords.massFirst(header.written()).map(ColumnValues::plainUnit);
    }

    /** Returns a unit as the logbook writes it. */
    static String plainUnit(String written) {
        String plain = written.toLowerCase(Locale.ROOT).replaceAll("[\\s.]", "");
        return switch (plain) {
            case "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms" -> "kg";
            case "g", "gr", "gram", "grams", "gramm", "gramo", "grama", "gramme", "grammi" -> "g";
            case "lb", "lbs", "pounds", "pound" -> "lb";
            case "oz", "ounce", "ounces" -> "oz";
            case "c", "°c", "ºc", "celsius", "\uFFFDc" -> "°C";
            case "f", "°f", "ºf", "fahrenheit", "\uFFFDf" -> "°F";
            case "k", "°k" -> "K";
            case "s", "sec", "secs", "sek", "seg", "seconds" -> ColumnTimes.SECONDS;
            case "min", "mins", "minutes", "minuten", "minutos" -> ColumnTimes.MINUTES;
            case "min:s", "mm:ss", "m:ss", "m:s", "min:sec", "min:sek", "min:seg" -> ColumnTimes.MINUTES_AND_SECONDS;
            case "h:min:s", "hh:mm:ss", "h:mm:ss" -> ColumnTimes.HOURS;
            default -> written.strip();
        };
    }

    int place() {
        return place;
    }

    String heading() {
        return heading;
    }

    TradeWords.Named named() {
        return named;
    }

    List<String> cells() {
        return cells;
    }

    Numbers.Decimal decimal() {
        return decimal;
    }

    /** Returns the unit that stands in the heading or beside the values; "" if none does. */
    String unit() {
        return unit;
    }

    int count(CellForm form) {
        return forms[form.ordinal()];
    }

    int filled() {
        return cells.size() - count(CellForm.BLANK);
    }

    boolean mostly(CellForm form) {
        return filled() > 0 && count(form) >= MOSTLY * filled();
    }

    int distinct() {
        return distinct;
    }

    /** Returns how many words a value has on average. */
    double wordsEach() {
        return filled() == 0 ? 0 : wordCount / (double) filled();
    }

    /** Returns a row's number as it is written, whatever unit it carries; NaN where none stands. */
    double written(int row) {
        return written[row];
    }

    /** Returns a row's number in the column's unit, NaN where none stands. */
    double number(int row) {
        return numbers[row];
    }

    /** Returns the value that the given share of the numbers does not exceed. */
    double quantile(double share) {
        return quantile(numbers, share);
    }

    static double quantile(double[] values, double share) {
        double[] sorted = Arrays.stream(values)
                .filter(value -> !Double.isNaN(value))
                .sorted()
                .toArray();
        return sorted.length == 0 ? Double.NaN : sorted[(int) Math.round((sorted.length - 1) * share)];
    }

    /** Returns whether another column says the same row by row. */
    boolean isSame(ColumnValues other) {
        return cells.equals(other.cells) || mostly(CellForm.NUMBER) && Arrays.equals(numbers, other.numbers);
    }

    boolean isWhole() {
        return Arrays.stream(numbers).allMatch(value -> Double.isNaN(value) || value == Math.rint(value));
    }

    /** Returns the times since the charge in seconds under one form, NaN where none stands. */
    double[] seconds(String form) {
        double[] seconds = new double[cells.size()];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = ColumnTimes.seconds(cells.get(i), form, decimal);
        }
        return seconds;
    }

    /** Returns the share of neighbouring numbers that rise. */
    double rising() {
        int pairs = 0;
        int up = 0;
        double before = Double.NaN;
        for (double value : numbers) {
            if (!Double.isNaN(value)) {
                pairs += Double.isNaN(before) ? 0 : 1;
                up += value > before ? 1 : 0;
                before = value;
            }
        }
        return pairs == 0 ? 0 : up / (double) pairs;
    }
}
