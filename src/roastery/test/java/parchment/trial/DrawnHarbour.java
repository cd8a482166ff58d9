package parchment.trial;

import parchment.logbook.Logbook;
import parchment.trial.sealed.TrialControl;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualRoastery;

/** The harbour-town roastery with every drop drawn by chance. */
final class DrawnHarbour {
    private DrawnHarbour() {}

    static Logbook of(long seed, int batches) {
        String text = Scenario.named("harbour")
                .text()
                .replace("from = 2024-05-06", "from = 2024-01-01")
                .replace("to = 2024-08-31", "to = 2024-12-31");
        return VirtualRoastery.of(Scenario.of(text, "harbour, every drop drawn"))
                .withSeed(seed)
                .withBatches(batches)
                .run()
                .opened();
    }

    /** Prints the spread inside sets of each attribute, pooled over seeds 1 to 12, and that of single logbooks. */
    public static void main(String[] arguments) {
        int seeds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 12;
        for (String score : new String[] {"acidity", "sweetness", "body", "bitterness", "aftertaste", "liking"}) {
            double squares = 0;
            int degrees = 0;
            StringBuilder single = new StringBuilder();
            for (int seed = 1; seed <= seeds; seed++) {
                TrialSpread found = TrialSpread.of(score, TrialControl.DROP_TEMPERATURE, of(seed, 120))
                        .orElseThrow();
                squares += found.variance() * found.degreesOfFreedom();
                degrees += found.degreesOfFreedom();
                single.append(String.format(java.util.Locale.ROOT, " %.2f", Math.sqrt(found.variance())));
                if (seed == 1) {
                    single.append(" (" + found + ")");
                }
            }
            System.out.printf(
                    java.util.Locale.ROOT,
                    "%s %.3f (%d degrees of freedom);%s%n",
                    score,
                    Math.sqrt(squares / degrees),
                    degrees,
                    single);
        }
    }
}
