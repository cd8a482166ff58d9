package parchment.drift;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import parchment.feature.BatchTable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * Holds the dated batches of one machine in order of time, and their roast days.
 *
 * @param machine its name; empty where none was written
 * @param rows places of its batches in the table of batches
 * @param batches the batches
 * @param dates the roast days
 * @param dayOfBatch number of each batch's roast day, from 0
 */
record MachineDays(
        String machine, List<Integer> rows, List<Batch> batches, List<LocalDate> dates, List<Integer> dayOfBatch) {

    MachineDays {
        rows = List.copyOf(rows);
        batches = List.copyOf(batches);
        dates = List.copyOf(dates);
        dayOfBatch = List.copyOf(dayOfBatch);
    }

    static LocalDate day(Batch batch, Logbook logbook) {
        ZoneId zone = logbook.contents().zone();
        return batch.roastedAt().orElseThrow().atZoneSameInstant(zone).toLocalDate();
    }

    /** Sorts a table's dated batches by machine. */
    static List<MachineDays> of(BatchTable table) {
        Map<String, List<Integer>> byMachine = new LinkedHashMap<>();
        for (int i = 0; i < table.size(); i++) {
            Batch batch = table.batches().get(i);
            if (batch.roastedAt().isPresent()) {
                byMachine
                        .computeIfAbsent(batch.machine().orElse(""), k -> new ArrayList<>())
                        .add(i);
            }
        }
        List<MachineDays> machines = new ArrayList<>();
        byMachine.forEach((machine, rows) -> {
            rows.sort(Comparator.comparing(
                    row -> table.batches().get(row).roastedAt().orElseThrow()));
            List<Batch> batches = rows.stream().map(table.batches()::get).toList();
            List<LocalDate> days =
                    batches.stream().map(b -> day(b, table.logbook())).toList();
            List<LocalDate> dates = new ArrayList<>(new TreeSet<>(days));
            machines.add(new MachineDays(
                    machine,
                    rows,
                    batches,
                    dates,
                    days.stream().map(dates::indexOf).toList()));
        });
        return machines;
    }

    int[] dayNumbers() {
        return dayOfBatch.stream().mapToInt(d -> d).toArray();
    }

    double[] epochDays() {
        return dates.stream().mapToDouble(LocalDate::toEpochDay).toArray();
    }

    double[] picked(double[] ofTable) {
        return rows.stream().mapToDouble(row -> ofTable[row]).toArray();
    }

    /** Returns the number of the first roast day on or after a date; the number of days if there is none. */
    int firstDayFrom(LocalDate date) {
        int day = 0;
        while (day < dates.size() && dates.get(day).isBefore(date)) {
            day++;
        }
        return day;
    }

    String words() {
        return machine.isEmpty() ? "the machine" : machine;
    }
}
