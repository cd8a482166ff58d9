package parchment.logbook;

import static parchment.logbook.Field.optional;
import static parchment.logbook.Field.required;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.logbook.Field.Kind;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.BatchLooks;
import parchment.logbook.written.Machine;
import parchment.logbook.written.RoastLength;
import parchment.quantity.Elapsed;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Header;
import parchment.sheet.Words;

/** Reads batches.csv. */
final class BatchesFile {
    static final String FILE = "batches.csv";

    private static final double LONGEST_WARM_UP_SECONDS = 86_400;
    static final List<MarkKind> WRITTEN = List.of(
            MarkKind.YELLOWING,
            MarkKind.FIRST_CRACK_START,
            MarkKind.FIRST_CRACK_END,
            MarkKind.SECOND_CRACK_START,
            MarkKind.DROP);

    /** Pairs that can only happen in this order; second crack may start before the last pop of the first. */
    private static final List<List<MarkKind>> ORDER = List.of(
            List.of(MarkKind.YELLOWING, MarkKind.FIRST_CRACK_START),
            List.of(MarkKind.YELLOWING, MarkKind.DROP),
            List.of(MarkKind.FIRST_CRACK_START, MarkKind.FIRST_CRACK_END),
            List.of(MarkKind.FIRST_CRACK_START, MarkKind.SECOND_CRACK_START),
            List.of(MarkKind.FIRST_CRACK_START, MarkKind.DROP),
            List.of(MarkKind.FIRST_CRACK_END, MarkKind.DROP),
            List.of(MarkKind.SECOND_CRACK_START, MarkKind.DROP));

    /** The columns in the order of the roaster's day: what is written before, what is heard or seen, what is told afterwards. */
    static final List<Field> FIELDS = Stream.of(
                    Stream.of(required("batch", Kind.NAME), required("roasted at", Kind.DATE_TIME)),
                    Stream.of(Batch.Label.values())
                            .filter(label -> label != Batch.Label.NOTE)
                            .map(label -> optional(label.words(), Kind.NAME)),
                    Stream.of(
                            optional("room temperature", Kind.TEMPERATURE),
                            optional("room humidity", Kind.SHARE),
                            optional("room pressure", Kind.PRESSURE),
                            optional("warm-up", Kind.TIME),
                            optional("green temperature", Kind.TEMPERATURE),
                            optional("green mass", Kind.MASS),
                            optional("charge temperature", Kind.TEMPERATURE),
                            optional("planned drop temperature", Kind.TEMPERATURE),
                            optional("planned by", Kind.TEXT),
                            optional("trial", Kind.NAME),
                            optional("set", Kind.NAME)),
                    WRITTEN.stream().map(mark -> optional(mark.words(), Kind.TIME)),
                    Stream.of(
                            optional("roasted mass", Kind.MASS),
                            optional("ground colour", Kind.LABELLED),
                            optional("whole-bean colour", Kind.LABELLED),
                            optional("quakers", Kind.LABELLED),
                            optional("tipping", Kind.TEXT),
                            optional("scorching", Kind.TEXT),
                            optional(Batch.Label.NOTE.words(), Kind.TEXT)))
            .flatMap(fields -> fields)
            .toList();

    /** Holds the batches, the line that each stands on, and the units that they are written in. */
    record Result(
            Map<String, Batch> batches, Map<String, Integer> lines, Optional<TemperatureUnit> unit, MassUnit mass) {}

    private BatchesFile() {}

