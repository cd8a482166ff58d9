package parchment.virtual;

import static parchment.virtual.WrittenTable.number;
import static parchment.virtual.WrittenTable.string;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.WrittenTable.Column;
import parchment.virtual.WrittenTable.Type;
import parchment.virtual.chance.Chance;
import parchment.virtual.people.GivenScore;
import parchment.virtual.physics.Room;
import parchment.virtual.written.LoggedCurve;
import parchment.virtual.written.PlannedBatch;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualCupping;
import parchment.virtual.written.VirtualLot;
import parchment.virtual.written.WrittenMarks;

/** Turns a virtual logbook into the tables of the logbook folder, as that roastery would have kept them. */
final class LogbookTables {
    private final VirtualLogbook logbook;
    private final Story story;
    private final TemperatureUnit unit;
    private final String degrees;

    LogbookTables(VirtualLogbook logbook) {
        this.logbook = logbook;
        this.story = logbook.story();
        this.unit = story.writing().temperature();
        this.degrees = " [" + unit.symbol() + "]";
    }

    /** Returns all tables; those of the curves are named and described, but without their rows. */
    List<WrittenTable> all() {
        List<WrittenTable> tables = new ArrayList<>();
        tables.add(batches());
        tables.add(lots());
        if (!story.machineName().isEmpty()) {
            tables.add(lotChecks());
            tables.add(machines());
            tables.add(upkeep());
            tables.add(sessions());
        }
        tables.add(cuppings());
        for (VirtualBatch batch : logbook.batches()) {
            tables.add(new WrittenTable(curvePath(batch), curveColumns(), List.of()));
        }
        return tables;
    }

    static boolean isCurve(WrittenTable table) {
        return table.path().startsWith("curves/");
    }

    private static String curvePath(VirtualBatch batch) {
        return "curves/" + batch.name() + ".csv";
    }

    private boolean full() {
        return !story.machineName().isEmpty();
    }

    private WrittenTable batches() {
        List<Column> columns =
                new ArrayList<>(List.of(string("batch"), new Column("roasted at", Type.DATETIME), string("lot")));
        if (full()) {
            columns.addAll(List.of(
                    string("machine"),
                    string("operator"),
                    string("recipe"),
                    string("purpose"),
                    number("room temperature" + degrees),
                    number("room humidity [%]"),
                    number("room pressure [hPa]"),
                    number("warm-up [min]"),
                    number("green temperature" + degrees)));
        }
        columns.addAll(List.of(number("green mass [kg]"), number("charge temperature" + degrees)));
        if (full()) {
            columns.addAll(List.of(number("planned drop temperature" + degrees), string("planned by")));
        }
        columns.addAll(List.of(
                string("yellowing [min:s]"),
                string("first crack start [min:s]"),
                string("first crack end [min:s]"),
                string("drop [min:s]"),
                number("roasted mass [kg]"),
                string("note")));
        List<List<String>> rows = new ArrayList<>();
        for (VirtualBatch batch : logbook.batches()) {
            rows.add(row(batch));
        }
        return new WrittenTable("batches.csv", columns, rows);
    }

    private List<String> row(VirtualBatch batch) {
        PlannedBatch plan = batch.plan();
        Written written = Written.of(logbook, batch);
        List<String> row = new ArrayList<>(List.of(
                plan.name(),
                plan.roastedAt() + (plan.roastedAt().getSecond() == 0 ? ":00" : ""),
                written.lot().orElse("")));
        if (full()) {
            Room room = batch.conditions().room();
            row.addAll(List.of(
                    story.machineName(),
                    batch.operator(),
                    plan.recipe(),
                    written.purpose(),
                    temperature(room.temperature(), 1),
                    Decimals.of(100 * room.humidity(), 0),
                    Decimals.of(room.pressure(), 0),
                    plan.positionInDay() == 1 ? Decimals.of(plan.warmUp(), 0) : "",
                    temperature(batch.roast().charge().greenTemperature(), 0)));
        }
        row.addAll(List.of(Decimals.of(plan.greenMass(), 3), temperature(plan.chargeReading(), 0)));
        if (full()) {
            boolean drawn = plan.plan() == PlannedBatch.Plan.CHANCE;
            boolean unwritten = plan.plan() == PlannedBatch.Plan.UNWRITTEN;
            row.addAll(List.of(
                    unwritten ? "" : temperature(plan.meantDrop(), 1), unwritten ? "" : drawn ? "chance" : "choice"));
        }
        WrittenMarks marks = batch.marks();
        row.addAll(List.of(
                Decimals.minutes(marks.yellowing()),
                Decimals.minutes(marks.firstCrackStart()),
                Decimals.minutes(marks.firstCrackEnd()),
                Decimals.minutes(marks.drop()),
                written.roastedMass().map(mass -> Decimals.of(mass, 3)).orElse(""),
                written.note()));
        return row;
    }

