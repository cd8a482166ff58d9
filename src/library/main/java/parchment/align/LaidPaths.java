package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.align.OneClock.Laid;
import parchment.curve.SmoothCurve;
import parchment.phase.Phases;
import parchment.stats.warp.Warp;

/** Reads the paths of batches at the positions of one clock. */
final class LaidPaths {
    /**
     * Degrees Celsius above the start of the climb over which the rate still tells of the probe warming up, not of the beans; common
     * practice, no source.
     */
    static final double WARMING = 10;

    private LaidPaths() {}

    /** Returns the batches that have a rate of rise along the temperature, its values as (temperature, rate) in turns. */
    static List<Laid> alongTemperature(List<Phases> all, ClockMatches matches) {
        double bandwidth = RatesByTemperature.bandwidth(all);
        List<Laid> laid = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            double[] rising = RatesByTemperature.rising(all.get(i), bandwidth);
            if (rising.length >= 4) {
                laid.add(new Laid(all.get(i), matches.warp(i), rising));
            }
        }
        return laid;
    }

    /** Returns the batches whose clock is matched; their values are read later. */
    static List<Laid> alongTime(List<Phases> all, ClockMatches matches, Clock clock) {
        List<Laid> laid = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (matches.warp(i).isPresent()
                    && all.get(i).bean().isPresent()
                    && !track(all.get(i).bean().get(), clock).isEmpty()) {
                laid.add(new Laid(all.get(i), matches.warp(i), new double[0]));
            }
        }
        return laid;
    }

    private static Track track(SmoothCurve bean, Clock clock) {
        return clock.comparesRates() ? Track.ofRate(bean, ElasticClock.BANDWIDTH) : Track.ofTemperature(bean);
    }

    /** Returns positions that hold all batches. */
    static double[] grid(List<Laid> laid, Clock clock) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Laid one : laid) {
            if (clock == Clock.BY_BEAN_TEMPERATURE) {
                low = Math.min(low, one.values()[0]);
                high = Math.max(high, one.values()[one.values().length - 2]);
            } else {
                Warp warp = one.warp().orElseThrow();
                low = Math.min(low, warp.imageFrom());
                high = Math.max(high, warp.imageTo());
            }
        }
        return Crowd.grid(low, high, clock == Clock.BY_BEAN_TEMPERATURE ? RatesByTemperature.STEP : OneClock.step());
    }

    /** Returns the same batches with their values at the positions; those without any are left out. */
    static List<Laid> onGrid(List<Laid> laid, double[] grid, Clock clock) {
        return laid.parallelStream()
                .map(one -> new Laid(one.phases(), one.warp(), values(one, grid, clock)))
                .filter(one -> Arrays.stream(one.values()).anyMatch(Double::isFinite))
                .toList();
    }

    private static double[] values(Laid one, double[] grid, Clock clock) {
        if (clock == Clock.BY_BEAN_TEMPERATURE) {
            return RatesByTemperature.onGrid(one.values(), grid);
        }
        Optional<Warp> warp = one.warp();
        Optional<SmoothCurve> bean = one.phases().bean();
        double[] values = new double[grid.length];
        Arrays.fill(values, Double.NaN);
        if (warp.isPresent() && bean.isPresent()) {
            Track track = track(bean.get(), clock);
            Warp back = warp.get().inverse();
            for (int k = 0; k < grid.length; k++) {
                if (grid[k] >= back.from() && grid[k] <= back.to()) {
                    // The first reading often comes a moment after charge, the last a moment before the drop.
                    double own = back.at(grid[k]);
                    double held = Math.max(track.from(), Math.min(own, track.to()));
                    values[k] = Math.abs(held - own) <= OneClock.step() ? track.at(held) : Double.NaN;
                }
            }
        }
        return values;
    }

    /** Returns the first and the last position of the stretch that 95 of 100 batches reach, or -1 twice. */
    static int[] common(List<Laid> laid, Clock clock) {
        double[] starts = new double[laid.size()];
        double[] ends = new double[laid.size()];
        for (int i = 0; i < laid.size(); i++) {
            double[] values = laid.get(i).values();
            int from = 0;
            int to = values.length - 1;
            while (!Double.isFinite(values[from])) {
                from++;
            }
            while (!Double.isFinite(values[to])) {
                to--;
            }
            starts[i] = from + (clock == Clock.BY_BEAN_TEMPERATURE ? WARMING / RatesByTemperature.STEP : 0);
            ends[i] = to;
        }
        double[] rows = laid.isEmpty() ? new double[0] : SharedStretch.of(starts, ends, 1);
        return rows.length < 2 ? new int[] {-1, -1} : new int[] {(int) rows[0], (int) rows[rows.length - 1]};
    }
}