    static Result read(Path folder, Settings settings, List<Machine> machines, ProblemLog problems) {
        CsvTable table = CsvTable.read(folder, FIELDS, settings, problems);
        WholeMassColumn.tell(table, "green mass", Bounds.Weighed.GREEN);
        WholeMassColumn.tell(table, "roasted mass", Bounds.Weighed.ROASTED);
        Map<String, Batch> batches = new LinkedHashMap<>();
        Map<String, Integer> lines = new LinkedHashMap<>();
        Map<String, Row> apart = new LinkedHashMap<>();
        for (Row row : table.rows()) {
            Optional<String> name = row.requiredName("batch").map(settings::batchName);
            if (name.isEmpty()) {
                continue;
            }
            Integer before = lines.putIfAbsent(name.get(), row.line());
            if (before != null) {
                row.problem(
                        "batch",
                        "the batch " + Words.quote(name.get()) + " again",
                        "a name of its own; it stands on line " + before + " too",
                        "row set aside, the first one kept");
                continue;
            }
            Batch batch = batch(name.get(), row, table);
            batches.put(name.get(), batch);
            if (MassPair.contradicts(batch.conditions())) {
                apart.put(name.get(), row);
            }
        }
        MassPair.settle(batches, apart, table.massUnit("green mass"));
        OddMasses.settle(batches, table, machines);
        Optional<TemperatureUnit> unit = Stream.of("charge temperature", "planned drop temperature", "room temperature")
                .flatMap(column -> table.found(column).stream())
                .flatMap(found -> Header.temperatureUnit(found.header().plainUnit()).stream())
                .findFirst();
        return new Result(batches, lines, unit, table.massUnit("green mass"));
    }

    private static Batch batch(String name, Row row, CsvTable table) {
        Batch.Builder builder = Batch.named(name);
        if (row.text("roasted at").isEmpty()) {
            row.problem("roasted at", "nothing", "the date and time of the charge", "kept without a date");
        }
        row.instant("roasted at").ifPresent(builder::roastedAt);
        for (Batch.Label label : Batch.Label.values()) {
            (label == Batch.Label.NOTE ? row.text(label.words()) : row.name(label.words()))
                    .ifPresent(text -> builder.label(label, text));
        }
        builder.conditions(conditions(row)).plan(PlanColumns.of(row)).looks(looks(row, table));
        marks(row).forEach(builder::writtenMark);
        row.extras().forEach(builder::extra);
        if (row.text("trial").isEmpty()) {
            row.text("set").ifPresent(own -> builder.extra("set", own));
        }
        return builder.build();
    }

    private static BatchConditions conditions(Row row) {
        return new BatchConditions(
                row.mass("green mass", Bounds.Weighed.GREEN),
                row.mass("roasted mass", Bounds.Weighed.ROASTED),
                row.temperature("charge temperature", 20, 350),
                row.temperature("green temperature", -20, 70),
                row.temperature("room temperature", -30, 70),
                row.share("room humidity"),
                row.pressure("room pressure"),
                row.time("warm-up", LONGEST_WARM_UP_SECONDS));
    }

    private static BatchLooks looks(Row row, CsvTable table) {
        String meter = table.found("whole-bean colour")
                .or(() -> table.found("ground colour"))
                .map(found -> found.header().unit())
                .orElse("");
        return new BatchLooks(
                anyNumber(row, "whole-bean colour"),
                anyNumber(row, "ground colour"),
                meter,
                row.number("quakers", 0, 10_000, "a count in 100 g"),
                row.text("tipping"),
                row.text("scorching"));
    }

    private static OptionalDouble anyNumber(Row row, String name) {
        return row.number(name, Bounds.ON_A_SCALE.low(), Bounds.ON_A_SCALE.high(), Bounds.ON_A_SCALE.words());
    }

    private static Map<MarkKind, Elapsed> marks(Row row) {
        Map<MarkKind, Elapsed> marks = new LinkedHashMap<>();
        WRITTEN.forEach(
                mark -> row.time(mark.words(), RoastLength.LONGEST_SECONDS).ifPresent(time -> marks.put(mark, time)));
        List<List<MarkKind>> wrong = ORDER.stream()
                .filter(pair -> marks.containsKey(pair.get(0))
                        && marks.containsKey(pair.get(1))
                        && marks.get(pair.get(0)).seconds()
                                > marks.get(pair.get(1)).seconds())
                .toList();
        for (List<MarkKind> pair : wrong) {
            row.problem(
                    pair.get(0).words(),
                    pair.stream()
                            .map(mark -> mark.words() + " at " + marks.get(mark))
                            .collect(Collectors.joining(" and ")),
                    pair.get(0).words() + " before " + pair.get(1).words(),
                    pair.get(1) == MarkKind.DROP
                            ? "both kept; " + pair.get(0).words() + " is questioned: check it"
                            : "both kept and questioned: check them");
        }
        return marks;
    }
}
