package parchment.logbook;

import static parchment.logbook.Field.optional;
import static parchment.logbook.Field.required;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Field.Kind;
import parchment.logbook.written.Machine;
import parchment.logbook.written.Upkeep;
import parchment.logbook.written.UpkeepKind;
import parchment.quantity.Mass;
import parchment.sheet.Words;

/** Reads machines.csv and upkeep.csv. */
final class MachineFiles {
    static final String MACHINES = "machines.csv";
    static final String UPKEEP = "upkeep.csv";

    private static final List<Field> MACHINE_FIELDS = List.of(
            required("machine", Kind.NAME),
            optional("capacity", Kind.MASS),
            optional("smallest batch", Kind.MASS),
            optional("largest batch", Kind.MASS),
            optional("heat source", Kind.TEXT),
            optional("highest air temperature", Kind.TEMPERATURE).earlier("highest environment temperature"),
            optional("least airflow", Kind.LABELLED),
            optional("probe place", Kind.TEXT),
            optional("probe diameter", Kind.MILLIMETRES));
    private static final List<Field> UPKEEP_FIELDS = List.of(
            required("machine", Kind.NAME),
            required("done on", Kind.DATE),
            required("what", Kind.TEXT),
            optional("kind", Kind.TEXT),
            optional("note", Kind.TEXT));

    private MachineFiles() {}

    static List<Machine> machines(Path folder, Settings settings, ProblemLog problems) {
        Map<String, Machine> machines = new LinkedHashMap<>();
        CsvTable table = CsvTable.read(folder, MACHINE_FIELDS, settings, problems);
        String airflowUnit =
                table.found("least airflow").map(found -> found.header().unit()).orElse("");
        for (Row row : table.rows()) {
            Optional<String> name = row.requiredName("machine");
            if (name.isEmpty()) {
                continue;
            }
            if (machines.containsKey(name.get())) {
                row.problem(
                        "machine",
                        "the machine " + Words.quote(name.get()) + " again",
                        "a name of its own",
                        "row set aside, the first one kept");
                continue;
            }
            Optional<Mass> smallest = row.mass("smallest batch", Bounds.Weighed.MACHINE);
            Optional<Mass> largest = row.mass("largest batch", Bounds.Weighed.MACHINE);
            if (smallest.isPresent() && largest.isPresent() && smallest.get().compareTo(largest.get()) > 0) {
                row.problem(
                        "smallest batch",
                        smallest.get() + ", above the largest, " + largest.get(),
                        "the smallest batch below the largest",
                        "both treated as missing");
                smallest = Optional.empty();
                largest = Optional.empty();
            }
            machines.put(
                    name.get(),
                    new Machine(
                            name.get(),
                            row.mass("capacity", Bounds.Weighed.MACHINE),
                            smallest,
                            largest,
                            row.text("heat source"),
                            row.temperature("highest air temperature", 50, 900),
                            row.text("least airflow")
                                    .map(row::plain)
                                    .map(value -> airflowUnit.isEmpty() ? value : value + " " + airflowUnit),
                            row.text("probe place"),
                            row.number("probe diameter", Double.MIN_VALUE, 100, "millimetres, such as 3"),
                            row.extras()));
        }
        return new ArrayList<>(machines.values());
    }

    static List<Upkeep> upkeep(Path folder, Settings settings, ProblemLog problems) {
        List<Upkeep> upkeep = new ArrayList<>();
        CsvTable table = CsvTable.read(folder, UPKEEP_FIELDS, settings, problems);
        table.leaveOutExtras();
        for (Row row : table.rows()) {
            Optional<String> machine = row.requiredName("machine");
            Optional<LocalDate> day = machine.isEmpty() ? Optional.empty() : row.requiredDate("done on");
            Optional<String> what = day.isEmpty() ? Optional.empty() : row.required("what");
            if (machine.isPresent() && day.isPresent() && what.isPresent()) {
                Optional<String> note = row.text("note");
                upkeep.add(kind(row, what.get())
                        .map(kind -> new Upkeep(machine.get(), day.get(), what.get(), kind, note))
                        .orElseGet(() -> new Upkeep(machine.get(), day.get(), what.get(), note)));
            }
        }
        upkeep.sort(Comparator.comparing(Upkeep::doneOn));
        return upkeep;
    }

    /** Returns the kind as written; empty where it is blank or unknown, so that it is proposed from the words. */
    private static Optional<UpkeepKind> kind(Row row, String what) {
        Optional<String> written = row.text("kind");
        if (written.isEmpty()) {
            if (UpkeepKind.namesAProbeOnly(what)) {
                row.problem(
                        "what",
                        Words.quote(what) + ", which names a probe and not what was done to it",
                        "a kind such as 'bean probe moved' in the column 'kind', or 'other'",
                        "taken as no change of the bean probe");
            }
            return Optional.empty();
        }
        Optional<UpkeepKind> kind = UpkeepKind.written(written.get());
        if (kind.isEmpty()) {
            row.problem(
                    "kind",
                    Words.quote(written.get()),
                    String.join(", ", UpkeepKind.allWords()) + "."
                            + Words.didYouMean(written.get(), UpkeepKind.allWords()),
                    "proposed from the words: " + UpkeepKind.proposed(what).words());
        }
        return kind;
    }
}
