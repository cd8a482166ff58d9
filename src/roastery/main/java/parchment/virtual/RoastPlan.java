package parchment.virtual;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.ShownAs;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.virtual.people.Habit;
import parchment.virtual.written.Overprint;

/**
 * Lets somebody have batches roasted by an invented machine, as read from a CSV file. Never a plan for a real machine.
 *
 * <p>Columns: {@code lot} and {@code drop temperature [°C]} are needed. {@code batch}, {@code charge temperature [°C]}, {@code green
 * mass [kg]}, {@code habit} (see {@link Habit#names}), {@code gas at start [%]}, {@code gas after yellowing [%]}, {@code airflow at
 * start [%]} and {@code airflow at end [%]} may be left out or blank; °F, g and lb are read too. What is blank is as is usual there.
 *
 * <pre>{@code
 * lot,charge temperature [°C],drop temperature [°C],habit
 * Stone Bridge,182,199,steady
 * Stone Bridge,182,207,steady
 * }</pre>
 *
 * {@code VirtualRoastery.of(scenario).withSeed(7).roast(RoastPlan.read(file))} roasts and cups them.
 */
public final class RoastPlan implements ShownAs {
    /**
     * Holds one batch to roast.
     *
     * @param batch its name
     * @param lot the lot
     * @param greenMass kg, unless it is left to the roastery
     * @param chargeReading bean-probe reading at the charge, °C, unless it is left to the roastery
     * @param dropReading bean-probe reading at the drop, °C
     * @param habit the habit's name
     * @param path how gas and air are moved
     * @param place file and line, for messages
     */
    public record Line(
            String batch,
            String lot,
            Optional<Double> greenMass,
            Optional<Double> chargeReading,
            double dropReading,
            String habit,
            Habit path,
            String place) {}

    private final List<Line> lines;
    private final TemperatureUnit reader;

    private RoastPlan(List<Line> lines, TemperatureUnit reader) {
        this.lines = List.copyOf(lines);
        this.reader = reader;
    }

    /** Returns the same plan, shown on another scale of temperature. */
    public RoastPlan in(TemperatureUnit unit) {
        return new RoastPlan(lines, unit);
    }

    /**
     * Reads a plan from a CSV file in UTF-8.
     *
     * @throws IOException if the file cannot be read
     * @throws IllegalArgumentException if it is no plan; the message names file and line and what was expected
     */
    public static RoastPlan read(Path file) throws IOException {
        return of(PlanTable.read(file));
    }

    /**
     * Reads a plan from the text of a CSV file.
     *
     * @param name what to call it in messages
     * @throws IllegalArgumentException if it is no plan; the message names the line and what was expected
     */
    public static RoastPlan of(String text, String name) {
        return of(PlanTable.of(text, name, PlanTable.Counting.LINES));
    }

    /**
     * Reads a plan that somebody typed batch by batch and never saw as a file: messages count its batches, not lines.
     *
     * @param text the text of a CSV file
     * @param name what to call it in messages
     * @throws IllegalArgumentException if it is no plan; the message names the batch and what was expected
     */
    public static RoastPlan typed(String text, String name) {
        return of(PlanTable.of(text, name, PlanTable.Counting.BATCHES));
    }

    private static RoastPlan of(PlanTable table) {
        List<Line> lines = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (PlanTable.Row row : table.rows()) {
            Line line = line(row, lines.size() + 1);
            if (!names.add(line.batch())) {
                throw new IllegalArgumentException(
                        line.place() + ": the batch '" + line.batch() + "' is planned twice; give each its own name.");
            }
            lines.add(line);
        }
        return new RoastPlan(lines, TemperatureUnit.CELSIUS);
    }

    private static Line line(PlanTable.Row row, int number) {
        String habit = row.text(PlanTable.HABIT).orElse(Habit.names().get(0));
        Habit base;
        try {
            base = Habit.named(habit);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(row.place() + ": " + e.getMessage(), e);
        }
        Habit path = base.asPlanned(
                row.share(PlanTable.GAS_AT_START).orElse(base.gasAtStart()),
                row.share(PlanTable.GAS_AFTER).orElse(base.gasAfterYellowing()),
                row.share(PlanTable.AIR_AT_START).orElse(base.airAtStart()),
                row.share(PlanTable.AIR_AT_END).orElse(base.airAtEnd()));
        String batch = row.text(PlanTable.BATCH).orElse("P" + number);
        if (!batch.matches("[A-Za-z0-9][A-Za-z0-9-]{0,30}")) {
            throw new IllegalArgumentException(
                    row.place() + ": a batch's name has letters, digits and dashes only; found '" + batch + "'.");
        }
        return new Line(
                batch,
                row.text(PlanTable.LOT)
                        .orElseThrow(() -> new IllegalArgumentException(
                                row.place() + ": the lot is blank; name the lot to roast.")),
                row.mass(PlanTable.MASS),
                row.temperature(PlanTable.CHARGE, 120, 240),
                row.temperature(PlanTable.DROP, 185, 230)
                        .orElseThrow(() -> new IllegalArgumentException(
                                row.place() + ": the drop temperature is blank; give a reading from 185 to 230 °C.")),
                habit,
                path,
                row.place());
    }

    /** Returns the batches to roast, in the file's order. */
    public List<Line> lines() {
        return lines;
    }

    /** Returns the plan as a table. */
    private Table table() {
        return Table.titled("Plan for an invented machine")
                .withText("batch", lines, Line::batch)
                .withText("lot", lines, Line::lot)
                .withText("habit", lines, Line::habit)
                .withNumber(
                        "green mass", "kg", 2, lines, line -> line.greenMass().orElse(Double.NaN))
                .withNumber(
                        "charge temperature",
                        Unit.TEMPERATURE,
                        reader,
                        lines,
                        line -> line.chargeReading().orElse(Double.NaN))
                .withNumber("drop temperature", Unit.TEMPERATURE, reader, lines, Line::dropReading)
                .withDashForMissing("as is usual there");
    }

    @Override
    public Showable shownAs() {
        return Overprint.across(table());
    }

    @Override
    public String toString() {
        return "plan of " + lines.size() + (lines.size() == 1 ? " batch" : " batches") + " for an invented machine. "
                + VirtualLogbook.WARNING;
    }
}
