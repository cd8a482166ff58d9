package parchment.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.curve.Curve;
import parchment.display.Table;
import parchment.feature.BatchTable;
import parchment.feature.path.BatchPath;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.quantity.Elapsed;
import parchment.stats.linear.Robust;

/** Lays out where the middle of some batches had gas, air and the other controls, every two minutes from charge on. */
final class ControlMiddle {
    /** Seconds between the settings that are told; common practice, no source. */
    private static final int EVERY = 120;

    private record Row(String control, List<String> settings) {}

    /** One batch's control and when the batch was dropped. */
    private record Held(Curve curve, double drop) {
        OptionalDouble at(double seconds) {
            int next = curve.position(seconds);
            // A control stays where it was set until the next reading.
            int reading = next < curve.size() && (next == 0 || curve.secondsAt(next) == seconds) ? next : next - 1;
            return seconds <= drop ? OptionalDouble.of(curve.valueAt(reading)) : OptionalDouble.empty();
        }
    }

    private ControlMiddle() {}

    /** Returns the table; empty where fewer than three batches logged the same control on the same scale. */
    static Optional<Table> of(List<Batch> batches, Logbook logbook) {
        BatchTable table = BatchTable.of(logbook.whole(), List.of());
        List<String> names = table.batches().stream().map(Batch::name).toList();
        List<Row> rows = new ArrayList<>();
        for (Quantity control : ControlMoves.CONTROLS) {
            List<Held> held = batches.stream()
                    .map(batch -> table.paths().get(names.indexOf(batch.name())))
                    .flatMap(path -> held(control, path).stream())
                    .toList();
            boolean oneScale =
                    held.stream().map(one -> one.curve().unit()).distinct().count() == 1;
            if (oneScale && held.size() >= ScoredLot.ENOUGH) {
                rows.add(new Row(control.words(), settings(held, logbook)));
            }
        }
        int columns = rows.stream().mapToInt(row -> row.settings().size()).max().orElse(0);
        if (columns == 0) {
            return Optional.empty();
        }
        Table shown = Table.titled("Gas, air and other controls: the middle of these batches")
                .withText("control", rows, Row::control);
        for (int i = 0; i < columns; i++) {
            int column = i;
            shown = shown.withText(
                    i == 0 ? "at charge" : Elapsed.seconds((double) EVERY * i).toString(),
                    rows,
                    row -> column < row.settings().size() ? row.settings().get(column) : "");
        }
        return Optional.of(
                shown.withDashForMissing("fewer than three of them were still roasting, or it was not logged")
                        .withNote("Times are since charge, in minutes and seconds. It is what was set and no plan."));
    }

    private static Optional<Held> held(Quantity control, BatchPath path) {
        return path.steps(control)
                .map(steps -> steps.control())
                .filter(curve -> !curve.isEmpty())
                .flatMap(curve -> path.mark(MarkKind.DROP).map(drop -> new Held(curve, drop.seconds())));
    }

    /** Returns the settings as long as three batches at least were still roasting. */
    private static List<String> settings(List<Held> held, Logbook logbook) {
        List<String> settings = new ArrayList<>();
        for (int seconds = 0; ; seconds += EVERY) {
            int at = seconds;
            double[] known =
                    held.stream().flatMapToDouble(one -> one.at(at).stream()).toArray();
            if (known.length < ScoredLot.ENOUGH) {
                return settings;
            }
            settings.add(ControlMoves.setting(Robust.median(known), held.get(0).curve(), logbook.readerUnit()));
        }
    }
}
