package parchment.calendar.machine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * The dated batches of one machine in order of time, and their roast days, for whatever follows a machine through the calendar.
 *
 * <pre>{@code
 * MachineDays.of(logbook).get(0).words()
 * }</pre>
 *
 * @param machine its name; empty where none was written
 * @param rows places of its batches in the logbook, from 0
 * @param batches the batches
 * @param dates the roast days
 * @param dayOfBatch number of each batch's roast day, from 0
 */
public record MachineDays(
        String machine, List<Integer> rows, List<Batch> batches, List<LocalDate> dates, List<Integer> dayOfBatch) {

    /** A machine without a dated batch. */
    public static final MachineDays NONE = new MachineDays("", List.of(), List.of(), List.of(), List.of());

    /** Copies the lists. */
    public MachineDays {
        rows = List.copyOf(rows);
        batches = List.copyOf(batches);
        dates = List.copyOf(dates);
        dayOfBatch = List.copyOf(dayOfBatch);
    }

    /** Sorts a logbook's dated batches by machine. */
    public static List<MachineDays> of(Logbook logbook) {
        Map<String, List<Integer>> byMachine = new LinkedHashMap<>();
        List<Batch> all = logbook.batches();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).roastedAt().isPresent()) {
                byMachine
                        .computeIfAbsent(all.get(i).machine().orElse(""), k -> new ArrayList<>())
                        .add(i);
            }
        }
        List<MachineDays> machines = new ArrayList<>();
        byMachine.forEach((machine, rows) -> {
            rows.sort(Comparator.comparing(row -> all.get(row).roastedAt().orElseThrow()));
            List<Batch> batches = rows.stream().map(all::get).toList();
            List<LocalDate> days =
                    batches.stream().map(b -> b.roastDay().orElseThrow()).toList();
            List<LocalDate> dates = new ArrayList<>(new TreeSet<>(days));
            Map<LocalDate, Integer> numbers = new LinkedHashMap<>();
            dates.forEach(date -> numbers.put(date, numbers.size()));
            machines.add(new MachineDays(
                    machine,
                    rows,
                    batches,
                    dates,
                    days.stream().map(numbers::get).toList()));
        });
        return machines;
    }

    /** Returns the number of each batch's roast day, from 0. */
    public int[] dayNumbers() {
        return dayOfBatch.stream().mapToInt(d -> d).toArray();
    }

    /** Returns each roast day as days since 1970-01-01. */
    public double[] epochDays() {
        return dates.stream().mapToDouble(LocalDate::toEpochDay).toArray();
    }

    /** Picks the numbers of this machine's batches, in order of time, from those of all batches of the logbook. */
    public double[] picked(double[] ofLogbook) {
        return rows.stream().mapToDouble(row -> ofLogbook[row]).toArray();
    }

    /** Returns the number of the first roast day on or after a date; the number of days if there is none. */
    public int firstDayFrom(LocalDate date) {
        int day = 0;
        while (day < dates.size() && dates.get(day).isBefore(date)) {
            day++;
        }
        return day;
    }

    /** Returns the machine's name, or "the machine" where none was written. */
    public String words() {
        return machine.isEmpty() ? "the machine" : machine;
    }
}