    private WrittenTable lots() {
        List<List<String>> rows = new ArrayList<>();
        for (VirtualLot lot : story.lots()) {
            rows.add(List.of(
                    lot.name(),
                    lot.origin(),
                    lot.process(),
                    lot.variety(),
                    lot.harvestedOn().toString(),
                    lot.arrivedOn().toString(),
                    full() ? "jute with liner" : "",
                    Integer.toString(lot.screenSize()),
                    Decimals.of(percent(lot.beans().moisture()), 1),
                    Decimals.of(lot.beans().density(), 0),
                    "invented lot"));
        }
        return new WrittenTable(
                "lots.csv",
                List.of(
                        string("lot"),
                        string("origin"),
                        string("process"),
                        string("variety"),
                        new Column("harvested on", Type.DATE),
                        new Column("arrived on", Type.DATE),
                        string("storage"),
                        new Column("screen size", Type.INTEGER),
                        number("moisture [%]"),
                        number("density [g/L]"),
                        string("note")),
                rows);
    }

    /** Every two months somebody measures what is in store. */
    private WrittenTable lotChecks() {
        LocalDate end = logbook.batches()
                .get(logbook.batches().size() - 1)
                .plan()
                .roastedAt()
                .toLocalDate();
        List<List<String>> rows = new ArrayList<>();
        for (VirtualLot lot : story.lots()) {
            Chance chance = logbook.seed().stream("checks " + lot.name());
            for (LocalDate day = lot.arrivedOn().plusDays(2);
                    !day.isAfter(end) && !day.isAfter(lot.soldOutOn());
                    day = day.plusDays(50 + chance.below(30))) {
                double moisture = lot.moisture(day);
                rows.add(List.of(
                        lot.name(),
                        day.toString(),
                        Decimals.of(percent(moisture) + chance.normal(0, 0.15), 1),
                        Decimals.of(0.55 + 3 * (moisture - 0.1236) + chance.normal(0, 0.008), 2),
                        Decimals.of(lot.beans().density() + chance.normal(0, 4), 0)));
            }
        }
        return new WrittenTable(
                "lot-checks.csv",
                List.of(
                        string("lot"),
                        new Column("measured on", Type.DATE),
                        number("moisture [%]"),
                        number("water activity"),
                        number("density [g/L]")),
                rows);
    }

    private WrittenTable machines() {
        return new WrittenTable(
                "machines.csv",
                List.of(
                        string("machine"),
                        number("capacity [kg]"),
                        number("smallest batch [kg]"),
                        number("largest batch [kg]"),
                        string("heat source"),
                        number("highest air temperature" + degrees),
                        number("least airflow [%]"),
                        string("probe place"),
                        number("probe diameter [mm]"),
                        string("air temperature"),
                        string("note")),
                List.of(List.of(
                        story.machineName(),
                        "3",
                        "1",
                        "2.8",
                        "gas",
                        temperature(270, 0),
                        "20",
                        "drum front, in the beans",
                        "4",
                        "drum air",
                        VirtualLogbook.WARNING)));
    }

    private WrittenTable upkeep() {
        List<List<String>> rows = new ArrayList<>();
        for (Story.Work work : logbook.upkeep()) {
            rows.add(List.of(
                    story.machineName(),
                    work.day().toString(),
                    work.what(),
                    work.kind().words(),
                    work.note()));
        }
        return new WrittenTable(
                "upkeep.csv",
                List.of(
                        string("machine"),
                        new Column("done on", Type.DATE),
                        string("what"),
                        string("kind"),
                        string("note")),
                rows);
    }

    private WrittenTable sessions() {
        List<List<String>> rows = new ArrayList<>();
        for (VirtualCupping cupping : logbook.cuppings()) {
            rows.add(List.of(
                    cupping.name(),
                    cupping.blind() == VirtualCupping.Blind.YES ? "yes" : "no",
                    cupping.beforeDiscussion() == VirtualCupping.Talk.SCORED_BEFORE ? "yes" : "no",
                    "town water, filtered",
                    "12",
                    "200",
                    temperature(94, 0),
                    "coarse"));
        }
        return new WrittenTable(
                "sessions.csv",
                List.of(
                        string("cupping"),
                        new Column("blind", Type.BOOLEAN),
                        new Column("scored before discussion", Type.BOOLEAN),
                        string("water"),
                        number("dose [g]"),
                        number("water mass [g]"),
                        number("water temperature" + degrees),
                        string("grind")),
                rows);
    }

