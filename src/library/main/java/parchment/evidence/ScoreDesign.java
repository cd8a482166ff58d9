package parchment.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import parchment.evidence.finding.RandomChoice;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;

/**
 * Builds the mixed model of the scores: one row per score.
 *
 * <p>Score ~ f(measure - mean of its lot and probe period) + that mean + rest days + batch of the day + green mass + date, with
 * random lot, roast day, batch, cupper, cupping and cupper within cupping. A term that the logbook cannot support is left out and
 * named in words. From six cuppers on each cupper has a slope of their own, so that the answer speaks of cuppers like these.
 */
final class ScoreDesign {
    /** From this many cuppers on their slopes are random; below, the claim is for these cuppers only. */
    static final int CUPPERS_FOR_SLOPES = 6;

    /** From this many lots on their own levels are a random term. */
    private static final int LOTS_FOR_RANDOM_LEVELS = 4;

    static final String FEATURE = "feature";
    static final String SQUARE = "feature squared";
    static final String PLACE_IN_DAY = "batch of the day";
    static final String MASS = "green mass";
    static final String DATE = "date";
    static final String CUPPERS_SLOPE = "cupper's own slope";
    static final String DATE_COURSE = "course over the date";

    private final ModelFrame material;
    private final ModelForm form;
    private final double center;
    private final Map<String, double[]> columns = new LinkedHashMap<>();
    private final List<String> words = new ArrayList<>();
    private final List<RandomTerm> random = new ArrayList<>();
    private final List<double[]> dateBends = new ArrayList<>();

    private ScoreDesign(ModelFrame material, ModelForm form, double center) {
        this.material = material;
        this.form = form;
        this.center = center;
    }

    static ScoreDesign of(ModelFrame material, ModelForm form) {
        return of(material, form, material.center());
    }

    /** Builds the model with the feature counted from a stated place, where it is not counted from the lots' own means. */
    static ScoreDesign of(ModelFrame material, ModelForm form, double center) {
        ScoreDesign design = new ScoreDesign(material, form, center);
        design.addFeature();
        design.addGroups();
        design.addBeside();
        design.addDate();
        design.addRandom();
        return design;
    }

    /** Returns the design with one more column, one value per batch. */
    ScoreDesign withBatchColumn(String name, double[] perBatch) {
        ScoreDesign copy = new ScoreDesign(material, form, center);
        copy.columns.putAll(columns);
        copy.words.addAll(words);
        copy.random.addAll(random);
        copy.dateBends.addAll(dateBends);
        copy.columns.put(name, rows(perBatch));
        return copy;
    }

    /** Returns the design with a slope of their own for each cupper, from six cuppers on. */
    ScoreDesign withCuppersSlopes(double[] perBatch) {
        ScoreDesign copy = new ScoreDesign(material, form, center);
        copy.columns.putAll(columns);
        copy.words.addAll(words);
        copy.random.addAll(random);
        copy.dateBends.addAll(dateBends);
        if (material.cuppers().size() >= CUPPERS_FOR_SLOPES) {
            copy.random.add(RandomTerm.slope(CUPPERS_SLOPE, labels(ScoreRow::cupper), FEATURE, rows(perBatch)));
        }
        return copy;
    }

    /** Returns the design with one more feature, one value per batch; from six cuppers on each has a slope of their own on it too. */
    ScoreDesign withFeature(String name, double[] perBatch) {
        ScoreDesign copy = withBatchColumn(name, perBatch);
        if (material.cuppers().size() >= CUPPERS_FOR_SLOPES) {
            copy.random.add(
                    RandomTerm.slope("cupper's own slope on " + name, labels(ScoreRow::cupper), name, rows(perBatch)));
        }
        return copy;
    }

    private void addFeature() {
        if (form.shape() == ModelForm.Shape.ABSENT) {
            return;
        }
        double[] measure = centered();
        columns.put(FEATURE, rows(measure));
        if (form.shape() == ModelForm.Shape.BEND) {
            double[] square = new double[measure.length];
            for (int i = 0; i < square.length; i++) {
                square[i] = measure[i] * measure[i];
            }
            columns.put(SQUARE, rows(square));
        }
    }

