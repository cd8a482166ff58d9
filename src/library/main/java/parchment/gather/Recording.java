package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;
import parchment.sheet.DateOrder;
import parchment.sheet.Numbers;
import parchment.sheet.Value;

/**
 * A strange file once it is known what its columns mean, ready to be cut into batches: times in seconds, rows, and what was typed beside
 * them.
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
        FoundTable file,
        List<Meaning> meanings,
        List<Double> seconds,
        List<Integer> rows,
        Optional<LocalDateTime> zero,
        int leftOut,
        List<Integer> restarts) {
    static final List<String> CLOCKS = List.of(Meaning.TIME_OF_DAY, Meaning.DATE_AND_TIME, Meaning.SERIAL);

    static final double HALF_A_DAY = 43_200;

    /** Holds words that were typed beside a reading. */
    record Event(double seconds, String words) {}

    /** Says where a logger's clock began again. */
    record Restart(double after, int rows, double fall) {}

    /** Says what becomes of the rows after a clock that began again. */
    enum AfterRestart {
        FOLLOW,
        LEFT_OUT
    }

    static Recording of(FoundTable file, List<Meaning> meanings, DateOrder order) {
        return of(file, meanings, FileDates.of(order), AfterRestart.FOLLOW);
    }

    static Recording of(FoundTable file, List<Meaning> meanings, FileDates dates, AfterRestart after) {
        int time = place(meanings, Meaning.Kind.TIME, Optional.empty());
        String form = time < 0 ? "" : meanings.get(time).unit();
        RecordingTimes times = RecordingTimes.of(file, time, form, dates.order(), after);
        return new Recording(
                file,
                meanings,
                times.seconds(),
                times.rows(),
                RecordingZero.of(file, form, dates),
                file.rows().size() - times.rows().size(),
                times.restarts());
    }

    /** Returns where the clock began again, with how far the bean temperature is off there; NaN if it is not read. */
    List<Restart> begunAgain() {
        RecordedBeans beans = beans();
        return restarts.stream()
                .map(row -> {
                    int place = rows.indexOf(row);
                    return new Restart(seconds.get(place - 1), rows.size() - place, beans.stepAt(seconds.get(place)));
                })
                .toList();
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
        return RecordingZero.day(file, dates);
    }

    /** Returns the charges, as the fall of the bean temperature shows them. */
    List<Double> charges() {
        return beans().charges();
    }

    /** Returns the time of the lowest bean temperature; NaN if none is read. */
    double lowestSecond() {
        return beans().lowestSecond();
    }

    /** Returns the time of the highest bean temperature between two times; NaN if none is read. */
    double hottestSecond(double from, double to) {
        return beans().hottestSecond(from, to);
    }

    /** Returns the bean temperatures that were read. */
    RecordedBeans beans() {
        return RecordedBeans.of(this, place(meanings, Meaning.Kind.QUANTITY, Optional.of(Quantity.BEAN_TEMPERATURE)));
    }

    /** Returns whether its clock counts from a zero of its own, and shows no time of day. */
    boolean isElapsed() {
        return !CLOCKS.contains(timeForm());
    }

    /** Returns the heading of its times; "" if it has none. */
    String timeHeading() {
        int time = place(meanings, Meaning.Kind.TIME, Optional.empty());
        return time < 0 ? "" : file.headings().get(time);
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
        return CLOCKS.contains(timeForm());
    }

    private String timeForm() {
        int time = place(meanings, Meaning.Kind.TIME, Optional.empty());
        return time < 0 ? "" : meanings.get(time).unit();
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
