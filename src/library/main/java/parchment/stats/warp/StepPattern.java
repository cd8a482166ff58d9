package parchment.stats.warp;

import java.util.Locale;

/**
 * Sets which moves a warping path may make and what each costs.
 *
 * <p>A path pairs samples of a query with samples of a reference. Symmetric patterns treat both alike; asymmetric ones use every
 * query sample exactly once, so that the distance is a sum over the query. The first pair costs its local cost once in every
 * pattern (Sakoe and Chiba count it twice in the symmetric forms, which shifts all distances of two curves alike).
 *
 * @see <a href="https://doi.org/10.1109/TASSP.1978.1163055">Sakoe and Chiba 1978, IEEE Trans. ASSP 26:43, table I</a>; Rabiner and
 *     Juang 1993, Fundamentals of Speech Recognition, section 4.7
 */
public enum StepPattern {
    /** Sideways, upward and diagonal moves, each at weight 1. Favours the diagonal; distances cannot be normalised. */
    SYMMETRIC1(Norm.NONE, new int[][] {{-1, -1, 0, 0, 1}, {0, -1, 0, 0, 1}, {-1, 0, 0, 0, 1}}),

    /** The same moves with the diagonal at weight 2: no direction is favoured. Sakoe and Chiba's symmetric form without slope limit. */
    SYMMETRIC2(Norm.BOTH, new int[][] {{-1, -1, 0, 0, 2}, {0, -1, 0, 0, 1}, {-1, 0, 0, 0, 1}}),

    /** Each query sample is used once; the reference may stand still, advance by one or skip one. */
    ASYMMETRIC(Norm.QUERY, new int[][] {{-1, 0, 0, 0, 1}, {-1, -1, 0, 0, 1}, {-1, -2, 0, 0, 1}}),

    /** Rabiner and Juang's local continuity type IV (Itakura) with slope weights c: the reference never stands still twice running. */
    RABINER_JUANG_4C(Norm.QUERY, new int[][] {
        {-1, -1, 0, 0, 1}, {-1, -2, 0, 0, 1}, {-2, -1, -1, 0, 1, 0, 0, 1}, {-2, -2, -1, 0, 1, 0, 0, 1}
    }),

    /** Sakoe and Chiba's symmetric form with slope limit P = 1: after a sideways or upward move a diagonal one must follow. */
    SYMMETRIC_P1(Norm.BOTH, new int[][] {{-1, -1, 0, 0, 2}, {-1, -2, 0, -1, 2, 0, 0, 1}, {-2, -1, -1, 0, 2, 0, 0, 1}});

    /** By what a distance is divided so that curves of different length compare. */
    enum Norm {
        NONE,
        QUERY,
        BOTH
    }

    private final Norm norm;
    /** Per move: where it starts (query, reference, backwards), then each cell it passes (query, reference, weight). */
    private final int[][] moves;

    StepPattern(Norm norm, int[][] moves) {
        this.norm = norm;
        this.moves = moves;
    }

    Norm norm() {
        return norm;
    }

    int[][] moves() {
        return moves;
    }

    /** Returns the most rows that one move climbs. */
    int reach() {
        int reach = 1;
        for (int[] move : moves) {
            reach = Math.max(reach, -move[0]);
        }
        return reach;
    }

    double normalised(double distance, int query, int reference) {
        return switch (norm) {
            case NONE -> Double.NaN;
            case QUERY -> distance / query;
            case BOTH -> distance / (query + reference);
        };
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
