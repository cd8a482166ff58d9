package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import parchment.calendar.machine.MachineDays;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** Gathers the rows of a lot's machine that a model of the year can use: dated, measured, with what the roaster did. */
final class LotRows {
    private static final List<Feature> ROASTER = List.of(
            Features.greenMass(),
            Features.chargeTemperature(),
            Features.gasInDrying(),
            Features.gasInDevelopment(),
            Features.airflowInDevelopment());

    /** What the end of the roast settles: held against each other at like drop temperature. */
    private static final List<Feature> SETTLED_AT_THE_DROP = List.of(
            Features.massLoss(),
            Features.dropTime(),
            Features.developmentTime(),
            Features.developmentRatio(),
            Features.wholeBeanColour(),
            Features.groundColour());

    /** What goes on for as long as the beans are in the drum: held against each other at like drop time too. */
    private static final List<Feature> LOST_WITH_TIME =
            List.of(Features.massLoss(), Features.wholeBeanColour(), Features.groundColour());

    private final List<Batch> batches = new ArrayList<>();
    private final List<Integer> tableRows = new ArrayList<>();
    private final List<LocalDate> dates;
    private final int[] dayOfRow;
    private final double[] y;
    private final List<YearModel.Column> columns = new ArrayList<>();
    private final int leftOut;
    private final int elsewhere;
    private final String machine;
    private final List<ProbeChange> changes;
    private final boolean readByTheProbe;

    private LotRows(Logbook logbook, String lot, Response response) {
        List<Feature> features = new ArrayList<>(ROASTER);
        if (settledAtTheDrop(response)) {
            features.add(Features.dropTemperature());
        }
        if (LOST_WITH_TIME.stream().anyMatch(f -> f.name().equals(response.name()))) {
            features.add(Features.dropTime());
        }
        features.add(Features.batchOfTheDay());
        features.add(Features.roomTemperature());
        features.add(Features.roomHumidity());
        features.removeIf(f -> f.name().equals(response.name()));
        BatchTable table = BatchTable.of(logbook, features);
        List<MachineDays> machines = MachineDays.of(table.logbook());
        MachineDays chosen = machines.stream()
                .max((a, b) -> Long.compare(count(a, lot), count(b, lot)))
                .orElse(MachineDays.NONE);
        this.machine = chosen.machine();
        this.elsewhere = (int) machines.stream()
                .filter(m -> m != chosen)
                .mapToLong(m -> count(m, lot))
                .sum();
        double[] values = response.raw();
        ProbePeriods periods = ProbePeriods.of(logbook);
        List<Feature> used = new ArrayList<>();
        for (Feature feature : features) {
            double[] column = table.values(feature);
            long measured = chosen.rows().stream()
                    .filter(row -> Double.isFinite(values[row]))
                    .count();
            long known = chosen.rows().stream()
                    .filter(row -> Double.isFinite(values[row]) && Double.isFinite(column[row]))
                    .count();
            if (known >= LotYear.known() * measured && varies(chosen, column)) {
                used.add(feature);
            }
        }
        int left = 0;
        for (int i = 0; i < chosen.rows().size(); i++) {
            int row = chosen.rows().get(i);
            Batch batch = chosen.batches().get(i);
            boolean complete = Double.isFinite(values[row])
                    && batch.lot().isPresent()
                    && used.stream().allMatch(f -> Double.isFinite(table.values(f)[row]));
            if (complete) {
                batches.add(batch);
                tableRows.add(row);
            } else {
                left++;
            }
        }
        this.leftOut = left;
        List<LocalDate> days =
                batches.stream().map(b -> b.roastDay().orElseThrow()).toList();
        this.dates = List.copyOf(new TreeSet<>(days));
        this.dayOfRow = days.stream().mapToInt(dates::indexOf).toArray();
        this.y = tableRows.stream().mapToDouble(row -> values[row]).toArray();
        for (Feature feature : used) {
            double[] column = onTheLatestProbe(periods, table, feature);
            if (feature.name().equals(Features.batchOfTheDay().name())) {
                add("first batch of the day", YearModel.Part.ROASTER, row -> column[row] == 1 ? 1 : 0, 1);
            } else if (feature.name().equals(Features.roomTemperature().name())) {
                add("room temperature, per 5 °C", YearModel.Part.ROOM, row -> column[row], 5);
            } else if (feature.name().equals(Features.roomHumidity().name())) {
                add("room humidity, per 10 % of humidity", YearModel.Part.ROOM, row -> column[row], 0.1);
            } else {
                add(feature.name(), YearModel.Part.ROASTER, row -> column[row], feature.naturalStep());
            }
        }
        if (settledAtTheDrop(response)
                && used.stream()
                        .noneMatch(
                                f -> f.name().equals(Features.dropTemperature().name()))) {
            addAim(logbook);
        }
        this.readByTheProbe = movesByName(response.name()) || response.unit().equals(Unit.RATE_OF_RISE);
        this.changes = response.kind() == Response.Kind.SCORE || dates.isEmpty()
                ? List.of()
                : periods.changes().stream()
                        .filter(c -> c.machine().equals(machine) && c.kind().separatesPeriods())
                        .toList();
        for (ProbeChange change : readByTheProbe ? changes : List.<ProbeChange>of()) {
            double[] step = new double[y.length];
            for (int i = 0; i < step.length; i++) {
                step[i] = days.get(i).isBefore(change.on()) ? 0 : 1;
            }
            columns.add(new YearModel.Column("probe since " + change.on(), YearModel.Part.PERIOD, step, 1));
        }
    }

