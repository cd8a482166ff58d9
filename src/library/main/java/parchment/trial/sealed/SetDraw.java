package parchment.trial.sealed;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;

/**
 * Draws the targets of a trial: permuted inside each set, never freely, so that no set leans to one side.
 *
 * <p>A set of two has both ends, a set of three the ends and the middle, a set of four these three and one end more; as many sets of four
 * have the lower end twice as the upper one, give or take one. Where no bend is asked for, every set has the ends alone.
 */
public final class SetDraw {
    /** Says which targets a set has. */
    public enum Targets {
        /** The two ends and, where the set is large enough, the middle: a bend could be seen. */
        ENDS_AND_MIDDLE("with the middle"),
        /** The two ends alone: the most power for a slope, and a bend would be overlooked. */
        ENDS("ends only");

        private final String words;

        Targets(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    private static final int SALT_BYTES = 16;

    private SetDraw() {}

    /** Returns the targets that a set of a size has, lowest first; the fourth of a set with a middle is left open, and not among them. */
    public static List<Double> targets(int size, Targets which, double middle, double step) {
        double low = middle - step;
        double high = middle + step;
        if (size == 2) {
            return List.of(low, high);
        }
        return which == Targets.ENDS ? List.of(low, low, high, high) : List.of(low, middle, high);
    }

    /**
     * Draws all lines.
     *
     * @param chance whence all chance comes
     */
    public static List<DrawnLine> draw(
            String trial, int sets, int size, Targets which, double middle, double step, Random chance) {
        List<Double> fourth = new ArrayList<>();
        for (int set = 0; set < sets; set++) {
            fourth.add(set % 2 == 0 ? -step : step);
        }
        if (sets % 2 == 1 && chance.nextBoolean()) {
            fourth.set(sets - 1, step); // The odd one is nobody's.
        }
        Collections.shuffle(fourth, chance);
        List<DrawnLine> lines = new ArrayList<>();
        for (int set = 1; set <= sets; set++) {
            List<Double> targets = new ArrayList<>(targets(size, which, middle, step));
            if (targets.size() < size) {
                targets.add(middle + fourth.get(set - 1));
            }
            Collections.shuffle(targets, chance);
            for (int place = 1; place <= size; place++) {
                lines.add(new DrawnLine(
                        trial, "", "", set, place, "", DrawnLine.target(targets.get(place - 1)), salt(chance)));
            }
        }
        return List.copyOf(lines);
    }

    private static String salt(Random chance) {
        byte[] bytes = new byte[SALT_BYTES];
        chance.nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    /** Returns whether the targets of a whole set are as the rule says, in whatever order. */
    public static boolean follows(List<String> drawn, int size, Targets which, List<Double> targets) {
        double low = targets.get(0);
        double high = targets.get(targets.size() - 1);
        double middle = (low + high) / 2;
        List<String> wanted = new ArrayList<>(targets(size, which, middle, (high - low) / 2).stream()
                .map(DrawnLine::target)
                .toList());
        List<String> left = new ArrayList<>(drawn);
        for (String each : wanted) {
            if (!left.remove(each)) {
                return false;
            }
        }
        return left.isEmpty()
                || left.size() == 1
                        && size == wanted.size() + 1
                        && (left.contains(DrawnLine.target(low)) || left.contains(DrawnLine.target(high)));
    }
}
