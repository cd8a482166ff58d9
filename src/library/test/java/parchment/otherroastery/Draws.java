package parchment.otherroastery;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Draws numbers from a stream that a seed and a name fix, so that what one part draws moves nothing in another. */
final class Draws {
    private final SplittableRandom random;

    private Draws(SplittableRandom random) {
        this.random = random;
    }

    static Draws of(long seed, String name) {
        long state = seed;
        for (int i = 0; i < name.length(); i++) {
            state = state * 6_364_136_223_846_793_005L + name.charAt(i) + 1_442_695_040_888_963_407L;
        }
        return new Draws(new SplittableRandom(state));
    }

    double normal(double standardDeviation) {
        return standardDeviation * random.nextGaussian();
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    boolean happens(double probability) {
        return random.nextDouble() < probability;
    }

    List<Integer> shuffled(int count) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            order.add(random.nextInt(i + 1), i);
        }
        return order;
    }
}
