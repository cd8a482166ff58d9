package parchment.phase;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Decides how far the curve's own sign near first crack is trusted, by how it helps to foretell written marks of other days.
 *
 * <p>What the habit got wrong is put against how far the sign lies from the habit, with the slope of least squares (the weight, kept within
 * 0 to 1) and a mean. Each day's weight comes from the other days. The weight is 0 unless the mean square of what is left, day by day, falls
 * by more than one standard error of that mean across the other days.
 */
final class SignatureGain {
    /** Fewest days from which a weight is learnt; common practice, no source. */
    static final int FEWEST_DAYS = 20;

    /**
     * Holds how the sign is used on a day.
     *
     * @param weight the share of the way from habit to sign, 0 to 1
     * @param shift °C added
     * @param spread what is left of the standard deviation, as a share
     */
    record Use(double weight, double shift, double spread) {
        static final Use NONE = new Use(0, 0, 1);
    }

    /** Sums of one day: count, errors, signs, squares and products; a row without a sign counts as one that lies on the habit. */
    private record Sums(int count, double sign, double error, double signs, double products, double errors) {
        Sums plus(Sums other, int side) {
            return new Sums(
                    count + side * other.count,
                    sign + side * other.sign,
                    error + side * other.error,
                    signs + side * other.signs,
                    products + side * other.products,
                    errors + side * other.errors);
        }

        Use line() {
            double n = count;
            double squares = signs - sign * sign / n;
            double slope = squares > 1e-9 ? (products - sign * error / n) / squares : 0;
            double weight = Math.max(0, Math.min(1, slope));
            return new Use(weight, (error - weight * sign) / n, 1);
        }

        /** The mean square left by a line. */
        double left(Use line) {
            double w = line.weight();
            double c = line.shift();
            return (errors + w * w * signs + c * c * count - 2 * w * products - 2 * c * error + 2 * w * c * sign)
                    / count;
        }
    }

    private final Map<String, Use> byDay = new LinkedHashMap<>();
    private final Use always;
    private final double meanGain;
    private final double gainError;
    private final int days;

    private SignatureGain(Map<String, Sums> sums) {
        days = sums.size();
        Sums total = new Sums(0, 0, 0, 0, 0, 0);
        for (Sums day : sums.values()) {
            total = total.plus(day, 1);
        }
        Map<String, Double> gains = new LinkedHashMap<>();
        for (Map.Entry<String, Sums> day : sums.entrySet()) {
            Use line = total.plus(day.getValue(), -1).line();
            Use none = new Use(0, 0, 1);
            gains.put(day.getKey(), day.getValue().left(none) - day.getValue().left(line));
            byDay.put(day.getKey(), line);
        }
        double sum = gains.values().stream().mapToDouble(Double::doubleValue).sum();
        double squares = gains.values().stream().mapToDouble(g -> g * g).sum();
        meanGain = days == 0 ? Double.NaN : sum / days;
        gainError = error(sum, squares, days);
        for (Map.Entry<String, Sums> day : sums.entrySet()) {
            double own = gains.getOrDefault(day.getKey(), 0.0);
            Sums others = total.plus(day.getValue(), -1);
            byDay.put(day.getKey(), use(others, sum - own, squares - own * own, days - 1));
        }
        always = days == 0 ? Use.NONE : use(total, sum, squares, days);
    }

    private static double error(double sum, double squares, int n) {
        return n < 2 ? Double.NaN : Math.sqrt(Math.max(0, squares - sum * sum / n) / (n - 1) / n);
    }

    private static Use use(Sums sums, double gain, double squares, int days) {
        if (days < FEWEST_DAYS - 1 || !(gain / days > error(gain, squares, days))) {
            return Use.NONE;
        }
        Use line = sums.line();
        if (line.weight() == 0) {
            return Use.NONE;
        }
        double share = sums.left(line) / sums.left(Use.NONE);
        return new Use(line.weight(), line.shift(), Math.sqrt(Math.max(0.01, share)));
    }

    /**
     * Measures the gain.
     *
     * @param errors written less expected temperature, °C
     * @param signs the sign's temperature less the expected, °C; NaN where the curve shows none
     * @param days the roast days
     */
    static SignatureGain of(double[] errors, double[] signs, List<String> days) {
        Map<String, Sums> sums = new LinkedHashMap<>();
        for (int i = 0; i < errors.length; i++) {
            double sign = signs[i];
            if (Double.isNaN(sign) || Double.isNaN(errors[i])) {
                continue;
            }
            Sums row = new Sums(1, sign, errors[i], sign * sign, sign * errors[i], errors[i] * errors[i]);
            sums.merge(days.get(i), row, (a, b) -> a.plus(b, 1));
        }
        return new SignatureGain(sums);
    }

    /** Returns how the sign is used on a day, learnt from the other days. */
    Use use(String day) {
        return byDay.getOrDefault(day, always);
    }

    /** Returns how far the sign moves what is expected on a day, in °C. */
    double moves(String day, double sign) {
        Use use = use(day);
        return Double.isNaN(sign) ? 0 : use.shift() + use.weight() * sign;
    }

    /** Returns what is left of an error on a day. */
    double left(String day, double error, double sign) {
        return error - moves(day, sign);
    }

    /** Returns the weight learnt from all days. */
    double weight() {
        return always.weight();
    }

    @Override
    public String toString() {
        if (days < FEWEST_DAYS) {
            return String.format(
                    Locale.ROOT,
                    "The curve's own bend near first crack is not used: whether it helps cannot be told from %d roast days (%d are"
                            + " needed).",
                    days,
                    FEWEST_DAYS);
        }
        String figures = String.format(
                Locale.ROOT,
                "left-out days: mean square error %s %s over %d days",
                Unit.labelled("°C²").formatWithError(Math.abs(meanGain), gainError, TemperatureUnit.CELSIUS),
                meanGain > 0 ? "smaller with it" : "larger with it",
                days);
        return weight() == 0
                ? "The curve's own bend near first crack is not used, weight 0: it does not help to foretell marks ("
                        + figures + ")."
                : String.format(
                        Locale.ROOT,
                        "The curve's own bend near first crack counts with weight %.2f, the habit with %.2f (%s).",
                        weight(),
                        1 - weight(),
                        figures);
    }
}
