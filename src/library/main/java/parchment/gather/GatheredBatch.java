package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.MarkKind;

/**
 * One batch as it will stand in the new logbook, made of strange files.
 *
 * @param name its name
 * @param part which of its recording's batches it is, counted from 1; 0 if it is the only one
 * @param roastedAt the date and time of its charge
 * @param day its date, where the time is not known
 * @param recording where its curve comes from
 * @param zero the second of the recording that becomes second 0
 * @param from the first second that belongs to it
 * @param to the second where the next batch begins
 * @param marks the marks, in seconds since charge
 * @param written what a sheet says of it, by heading of batches.csv
 * @param notes what was typed and is no mark
 */
record GatheredBatch(
        String name,
        int part,
        Optional<LocalDateTime> roastedAt,
        Optional<LocalDate> day,
        Optional<Recording> recording,
        double zero,
        double from,
        double to,
        Map<MarkKind, Double> marks,
        Map<String, String> written,
        List<String> notes) {

    GatheredBatch {
        marks = Collections.unmodifiableMap(new LinkedHashMap<>(marks));
        written = Collections.unmodifiableMap(new LinkedHashMap<>(written));
        notes = List.copyOf(notes);
    }

    /** Returns the batch with what a sheet says of it; times that the recording knows better stay. */
    GatheredBatch with(Map<String, String> fromSheet, Optional<LocalDateTime> at, Optional<LocalDate> onDay) {
        Map<String, String> all = new LinkedHashMap<>(written);
        fromSheet.forEach(all::putIfAbsent);
        // A logger's clock may show the time of day and no date, which a list knows.
        Optional<LocalDateTime> clock = recording
                .flatMap(known -> known.timeOfDayAt(zero))
                .flatMap(time -> day.or(() -> onDay).map(date -> date.atTime(time)));
        return new GatheredBatch(
                name,
                part,
                roastedAt.or(() -> clock).or(() -> at),
                day.or(() -> onDay),
                recording,
                zero,
                from,
                to,
                marks,
                all,
                notes);
    }

    /** Returns the last second of its recording since the charge; NaN without one. */
    double lastSecond() {
        return recording
                .flatMap(known -> known.seconds().stream().filter(at -> at < to).reduce((first, second) -> second))
                .map(at -> at - zero)
                .orElse(Double.NaN);
    }

    /** Returns when the beans were hottest, in seconds since the charge: at the drop, or a little before; NaN without a recording. */
    double hottestSecond() {
        return recording.map(known -> known.hottestSecond(zero, to) - zero).orElse(Double.NaN);
    }

    /** Returns its name without the number that tells the parts of one recording apart: that one is ours, and no roaster's. */
    String nameOfItsFile() {
        String own = "-" + part;
        return part > 0 && name.endsWith(own) ? name.substring(0, name.length() - own.length()) : name;
    }

    /** Returns the batch under another name. */
    GatheredBatch named(String other) {
        return new GatheredBatch(other, part, roastedAt, day, recording, zero, from, to, marks, written, notes);
    }

    /** Returns the batch with another value under a heading. */
    GatheredBatch withWritten(String heading, String value) {
        Map<String, String> all = new LinkedHashMap<>(written);
        all.put(heading, value);
        return new GatheredBatch(name, part, roastedAt, day, recording, zero, from, to, marks, all, notes);
    }

    /** Returns the batch with another time of its charge. */
    GatheredBatch chargedAt(LocalDateTime at) {
        return new GatheredBatch(name, part, Optional.of(at), day, recording, zero, from, to, marks, written, notes);
    }

    /** Returns the batch with the time of its charge moved. */
    GatheredBatch moved(Duration by) {
        return new GatheredBatch(
                name, part, roastedAt.map(at -> at.plus(by)), day, recording, zero, from, to, marks, written, notes);
    }

    /** Returns the batch with other marks. */
    GatheredBatch withMarks(Map<MarkKind, Double> other) {
        return new GatheredBatch(name, part, roastedAt, day, recording, zero, from, to, other, written, notes);
    }

    /** Returns the batch with words for its note. */
    GatheredBatch noted(List<String> words) {
        List<String> all = new java.util.ArrayList<>(notes);
        words.stream().filter(word -> !all.contains(word)).forEach(all::add);
        return new GatheredBatch(name, part, roastedAt, day, recording, zero, from, to, marks, written, all);
    }

    /** Returns a batch of which nothing is known but its name. */
    static GatheredBatch of(String name) {
        return new GatheredBatch(
                name, 0, Optional.empty(), Optional.empty(), Optional.empty(), 0, 0, 0, Map.of(), Map.of(), List.of());
    }

    /** Returns where its recording stands: the file, the tab and the part; "" without one. */
    String origin() {
        return recording
                .map(known -> TablePlace.of(known.file()))
                .map(source -> source.file().toString().replace('\\', '/')
                        + (source.tab().isEmpty() ? "" : "|" + source.tab())
                        + (part == 0 ? "" : "#" + part))
                .orElse("");
    }
}
