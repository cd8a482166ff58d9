package parchment.feature;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.display.Showable;
import parchment.display.answer.Spelling;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.period.ProbePeriods;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Estimate;

/**
 * The table that questions are asked of: the features of every batch of a logbook, with standard errors, and for every missing number the
 * reason.
 *
 * <pre>{@code
 * BatchTable.of(logbook, dropTemperature(), developmentTime())
 * }</pre>
 *
 * <p>Rows are in the logbook's order. Missing values stay missing. All numbers are as the library keeps them (°C, s, kg, °C/min, shares
 * from 0 to 1); only the page shows them in the reader's unit.
 */
public final class BatchTable implements Showable {
    private final Logbook logbook;
    private final List<Feature> features;
    private final List<BatchPath> paths;
    private final Map<String, Integer> columns;
    private final Measured[][] cells;
    private final double[][] sharedErrors;
    private final Told told;

    /** On which probe's scale readings are told. */
    private enum Told {
        AS_READ,
        ON_TODAYS_PROBE
    }

    private BatchTable(
            Logbook logbook,
            List<Feature> features,
            List<BatchPath> paths,
            Measured[][] cells,
            double[][] sharedErrors,
            Told told) {
        this.logbook = logbook;
        this.features = List.copyOf(features);
        this.paths = List.copyOf(paths);
        this.cells = cells;
        this.sharedErrors = sharedErrors;
        this.told = told;
        this.columns = new LinkedHashMap<>();
        for (int j = 0; j < features.size(); j++) {
            columns.put(features.get(j).name(), j);
        }
    }

    /** Measures every built-in feature on every batch. */
    public static BatchTable of(Logbook logbook) {
        return of(logbook, Features.all().list());
    }

    /** Measures the given features on every batch. */
    public static BatchTable of(Logbook logbook, Feature... features) {
        return of(logbook, Arrays.asList(features));
    }

    /**
     * Measures the given features on every batch, in parallel over batches. What was measured before on the same logbook is not
     * measured again.
     *
     * @throws LogbookException if two features have the same name, or a column that is asked for is in no batch
     */
    public static BatchTable of(Logbook logbook, List<Feature> features) {
        Set<String> names = new LinkedHashSet<>();
        for (Feature feature : features) {
            if (!names.add(feature.name())) {
                throw new LogbookException("A table of batches needs features of different names, but two are called '"
                        + feature.name() + "'. Give one another name.");
            }
            KnownColumns.check(logbook, feature);
        }
        MeasuredColumns measured = logbook.remembered(MeasuredColumns.class, MeasuredColumns::of);
        return new BatchTable(
                logbook,
                features.stream().map(feature -> shown(feature, logbook)).toList(),
                measured.paths(),
                measured.cells(features),
                new double[measured.paths().size()][features.size()],
                Told.AS_READ);
    }

    /** A mass is shown in the unit that its logbook is written in. */
    private static Feature shown(Feature feature, Logbook logbook) {
        return feature instanceof NamedFeature named ? named.withMassesIn(logbook.massUnit()) : feature;
    }

    /**
     * Returns the same table with every reading of the bean probe told as today's probe of its machine would read it, by {@link ProbePeriods}. What
     * hangs on the probe without being a reading of it ({@link OnProbe#HANGS_ON_IT}) is missing where the probe was changed since, and so is a
     * reading of a probe whose offset is not known. All else stays as it is. A table that is told so already is returned itself.
     */
    public BatchTable onTodaysProbe() {
        if (told == Told.ON_TODAYS_PROBE) {
            return this;
        }
        ProbePeriods periods = ProbePeriods.of(logbook);
        Measured[][] moved = new Measured[cells.length][features.size()];
        double[][] shared = new double[cells.length][features.size()];
        for (int i = 0; i < cells.length; i++) {
            Batch batch = batches().get(i);
            double since = periods.isTodays(batch) ? 0 : Double.NaN;
            for (int j = 0; j < features.size(); j++) {
                Measured cell = cells[i][j];
                OnProbe onProbe = features.get(j).onProbe();
                moved[i][j] = cell;
                if (cell.isMissing() || onProbe == OnProbe.FREE_OF_IT) {
                    continue;
                }
                if (onProbe == OnProbe.READING) {
                    Estimate added = periods.toToday(batch, cell.value());
                    moved[i][j] = cell.movedBy(added.estimate());
                    shared[i][j] = moved[i][j].isMissing() ? Double.NaN : added.standardError();
                } else {
                    moved[i][j] = cell.movedBy(since);
                }
            }
        }
        return new BatchTable(logbook, features, paths, moved, shared, Told.ON_TODAYS_PROBE);
    }

