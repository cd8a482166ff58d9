package parchment.phase;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import parchment.curve.CleanCurve;
import parchment.curve.SmoothCurve;
import parchment.logbook.Batch;
import parchment.stats.linear.Robust;
import parchment.stats.local.Autocovariance;

/**
 * Pools the noise of the bean probe over all curves of a logger: one curve says too little of how long neighbours share their noise.
 *
 * <p>Curves of the same machine with the same interval and the same step are taken to come from one logger. The covariances at three
 * distances are pooled by their medians: where a curve bends within the window, its own estimate takes the bend for noise that lasts for
 * minutes, and a mean would let a few such curves decide.
 */
final class LoggerNoise {
    private LoggerNoise() {}

    /** Returns what was begun with the pooled noise in place of each curve's own, in the same order. */
    static List<MarkFinder.Result> pool(List<Batch> batches, List<MarkFinder.Result> begun) {
        Map<String, List<Autocovariance>> estimates = new LinkedHashMap<>();
        Map<String, Double> intervals = new LinkedHashMap<>();
        List<String> loggers = new ArrayList<>();
        for (int i = 0; i < batches.size(); i++) {
            Optional<SmoothCurve> bean = begun.get(i).bean();
            String logger = bean.isPresent() ? logger(batches.get(i), bean.get().clean()) : "";
            loggers.add(logger);
            if (bean.isPresent()) {
                estimates
                        .computeIfAbsent(logger, key -> new ArrayList<>())
                        .add(bean.get().noise());
                intervals.putIfAbsent(logger, bean.get().clean().interval());
            }
        }
        Map<String, Autocovariance> pooled = new LinkedHashMap<>();
        estimates.forEach((logger, list) -> pooled.put(logger, middle(list, intervals.getOrDefault(logger, 1.0))));
        List<MarkFinder.Result> results = new ArrayList<>();
        for (int i = 0; i < begun.size(); i++) {
            Autocovariance noise = pooled.get(loggers.get(i));
            results.add(noise == null ? begun.get(i) : begun.get(i).withNoise(noise));
        }
        return results;
    }

    private static Autocovariance middle(List<Autocovariance> list, double interval) {
        if (!(interval > 0)) {
            return Autocovariance.pooled(list);
        }
        double variance = median(list, Autocovariance::variance);
        double near = median(list, one -> one.at(interval));
        double far = median(list, one -> one.at(3 * interval));
        if (!(near > 0) || !(far > 0) || !(near > far)) {
            // The noise is gone before the third reading, or is not shared at all.
            double shared = near > 0 && variance > near ? near / variance : 0;
            return Autocovariance.autoregressive(variance, shared, interval);
        }
        double length = 2 * interval / Math.log(near / far);
        double correlated = Math.min(variance, near * Math.exp(interval / length));
        return Autocovariance.of(Math.max(0, variance - correlated), correlated, length);
    }

    private static double median(List<Autocovariance> list, ToDoubleFunction<Autocovariance> of) {
        return Robust.median(list.stream().mapToDouble(of).toArray());
    }

    private static String logger(Batch batch, CleanCurve clean) {
        return String.format(
                Locale.ROOT, "%s every %.1f s by %.4f", batch.machine().orElse(""), clean.interval(), clean.step());
    }
}
