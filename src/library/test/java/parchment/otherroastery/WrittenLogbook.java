package parchment.otherroastery;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Writes a roasted and tasted scenario as a folder of CSV files, as docs/logbook-format.md says. */
final class WrittenLogbook {
    private static final ZoneOffset WEST = ZoneOffset.ofHours(-8);
    private static final List<String> MACHINES = List.of("barrel", "keg");
    private static final long[] POWERS = {1, 10, 100};
    private static final String COPY = " again";

    private final OtherRoastery scenario;
    private final Roasting roasting;
    private final List<RoastedBatch> batches;
    private final List<Tasting.Row> rows;
    private final ReadingLogger logger;
    private final String sign;
    private final Set<String> doubled;

    WrittenLogbook(OtherRoastery scenario, Roasting roasting, List<RoastedBatch> batches) {
        this.scenario = scenario;
        this.roasting = roasting;
        this.batches = batches;
        this.rows = new Tasting(scenario).rows(batches);
        this.logger = scenario.logger();
        this.sign = logger.unit().sign();
        this.doubled = scenario.draws("duplicates").shuffled(batches.size()).stream()
                .limit(scenario.faults().duplicates())
                .map(Roasting::name)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    void writeTo(Path folder) throws IOException {
        Files.createDirectories(folder.resolve("curves"));
        write(folder, "logbook.properties", properties());
        write(folder, "batches.csv", batchRows());
        write(folder, "lots.csv", lotRows());
        write(folder, "machines.csv", machineRows());
        write(folder, "upkeep.csv", upkeepRows());
        write(folder, "cuppings.csv", cuppingRows());
        write(folder, "sessions.csv", sessionRows());
        for (RoastedBatch batch : batches) {
            String curve = curve(batch);
            write(folder, "curves/" + batch.name() + ".csv", curve);
            if (doubled.contains(batch.name())) {
                write(folder, "curves/" + batch.name() + COPY + ".csv", curve);
            }
        }
    }

    private static void write(Path folder, String file, String text) throws IOException {
        Files.writeString(folder.resolve(file), text);
    }

    private boolean west() {
        return logger.stamps() == ReadingLogger.Stamps.UTC_IN_A_WESTERN_ZONE;
    }

    private String properties() {
        StringBuilder text = new StringBuilder("name=" + scenario.name() + "\n");
        text.append("time.zone=").append(west() ? "-08:00" : "+01:00").append('\n');
        OtherRoastery.ATTRIBUTES.forEach(
                attribute -> text.append("scale.").append(attribute).append("=0..10\n"));
        return text.append("crack.habit=first pop\n").toString();
    }

    private String batchRows() {
        StringBuilder text =
                new StringBuilder("batch,roasted at,lot,machine,operator,green mass [kg],roasted mass [kg],"
                        + "charge temperature [" + sign + "],green temperature [" + sign + "],room temperature [" + sign
                        + "],room humidity [%],planned drop temperature [" + sign
                        + "],planned by,yellowing [s],first crack start [s],drop [s]\n");
        for (RoastedBatch batch : batches) {
            text.append(batch.name()).append(batchRow(batch));
            if (doubled.contains(batch.name())) {
                text.append(batch.name()).append(COPY).append(batchRow(batch));
            }
        }
        return text.toString();
    }

    private String batchRow(RoastedBatch batch) {
        String stamp = west()
                ? batch.roastedAt()
                        .atOffset(WEST)
                        .withOffsetSameInstant(ZoneOffset.UTC)
                        .toString()
                : batch.roastedAt().toString();
        RoastedBatch.Conditions around = batch.conditions();
        RoastedBatch.Written written = batch.written();
        boolean chance = scenario.drop().choice() == DropHabit.Choice.CHANCE;
        return ","
                + String.join(
                        ",",
                        stamp,
                        batch.lot().name(),
                        MACHINES.get(batch.machine()),
                        batch.person().name(),
                        number(around.mass(), 2),
                        number(written.roastedMass(), 2),
                        temperature(written.charge(), 0),
                        temperature(around.green(), 0),
                        temperature(around.room(), 1),
                        number(around.humidity(), 0),
                        batch.planned().isPresent()
                                ? temperature(batch.planned().getAsDouble(), 1)
                                : "",
                        batch.planned().isPresent() ? (chance ? "chance" : "choice") : "",
                        number(written.yellowing(), 0),
                        number(written.firstCrack(), 0),
                        number(written.drop(), 0))
                + "\n";
    }

    private String lotRows() {
        StringBuilder text = new StringBuilder("lot,arrived on,moisture [%]\n");
        for (OtherLot lot : scenario.lots()) {
            double wet = lot.beans().moisture() / (1 + lot.beans().moisture());
            text.append(String.join(",", lot.name(), roasting.arrived(lot).toString(), number(100 * wet, 1)))
                    .append('\n');
        }
        return text.toString();
    }

    private String machineRows() {
        StringBuilder text = new StringBuilder("machine,smallest batch [kg],largest batch [kg],heat source,"
                + "highest air temperature [" + sign + "],least airflow [%]\n");
        for (int machine = 0; machine < scenario.days().machines(); machine++) {
            text.append(MACHINES.get(machine))
                    .append(",3,6,gas,")
                    .append(temperature(290, 0))
                    .append(",25\n");
        }
        return text.toString();
    }

    private String upkeepRows() {
        String text = "machine,done on,what,note\n" + MACHINES.get(0) + ","
                + Roasting.date(scenario, scenario.days().days() / 4) + ",ducts brushed,\n";
        int moved = roasting.movedOnDay();
        boolean written = scenario.faults().moveWritten() == PlantedFaults.Entry.WRITTEN;
        return written && moved < scenario.days().days()
                ? text + MACHINES.get(0) + "," + Roasting.date(scenario, moved) + ",probe moved,\n"
                : text;
    }

    private String cuppingRows() {
        StringBuilder text = new StringBuilder("cupping,tasted on,cupper,batch,cup,serving position,"
                + String.join(",", OtherRoastery.ATTRIBUTES) + "\n");
        for (Tasting.Row row : rows) {
            append(text, row, row.batch());
            if (doubled.contains(row.batch())) {
                append(text, row, row.batch() + COPY);
            }
        }
        return text.toString();
    }

    private static void append(StringBuilder text, Tasting.Row row, String batch) {
        text.append(String.join(
                ",",
                row.cupping(),
                row.day().toString(),
                row.cupper(),
                batch,
                Integer.toString(row.cup()),
                Integer.toString(row.position())));
        OtherRoastery.ATTRIBUTES.forEach(
                attribute -> text.append(',').append(number(row.scores().get(attribute), 2)));
        text.append('\n');
    }

    private String sessionRows() {
        StringBuilder text = new StringBuilder("cupping,blind,scored before discussion\n");
        rows.stream()
                .map(Tasting.Row::cupping)
                .distinct()
                .forEach(cupping -> text.append(cupping).append(",yes,yes\n"));
        return text.toString();
    }

    /** The clock starts when the button is pressed, up to 2 s after the charge; readings go on 5 to 20 s after the drop. */
    private String curve(RoastedBatch batch) {
        Draws draws = scenario.draws("logger " + batch.name());
        double pressed = draws.between(0, 2);
        Course course = batch.course();
        double until = course.drop() + draws.between(5, 20);
        double wander = draws.normal(logger.noise());
        double fresh = Math.sqrt(1 - logger.memory() * logger.memory());
        StringBuilder text = new StringBuilder(
                "time [s],bean temperature [" + sign + "],air temperature [" + sign + "],gas [%],airflow [%]\n");
        double before = draws.between(25, 55);
        double at = -before;
        while (at <= until) {
            wander = logger.memory() * wander + fresh * draws.normal(logger.noise());
            double bean = read(course, at, batch.conditions().charge())
                    + batch.conditions().readsHigh()
                    + wander;
            double air = course.airReading(at) - 0.05 * Math.max(0, -at) + draws.normal(2 * logger.noise());
            Hand.Setting setting = course.setting(at);
            text.append(number(at - pressed, 1))
                    .append(',')
                    .append(stepped(bean))
                    .append(',')
                    .append(stepped(air))
                    .append(',')
                    .append(number(at < 0 ? 35 : setting.gas(), 1))
                    .append(',')
                    .append(number(at < 0 ? 40 : setting.airflow(), 1))
                    .append('\n');
            at += Math.max(0.5, logger.interval() + draws.normal(logger.irregular()));
        }
        return text.toString();
    }

    /** Before the charge the empty drum's air creeps up to it. */
    private static double read(Course course, double at, double charge) {
        return at < 0 ? charge + 0.03 * at : course.reading(at);
    }

    private String stepped(double celsius) {
        double written = logger.unit().written(celsius);
        return number(Math.rint(written / logger.step()) * logger.step(), 1);
    }

    private String temperature(double celsius, int decimals) {
        return number(logger.unit().written(celsius), decimals);
    }

    private static String number(double value, int decimals) {
        if (Double.isNaN(value)) {
            return "";
        }
        // As String.format does it, but many times quicker: a logbook holds some hundred thousand numbers.
        return BigDecimal.valueOf(Math.round(value * POWERS[decimals]), decimals)
                .toPlainString();
    }
}