    /**
     * Returns the standard errors that the numbers of a feature share with all others of their probe period, one per batch: how well it is known
     * what today's probe would have read. 0 on today's probe, for a table as read, and for what is no reading of the probe.
     */
    public double[] sharedErrors(Feature feature) {
        int j = column(feature.name());
        return Arrays.stream(sharedErrors).mapToDouble(row -> row[j]).toArray();
    }

    /** Returns the logbook that was measured. */
    public Logbook logbook() {
        return logbook;
    }

    /** Returns the features, from left to right. */
    public List<Feature> features() {
        return features;
    }

    /** Returns the names of the features, from left to right. */
    public List<String> names() {
        return List.copyOf(columns.keySet());
    }

    /** Returns the batches, from top to bottom. */
    public List<Batch> batches() {
        return logbook.batches();
    }

    /** Returns what features were read from: marks, curves and day of each batch, from top to bottom. */
    public List<BatchPath> paths() {
        return paths;
    }

    /** Returns how many batches there are. */
    public int size() {
        return paths.size();
    }

    /** Returns a feature's numbers, one per batch, NaN where missing. */
    public double[] values(Feature feature) {
        int j = column(feature.name());
        return Arrays.stream(cells).mapToDouble(row -> row[j].value()).toArray();
    }

    /** Returns a feature's numbers by its name. */
    public double[] values(String name) {
        return values(features.get(column(name)));
    }

    /** Returns the standard errors of a feature's numbers, NaN where missing. */
    public double[] standardErrors(Feature feature) {
        int j = column(feature.name());
        return Arrays.stream(cells).mapToDouble(row -> row[j].standardError()).toArray();
    }

    /** Returns the reason for each missing number of a feature, by the batch's name. */
    public Map<String, String> whyMissing(Feature feature) {
        int j = column(feature.name());
        Map<String, String> why = new LinkedHashMap<>();
        for (int i = 0; i < cells.length; i++) {
            if (cells[i][j].isMissing()) {
                why.put(batches().get(i).name(), cells[i][j].whyMissing());
            }
        }
        return why;
    }

    /** Returns one batch's measure of a feature; the batch counts from 0. */
    public Measured cell(int batch, Feature feature) {
        return cells[batch][column(feature.name())];
    }

    /**
     * Returns the covariance of the errors of some features of one batch.
     *
     * <p>Features that read the same mark share its error: a first crack that was written late makes browning longer and development
     * shorter at once. On top of that each has its own error, which is taken as shared with no other.
     *
     * @return a square matrix in the order of the features; NaN in the rows and columns of a missing feature
     * @throws LogbookException if the logbook has no batch of that name
     */
    public double[][] covariance(String batch, List<Feature> asked) {
        logbook.batch(batch);
        int row = 0;
        while (!batches().get(row).name().equals(batch)) {
            row++;
        }
        return ErrorCovariance.of(paths.get(row), asked);
    }

    private int column(String name) {
        Integer column = columns.get(name);
        if (column == null) {
            throw new LogbookException("This table of batches has no feature '" + name + "'."
                    + Spelling.question(name, columns.keySet())
                    + " It was made with: " + String.join(", ", columns.keySet()) + ".");
        }
        return column;
    }

    TemperatureUnit reader() {
        return logbook.readerUnit();
    }

    @Override
    public String toString() {
        long missing = Arrays.stream(cells)
                .flatMap(Arrays::stream)
                .filter(Measured::isMissing)
                .count();
        return String.format(
                Locale.ROOT,
                "%d %s of %d %s of %s, %d of %d %s missing",
                features.size(),
                features.size() == 1 ? "feature" : "features",
                size(),
                size() == 1 ? "batch" : "batches",
                logbook.name(),
                missing,
                (long) size() * features.size(),
                size() * features.size() == 1 ? "number" : "numbers");
    }

    @Override
    public String text() {
        return BatchTablePage.of(this).text();
    }

    @Override
    public Optional<String> html() {
        return BatchTablePage.of(this).html();
    }
}
