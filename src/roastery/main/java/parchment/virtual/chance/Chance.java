package parchment.virtual.chance;

import java.util.ArrayList;
import java.util.List;

/**
 * Draws numbers by chance from a seed and a name, the same on every machine and every Java.
 *
 * <p>Each thing that is drawn (one batch's beans, one cupper's bias, one cup) has a stream of its own, found by its name; so a batch
 * stays as it was when another is added before it. Only integer arithmetic and {@link StrictMath} are used, whose results are
 * fixed by the language, so that files made from the numbers agree bit for bit.
 *
 * <p>The generator is SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators", OOPSLA, fig. 17).
 * It is not secret: whoever knows the seed knows everything drawn from it.
 */
public final class Chance {
    private static final long GOLDEN_GAMMA = 0x9E3779B97F4A7C15L;

    private long state;

    private Chance(long state) {
        this.state = state;
    }

    /** Returns the stream with the given name; equal seeds and names give equal numbers. */
    public static Chance of(long seed, String name) {
        long hash = mix(seed + GOLDEN_GAMMA);
        for (int i = 0; i < name.length(); i++) {
            hash = mix((hash ^ name.charAt(i)) + GOLDEN_GAMMA);
        }
        return new Chance(hash);
    }

    /** Returns the stream that starts from the given state. */
    static Chance fromState(long state) {
        return new Chance(state);
    }

    /** Returns the next 64 bits. */
    public long bits() {
        state += GOLDEN_GAMMA;
        return mix(state);
    }

    /** Returns a number from 0 (included) to 1 (left out), all equally likely. */
    public double share() {
        return (bits() >>> 11) * 0x1.0p-53;
    }

    /** Returns a number between the two, all equally likely. */
    public double between(double low, double high) {
        return low + (high - low) * share();
    }

    /** Returns a whole number from 0 to one less than the bound. */
    public int below(int bound) {
        return (int) StrictMath.floor(share() * bound);
    }

    /** Returns whether something of the given probability happened. */
    public boolean happens(double probability) {
        return share() < probability;
    }

    /** Returns a normal number (Box and Muller 1958, Ann. Math. Stat. 29:610). */
    public double normal(double mean, double standardDeviation) {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - share()));
        return mean + standardDeviation * radius * StrictMath.cos(2 * StrictMath.PI * share());
    }

    /** Returns a normal number that is drawn again until it is within the given number of standard deviations. */
    public double normalWithin(double mean, double standardDeviation, double deviations) {
        double drawn = normal(0, 1);
        while (StrictMath.abs(drawn) > deviations) {
            drawn = normal(0, 1);
        }
        return mean + standardDeviation * drawn;
    }

    /** Returns one of the choices, all equally likely. */
    public <T> T pick(List<T> choices) {
        return choices.get(below(choices.size()));
    }

    /** Returns the choices in an order drawn by chance (Fisher and Yates). */
    public <T> List<T> shuffled(List<T> choices) {
        List<T> order = new ArrayList<>(choices);
        for (int i = order.size() - 1; i > 0; i--) {
            int j = below(i + 1);
            T kept = order.get(i);
            order.set(i, order.get(j));
            order.set(j, kept);
        }
        return order;
    }

    private static long mix(long bits) {
        long mixed = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        return mixed ^ (mixed >>> 31);
    }
}
