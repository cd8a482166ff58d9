package parchment.logbook;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.DateOrder;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.Value;
import parchment.sheet.Words;

/** Reads the values of one row; one that cannot be read as written becomes a problem and is missing. */
final class Row {
    private static final String MISSING = "value treated as missing";
    private static final String SKIPPED = "row skipped";

    private final CsvTable table;
    private final int line;
    private final List<String> cells;

    Row(CsvTable table, int line, List<String> cells) {
        this.table = table;
        this.line = line;
        this.cells = cells;
    }

    int line() {
        return line;
    }

    /** Returns what stands in a place, or nothing if the row is shorter or the place is blank. */
    Optional<String> at(int index) {
        return index < cells.size() && !cells.get(index).isEmpty() ? Optional.of(cells.get(index)) : Optional.empty();
    }

    Optional<String> text(String name) {
        return table.found(name).flatMap(found -> at(found.index()));
    }

    /** Returns the text of a column without which the row makes no sense. */
    Optional<String> required(String name) {
        Optional<String> text = text(name);
        if (text.isEmpty()) {
            problem(name, "nothing", "the " + name, SKIPPED);
        }
        return text;
    }

    /** Returns a name without which the row makes no sense. */
    Optional<String> requiredName(String name) {
        return required(name).filter(text -> isName(name, text, SKIPPED));
    }

    /** Returns a name, of at most {@link Bounds#LONGEST_NAME} letters. */
    Optional<String> name(String name) {
        return text(name).filter(text -> isName(name, text, MISSING));
    }

    private boolean isName(String name, String text, String done) {
        if (text.length() <= Bounds.LONGEST_NAME) {
            return true;
        }
        String found = Words.quote(text) + ", a name of " + text.length() + " letters";
        problem(name, found, "a name of at most " + Bounds.LONGEST_NAME + " letters", done);
        return false;
    }

    void problem(String name, String found, String expected, String done) {
        String column = table.found(name).map(f -> f.header().written()).orElse(name);
        table.problems().add(line, column, found, expected, done);
    }

    /** Tells of a problem in a column without a field of its own. */
    void problemIn(Header header, String found, String expected, String done) {
        table.problems().add(line, header.written(), found, expected, done);
    }

    /** Returns the headings without a field of their own, by their place. */
    Map<Integer, Header> headersOfExtras() {
        return table.extras();
    }

    /** Returns a number, which has to lie between the two given ones. */
    OptionalDouble number(String name, double low, double high, String expected) {
        Optional<String> text = text(name);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        double value = Numbers.parse(text.get(), table.decimal());
        if (value >= low && value <= high) {
            return OptionalDouble.of(value);
        }
        problem(name, Words.quote(text.get()), expected, MISSING);
        return OptionalDouble.empty();
    }

    OptionalDouble share(String name) {
        OptionalDouble percent = number(name, 0, 100, "a number from 0 to 100");
        return percent.isEmpty() ? percent : OptionalDouble.of(percent.getAsDouble() / 100);
    }

    OptionalDouble pressure(String name) {
        double scale = table.found(name)
                .map(found -> Field.pressureInHectopascals(found.header().plainUnit()))
                .orElse(1.0);
        OptionalDouble written = number(name, 500 / scale, 1100 / scale, "an air pressure near 1000 hPa");
        return written.isEmpty() ? written : OptionalDouble.of(written.getAsDouble() * scale);
    }

    /** Returns a temperature that lies between the two given ones, in degrees Celsius. */
    Optional<Temperature> temperature(String name, double low, double high) {
        TemperatureUnit unit = table.found(name)
                .flatMap(found -> Header.temperatureUnit(found.header().plainUnit()))
                .orElse(TemperatureUnit.CELSIUS);
        OptionalDouble written = number(
                name,
                unit.fromCelsius(low),
                unit.fromCelsius(high),
                String.format(
                        Locale.ROOT,
                        "a number from %.0f to %.0f %s (another unit in the heading?)",
                        unit.fromCelsius(low),
                        unit.fromCelsius(high),
                        unit.symbol()));
        return written.isEmpty() ? Optional.empty() : Optional.of(Temperature.of(written.getAsDouble(), unit));
    }

    /** Returns a mass that there can be of such a thing, in any unit. */
    Optional<Mass> mass(String name, Bounds.Weighed what) {
        MassUnit unit = table.massUnit(name);
        Bounds.Range possible = what.in(unit);
        if (table.isToldAsAWhole(name)
                && text(name)
                        .map(text -> Numbers.parse(text, table.decimal()))
                        .filter(number -> !Double.isNaN(number) && !possible.holds(number))
                        .isPresent()) {
            return Optional.empty();
        }
        OptionalDouble written = number(name, possible.low(), possible.high(), possible.words());
        return written.isEmpty() ? Optional.empty() : Optional.of(Mass.of(written.getAsDouble(), unit));
    }

