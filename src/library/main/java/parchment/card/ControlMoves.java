package parchment.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.curve.ControlSteps;
import parchment.curve.Curve;
import parchment.display.Table;
import parchment.feature.BatchTable;
import parchment.feature.path.BatchPath;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Lists how gas, air and the other controls stood at charge and when they were moved, batch by batch. */
final class ControlMoves {
    /** Most moves told of one control of one batch. */
    private static final int TOLD = 8;

    static final List<Quantity> CONTROLS =
            List.of(Quantity.GAS, Quantity.HEATER_POWER, Quantity.AIRFLOW, Quantity.DRUM_SPEED);

    private record Row(String control, String batch, String atCharge, String moves) {}

    private ControlMoves() {}

    /** Returns the table; empty if no control was logged and none written in these batches. */
    static Optional<Table> of(List<Batch> batches, Logbook logbook) {
        TodaysReadings readings = TodaysReadings.of(logbook);
        BatchTable table = BatchTable.of(logbook.whole(), List.of());
        List<String> names = table.batches().stream().map(Batch::name).toList();
        List<Row> rows = new ArrayList<>();
        for (Quantity control : CONTROLS) {
            for (Batch batch : batches) {
                BatchPath path = table.paths().get(names.indexOf(batch.name()));
                path.steps(control)
                        .map(steps -> row(control, steps, path, readings, logbook.readerUnit()))
                        .or(() -> written(control, batch))
                        .ifPresent(rows::add);
            }
        }
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        Table.titled("Gas, air and other controls")
                                .withText("control", rows, Row::control)
                                .withText("batch", rows, Row::batch)
                                .withText("at charge", rows, Row::atCharge)
                                .withText("moved", rows, Row::moves)
                                .withDashForMissing("not moved between charge and drop, or not logged")
                                .withRowsShown(40)
                                .withNote(
                                        "In brackets the bean temperature as the control was moved, on today's probe. It lags the beans."));
    }

    private static Row row(
            Quantity control, ControlSteps steps, BatchPath path, TodaysReadings readings, TemperatureUnit reader) {
        Curve curve = steps.control();
        List<String> moves = new ArrayList<>();
        for (ControlSteps.Step step : steps.list()) {
            double celsius = path.beanTemperatureAt(step.atSeconds()).value();
            String at = Double.isFinite(celsius)
                    ? Unit.TEMPERATURE.withDigits(0).format(readings.today(path.batch(), celsius), reader)
                    : "";
            String move = Elapsed.seconds(step.atSeconds())
                    + (at.isEmpty() || at.equals("missing") ? "" : " (" + at + ")") + " to "
                    + setting(step.to(), curve, reader);
            moves.add(move.replace(' ', '\u00a0')); // A move is not broken in two at the end of a line.
        }
        String told = String.join(", ", moves.subList(0, Math.min(TOLD, moves.size())))
                + (moves.size() > TOLD ? " and " + (moves.size() - TOLD) + " more" : "");
        return new Row(control.words(), path.batch().name(), setting(curve.valueAt(0), curve, reader), told);
    }

    /** What stands in a column of the list of batches that is named after the control, such as "gas [%]". */
    private static Optional<Row> written(Quantity control, Batch batch) {
        return batch.extras().entrySet().stream()
                .filter(extra ->
                        extra.getKey().toLowerCase(Locale.ROOT).matches("(planned )?" + control.words() + "\\b.*"))
                .findFirst()
                .map(extra -> new Row(
                        control.words(), batch.name(), "", "written: " + extra.getKey() + " " + extra.getValue()));
    }

    /** Prints a setting without decimals that say nothing. */
    static String setting(double value, Curve curve, TemperatureUnit reader) {
        String number =
                curve.unit().number(value).replaceFirst("(\\.\\d*?)0+$", "$1").replaceFirst("\\.$", "");
        return (number + " " + curve.unit().symbol(reader)).strip();
    }
}
