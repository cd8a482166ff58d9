package parchment.chart;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Draws the borders of the squares whose number reaches a level, straight between the middles of neighbours, as closed rings.
 *
 * <p>This is the method of marching squares (Wyvill, McPheeters and Wyvill 1986, in two dimensions; from memory): each four neighbours are one
 * of sixteen cases, and the pieces of all of them join into rings. A ring inside another is a hole.
 */
final class Contours {
    /** The edges of four neighbours: of the upper two, the right two, the lower two and the left two. */
    private enum Edge {
        UPPER,
        RIGHT,
        LOWER,
        LEFT
    }

    /** One place on a ring, in columns and rows. */
    record Place(double column, double row) {}

    private final Density.Field field;
    private final double level;
    private final Map<Integer, Integer> next = new LinkedHashMap<>();

    private Contours(Density.Field field, double level) {
        this.field = field;
        this.level = level;
    }

    /** Returns the rings around all squares at or above a level; the outermost squares of the field have to lie below it. */
    static List<List<Place>> of(Density.Field field, double level) {
        Contours contours = new Contours(field, level);
        for (int row = 0; row + 1 < field.rows(); row++) {
            for (int column = 0; column + 1 < field.columns(); column++) {
                contours.square(column, row);
            }
        }
        return contours.rings();
    }

    /** Adds the pieces of border between four neighbours, with what is above the level to their left. */
    private void square(int column, int row) {
        int which = (in(column, row) ? 8 : 0)
                + (in(column + 1, row) ? 4 : 0)
                + (in(column + 1, row + 1) ? 2 : 0)
                + (in(column, row + 1) ? 1 : 0);
        switch (which) {
            case 8 -> piece(column, row, Edge.LEFT, Edge.UPPER);
            case 4 -> piece(column, row, Edge.UPPER, Edge.RIGHT);
            case 2 -> piece(column, row, Edge.RIGHT, Edge.LOWER);
            case 1 -> piece(column, row, Edge.LOWER, Edge.LEFT);
            case 12 -> piece(column, row, Edge.LEFT, Edge.RIGHT);
            case 6 -> piece(column, row, Edge.UPPER, Edge.LOWER);
            case 3 -> piece(column, row, Edge.RIGHT, Edge.LEFT);
            case 9 -> piece(column, row, Edge.LOWER, Edge.UPPER);
            case 14 -> piece(column, row, Edge.LEFT, Edge.LOWER);
            case 13 -> piece(column, row, Edge.LOWER, Edge.RIGHT);
            case 11 -> piece(column, row, Edge.RIGHT, Edge.UPPER);
            case 7 -> piece(column, row, Edge.UPPER, Edge.LEFT);
            case 10 -> {
                piece(column, row, Edge.LEFT, Edge.UPPER);
                piece(column, row, Edge.RIGHT, Edge.LOWER);
            }
            case 5 -> {
                piece(column, row, Edge.UPPER, Edge.RIGHT);
                piece(column, row, Edge.LOWER, Edge.LEFT);
            }
            default -> {
                // All four lie on one side: no border runs between them.
            }
        }
    }

    private boolean in(int column, int row) {
        return field.at(column, row) >= level;
    }

    private void piece(int column, int row, Edge from, Edge to) {
        next.put(number(column, row, from), number(column, row, to));
    }

    /** Gives an edge the same number whichever of its two squares names it: even for level edges, odd for upright ones. */
    private int number(int column, int row, Edge edge) {
        return switch (edge) {
            case UPPER -> 2 * (row * field.columns() + column);
            case LOWER -> 2 * ((row + 1) * field.columns() + column);
            case LEFT -> 2 * (row * field.columns() + column) + 1;
            case RIGHT -> 2 * (row * field.columns() + column + 1) + 1;
        };
    }

    private Place place(int number) {
        int column = number / 2 % field.columns();
        int row = number / 2 / field.columns();
        double here = field.at(column, row);
        boolean upright = number % 2 == 1;
        double there = upright ? field.at(column, row + 1) : field.at(column + 1, row);
        double share = (level - here) / (there - here);
        return upright ? new Place(column, row + share) : new Place(column + share, row);
    }

    private List<List<Place>> rings() {
        List<List<Place>> rings = new ArrayList<>();
        while (!next.isEmpty()) {
            List<Place> ring = new ArrayList<>();
            Integer at = next.keySet().iterator().next();
            for (Integer after = next.remove(at); after != null; after = next.remove(at)) {
                ring.add(place(at));
                at = after;
            }
            rings.add(ring);
        }
        return rings;
    }
}
