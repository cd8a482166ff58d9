package parchment.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import parchment.quantity.MassUnit;

/**
 * Charges that together make a mass of green coffee.
 *
 * @param counts how many of each size, the largest first
 */
record Charges(List<Count> counts) {
    /** All but so many batches are of the largest size: trying all makes no difference to large orders. */
    private static final int TRIED = 12;

    private static final double ROUNDING = 1e-9;

    /**
     * So many charges of one size.
     *
     * @param kilograms the size, kg
     * @param batches how many
     */
    record Count(double kilograms, int batches) {}

    /**
     * Returns the charges that cover a mass with the least left over, at most one batch more than the fewest that do; of those that leave as
     * much, the fewest batches.
     *
     * @param kilograms the green coffee that is needed, above 0
     */
    static Charges covering(double kilograms, ChargeSizes sizes) {
        List<Charges> all = upTo(kilograms, sizes).stream()
                .filter(one -> one.kilograms() >= kilograms - ROUNDING)
                .toList();
        int fewest = all.stream().mapToInt(Charges::batches).min().orElseThrow();
        return all.stream()
                .filter(one -> one.batches() <= fewest + 1)
                .min(Comparator.comparingDouble((Charges one) -> Math.round(1000 * one.kilograms()))
                        .thenComparingInt(Charges::batches))
                .orElseThrow();
    }

    /** Returns the charges that come nearest to a mass from below; empty if the smallest charge is more. */
    static Optional<Charges> fallingShort(double kilograms, ChargeSizes sizes) {
        return upTo(kilograms, sizes).stream()
                .filter(one -> one.batches() > 0 && one.kilograms() < kilograms - ROUNDING)
                .max(Comparator.comparingDouble((Charges one) -> Math.round(1000 * one.kilograms()))
                        .thenComparingInt(one -> -one.batches()));
    }

    /** Returns all charges that make a mass or less, and those that one batch more makes of them. */
    private static List<Charges> upTo(double kilograms, ChargeSizes sizes) {
        List<Double> masses = sizes.sizes().stream()
                .map(ChargeSizes.Size::kilograms)
                .sorted(Comparator.reverseOrder())
                .toList();
        int always = (int) Math.max(0, Math.floor(kilograms / masses.get(0)) - TRIED);
        List<Charges> found = new ArrayList<>();
        add(found, kilograms, masses, List.of(), always);
        return found;
    }

    private static void add(List<Charges> found, double left, List<Double> masses, List<Count> counts, int always) {
        if (counts.size() == masses.size()) {
            found.add(
                    new Charges(counts.stream().filter(one -> one.batches() > 0).toList()));
            return;
        }
        double mass = masses.get(counts.size());
        int most = left > ROUNDING ? (int) Math.ceil(left / mass - ROUNDING) : 0;
        for (int n = counts.isEmpty() ? always : 0; n <= most; n++) {
            List<Count> more = new ArrayList<>(counts);
            more.add(new Count(mass, n));
            add(found, left - n * mass, masses, more, always);
        }
    }

    int batches() {
        return counts.stream().mapToInt(Count::batches).sum();
    }

    double kilograms() {
        return counts.stream()
                .mapToDouble(one -> one.batches() * one.kilograms())
                .sum();
    }

    /** Returns the charge that most of the mass is roasted in, told in a unit; empty if there is none. */
    Optional<OneCharge> most(MassUnit unit) {
        return counts.stream()
                .max(Comparator.comparingDouble(one -> one.batches() * one.kilograms()))
                .map(one -> new OneCharge(one.kilograms(), unit));
    }

    /** Says them in words, as in "2 batches of 5 kg and 1 of 2.5 kg". */
    String words(MassWords masses) {
        List<String> words = new ArrayList<>();
        for (Count one : counts) {
            words.add(one.batches() + (words.isEmpty() ? one.batches() == 1 ? " batch" : " batches" : "") + " of "
                    + masses.exact(one.kilograms()));
        }
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }
}
