package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/** Finds the date and time of second 0 of a recording: beside its readings, in the lines above them, or in the file's name. */
final class RecordingZero {
    private static final LocalDateTime EPOCH = LocalDateTime.of(1970, 1, 1, 0, 0);

    private RecordingZero() {}

    /** Returns the date and time of second 0, if it is known. */
    static Optional<LocalDateTime> of(FoundTable file, String form, FileDates dates) {
        if (form.equals(Meaning.DATE_AND_TIME) || form.equals(Meaning.SERIAL)) {
            return Optional.of(EPOCH);
        }
        Optional<WrittenDay> written = beside(file).or(() -> written(file)).or(() -> ofFolder(file, dates));
        Optional<LocalDate> day = written.flatMap(dates::day);
        if (form.equals(Meaning.TIME_OF_DAY)) {
            return day.map(LocalDate::atStartOfDay);
        }
        Optional<LocalTime> time = written.flatMap(WrittenDay::clock).or(() -> clockAbove(file));
        return day.flatMap(on -> time.map(on::atTime));
    }

    /** Returns the date that the lines above the readings state, or else the file's name or the tab's. */
    static Optional<WrittenDay> written(FoundTable file) {
        Optional<WrittenDay> above = file.above().stream()
                .flatMap(cells -> WrittenDay.find(String.join(" ", cells)).stream())
                .findFirst();
        TablePlace source = TablePlace.of(file);
        Optional<WrittenDay> named = WrittenDay.inName(source.stem())
                .or(() -> WrittenDay.inName(String.valueOf(source.file().getFileName())));
        // The lines know the time of day better; the name may be all there is, and its year may stand first.
        return above.filter(day -> !day.needsOrder() || named.isEmpty())
                .or(() -> named)
                .or(() -> above);
    }

    /** A date may stand beside each reading, in a column of its own. */
    private static Optional<WrittenDay> beside(FoundTable file) {
        List<String> first = file.rows().isEmpty() ? List.of() : file.rows().get(0);
        return first.stream()
                .filter(cell -> CellForm.of(cell) == CellForm.DATE)
                .flatMap(cell -> WrittenDay.ofCell(cell).stream())
                .findFirst();
    }

    /** A time of day may stand in a cell of its own beside the date. */
    private static Optional<LocalTime> clockAbove(FoundTable file) {
        return file.above().stream()
                .flatMap(List::stream)
                .filter(cell -> CellForm.of(cell) == CellForm.CLOCK)
                .flatMap(cell -> WrittenDay.timeOfDay(cell).stream())
                .findFirst();
    }

    /** Returns the date that the file states, where no time of day goes with it. */
    static Optional<LocalDate> day(FoundTable file, FileDates dates) {
        return beside(file)
                .or(() -> written(file))
                .or(() -> ofFolder(file, dates))
                .flatMap(dates::day);
    }

    private static Optional<WrittenDay> ofFolder(FoundTable file, FileDates dates) {
        return dates.folders().of(file.sheet().file());
    }

    /** Returns whether a file has a date of its own: beside its readings, above them, or in its name. */
    static boolean hasDay(FoundTable file) {
        return written(file).isPresent()
                || !file.rows().isEmpty()
                        && file.rows().get(0).stream().anyMatch(cell -> {
                            CellForm form = CellForm.of(cell);
                            return form == CellForm.DATE || form == CellForm.DATE_AND_TIME;
                        });
    }
}