    /** Returns the place from which the feature is counted, where lots are not split; otherwise the mean of all. */
    double center() {
        return center;
    }

    /** Returns each batch's measure as the model sees it: from its lot's mean, or from one place for all if lots are not split. */
    double[] centered() {
        if (form.lots() != ModelForm.Lots.NOT_SPLIT && form.lots() != ModelForm.Lots.OWN_LEVEL) {
            return material.within();
        }
        return material.batches().stream()
                .mapToDouble(batch -> batch.measure() - center)
                .toArray();
    }

    private void addGroups() {
        if (form.days() == ModelForm.Days.FIXED) {
            addLevels("roast day ", batch -> batch.day().toString());
        }
        if (form.lots() == ModelForm.Lots.FIXED) {
            addLevels("lot ", TastedBatch::lotPeriod);
        } else if (form.lots() == ModelForm.Lots.RANDOM) {
            Map<String, Double> means = material.groupMeans();
            put("mean of the lot", batch -> means.getOrDefault(batch.lotPeriod(), Double.NaN) - center);
        } else if (form.lots() == ModelForm.Lots.OWN_LEVEL) {
            addOwnLevels();
        }
    }

    private boolean levelsAreColumns() {
        return form.lots() == ModelForm.Lots.FIXED
                || form.lots() == ModelForm.Lots.OWN_LEVEL
                        && material.groupMeans().size() < LOTS_FOR_RANDOM_LEVELS;
    }

    private void addOwnLevels() {
        if (levelsAreColumns()) {
            addLevels("lot ", TastedBatch::lotPeriod);
            return;
        }
        // The lots' means beside a random level leave the feature and its square to differences inside lots (Mundlak
        // 1978).
        double[] own = centered();
        Map<String, double[]> sums = new HashMap<>();
        for (TastedBatch batch : material.batches()) {
            double x = own[batch.position()];
            double[] sum = sums.computeIfAbsent(batch.lotPeriod(), key -> new double[3]);
            sum[0] += x;
            sum[1] += x * x;
            sum[2]++;
        }
        put("mean of the lot", batch -> mean(sums, batch, 0));
        if (form.shape() == ModelForm.Shape.BEND) {
            put("mean square of the lot", batch -> mean(sums, batch, 1));
        }
    }

    private static double mean(Map<String, double[]> sums, TastedBatch batch, int which) {
        double[] sum = sums.getOrDefault(batch.lotPeriod(), new double[] {Double.NaN, Double.NaN, 1});
        return sum[which] / sum[2];
    }

    private void addLevels(String prefix, Function<TastedBatch, String> group) {
        List<String> levels =
                material.batches().stream().map(group).distinct().sorted().toList();
        for (String level : levels.subList(1, levels.size())) {
            put(prefix + level, batch -> group.apply(batch).equals(level) ? 1 : 0);
        }
    }

    private void addBeside() {
        if (form.beside() == ModelForm.Beside.NOTHING) {
            return;
        }
        double[] rest =
                material.scores().stream().mapToDouble(ScoreRow::restDays).toArray();
        if (varies(rest)) {
            columns.put("rest days", centre(rest));
        } else {
            words.add("Every cup rested equally long, so rest days are not in the model.");
        }
        if (!put(PLACE_IN_DAY, TastedBatch::batchOfTheDay)) {
            words.add("Every batch held the same place in its roast day, so that place is not in the model.");
        }
        if (!put(MASS, TastedBatch::mass)) {
            words.add(
                    material.batches().stream().allMatch(batch -> Double.isNaN(batch.mass()))
                            ? "Green mass is not written, so it could not be taken into account."
                            : "Every batch had the same green mass, so mass is not in the model.");
        }
        if (form.beside() == ModelForm.Beside.MORE) {
            put("room temperature", TastedBatch::room);
            addLevels("operator ", TastedBatch::operator);
        }
    }

    private void addDate() {
        if (form.date() == ModelForm.Date.ABSENT || form.days() == ModelForm.Days.FIXED) {
            return;
        }
        DateCurve curve = DateCurve.of(material.batches());
        if (curve.line().length == 0) {
            words.add("There are too few roast days for a course over the date.");
            return;
        }
        columns.put(DATE, centre(rows(curve.line())));
        if (!curve.bends().isEmpty()) {
            curve.bends().forEach(bend -> dateBends.add(centre(rows(bend))));
            random.add(RandomTerm.smooth(DATE_COURSE, dateBends));
        }
    }

