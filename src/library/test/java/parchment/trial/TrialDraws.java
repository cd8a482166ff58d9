package parchment.trial;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import parchment.quantity.TemperatureUnit;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialTerms;

/**
 * Draws trials whose truth is known: batch, cup and cupper noise of the harbour's panel, quarter points, targets followed or not, batches lost.
 *
 * <p>The noise is that of the specification's own simulation: 0.2 for the batch, 0.2 for its place on the table, 0.25 for the cup, 0.61 for one cupper in one cup (variance
 * 0.3725), and half a degree of error in following a target.
 */
final class TrialDraws {
    private TrialDraws() {}

    /** What happens to a batch that is lost. */
    enum Loss {
        RANDOM,
        DARK,
        POOR
    }

    /** One simulated condition. */
    static final class Cell {
        int sets = 8;
        int size = 3;
        int levels = 3;
        int cuppers = 3;
        double slope = 0;
        /** Share of batches that are dropped at the drawn target; others at one that follows what is hidden. */
        double followed = 1;
        /** How many lots the sets are of; lots differ in level and in what their hidden state does. */
        int lots = 1;

        double loss = 0;
        Loss how = Loss.RANDOM;
        /** Points per degree that cuppers add who know the target. */
        double hope = 0;

        TrialTerms terms() {
            return new TrialTerms(
                    "drawn",
                    "sweetness",
                    TrialControl.DROP_TEMPERATURE,
                    levels == 2 ? List.of(201.5, 204.5) : List.of(201.5, 203.0, 204.5),
                    0.5,
                    1,
                    1,
                    List.of("one", "two", "three").subList(0, Math.min(3, cuppers)),
                    2,
                    TemperatureUnit.CELSIUS);
        }

        List<AssignedBatch> draw(long seed) {
            Random random = new Random(seed * 7919 + 17);
            List<AssignedBatch> batches = new ArrayList<>();
            double[] tendency = random.doubles(cuppers).map(u -> u - 0.5).toArray();
            double[] lotLevel = random.doubles(lots).map(u -> u - 0.5).toArray();
            for (int set = 0; set < sets; set++) {
                double level = 6.3 + lotLevel[set % lots] + 0.3 * random.nextGaussian();
                List<Double> targets = targets(random);
                double[] cupperHere = new double[cuppers];
                for (int k = 0; k < cuppers; k++) {
                    cupperHere[k] = tendency[k] + 0.3 * random.nextGaussian();
                }
                for (int place = 0; place < size; place++) {
                    batches.add(batch(set, place, targets.get(place), level, cupperHere, random));
                }
            }
            return batches;
        }

        private AssignedBatch batch(
                int set, int place, double target, double level, double[] cupperHere, Random random) {
            double hidden = random.nextGaussian();
            boolean follows = random.nextDouble() < followed;
            double reached = (follows ? target : 1.5 * hidden) + 0.5 * random.nextGaussian();
            double truth = level + slope * reached + 0.2 * hidden + 0.2 * random.nextGaussian();
            double[] cup = {0.25 * random.nextGaussian(), 0.25 * random.nextGaussian()};
            List<AssignedBatch.GivenScore> scores = new ArrayList<>();
            for (int k = 0; k < cuppers; k++) {
                for (double c : cup) {
                    double score =
                            truth + c + cupperHere[k] + hope * target + Math.sqrt(0.3725) * random.nextGaussian();
                    scores.add(new AssignedBatch.GivenScore("cupper " + k, Math.round(4 * score) / 4.0));
                }
            }
            AssignedBatch drawn =
                    TrialTables.place(set, place + 1, target / 1.5).with(OptionalDouble.of(203 + reached), scores);
            return random.nextDouble() < chanceOfLoss(target, truth - level) ? TrialTables.lost(drawn) : drawn;
        }

        private double chanceOfLoss(double target, double above) {
            return switch (how) {
                case RANDOM -> loss;
                case DARK -> loss * (1 + target / 1.5);
                case POOR -> Math.min(1, 2 * loss * (above < 0 ? 1 : 0));
            };
        }

        /** Sets of three hold each level, of two the ends, of four the three and one end, which chance picks too. */
        private List<Double> targets(Random random) {
            List<Double> targets = new ArrayList<>();
            for (int place = 0; place < size; place++) {
                targets.add(levels == 2 ? (place % 2 == 0 ? -1.5 : 1.5) : 1.5 * (place % 3 - 1));
            }
            if (levels == 3 && size == 4) {
                targets.set(3, random.nextBoolean() ? 1.5 : -1.5);
            }
            Collections.shuffle(targets, random);
            return targets;
        }
    }
}
