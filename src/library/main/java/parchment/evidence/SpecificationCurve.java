package parchment.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.evidence.finding.Slope;
import parchment.stats.Interval;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Robust;

/**
 * Looks at the same question in eight other fixed ways, chosen before any score was seen.
 *
 * <p>A finding that turns round in one of them hangs on a choice of the analyst. All eight are always shown.
 */
final class SpecificationCurve implements Showable {
    private static final double OUTER_SHARE = 0.05;

    private final List<Look> looks;
    private final double step;
    private final double level;

    /**
     * Holds one way of looking.
     *
     * @param name what is done differently
     * @param slope the slope it gives, per unit of the measure; in ranks where scores were turned into ranks
     * @param remark why there is no slope; empty if there is one
     */
    public record Look(String name, Slope slope, String remark) {}

    private SpecificationCurve(List<Look> looks, double step, double level) {
        this.looks = List.copyOf(looks);
        this.step = step;
        this.level = level;
    }

    static SpecificationCurve of(ModelFrame material, double step, double level) {
        ModelForm form = ModelForm.STANDARD;
        List<Look> looks = new ArrayList<>();
        looks.add(look("no rest days, place in the day or mass", material, form.with(ModelForm.Beside.NOTHING)));
        looks.add(look("operator and room temperature added", material, form.with(ModelForm.Beside.MORE)));
        looks.add(look("no course over the date", material, form.with(ModelForm.Date.ABSENT)));
        looks.add(look("each lot with a level of its own", material, form.with(ModelForm.Lots.FIXED)));
        looks.add(look("only inside the same roast day", material, form.with(ModelForm.Days.FIXED)));
        looks.add(look("lots not kept apart", material, form.with(ModelForm.Lots.NOT_SPLIT)));
        looks.add(look("scores as ranks inside a cupping", ranked(material), form));
        looks.add(look("outer tenth of the measure left out", trimmed(material), form));
        return new SpecificationCurve(looks, step, level);
    }

    private static Look look(String name, ModelFrame material, ModelForm form) {
        try {
            Slope slope = FittedScores.of(material, form).slope();
            return new Look(name, slope, slope.known() ? "" : "nothing is left to compare");
        } catch (CannotFitException tooFew) {
            return new Look(name, Slope.MISSING, "too few scores");
        }
    }

    /** Turns scores into their mean ranks inside each cupper's cupping, from 0 (lowest) to 1 (highest); a single cup gets one half. */
    private static ModelFrame ranked(ModelFrame material) {
        Map<String, List<Double>> sittings = new HashMap<>();
        for (ScoreRow score : material.scores()) {
            sittings.computeIfAbsent(score.sitting(), key -> new ArrayList<>()).add(score.score());
        }
        double[] ranks = material.scores().stream()
                .mapToDouble(score -> {
                    List<Double> others = sittings.getOrDefault(score.sitting(), List.of());
                    double below = others.stream()
                            .filter(other -> other < score.score())
                            .count();
                    double equal = others.stream()
                            .filter(other -> other == score.score())
                            .count();
                    return (below + equal / 2) / others.size();
                })
                .toArray();
        return material.withScores(ranks);
    }

    private static ModelFrame trimmed(ModelFrame material) {
        double[] within = material.within();
        double low = Robust.quantile(within, OUTER_SHARE);
        double high = Robust.quantile(within, 1 - OUTER_SHARE);
        return material.only(batch -> within[batch.position()] >= low && within[batch.position()] <= high);
    }

    /** Returns the eight looks, always in the same order. */
    public List<Look> looks() {
        return looks;
    }

    /** Returns how many of the looks have a slope with the sign of the given one. */
    long agreeing(Slope main) {
        return looks.stream()
                .filter(look -> look.slope().known() && look.slope().estimate() * main.estimate() > 0)
                .count();
    }

    Table table(String stepWords) {
        return Table.titled("Eight other ways of looking")
                .withText("done differently", looks, Look::name)
                .withText("sign", looks, look -> sign(look.slope()))
                .withNumber(
                        "per " + stepWords,
                        "points",
                        3,
                        looks,
                        look -> look.slope().estimate() * step)
                .withNumber("from", "points", 3, looks, look -> interval(look).lower())
                .withNumber("to", "points", 3, looks, look -> interval(look).upper())
                .withText("remark", looks, look -> look.remark().isEmpty() ? "–" : look.remark())
                .withNote(
                        "Fixed before any score was seen. The look at ranks is told in ranks from 0 to 1, not in points.")
                .withDashForMissing("no slope, or nothing to remark");
    }

    private Interval interval(Look look) {
        return look.slope().per(step).interval(level);
    }

    private static String sign(Slope slope) {
        return !slope.known() ? "" : slope.estimate() < 0 ? "falls" : "rises";
    }

    @Override
    public String toString() {
        long known = looks.stream().filter(look -> look.slope().known()).count();
        long rising = looks.stream()
                .filter(look -> look.slope().known() && look.slope().estimate() > 0)
                .count();
        return "Of eight other ways of looking " + known + " could be fitted: " + rising + " rise and "
                + (known - rising) + " fall.";
    }
}
