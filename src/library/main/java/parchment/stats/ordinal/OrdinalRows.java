package parchment.stats.ordinal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.OrthonormalBasis;
import parchment.stats.linear.Vectors;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomBlock;
import parchment.stats.mixed.RandomTerm;

/** The complete rows of an ordinal design: category numbers, centred columns, group numbers. */
final class OrdinalRows {
    final int[] rows;
    final double[] categories;
    final int[] category;
    final OrthonormalBasis basis;
    /** The orthonormal columns after the intercept, scaled to a root mean square of 1. */
    final List<double[]> columns = new ArrayList<>();

    final List<RandomBlock> blocks;
    final List<String> notes;

    private OrdinalRows(
            int[] rows,
            double[] categories,
            int[] category,
            OrthonormalBasis basis,
            List<RandomBlock> blocks,
            List<String> notes) {
        this.rows = rows;
        this.categories = categories;
        this.category = category;
        this.basis = basis;
        this.blocks = blocks;
        this.notes = notes;
        for (double[] q : basis.q.subList(1, basis.size())) {
            columns.add(Arrays.stream(q).map(v -> v * scale()).toArray());
        }
    }

    double scale() {
        return Math.sqrt(rows.length);
    }

    static OrdinalRows of(MixedDesign design) {
        int[] rows = IntStream.range(0, design.rows())
                .filter(i -> Double.isFinite(design.responseAt(i)) && design.complete(i))
                .toArray();
        double[] response = Vectors.pick(design.response(), rows);
        double[] categories = Arrays.stream(response).sorted().distinct().toArray();
        if (categories.length < 2) {
            throw new CannotFitException(
                    "An ordinal model needs at least 2 different scores, but the complete rows have "
                            + categories.length + ".");
        }
        int[] category = Arrays.stream(response)
                .mapToInt(v -> Arrays.binarySearch(categories, v))
                .toArray();
        List<String> names = new ArrayList<>();
        List<double[]> columns = new ArrayList<>();
        // The thresholds stand in for the intercept: a column that is constant is determined by them.
        double[] ones = new double[rows.length];
        Arrays.fill(ones, 1);
        names.add(MixedDesign.INTERCEPT);
        columns.add(ones);
        for (MixedDesign.FixedTerm term : design.fixed()) {
            for (int c = 0;
                    !term.name().equals(MixedDesign.INTERCEPT)
                            && c < term.columns().size();
                    c++) {
                names.add(term.columnNames().get(c));
                columns.add(CannotFitException.unlessComputable(
                        "An ordinal model",
                        "the fixed column '" + term.columnNames().get(c) + "'",
                        Vectors.pick(term.columns().get(c), rows)));
            }
        }
        OrthonormalBasis basis = OrthonormalBasis.of(names, columns);
        List<String> notes = new ArrayList<>();
        for (String name : basis.aliasedNames) {
            notes.add("The fixed column '" + name
                    + "' was dropped: it does not vary, or the columns before it determine it.");
        }
        List<RandomBlock> blocks = new ArrayList<>();
        for (RandomTerm term : design.randomTerms()) {
            if (term.kind() != RandomTerm.Kind.GROUPS || !term.components().equals(List.of(MixedDesign.INTERCEPT))) {
                throw new IllegalArgumentException("An ordinal model takes random intercepts only, but '" + term.name()
                        + "' is a slope or a smooth; leave it out, or fit the scores as numbers.");
            }
            RandomBlock block = RandomBlock.of(term, rows);
            if (block.nodes() < 2) {
                notes.add("The random term '" + term.name() + "' was dropped: it has one group only.");
            } else {
                blocks.add(block);
            }
        }
        // The term with most groups first: its part of the matrix is diagonal and is eliminated cheaply.
        blocks.sort((a, b) -> Integer.compare(b.nodes(), a.nodes()));
        return new OrdinalRows(rows, categories, category, basis, List.copyOf(blocks), List.copyOf(notes));
    }
}