    /** Returns a time that lies between 0 and the given one, in seconds. */
    Optional<Elapsed> time(String name, double longest) {
        Optional<String> text = text(name);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Value.TimeUnit unit = table.found(name)
                .flatMap(found -> Value.TimeUnit.of(found.header().plainUnit()))
                .orElse(Value.TimeUnit.SECONDS);
        double seconds = Value.seconds(text.get(), unit, table.decimal());
        boolean spreadsheet = Value.looksLikeSpreadsheetMinutes(text.get()) && !(seconds <= longest);
        if (spreadsheet && table.settings().spreadsheetTimes() == Settings.SpreadsheetTimes.MINUTES_AND_SECONDS) {
            seconds = Value.spreadsheetMinutes(text.get());
        } else if (spreadsheet) {
            problem(
                    name,
                    Words.quote(text.get()),
                    "a time such as 9:19, which a spreadsheet may have turned into 9:19:00; if so, put"
                            + " spreadsheet.times=min:s into logbook.properties",
                    MISSING);
            return Optional.empty();
        }
        if (seconds >= 0 && seconds <= longest) {
            return Optional.of(Elapsed.seconds(seconds));
        }
        String example = switch (unit) {
            case SECONDS -> "559";
            case MINUTES -> "9.32";
            case MINUTES_AND_SECONDS -> "9:19";
            case HOURS_MINUTES_SECONDS -> "0:09:19";
        };
        problem(
                name,
                Words.quote(text.get()),
                String.format(
                        Locale.ROOT,
                        "a time in %s such as %s, up to %s",
                        unit.symbol(),
                        example,
                        Elapsed.seconds(longest)),
                MISSING);
        return Optional.empty();
    }

    /** Returns a date; one that could be two dates is a problem, never a guess. */
    Optional<LocalDate> date(String name, String done) {
        Optional<String> text = text(name);
        Optional<LocalDate> date =
                text.flatMap(t -> Value.date(t, table.settings().dates()));
        if (text.isPresent() && date.isEmpty()) {
            problem(name, Words.quote(text.get()), expectedDate(text.get(), "2025-03-04"), done);
        }
        return date;
    }

    Optional<LocalDate> date(String name) {
        return date(name, MISSING);
    }

    /** Returns the date of a column without which the row makes no sense. */
    Optional<LocalDate> requiredDate(String name) {
        return required(name).flatMap(text -> date(name, SKIPPED));
    }

    /** Returns an instant in the logbook's time zone; a date alone counts as the start of its day, and is a problem. */
    Optional<OffsetDateTime> instant(String name) {
        Optional<String> text = text(name);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Settings settings = table.settings();
        Optional<LocalDate> day = Value.date(text.get(), settings.dates());
        if (day.isPresent()) {
            problem(
                    name,
                    Words.quote(text.get()),
                    "a date and a time, such as 2025-03-04T09:15",
                    "the day is used; batches of a day stay in the order of their rows");
            return day.map(d -> d.atStartOfDay(settings.zone()).toOffsetDateTime());
        }
        Optional<LocalDateTime> local = Value.local(text.get(), settings.dates());
        if (local.isPresent()
                && settings.zone().getRules().getValidOffsets(local.get()).size() != 1) {
            problem(
                    name,
                    Words.quote(text.get()),
                    "a time that " + settings.zone() + " has once; clocks were changed that night",
                    "read as " + local.get().atZone(settings.zone()).toOffsetDateTime());
        }
        Optional<OffsetDateTime> instant = Value.instant(text.get(), settings.zone(), settings.dates());
        if (instant.isEmpty()) {
            problem(name, Words.quote(text.get()), expectedDate(text.get(), "2025-03-04T09:15"), MISSING);
        }
        // Told in the logbook's zone from here on, so that a roast day is the same everywhere.
        return instant.map(at -> at.atZoneSameInstant(settings.zone()).toOffsetDateTime());
    }

    private String expectedDate(String text, String example) {
        String plain = "an ISO 8601 date such as " + example;
        return table.settings().dates() == DateOrder.ISO_ONLY && text.matches("\\d{1,2}[/.-]\\d{1,2}[/.-]\\d{2,4}.*")
                ? plain
                        + "; which part is the day? Put date.order=day/month/year or month/day/year into logbook.properties"
                : plain;
    }

    /** Returns every filled-in column without a meaning of its own, by heading. */
    Map<String, String> extras() {
        Map<String, String> extras = new LinkedHashMap<>();
        table.extras()
                .forEach((index, header) -> extra(index, header).ifPresent(text -> extras.put(header.written(), text)));
        return extras;
    }

    /**
     * Returns what stands in a column without a known meaning, as text: a long number may be a barcode or a logger's count. Under a heading
     * with a unit it was meant as a number, so there it is a problem that none can be made of it.
     */
    Optional<String> extra(int index, Header header) {
        Optional<String> text = at(index).map(this::plain);
        double value = text.map(t -> Numbers.parse(t, Numbers.Decimal.POINT)).orElse(Double.NaN);
        if (!Double.isNaN(value)
                && !Bounds.NUMBER.holds(value)
                && !header.unit().isEmpty()) {
            table.problems()
                    .add(
                            line,
                            header.written(),
                            Words.quote(text.orElse("")),
                            Bounds.NUMBER.words(),
                            "kept as text, not used as a number");
        }
        return text;
    }

    /** Returns a number with a decimal point, and any other text as it stands. */
    String plain(String text) {
        boolean comma = table.decimal() != Numbers.Decimal.POINT
                && text.indexOf(',') >= 0
                && !Double.isNaN(Numbers.parse(text, table.decimal()));
        return comma ? text.replace(',', '.') : text;
    }
}