    /** Without readings at the drop, what was aimed at stands for them, where it was written for every batch. */
    private void addAim(Logbook logbook) {
        double[] aims = batches.stream()
                .mapToDouble(b ->
                        b.plan().dropTemperature().map(Temperature::celsius).orElse(Double.NaN))
                .toArray();
        double low = Arrays.stream(aims).min().orElse(Double.NaN);
        if (Arrays.stream(aims).allMatch(Double::isFinite)
                && Arrays.stream(aims).anyMatch(a -> a > low)) {
            columns.add(new YearModel.Column("planned drop temperature", YearModel.Part.ROASTER, centred(aims), 1));
        }
    }

    private static boolean settledAtTheDrop(Response response) {
        return response.kind() == Response.Kind.SCORE
                || SETTLED_AT_THE_DROP.stream().anyMatch(f -> f.name().equals(response.name()));
    }

    /** Readings of the probe are what the roaster did on the scale of one probe; where an offset is not known they stay as read. */
    private static double[] onTheLatestProbe(ProbePeriods periods, BatchTable table, Feature feature) {
        double[] column = table.values(feature);
        if (feature.name().equals(Features.dropTemperature().name())
                || feature.name().equals(Features.chargeTemperature().name())) {
            for (int i = 0; i < column.length; i++) {
                double added = Double.isFinite(column[i])
                        ? periods.toToday(table.batches().get(i), column[i]).estimate()
                        : 0;
                column[i] += Double.isFinite(added) ? added : 0;
            }
        }
        return column;
    }

    private static boolean movesByName(String name) {
        return Features.all().list().stream().filter(f -> f.name().equals(name)).anyMatch(Feature::readsBeanProbe);
    }

    private static double[] centred(double[] values) {
        double mean = Arrays.stream(values).average().orElse(0);
        return Arrays.stream(values).map(v -> v - mean).toArray();
    }

    private static boolean varies(MachineDays machine, double[] column) {
        double[] known = machine.rows().stream()
                .mapToDouble(row -> column[row])
                .filter(Double::isFinite)
                .toArray();
        double low = Arrays.stream(known).min().orElse(0);
        double high = Arrays.stream(known).max().orElse(0);
        return high > low;
    }

    private static long count(MachineDays machine, String lot) {
        return machine.batches().stream()
                .filter(b -> b.lot().filter(lot::equals).isPresent())
                .count();
    }

    static LotRows of(Logbook logbook, String lot, Response response) {
        return new LotRows(logbook, lot, response);
    }

    private void add(String name, YearModel.Part part, IntToDoubleFunction column, double step) {
        double[] values = tableRows.stream().mapToDouble(column::applyAsDouble).toArray();
        columns.add(new YearModel.Column(name, part, centred(values), step));
    }

    /**
     * Fits the model. Where the calendar does not hold a season, the room's readings would stand for it: they are left in the sum.
     */
    YearModel fit() {
        return YearModel.fit(
                y,
                dayOfRow,
                epochDays(),
                lots(),
                showsSeason() ? columns : without(YearModel.Part.ROOM),
                YearModel.Wave.IF_TOLD);
    }

    /** Fits the same with a wave of the year that holds all that moved within it: the room too, and without two years age and drift. */
    YearModel fitTogether() {
        return YearModel.fit(
                y,
                dayOfRow,
                epochDays(),
                lots(),
                without(YearModel.Part.ROOM),
                showsSeason() ? YearModel.Wave.IF_TOLD : YearModel.Wave.INSTEAD_OF_AGE);
    }

    boolean showsSeason() {
        return YearModel.showsSeason(epochDays());
    }

    boolean showsMostOfAYear() {
        return YearModel.showsMostOfAYear(epochDays());
    }

    private List<YearModel.Column> without(YearModel.Part part) {
        return columns.stream().filter(c -> c.part != part).toList();
    }

    boolean has(YearModel.Part part) {
        return columns.stream().anyMatch(c -> c.part == part);
    }

    private double[] epochDays() {
        return dates.stream().mapToDouble(LocalDate::toEpochDay).toArray();
    }

    private List<String> lots() {
        return batches.stream().map(b -> b.lot().orElse("")).toList();
    }

    int size() {
        return batches.size();
    }

    List<Batch> batches() {
        return batches;
    }

    LocalDate day(int row) {
        return dates.get(dayOfRow[row]);
    }

    int leftOut() {
        return leftOut;
    }

    int elsewhere() {
        return elsewhere;
    }

    List<ProbeChange> changes() {
        return changes;
    }

    double span() {
        return dates.isEmpty()
                ? 0
                : dates.get(dates.size() - 1).toEpochDay() - dates.get(0).toEpochDay();
    }

    int daysOf(String lot) {
        return (int) ofLot(lot).stream().distinct().count();
    }

    double spanOf(String lot) {
        List<LocalDate> days = ofLot(lot);
        return days.isEmpty()
                ? 0
                : days.get(days.size() - 1).toEpochDay() - days.get(0).toEpochDay();
    }

    private List<LocalDate> ofLot(String lot) {
        List<LocalDate> days = new ArrayList<>();
        for (int i = 0; i < batches.size(); i++) {
            if (batches.get(i).lot().filter(lot::equals).isPresent()) {
                days.add(day(i));
            }
        }
        return days;
    }
}
