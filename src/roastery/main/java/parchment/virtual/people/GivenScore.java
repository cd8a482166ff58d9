package parchment.virtual.people;

import java.util.List;

/**
 * One cupper's scores of one cup.
 *
 * @param cupping the cupping's name
 * @param cupper the cupper's name
 * @param batch the batch's name
 * @param blindCode the code on the table
 * @param cup number of the cup of this batch, from 1
 * @param position place in which this cupper met it, from 1
 * @param points points of each attribute, in the order of the surfaces
 */
public record GivenScore(
        String cupping, String cupper, String batch, String blindCode, int cup, int position, List<Double> points) {
    /** Copies the list. */
    public GivenScore {
        points = List.copyOf(points);
    }
}
