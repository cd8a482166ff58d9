package parchment.gather;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import parchment.logbook.LogbookFiles;
import parchment.sheet.Numbers;
import parchment.sheet.Value;

/** What can be said of a column of unknown meaning by its values alone. */
final class StrangeColumn {
    private static final Pattern CLOCKS =
            Pattern.compile("(?i)\\d{1,2}:\\d{2}(:\\d{2}([.,]\\d+)?)?(\\s?[ap]m)?|-?\\d{1,3}:\\d{2}([.,]\\d+)?");
    private static final Pattern SIGNED = Pattern.compile(
            "(?i)[+-]?\\d{1,3}\\s?(min|m|['\\u2019\\u2032])\\s?[0-5]?\\d\\s?(s|sec|sek|seg|\"|''|\\u2033|\\u201D)?");
    private static final Pattern DATES =
            Pattern.compile("\\d{4}-\\d{2}-\\d{2}|\\d{1,2}[./-]\\d{1,2}[./-](\\d{4}|\\d{2})");
    private static final int WORDS_KEPT = 40;

    /** What some loggers write for "no reading", besides what a logbook takes for it by itself; common practice, no source. */
    private static final Set<Double> OTHER_LOGGERS = Set.of(-99.9, 9999.0, -9999.0, 32767.0);

    /** What one value looks like. */
    enum Form {
        BLANK,
        NUMBER,
        CLOCK,
        DATE,
        DATE_AND_TIME,
        WORDS;

        static Form of(String cell) {
            String text = cell.strip();
            if (text.isEmpty()) {
                return BLANK;
            }
            if (!Double.isNaN(Numbers.parse(text, Numbers.Decimal.EITHER)) || text.equalsIgnoreCase("NaN")) {
                return NUMBER;
            }
            if (CLOCKS.matcher(text).matches() || SIGNED.matcher(text).matches()) {
                return CLOCK;
            }
            if (DATES.matcher(text).matches()) {
                return DATE;
            }
            int border = Math.max(text.indexOf(' '), text.indexOf('T'));
            if (border > 0
                    && DATES.matcher(text.substring(0, border)).matches()
                    && text.substring(border + 1)
                            .matches("(?i)\\d{1,2}:\\d{2}(:\\d{2}([.,]\\d+)?)?(\\s?[ap]m)?(z|[+-]\\d{2}:?\\d{2})?")) {
                return DATE_AND_TIME;
            }
            return WORDS;
        }

        boolean isValue() {
            return this != BLANK && this != WORDS;
        }
    }

    private final String heading;
    private final Map<Form, Integer> forms = new EnumMap<>(Form.class);
    private final Map<String, Integer> words = new LinkedHashMap<>();
    private final Map<Double, Integer> odd = new TreeMap<>();
    private final double[] numbers;
    private final String first;
    private final String last;
    private final int rising;

    private StrangeColumn(String heading, List<String> cells, Numbers.Decimal decimal) {
        this.heading = heading;
        double[] found = new double[cells.size()];
        int size = 0;
        int up = 0;
        String firstCell = "";
        String lastCell = "";
        for (String cell : cells) {
            Form form = Form.of(cell);
            forms.merge(form, 1, Integer::sum);
            firstCell = firstCell.isEmpty() ? cell : firstCell;
            lastCell = cell.isEmpty() ? lastCell : cell;
            if (form == Form.NUMBER) {
                double value = Numbers.parse(cell, decimal);
                if (isOdd(value)) {
                    odd.merge(value, 1, Integer::sum);
                } else if (!Double.isNaN(value)) {
                    up += size > 0 && value > found[size - 1] ? 1 : 0;
                    found[size++] = value;
                }
            } else if (form == Form.WORDS && (words.size() < WORDS_KEPT || words.containsKey(cell))) {
                words.merge(cell, 1, Integer::sum);
            }
        }
        numbers = Arrays.copyOf(found, size);
        rising = up;
        first = firstCell;
        last = lastCell;
    }

    static StrangeColumn of(FoundTable file, int index) {
        List<String> cells = file.rows().stream().map(row -> row.get(index)).toList();
        return new StrangeColumn(file.headings().get(index), cells, file.sheet().decimal());
    }

    /** Numbers that loggers write for "no reading": these are never a temperature of a drum in use. */
    static boolean isOdd(double value) {
        return LogbookFiles.MISSING_READINGS.contains(value) || OTHER_LOGGERS.contains(value);
    }

    String heading() {
        return heading;
    }

    String first() {
        return first;
    }

    /** Returns how long it is from the first clock to the last, read as minutes and seconds, in seconds; NaN if they are none. */
    double clockSpan() {
        return minutesAndSeconds(last) - minutesAndSeconds(first);
    }

    private static double minutesAndSeconds(String cell) {
        double signed = ColumnTimes.signed(cell);
        return Double.isNaN(signed)
                ? Value.seconds(cell, Value.TimeUnit.MINUTES_AND_SECONDS, Numbers.Decimal.EITHER)
                : signed;
    }

    int count(Form form) {
        return forms.getOrDefault(form, 0);
    }

    int filled() {
        return forms.values().stream().mapToInt(Integer::intValue).sum() - count(Form.BLANK);
    }

    /** Returns whether nearly every value that is filled in has the form. */
    boolean mostly(Form form) {
        return filled() > 0 && count(form) >= 0.9 * filled();
    }

    /** Returns the words that stand in the column and how often. */
    Map<String, Integer> words() {
        return words;
    }

    /** Returns the numbers that probably mean "no reading", and how often each stands. */
    Map<Double, Integer> oddReadings() {
        return odd;
    }

    boolean rises() {
        return numbers.length > 1 && rising >= 0.97 * (numbers.length - 1);
    }

    int numberCount() {
        return numbers.length;
    }

    double firstNumber() {
        return numbers.length == 0 ? Double.NaN : numbers[0];
    }

    double lastNumber() {
        return numbers.length == 0 ? Double.NaN : numbers[numbers.length - 1];
    }

    /** Returns the value that the given share of the numbers does not exceed. */
    double quantile(double share) {
        if (numbers.length == 0) {
            return Double.NaN;
        }
        double[] sorted = numbers.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.round((sorted.length - 1) * share)];
    }

    /** Returns the largest step between neighbours, but for one in fifty, as a share of the range: small for what a probe reads. */
    double roughness() {
        double range = quantile(0.99) - quantile(0.01);
        if (numbers.length < 3 || range <= 0) {
            return Double.NaN;
        }
        double[] steps = new double[numbers.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = Math.abs(numbers[i + 1] - numbers[i]);
        }
        Arrays.sort(steps);
        return steps[(int) ((steps.length - 1) * 0.98)] / range;
    }

    /** Returns how many different numbers there are, up to a hundred. */
    int distinct() {
        return (int) Arrays.stream(numbers).distinct().limit(100).count();
    }
}
