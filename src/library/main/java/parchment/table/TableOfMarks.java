package parchment.table;

import java.util.List;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;
import tech.tablesaw.api.Table;

/** A row for each mark of each batch. */
final class TableOfMarks {
    private static final Unit TENTHS_OF_SECONDS = Unit.SECONDS.withDigits(1);

    private record Row(Batch batch, Mark mark, String toCheck) {}

    private TableOfMarks() {}

    static Table of(Logbook logbook) {
        List<Row> rows = Phases.of(logbook).stream()
                .flatMap(phases -> phases.marks().stream().map(mark -> row(phases, mark)))
                .toList();
        return Rows.of(rows, logbook.readerUnit())
                .text("batch", row -> Optional.of(row.batch.name()))
                .text("lot", row -> row.batch.lot())
                .text("machine", row -> row.batch.machine())
                .time("roasted at", row -> row.batch.roastedAt())
                .text("mark", row -> Optional.of(row.mark.kind().words()))
                .number("time since charge", Unit.SECONDS, row -> row.mark.seconds())
                .step("standard error of the time", TENTHS_OF_SECONDS, row -> row.mark.standardError())
                .number(
                        "bean temperature",
                        Unit.TEMPERATURE,
                        row -> row.mark
                                .beanTemperature()
                                .map(Temperature::celsius)
                                .orElse(Double.NaN))
                .step(
                        "standard error of the temperature",
                        Unit.TEMPERATURE_STEP,
                        row -> row.mark.beanTemperatureStandardError())
                .text("source", row -> Optional.of(row.mark.source().words()))
                .text("to check", row -> Optional.of(row.toCheck))
                .text("how it was found", row -> Optional.of(row.mark.how()))
                .table(TableNames.timed("Marks", logbook));
    }

    private static Row row(Phases phases, Mark mark) {
        return new Row(phases.batch(), mark, phases.questioned().contains(mark.kind()) ? "yes" : "no");
    }
}