    private void addRandom() {
        RandomChoice choice = new RandomChoice(material.scores().size());
        if (!levelsAreColumns()) {
            choice.offer("lot", labels(score -> material.batchOf(score).lot()));
        }
        if (form.days() == ModelForm.Days.RANDOM) {
            choice.offer(
                    "roast day", labels(score -> material.batchOf(score).day().toString()));
        }
        choice.offer("batch", labels(score -> material.batchOf(score).name()));
        choice.offer("cupper", labels(ScoreRow::cupper));
        choice.offer("cupping", labels(ScoreRow::cupping));
        choice.offer("cupper within a cupping", labels(ScoreRow::sitting));
        random.addAll(choice.terms());
        words.addAll(choice.words());
        double[] feature = columns.get(FEATURE);
        if (material.cuppers().size() >= CUPPERS_FOR_SLOPES && feature != null) {
            random.add(RandomTerm.slope(CUPPERS_SLOPE, labels(ScoreRow::cupper), FEATURE, feature));
        }
    }

    private List<String> labels(Function<ScoreRow, String> label) {
        return material.scores().stream().map(label).toList();
    }

    private boolean put(String name, ToDoubleFunction<TastedBatch> value) {
        double[] column =
                centre(rows(material.batches().stream().mapToDouble(value).toArray()));
        if (!varies(column)) {
            return false;
        }
        columns.put(name, column);
        return true;
    }

    /** Spreads one value per batch over the scores. */
    double[] rows(double[] perBatch) {
        return material.scores().stream()
                .mapToDouble(score -> perBatch[score.batch()])
                .toArray();
    }

    /** Takes the mean away; a missing value becomes the mean, which is 0. */
    private static double[] centre(double[] values) {
        double sum = 0;
        int known = 0;
        for (double value : values) {
            if (!Double.isNaN(value)) {
                sum += value;
                known++;
            }
        }
        double[] centered = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            centered[i] = Double.isNaN(values[i]) ? 0 : values[i] - sum / known;
        }
        return centered;
    }

    private static boolean varies(double[] values) {
        for (double value : values) {
            if (Math.abs(value - values[0]) > 1e-9 * (1 + Math.abs(values[0]))) {
                return true;
            }
        }
        return false;
    }

    /** Returns the design as the mixed model takes it. */
    MixedDesign design() {
        MixedDesign design = MixedDesign.of(
                "score", material.scores().stream().mapToDouble(ScoreRow::score).toArray());
        for (Map.Entry<String, double[]> column : columns.entrySet()) {
            design = design.withCovariate(column.getKey(), column.getValue());
        }
        for (RandomTerm term : random) {
            design = design.withRandom(term);
        }
        return design;
    }

    /**
     * Returns the design without slopes of cuppers' own, and with a stated course over the date as a column in place of its broken lines.
     *
     * @param course how much of each broken line, one number per line
     */
    MixedDesign withIntercepts(double[] course) {
        MixedDesign plain = design();
        for (RandomTerm term : random) {
            if (term.name().equals(DATE_COURSE) || term.name().equals(CUPPERS_SLOPE)) {
                plain = plain.withoutRandom(term.name());
            }
        }
        double[] column = new double[material.scores().size()];
        for (int bend = 0; bend < course.length; bend++) {
            for (int row = 0; row < column.length; row++) {
                column[row] += course[bend] * dateBends.get(bend)[row];
            }
        }
        return varies(column) ? plain.withCovariate(DATE_COURSE, column) : plain;
    }

    ModelFrame material() {
        return material;
    }

    ModelForm form() {
        return form;
    }

    /** Returns the fixed columns beside the intercept by name, one value per score. */
    Map<String, double[]> columns() {
        return new LinkedHashMap<>(columns);
    }

    /** Returns what was left out of the model and why, one sentence each. */
    List<String> words() {
        return List.copyOf(words);
    }
}