    private WrittenTable cuppings() {
        List<Column> columns = new ArrayList<>(
                List.of(string("cupping"), new Column("tasted on", Type.DATE), string("cupper"), string("batch")));
        if (full()) {
            columns.addAll(List.of(
                    string("blind code"),
                    new Column("cup", Type.INTEGER),
                    new Column("serving position", Type.INTEGER)));
        }
        for (String attribute : logbook.attributes()) {
            columns.add(number(attribute));
        }
        List<List<String>> rows = new ArrayList<>();
        for (VirtualCupping cupping : logbook.cuppings()) {
            for (GivenScore score : cupping.scores()) {
                List<String> row = new ArrayList<>(
                        List.of(cupping.name(), cupping.tastedOn().toString(), score.cupper(), score.batch()));
                if (full()) {
                    row.addAll(List.of(
                            score.blindCode(), Integer.toString(score.cup()), Integer.toString(score.position())));
                }
                for (double points : score.points()) {
                    row.add(Decimals.of(points, 2));
                }
                rows.add(row);
            }
        }
        return new WrittenTable("cuppings.csv", columns, rows);
    }

    private boolean inSeconds() {
        return story.writing().times() == Story.Writing.Times.SECONDS;
    }

    private boolean withAirProbe() {
        return story.writing().airProbe() == Story.Writing.AirProbe.MEASURED;
    }

    private List<Column> curveColumns() {
        List<Column> columns = new ArrayList<>();
        columns.add(inSeconds() ? number("time [s]") : string("time [min:s]"));
        columns.add(number("bean temperature" + degrees));
        if (withAirProbe()) {
            columns.add(number("air temperature" + degrees));
            columns.add(number("gas [%]"));
            columns.add(number("airflow [%]"));
        }
        return columns;
    }

    WrittenTable curve(VirtualBatch batch) {
        boolean seconds = inSeconds();
        List<List<String>> rows = new ArrayList<>();
        for (LoggedCurve.Reading reading : batch.curve().readings()) {
            if (!seconds && reading.seconds() < 0) {
                continue;
            }
            List<String> row = new ArrayList<>();
            row.add(seconds ? Decimals.of(reading.seconds(), 1) : Decimals.minutes(reading.seconds()));
            row.add(reading.bean() == Logger.SENTINEL ? "999.9" : temperature(reading.bean(), seconds ? 1 : 0));
            if (withAirProbe()) {
                row.add(temperature(reading.air(), 1));
                row.add(Decimals.of(100 * reading.gas(), 0));
                row.add(Decimals.of(100 * reading.airflow(), 0));
            }
            rows.add(row);
        }
        return new WrittenTable(curvePath(batch), curveColumns(), rows);
    }

    static String properties(VirtualLogbook logbook) {
        StringBuilder text = new StringBuilder();
        text.append("# ").append(VirtualLogbook.WARNING).append('\n');
        text.append("provenance=invented machine\n");
        text.append("name=").append(logbook.name()).append('\n');
        text.append("time.zone=UTC\n");
        for (String attribute : logbook.attributes()) {
            text.append("scale.").append(attribute).append("=0..10\n");
        }
        text.append("missing.readings=999.9\n");
        text.append("crack.habit=first pop\n");
        return text.toString();
    }

    static String readme(VirtualLogbook logbook) {
        return "# " + logbook.name() + "\n\n" + "**" + VirtualLogbook.WARNING + "**\n\n"
                + "Every batch, lot, person and machine in this logbook was made up by a simulator with "
                + (logbook.seed().isSecret() ? "a secret seed" : "a seed (" + logbook.seed() + ")")
                + ".\nNothing here was ever roasted or tasted; no temperature, time or setting in it may be carried over to a machine.\n\n"
                + "How it was made: docs/virtual-roastery.md. " + envelope(logbook);
    }

    private static String envelope(VirtualLogbook logbook) {
        return logbook.seed().isSecret()
                ? "The truth behind it is in an envelope that whoever made this folder keeps. Its seal:\n\n    "
                        + logbook.truth().seal()
                        + "\n\nWhen the envelope is opened, the file must have this SHA-256; then nothing in it was changed since.\n"
                : "The truth behind it lies beside this folder, sealed against accident.\n";
    }

    private String temperature(double celsius, int decimals) {
        return Decimals.of(unit.fromCelsius(celsius), decimals);
    }

    /** Converts water per dry matter to per cent of the whole. */
    private static double percent(double moisture) {
        return 100 * moisture / (1 + moisture);
    }
}
