package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.List;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.OrthonormalBasis;
import parchment.stats.linear.Vectors;

/** The complete rows of a design in an order of their own, with what cannot be told apart dropped and named. */
final class MixedRows {
    private static final String JOB = "A mixed model";

    final int[] rows;
    final OrthonormalBasis basis;
    final List<RandomBlock> blocks;
    final List<String> notes;
    /** The response after least squares on the fixed columns, and the coefficients taken out. */
    final double[] rest;

    final double[] taken;

    private MixedRows(
            int[] rows,
            OrthonormalBasis basis,
            List<RandomBlock> blocks,
            List<String> notes,
            double[] rest,
            double[] taken) {
        this.rows = rows;
        this.basis = basis;
        this.blocks = blocks;
        this.notes = notes;
        this.rest = rest;
        this.taken = taken;
    }

    static MixedRows of(MixedDesign design) {
        int[] rows = RowOrder.of(design);
        List<String> names = new ArrayList<>();
        List<double[]> columns = new ArrayList<>();
        for (MixedDesign.FixedTerm term : design.fixed()) {
            for (int c = 0; c < term.columns().size(); c++) {
                names.add(term.columnNames().get(c));
                columns.add(CannotFitException.unlessComputable(
                        JOB,
                        "the fixed column '" + term.columnNames().get(c) + "'",
                        Vectors.pick(term.columns().get(c), rows)));
            }
        }
        OrthonormalBasis basis = OrthonormalBasis.of(names, columns);
        if (rows.length < basis.size() + 1) {
            throw new CannotFitException(
                    "A mixed model with " + basis.size() + " fixed columns needs at least " + (basis.size() + 1)
                            + " complete rows, but there are " + rows.length + " of " + design.rows()
                            + ". Leave terms out or look for missing values.");
        }
        List<String> notes = new ArrayList<>();
        for (String name : basis.aliasedNames) {
            notes.add("The fixed column '" + name
                    + "' was dropped: it does not vary, or the columns before it determine it.");
        }
        List<RandomBlock> blocks = new ArrayList<>();
        for (RandomTerm term : design.randomTerms()) {
            term.columns()
                    .forEach(column -> CannotFitException.unlessComputable(
                            JOB, "the random term '" + term.name() + "'", Vectors.pick(column, rows)));
            keep(RandomBlock.of(term, rows), blocks, basis, notes);
        }
        double[] rest = CannotFitException.unlessComputable(JOB, "the response", Vectors.pick(design.response(), rows));
        double[] taken = new double[basis.size()];
        for (int pass = 0; pass < 2; pass++) {
            for (int k = 0; k < basis.size(); k++) {
                double[] q = basis.q.get(k);
                double dot = Vectors.dot(q, rest);
                taken[k] += dot;
                for (int i = 0; i < rest.length; i++) {
                    rest[i] -= dot * q[i];
                }
            }
        }
        return new MixedRows(rows, basis, List.copyOf(blocks), List.copyOf(notes), rest, taken);
    }

    private static void keep(RandomBlock given, List<RandomBlock> blocks, OrthonormalBasis basis, List<String> notes) {
        RandomBlock block = given;
        String name = "The random term '" + block.name + "' was dropped: ";
        if (block.kind == RandomTerm.Kind.SMOOTH) {
            blocks.add(block);
            return;
        }
        if (block.nodes() < 2) {
            notes.add(name + "it has one group only, '" + (block.levels.isEmpty() ? "" : block.levels.get(0)) + "'.");
            return;
        }
        for (int c = block.columns.length - 1; c >= 0; c--) {
            for (int other = 0; other < c; other++) {
                if (block.columns.length > 1 && proportional(block.columns[c], block.columns[other])) {
                    notes.add("The random slope '" + block.components.get(c) + "' of '" + block.name
                            + "' was dropped: it varies as '" + block.components.get(other) + "' does.");
                    block = block.without(c);
                    break;
                }
            }
        }
        if (block.size() == 1 && block.nodes() == block.group.length) {
            notes.add(name + "every row has its own group, so it cannot be told from the residual.");
            return;
        }
        if (block.nodes() * block.size() >= block.group.length && block.size() > 1) {
            notes.add(name + "it would need " + block.nodes() * block.size() + " effects for " + block.group.length
                    + " rows, so it cannot be told from the residual.");
            return;
        }
        for (RandomBlock other : blocks) {
            if (block.sameGroups(other) && shareComponent(block, other)) {
                notes.add(name + "its groups are the same as those of '" + other.name + "'.");
                return;
            }
        }
        if (block.size() == 1 && determined(block, basis)) {
            notes.add(name + "the fixed columns tell its groups apart already.");
            return;
        }
        blocks.add(block);
    }

    private static boolean shareComponent(RandomBlock a, RandomBlock b) {
        for (double[] column : a.columns) {
            for (double[] other : b.columns) {
                if (proportional(column, other)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean proportional(double[] a, double[] b) {
        double cosine = Vectors.dot(a, b) / (Vectors.norm(a) * Vectors.norm(b));
        return !(Math.abs(cosine) < 1 - 1e-12);
    }

    /** Says whether every group's column lies in the space of the fixed columns. */
    private static boolean determined(RandomBlock block, OrthonormalBasis basis) {
        if (block.nodes() > basis.size()) {
            return false;
        }
        double[] squares = new double[block.nodes()];
        double[][] dots = new double[basis.size()][block.nodes()];
        for (int i = 0; i < block.group.length; i++) {
            double z = block.columns[0][i];
            squares[block.group[i]] += z * z;
            for (int k = 0; k < dots.length; k++) {
                dots[k][block.group[i]] += z * basis.q.get(k)[i];
            }
        }
        for (int g = 0; g < squares.length; g++) {
            double inside = 0;
            for (double[] dot : dots) {
                inside += dot[g] * dot[g];
            }
            if (squares[g] - inside > 1e-9 * squares[g]) {
                return false;
            }
        }
        return true;
    }
}
