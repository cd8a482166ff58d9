package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.DateOrder;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.Value;

/**
 * Holds a strange file once it is known what its columns mean: times in seconds, rows, and what was typed beside them.
 *
 * @param file the file
 * @param meanings what each column is
 * @param seconds the times of the kept rows, strictly rising
 * @param rows the places of the kept rows in the file
 * @param zero the date and time of second 0, if it is known
 * @param leftOut the rows without a time, or with one that does not rise
 * @param restarts the places in the file of the rows where a clock that counts from its start began again
 */
record Recording(
        Table file,
        List<Meaning> meanings,
        List<Double> seconds,
        List<Integer> rows,
        Optional<LocalDateTime> zero,
        int leftOut,
        List<Integer> restarts) {
    /** So many rows must rise before and after a clock that began again. */
    private static final int RISING_ROWS = 10;

    /** And by steps of so many usual ones at most. */
    private static final double STEADY = 3;

    /** A clock that began again shows as much at most. */
    private static final double BEGINS_WITHIN = 60;

    private static final List<String> CLOCKS = List.of(Meaning.TIME_OF_DAY, Meaning.DATE_AND_TIME, Meaning.SERIAL);

    private static final double HALF_A_DAY = 43_200;

    private static final LocalDateTime EPOCH = LocalDateTime.of(1970, 1, 1, 0, 0);

    /** Holds words that were typed beside a reading. */
    record Event(double seconds, String words) {}

    /** Says where a logger's clock began again. */
    record Restart(double after, int rows, double fall) {}

    /** Says what becomes of the rows after a clock that began again. */
    enum AfterRestart {
        FOLLOW,
        LEFT_OUT
    }

    static Recording of(Table file, List<Meaning> meanings, DateOrder order) {
        return of(file, meanings, FileDates.of(order), AfterRestart.FOLLOW);
    }

    static Recording of(Table file, List<Meaning> meanings, FileDates dates, AfterRestart after) {
        DateOrder order = dates.order();
        int time = place(meanings, Meaning.Kind.TIME, Optional.empty());
        String form = time < 0 ? "" : meanings.get(time).unit();
        List<Double> seconds = new ArrayList<>();
        List<Integer> rows = new ArrayList<>();
        List<Integer> restarts = new ArrayList<>();
        double day = 0;
        for (int i = 0; time >= 0 && i < file.rows().size(); i++) {
            double at = seconds(
                            file.rows().get(i).get(time),
                            form,
                            order,
                            file.sheet().decimal())
                    + day;
            boolean counts = !CLOCKS.contains(form);
            if (after == AfterRestart.FOLLOW
                    && counts
                    && !seconds.isEmpty()
                    && at <= seconds.get(seconds.size() - 1)
                    && isRestart(file, time, form, order, i, seconds)) {
                // The clock counts from its start: what follows begins one step later, for how long it was off is not
                // known.
                day = seconds.get(seconds.size() - 1) + step(seconds) - (at - day);
                at = seconds.get(seconds.size() - 1) + step(seconds);
                restarts.add(i);
            }
            double latest = seconds.isEmpty() ? Double.NEGATIVE_INFINITY : seconds.get(seconds.size() - 1);
            if (form.equals(Meaning.TIME_OF_DAY) && at < latest - HALF_A_DAY) {
                day += 2 * HALF_A_DAY;
                at += 2 * HALF_A_DAY;
            }
            if (at > latest) {
                seconds.add(at);
                rows.add(i);
            }
        }
        return new Recording(
                file,
                meanings,
                seconds,
                rows,
                zero(file, form, dates),
                file.rows().size() - rows.size(),
                restarts);
    }

    /** A clock begins again where it goes back to near its start, and rises from there row by row. */
    private static boolean isRestart(Table file, int time, String form, DateOrder order, int i, List<Double> seconds) {
        if (seconds.size() < RISING_ROWS || i + RISING_ROWS > file.rows().size()) {
            return false;
        }
        double longest = STEADY * step(seconds);
        double before = Double.NaN;
        for (int k = i; k < i + RISING_ROWS; k++) {
            double at = seconds(
                    file.rows().get(k).get(time), form, order, file.sheet().decimal());
            boolean fits = k == i ? at <= seconds.get(0) + BEGINS_WITHIN : at > before && at - before <= longest;
            if (!fits) {
                return false;
            }
            before = at;
        }
        return true;
    }

    private static double step(List<Double> seconds) {
        double[] steps = new double[seconds.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = seconds.get(i + 1) - seconds.get(i);
        }
        Arrays.sort(steps);
        return steps[steps.length / 2];
    }

    /** Returns where the clock began again, with how far the bean temperature is off there; NaN if it is not read. */
    List<Restart> begunAgain() {
        Beans beans = beans();
        List<Restart> begun = new ArrayList<>();
        for (int row : restarts) {
            int place = rows.indexOf(row);
            double at = seconds.get(place);
            double before = Double.NaN;
            double then = Double.NaN;
            for (int k = 0; k < beans.seconds().length && Double.isNaN(then); k++) {
                before = beans.seconds()[k] < at ? beans.celsius()[k] : before;
                then = beans.seconds()[k] >= at ? beans.celsius()[k] : then;
            }
            begun.add(new Restart(seconds.get(place - 1), rows.size() - place, then - before));
        }
        return begun;
    }

    private static double seconds(String cell, String form, DateOrder order, Numbers.Decimal decimal) {
        return switch (form) {
            case Meaning.MILLISECONDS -> Numbers.parse(cell, decimal) / 1000;
            case Meaning.SHARE_OF_DAY -> Math.round(Numbers.parse(cell, decimal) * 864_000) / 10.0;
            case Meaning.SERIAL ->
                Math.round((Numbers.parse(cell, decimal) + ColumnDayFit.SERIAL_ZERO.toEpochDay()) * 864_000) / 10.0;
            case Meaning.TIME_OF_DAY ->
                Value.timeOfDay(cell).map(t -> t.toNanoOfDay() / 1e9).orElse(Double.NaN);
            case Meaning.DATE_AND_TIME ->
                at(cell, order)
                        .map(at -> at.toEpochSecond(ZoneOffset.UTC) + at.getNano() / 1e9)
                        .orElse(Double.NaN);
            default ->
                Value.TimeUnit.of(form)
                        .map(unit -> Value.seconds(cell, unit, decimal))
                        .orElse(Double.NaN);
        };
    }

    private static Optional<LocalDateTime> at(String cell, DateOrder order) {
        return Value.local(cell, order)
                .or(() -> WrittenDay.ofCell(cell)
                        .flatMap(day -> day.on(order).flatMap(on -> day.clock().map(on::atTime))));
    }

    private static Optional<LocalDateTime> zero(Table file, String form, FileDates dates) {
        if (form.equals(Meaning.DATE_AND_TIME) || form.equals(Meaning.SERIAL)) {
            return Optional.of(EPOCH);
        }
        Optional<WrittenDay> written = beside(file).or(() -> written(file));
        Optional<LocalDate> day = written.flatMap(dates::day);
        if (form.equals(Meaning.TIME_OF_DAY)) {
            return day.map(LocalDate::atStartOfDay);
        }
        Optional<LocalTime> time = written.flatMap(WrittenDay::clock).or(() -> clockAbove(file));
        return day.flatMap(on -> time.map(on::atTime));
    }

    /** Returns the date that the lines above the readings state, or else the file's name or the tab's. */
    static Optional<WrittenDay> written(Table file) {
        Optional<WrittenDay> above = file.above().stream()
                .flatMap(cells -> WrittenDay.find(String.join(" ", cells)).stream())
                .findFirst();
        Source source = Source.of(file);
        Optional<WrittenDay> named = WrittenDay.inName(source.stem())
                .or(() -> WrittenDay.inName(String.valueOf(source.file().getFileName())));
        // The lines know the time of day better; the name may be all there is, and its year may stand first.
        return above.filter(day -> !day.needsOrder() || named.isEmpty())
                .or(() -> named)
                .or(() -> above);
    }

    /** A date may stand beside each reading, in a column of its own. */
    private static Optional<WrittenDay> beside(Table file) {
        List<String> first = file.rows().isEmpty() ? List.of() : file.rows().get(0);
        return first.stream()
                .filter(cell -> CellForm.of(cell) == CellForm.DATE)
                .flatMap(cell -> WrittenDay.ofCell(cell).stream())
                .findFirst();
    }

    /** A time of day may stand in a cell of its own beside the date. */
    private static Optional<LocalTime> clockAbove(Table file) {
        return file.above().stream()
                .flatMap(List::stream)
                .filter(cell -> CellForm.of(cell) == CellForm.CLOCK)
                .flatMap(cell -> WrittenDay.timeOfDay(cell).stream())
                .findFirst();
    }

    private static int place(List<Meaning> meanings, Meaning.Kind kind, Optional<Quantity> quantity) {
        for (int i = 0; i < meanings.size(); i++) {
            if (meanings.get(i).kind() == kind && meanings.get(i).quantity().equals(quantity)) {
                return i;
            }
        }
        return -1;
    }

    /** Returns the date that the file states, where no time of day goes with it. */
    Optional<LocalDate> day(FileDates dates) {
        return beside(file).or(() -> written(file)).flatMap(dates::day);
    }

    /** Returns the charges, as the fall of the bean temperature shows them. */
    List<Double> charges() {
        Beans beans = beans();
        return ChargeFinder.charges(beans.seconds(), beans.celsius());
    }

    /** Returns the time of the lowest bean temperature; NaN if none is read. */
    double lowestSecond() {
        Beans beans = beans();
        int lowest = 0;
        for (int i = 1; i < beans.celsius().length; i++) {
            lowest = beans.celsius()[i] < beans.celsius()[lowest] ? i : lowest;
        }
        return beans.celsius().length == 0 ? Double.NaN : beans.seconds()[lowest];
    }

    /** Returns the time of the highest bean temperature between two times; NaN if none is read. */
    double hottestSecond(double from, double to) {
        Beans beans = beans();
        double highest = Double.NEGATIVE_INFINITY;
        double at = Double.NaN;
        for (int i = 0; i < beans.celsius().length; i++) {
            if (beans.seconds()[i] >= from && beans.seconds()[i] < to && beans.celsius()[i] > highest) {
                highest = beans.celsius()[i];
                at = beans.seconds()[i];
            }
        }
        return at;
    }

    @SuppressWarnings("ArrayRecordComponent")
    private record Beans(double[] seconds, double[] celsius) {}

    private Beans beans() {
        int bean = place(meanings, Meaning.Kind.QUANTITY, Optional.of(Quantity.BEAN_TEMPERATURE));
        if (bean < 0) {
            return new Beans(new double[0], new double[0]);
        }
        TemperatureUnit unit = Header.parse("x [" + meanings.get(bean).unit() + "]")
                .temperatureUnit()
                .orElse(TemperatureUnit.CELSIUS);
        double[] times = new double[rows.size()];
        double[] celsius = new double[rows.size()];
        int size = 0;
        for (int i = 0; i < rows.size(); i++) {
            double value = Numbers.parse(
                    file.rows().get(rows.get(i)).get(bean), file.sheet().decimal());
            if (!Double.isNaN(value) && !StrangeColumn.isOdd(value)) {
                times[size] = seconds.get(i);
                celsius[size++] = unit.toCelsius(value);
            }
        }
        return new Beans(Arrays.copyOf(times, size), Arrays.copyOf(celsius, size));
    }

    /** Returns what was typed beside the readings, in order. */
    List<Event> events() {
        List<Event> events = new ArrayList<>();
        for (int c = 0; c < meanings.size(); c++) {
            if (meanings.get(c).kind() != Meaning.Kind.EVENTS) {
                continue;
            }
            String before = "";
            for (int i = 0; i < rows.size(); i++) {
                String words = file.rows().get(rows.get(i)).get(c);
                // A logger that repeats the words on every row until the next ones says one thing, not hundreds.
                if (!words.isEmpty() && !words.equals(before)) {
                    events.add(new Event(seconds.get(i), words));
                }
                before = words;
            }
        }
        return events;
    }

    /** Returns a time as the file shows it: the time of day where that is known, else minutes and seconds. */
    String clock(double at) {
        boolean day = timeOfDay();
        long whole = Math.round(at);
        return day
                ? LocalTime.ofSecondOfDay(Math.floorMod(whole, 86_400L)).toString()
                : Elapsed.seconds(at).toString();
    }

    /** Returns the time of day of one of its seconds, where its clock shows that. */
    Optional<LocalTime> timeOfDayAt(double at) {
        return timeOfDay()
                ? Optional.of(LocalTime.ofSecondOfDay(Math.floorMod(Math.round(at), 86_400L)))
                : Optional.empty();
    }

    private boolean timeOfDay() {
        return meanings.stream()
                .anyMatch(m -> m.kind() == Meaning.Kind.TIME
                        && (m.unit().equals(Meaning.TIME_OF_DAY)
                                || m.unit().equals(Meaning.DATE_AND_TIME)
                                || m.unit().equals(Meaning.SERIAL)));
    }

    /** Returns the time that was answered in the form of {@link #clock}, or NaN. */
    double parseClock(String text) {
        if (!timeOfDay()) {
            return Value.seconds(text, Value.TimeUnit.MINUTES_AND_SECONDS, Numbers.Decimal.POINT);
        }
        double inDay = Value.timeOfDay(text).map(t -> t.toNanoOfDay() / 1e9).orElse(Double.NaN);
        double first = seconds.isEmpty() ? 0 : seconds.get(0);
        double at = Math.floor(first / 86_400) * 86_400 + inDay;
        return at < first - HALF_A_DAY ? at + 86_400 : at;
    }
}
