package parchment.logbook;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import parchment.sheet.BoundedReader;
import parchment.sheet.DateOrder;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.ReadableFile;
import parchment.sheet.TextFile;
import parchment.sheet.TextReader;
import parchment.sheet.Words;

/**
 * What logbook.properties states, checked and asked by its meaning.
 *
 * @param missingReadings the numbers that loggers write when they have no reading
 * @param dates the order that dates are written in
 * @param spreadsheetTimes whether "9:19:00" may be taken for 9 minutes 19 seconds
 * @param batchDigits the digits of a batch's number; 0 if names are taken as they stand
 * @param provenance where the batches come from
 * @param zoneStated whether the time zone was stated rather than taken from this computer
 */
record Settings(
        Optional<String> name,
        ZoneId zone,
        Stated zoneStated,
        Map<String, Logbook.Scale> scales,
        List<Double> missingReadings,
        Logbook.CrackHabit crackHabit,
        DateOrder dates,
        SpreadsheetTimes spreadsheetTimes,
        int batchDigits,
        Logbook.Provenance provenance) {

    static final String FILE = "logbook.properties";
    static final List<Double> USUAL_MISSING_READINGS = List.of(-1.0, 999.9, 65535.0);
    static final String SCALE = "scale.";
    static final List<String> KEYS = List.of(
            "name",
            "time.zone",
            "missing.readings",
            "crack.habit",
            "date.order",
            "spreadsheet.times",
            "batch.digits",
            "provenance");

    /** What the setting of the provenance says of a virtual roastery's logbook. */
    static final String INVENTED = "invented machine";

    enum Stated {
        YES,
        NO
    }

    /** Says whether a spreadsheet is known to have turned minutes and seconds into hours and minutes. */
    enum SpreadsheetTimes {
        /** Nothing is known: such a time is questioned. */
        QUESTIONED,
        /** The user states that 9:19:00 means 9 minutes 19 seconds. */
        MINUTES_AND_SECONDS
    }

    static Settings usual() {
        return new Settings(
                Optional.empty(),
                ZoneId.systemDefault(),
                Stated.NO,
                Map.of(),
                USUAL_MISSING_READINGS,
                Logbook.CrackHabit.NOT_WRITTEN,
                DateOrder.ISO_ONLY,
                SpreadsheetTimes.QUESTIONED,
                0,
                Logbook.Provenance.ROASTED);
    }

    static Settings read(Path folder, ProblemLog problems) {
        Path file = folder.resolve(FILE);
        if (!ReadableFile.isThere(file)) {
            return usual();
        }
        return of(properties(file, folder, problems), problems);
    }

    /** Reads a file of settings; what cannot be read is a problem and leaves no setting. */
    static Map<String, String> properties(Path file, Path folder, ProblemLog problems) {
        return properties(() -> ReadableFile.open(file, folder), problems);
    }

    /** Reads a file of settings that the user names, wherever it is. */
    static Map<String, String> properties(Path file, ProblemLog problems) {
        return properties(() -> ReadableFile.open(file), problems);
    }

    private interface Opening {
        InputStream open() throws IOException;
    }

    private static Map<String, String> properties(Opening file, ProblemLog problems) {
        FirstOfEach properties = new FirstOfEach();
        try (InputStream in = file.open();
                TextReader text = TextFile.reader(in);
                Reader reader = new BoundedReader(text, Bounds.LONGEST_SETTINGS)) {
            properties.load(new StringReader(SettingLines.readable(reader, problems)));
            problems.encoding(text);
        } catch (IOException e) {
            problems.add(0, "", TextFile.reason(e), "a file of settings, one 'name=value' a line", "settings left out");
            properties.clear();
        }
        properties.report(problems);
        Map<String, String> settings = new LinkedHashMap<>();
        for (String key : new TreeSet<>(properties.stringPropertyNames())) {
            String name = key.strip();
            String value = properties.getProperty(key).strip();
            if (isShort("a setting", name, Bounds.LONGEST_KEY, "", problems)
                    && isShort("a value", value, Bounds.LONGEST_SETTING, name, problems)
                    && (!name.equalsIgnoreCase("name")
                            || isShort("a name", value, Bounds.LONGEST_NAME, name, problems))) {
                settings.put(name, value);
            }
        }
        return settings;
    }

    private static boolean isShort(String what, String text, int longest, String setting, ProblemLog problems) {
        if (text.length() <= longest) {
            return true;
        }
        String found = Words.quote(text) + ", " + what + " of " + text.length() + " letters";
        problems.add(0, setting, found, "at most " + longest + " letters", "setting left out");
        return false;
    }

    static Settings of(Map<String, String> stated, ProblemLog problems) {
        Settings usual = usual();
        Map<String, Logbook.Scale> scales = new LinkedHashMap<>();
        Settings settings = usual;
        for (Map.Entry<String, String> entry : stated.entrySet()) {
            String key = entry.getKey().toLowerCase(Locale.ROOT);
            if (key.startsWith(SCALE)) {
                scale(entry.getKey().substring(SCALE.length()), entry.getValue(), scales, problems);
            } else if (KEYS.contains(key)) {
                settings = settings.with(key, entry.getValue(), problems);
            } else {
                problems.add(
                        0,
                        "",
                        "a setting " + Words.quote(entry.getKey()),
                        "one of " + String.join(", ", KEYS) + ", scale.<attribute>." + Words.didYouMean(key, KEYS),
                        "setting left out");
            }
        }
        return new Settings(
                settings.name,
                settings.zone,
                settings.zoneStated,
                scales,
                settings.missingReadings,
                settings.crackHabit,
                settings.dates,
                settings.spreadsheetTimes,
                settings.batchDigits,
                settings.provenance);
    }

    private Settings with(String key, String value, ProblemLog problems) {
        Optional<String> newName = name;
        ZoneId newZone = zone;
        Stated newStated = zoneStated;
        List<Double> newMissing = missingReadings;
        Logbook.CrackHabit newHabit = crackHabit;
        DateOrder newDates = dates;
        SpreadsheetTimes newTimes = spreadsheetTimes;
        int newDigits = batchDigits;
        Logbook.Provenance newProvenance = provenance;
        String expected = "";
        String plain = Header.name(value).replaceAll("\\s+", " ");
        switch (key) {
            case "name" -> newName = value.isEmpty() ? Optional.empty() : Optional.of(value);
            case "time.zone" -> {
                try {
                    newZone = ZoneId.of(value);
                    newStated = Stated.YES;
                } catch (DateTimeException e) {
                    expected = "a time zone such as Europe/Berlin or +01:00."
                            + Words.didYouMean(value, ZoneId.getAvailableZoneIds());
                }
            }
            case "missing.readings" -> {
                double[] numbers = Arrays.stream(value.split(","))
                        .filter(part -> !part.isBlank() && !part.strip().equalsIgnoreCase("NaN"))
                        .mapToDouble(part -> Numbers.parse(part, Numbers.Decimal.POINT))
                        .toArray();
                if (Arrays.stream(numbers).anyMatch(Double::isNaN)) {
                    expected = "numbers with commas between them, as in -1,999.9,65535";
                } else {
                    newMissing = Arrays.stream(numbers).boxed().toList();
                }
            }
            case "crack.habit" -> {
                switch (plain) {
                    case "first pop" -> newHabit = Logbook.CrackHabit.FIRST_POP;
                    case "steady popping" -> newHabit = Logbook.CrackHabit.STEADY_POPPING;
                    default -> expected = "'first pop' or 'steady popping'";
                }
            }
            case "date.order" -> {
                Optional<DateOrder> order = Arrays.stream(DateOrder.values())
                        .filter(o -> o.words().equals(plain))
                        .findFirst();
                newDates = order.orElse(dates);
                expected = order.isPresent() ? "" : "'year-month-day', 'day/month/year' or 'month/day/year'";
            }
            case "spreadsheet.times" -> {
                if (plain.equals("min:s")) {
                    newTimes = SpreadsheetTimes.MINUTES_AND_SECONDS;
                } else {
                    expected = "'min:s', which says that 9:19:00 means 9 minutes 19 seconds";
                }
            }
            case "provenance" -> {
                if (plain.equals(INVENTED)) {
                    newProvenance = Logbook.Provenance.INVENTED;
                } else {
                    expected = "'" + INVENTED
                            + "', which stands in the logbooks of a virtual roastery, or no such setting";
                }
            }
            default -> {
                double digits = Numbers.parse(value, Numbers.Decimal.POINT);
                if (digits >= 1 && digits <= 12 && digits == Math.rint(digits)) {
                    newDigits = (int) digits;
                } else {
                    expected = "the number of digits in a batch's name, as in 3 for 007";
                }
            }
        }
        if (!expected.isEmpty()) {
            problems.add(0, key, Words.quote(value), expected, "setting left out");
        }
        return new Settings(
                newName,
                newZone,
                newStated,
                scales,
                newMissing,
                newHabit,
                newDates,
                newTimes,
                newDigits,
                newProvenance);
    }

    private static void scale(String attribute, String value, Map<String, Logbook.Scale> scales, ProblemLog problems) {
        String[] ends = value.split("\\.\\.", -1);
        double low = ends.length == 2 ? Numbers.parse(ends[0], Numbers.Decimal.POINT) : Double.NaN;
        double high = ends.length == 2 ? Numbers.parse(ends[1], Numbers.Decimal.POINT) : Double.NaN;
        if (low < high && Bounds.ON_A_SCALE.holds(low) && Bounds.ON_A_SCALE.holds(high)) {
            scales.put(plain(attribute), new Logbook.Scale(low, high));
        } else {
            problems.add(
                    0,
                    SCALE + attribute,
                    Words.quote(value),
                    "low..high, as in scale.acidity=0..10",
                    "setting left out");
        }
    }

    /** Returns an attribute's name as settings write it, where a blank is hard to write. */
    static String plain(String attribute) {
        return Header.name(attribute.replaceAll("[\\s_.-]+", " "));
    }

    /** Returns a batch's name with the zeros that a spreadsheet took away. */
    String batchName(String written) {
        if (batchDigits == 0 || written.length() >= batchDigits || !written.matches("\\d+")) {
            return written;
        }
        return "0".repeat(batchDigits - written.length()) + written;
    }
}
