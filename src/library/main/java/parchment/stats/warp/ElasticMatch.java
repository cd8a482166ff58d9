package parchment.stats.warp;

import java.util.Locale;

/**
 * The result of matching two curves' clocks: how the curves compare once that is done.
 *
 * @param warp from the clock of the first curve to that of the second: second(warp(t)) runs along first(t)
 * @param distanceBefore distance of the square-root velocities on the clocks as they were, each scaled to run from 0 to 1
 * @param amplitudeDistance what remains of it after the best warp; in the square root of the unit of the curves
 * @param phaseDistance the angle between the warp and equal speed, 0 to pi/2
 * @param amplitudeChange by how much the amplitude distance differs from the one on a grid half as fine
 * @param phaseChange by how much the phase distance differs from the one on a grid half as fine
 */
public record ElasticMatch(
        Warp warp,
        double distanceBefore,
        double amplitudeDistance,
        double phaseDistance,
        double amplitudeChange,
        double phaseChange) {

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "amplitude distance %.4g (%.4g before matching the clocks), phase distance %.3f;"
                        + " half the grid changes them by %.2g and %.2g",
                amplitudeDistance,
                distanceBefore,
                phaseDistance,
                amplitudeChange,
                phaseChange);
    }
}
