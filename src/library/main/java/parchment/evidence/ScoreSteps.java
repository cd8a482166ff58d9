package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.evidence.finding.Wording;

/**
 * Decides whether scores are asked a second time, as steps: whether they come in so few steps, or press so hard against an end, that the
 * distance between two steps cannot be taken for granted.
 *
 * <p>Few steps: 95 in 100 scores take no more than 7 different values. Treating so many steps as numbers is mostly harmless from five or
 * more on (Rhemtulla, Brosseau-Liard and Savalei 2012, Psychol. Methods 17:354, who looked at two to seven); up to seven are held a second
 * time here, which is our choice. An end: more than 15 in 100 scores stand on the lowest or the highest value given, the share called a
 * floor or ceiling effect by Terwee et al. 2007, J. Clin. Epidemiol. 60:34 (of the lowest and highest possible score there). Both sources
 * from memory.
 *
 * @param scores how many scores
 * @param usual how many different values the most frequent 95 in 100 scores take
 * @param usualShare the share of the scores that take one of these
 * @param atLowest the share of the scores on the lowest value given
 * @param atHighest the share on the highest
 * @param lowest the lowest value given
 * @param highest the highest
 */
record ScoreSteps(
        int scores, int usual, double usualShare, double atLowest, double atHighest, double lowest, double highest) {
    /** With more different values scores count as numbers only. */
    static final int MOST_VALUES = 7;

    /** So large a share of the scores is asked; a few odd values make no fine scale. */
    static final double MOST_SCORES = 0.95;

    /** A larger share on one end presses against it. */
    static final double AT_AN_END = 0.15;

    /** A step that fewer scores took is joined to its neighbour: nothing could be told of it alone. */
    static final int FEWEST_SCORES = 5;

    /** No more steps are told apart. */
    static final int MOST_STEPS = 12;

    static ScoreSteps of(double[] scores) {
        TreeMap<Double, Integer> counts = counted(scores);
        if (counts.isEmpty()) {
            return new ScoreSteps(0, 0, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
        }
        int all = scores.length;
        int held = 0;
        int values = 0;
        for (int count :
                counts.values().stream().sorted(Comparator.reverseOrder()).toList()) {
            if (held >= MOST_SCORES * all) {
                break;
            }
            held += count;
            values++;
        }
        return new ScoreSteps(
                all,
                values,
                (double) held / all,
                (double) counts.firstEntry().getValue() / all,
                (double) counts.lastEntry().getValue() / all,
                counts.firstKey(),
                counts.lastKey());
    }

    private static TreeMap<Double, Integer> counted(double[] scores) {
        TreeMap<Double, Integer> counts = new TreeMap<>();
        for (double score : scores) {
            counts.merge(score, 1, Integer::sum);
        }
        return counts;
    }

    boolean few() {
        return usual <= MOST_VALUES;
    }

    boolean atAnEnd() {
        return atLowest > AT_AN_END || atHighest > AT_AN_END;
    }

    /** Says whether the scores are looked at as steps too. */
    boolean asked() {
        return scores > 0 && (few() || atAnEnd());
    }

    /**
     * Returns the scores with rare steps joined to their nearer neighbour, each joined step at the mean of its scores: every step has at
     * least 5 scores, and there are at most 12, as far as the scores allow.
     */
    static double[] joined(double[] scores) {
        record Step(double value, int count, List<Double> from) {}
        List<Step> steps = new ArrayList<>();
        counted(scores).forEach((value, count) -> steps.add(new Step(value, count, List.of(value))));
        while (steps.size() > 2) {
            int rarest = 0;
            for (int i = 1; i < steps.size(); i++) {
                rarest = steps.get(i).count() < steps.get(rarest).count() ? i : rarest;
            }
            if (steps.get(rarest).count() >= FEWEST_SCORES && steps.size() <= MOST_STEPS) {
                break;
            }
            double value = steps.get(rarest).value();
            boolean down = rarest == steps.size() - 1
                    || rarest > 0
                            && value - steps.get(rarest - 1).value()
                                    <= steps.get(rarest + 1).value() - value;
            int lower = down ? rarest - 1 : rarest;
            Step first = steps.get(lower);
            Step second = steps.remove(lower + 1);
            List<Double> from = new ArrayList<>(first.from());
            from.addAll(second.from());
            int count = first.count() + second.count();
            steps.set(
                    lower,
                    new Step((first.value() * first.count() + second.value() * second.count()) / count, count, from));
        }
        Map<Double, Double> to = new TreeMap<>();
        steps.forEach(step -> step.from().forEach(value -> to.put(value, step.value())));
        double[] joined = new double[scores.length];
        for (int i = 0; i < joined.length; i++) {
            joined[i] = to.getOrDefault(scores[i], Double.NaN);
        }
        return joined;
    }

    /** Says why the scores are looked at as steps too; empty where they are not. */
    String words() {
        List<String> why = new ArrayList<>();
        if (few()) {
            why.add(Wording.percent(usualShare) + " of the scores take one of "
                    + Wording.count(usual, "value", "values"));
        }
        if (atHighest > AT_AN_END) {
            why.add(Wording.percent(atHighest) + " stand on " + number(highest) + ", the highest given");
        }
        if (atLowest > AT_AN_END) {
            why.add(Wording.percent(atLowest) + " stand on " + number(lowest) + ", the lowest given");
        }
        return asked() ? Wording.sentence(Wording.list(why)) + "." : "";
    }

    private static String number(double value) {
        String two = Wording.plain(value, 2);
        return two.replaceFirst("\\.?0+$", "");
    }
}
