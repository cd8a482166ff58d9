package parchment.evidence;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.evidence.finding.Wording;
import parchment.stats.mixed.LinearModel;
import parchment.stats.mixed.MixedDesign;

/**
 * Shows what else about the batches moved together with the feature: lot, season, operator, place in the day, mass, room.
 *
 * <p>For each fact: the share of the feature's variance between batches that the fact explains (adjusted R squared). A fact that
 * explains most of it could stand in the feature's place.
 */
final class Facts implements Showable {
    /** From this share on the fact and the feature cannot be told apart. */
    static final double SAME = 0.8;

    /** From this share on the fact is mentioned in words. */
    static final double NOTABLE = 0.3;

    private final List<Fact> facts;

    /** Says whether the main model takes a fact into account. */
    public enum Handled {
        /** The fact is a term of the main model. */
        IN_THE_MODEL("in the model"),
        /** The fact is in one of the other ways of looking only. */
        IN_ANOTHER_LOOK("in another look only"),
        /** The main model would hold it, but other terms determine it, so it had to be left out. */
        LEFT_OUT("no: other terms determine it");

        private final String words;

        Handled(String words) {
            this.words = words;
        }
    }

    /**
     * Holds one fact.
     *
     * @param name as in "operator"
     * @param explains the share of the feature's variance that it explains, from 0 to 1
     * @param handled whether the main model takes it into account
     * @param batches how many batches it is known of
     */
    public record Fact(String name, double explains, Handled handled, int batches) {}

    private Facts(List<Fact> facts) {
        this.facts = List.copyOf(facts);
    }

    static Facts of(List<Fact> facts) {
        return new Facts(facts);
    }

    /** Returns the same facts, those marked as left out whose columns the fit had to drop. */
    Facts leavingOut(Collection<String> dropped) {
        return new Facts(facts.stream()
                .map(fact -> dropped.contains(fact.name())
                        ? new Fact(fact.name(), fact.explains(), Handled.LEFT_OUT, fact.batches())
                        : fact)
                .toList());
    }

    static Facts of(String feature, ModelFrame material) {
        List<Fact> found = new ArrayList<>();
        groups(found, "lot and probe period", material, TastedBatch::lotPeriod, Handled.IN_THE_MODEL);
        season(found, material);
        groups(found, "operator", material, TastedBatch::operator, Handled.IN_ANOTHER_LOOK);
        number(found, ScoreDesign.PLACE_IN_DAY, material, TastedBatch::batchOfTheDay, Handled.IN_THE_MODEL);
        number(found, ScoreDesign.MASS, material, TastedBatch::mass, Handled.IN_THE_MODEL);
        number(found, "room temperature", material, TastedBatch::room, Handled.IN_ANOTHER_LOOK);
        found.removeIf(fact -> fact.name().equals(feature));
        return new Facts(found);
    }

    private static void groups(
            List<Fact> found, String name, ModelFrame material, Function<TastedBatch, String> group, Handled handled) {
        List<TastedBatch> known = material.batches().stream()
                .filter(batch -> !group.apply(batch).isEmpty())
                .toList();
        Set<String> levels = new TreeSet<>(known.stream().map(group).toList());
        if (levels.size() > 1) {
            List<double[]> columns = levels.stream()
                    .map(level -> known.stream()
                            .mapToDouble(batch -> group.apply(batch).equals(level) ? 1 : 0)
                            .toArray())
                    .toList();
            add(found, name, known, columns, handled);
        }
    }

    private static void season(List<Fact> found, ModelFrame material) {
        DateCurve curve = DateCurve.of(material.batches());
        if (curve.line().length > 0) {
            List<double[]> columns = new ArrayList<>(curve.bends());
            columns.add(0, curve.line());
            add(found, "date and season", material.batches(), columns, Handled.IN_THE_MODEL);
        }
    }

    private static void number(
            List<Fact> found, String name, ModelFrame material, ToDoubleFunction<TastedBatch> value, Handled handled) {
        List<TastedBatch> known = material.batches().stream()
                .filter(batch -> Double.isFinite(value.applyAsDouble(batch)))
                .toList();
        double[] column = known.stream().mapToDouble(value).toArray();
        if (column.length > 2 && Reliability.spread(column) > 0) {
            add(found, name, known, List.of(column), handled);
        }
    }

    private static void add(
            List<Fact> found, String name, List<TastedBatch> known, List<double[]> columns, Handled handled) {
        double explains =
                explained(known.stream().mapToDouble(TastedBatch::measure).toArray(), columns);
        if (!Double.isNaN(explains)) {
            found.add(new Fact(name, explains, handled, known.size()));
        }
    }

    /** Returns the adjusted R squared of least squares, never below 0; NaN if too few batches are left. */
    private static double explained(double[] measure, List<double[]> columns) {
        MixedDesign design = MixedDesign.of("measure", measure);
        for (int k = 0; k < columns.size(); k++) {
            design = design.withCovariate("fact " + (k + 1), columns.get(k));
        }
        if (measure.length <= columns.size() + 1) {
            return Double.NaN;
        }
        LinearModel model = LinearModel.fit(design);
        double left = (1 - model.rSquared()) * (measure.length - 1) / model.residualDegreesOfFreedom();
        return Math.max(0, 1 - left);
    }

    /** Returns the facts that vary in this logbook. */
    public List<Fact> facts() {
        return facts;
    }

    /** Returns the facts that the main model did not take into account and that explain the feature as well as it explains itself. */
    List<Fact> standIns() {
        return facts.stream()
                .filter(fact -> fact.handled() != Handled.IN_THE_MODEL && fact.explains() >= SAME)
                .toList();
    }

    /** Returns the facts worth a sentence. */
    List<Fact> notable() {
        return facts.stream().filter(fact -> fact.explains() >= NOTABLE).toList();
    }

    Table table(String feature) {
        return Table.titled("What moved together with the " + feature)
                .withText("fact", facts, Fact::name)
                .withNumber("share of the spread it explains", "%", 0, facts, fact -> 100 * fact.explains())
                .withText("taken into account", facts, fact -> fact.handled().words)
                .withNumber("batches", "", 0, facts, Fact::batches)
                .withNote("A fact that does not vary in this logbook is not listed.");
    }

    @Override
    public String toString() {
        return facts.isEmpty()
                ? "No fact beside the feature varies in this logbook."
                : Wording.count(facts.size(), "fact", "facts") + " beside the feature: "
                        + Wording.list(facts.stream()
                                .map(fact -> fact.name() + " explains " + Wording.percent(fact.explains()))
                                .toList())
                        + " of its spread.";
    }
}
