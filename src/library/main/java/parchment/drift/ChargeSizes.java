package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.stats.linear.Robust;

/**
 * The charges in which a lot was really roasted: written green masses that lie within a twentieth of each other are one size.
 *
 * @param sizes the sizes, that used most often first; empty if no green mass is written
 * @param whose whether they are the lot's own
 */
record ChargeSizes(List<Size> sizes, Whose whose) {
    /** Masses that lie so near are one charge; common practice, no source. */
    private static final double WITHIN = 0.05;
    /** A size used more rarely than in this share of the batches is an odd weighing and no habit; common practice, no source. */
    private static final double LEAST_SHARE = 0.05;

    /** A rounder mass that lies so near, as a share, is taken to be the one that was meant; common practice, no source. */
    private static final double NEAR = 0.005;

    private static final int MOST = 3;

    /** Whose charges they are. */
    enum Whose {
        ITS_OWN,
        ALL_LOTS
    }

    /**
     * One size of charge.
     *
     * @param kilograms the middle of the masses, kg
     * @param batches how many batches were charged with it
     */
    record Size(double kilograms, int batches) {}

    /**
     * Finds the sizes.
     *
     * @param unit the unit in which they are round
     */
    static ChargeSizes of(String lot, MassUnit unit, Logbook logbook) {
        double[] own = charges(logbook.ofLot(lot));
        return own.length > 0
                ? new ChargeSizes(sizes(own, unit), Whose.ITS_OWN)
                : new ChargeSizes(sizes(charges(logbook), unit), Whose.ALL_LOTS);
    }

    private static double[] charges(Logbook logbook) {
        return logbook.batches().stream()
                .flatMap(batch -> batch.conditions().greenMass().stream())
                .mapToDouble(Mass::kilograms)
                .filter(mass -> mass > 0)
                .sorted()
                .toArray();
    }

    /** Takes the narrow stretch that holds most masses as a size, then the next of what is left. */
    private static List<Size> sizes(double[] sorted, MassUnit unit) {
        List<Size> sizes = new ArrayList<>();
        double[] left = sorted;
        while (left.length > 0) {
            int from = 0;
            int most = 0;
            for (int i = 0; i < left.length; i++) {
                int end = i;
                while (end < left.length && left[end] <= left[i] * (1 + WITHIN)) {
                    end++;
                }
                if (end - i > most) {
                    from = i;
                    most = end - i;
                }
            }
            sizes.add(new Size(meant(Robust.median(Arrays.copyOfRange(left, from, from + most)), unit), most));
            double[] rest = new double[left.length - most];
            System.arraycopy(left, 0, rest, 0, from);
            System.arraycopy(left, from + most, rest, from, left.length - from - most);
            left = rest;
        }
        int most = sizes.stream().mapToInt(Size::batches).max().orElse(0);
        return sizes.stream()
                .filter(size -> size.batches() == most || size.batches() >= Math.max(2, LEAST_SHARE * sorted.length))
                .sorted(Comparator.comparingInt(Size::batches)
                        .thenComparingDouble(Size::kilograms)
                        .reversed())
                .limit(MOST)
                .toList();
    }

    /** The roundest mass near the middle is the one that was meant: 2.5 kg and not 2.506 kg. */
    private static double meant(double kilograms, MassUnit unit) {
        double whole = unit == MassUnit.GRAM ? 1_000 : unit == MassUnit.OUNCE ? 10 : 1;
        double mass = unit.fromKilograms(kilograms);
        for (double step : new double[] {1, 0.5, 0.1, 0.05, 0.01}) {
            double round = Math.round(mass / (step * whole)) * step * whole;
            if (round > 0 && Math.abs(round - mass) <= NEAR * mass) {
                return unit.toKilograms(round);
            }
        }
        return kilograms;
    }

    /** Says which charges were used and how often, as in "5 kg (60 batches), 2.5 kg (20 batches)". */
    String words(MassWords masses) {
        List<String> words = new ArrayList<>();
        for (Size size : sizes) {
            words.add(masses.exact(size.kilograms()) + " (" + size.batches()
                    + (size.batches() == 1 ? " batch)" : " batches)"));
        }
        return String.join(", ", words);
    }
}
