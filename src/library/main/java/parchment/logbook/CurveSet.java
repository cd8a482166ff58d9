package parchment.logbook;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import parchment.curve.Curve;

/**
 * All that one curve file said, before its batch is made.
 *
 * @param known the quantities that have a meaning
 * @param others every other column of numbers, by heading
 */
record CurveSet(Map<Quantity, Curve> known, Map<String, Curve> others) {
    static final int FEWEST_TO_COMPARE = 30;

    static final CurveSet NONE = new CurveSet(Map.of(), Map.of());

    CurveSet {
        Map<Quantity, Curve> copy = new EnumMap<>(Quantity.class);
        copy.putAll(known);
        known = Collections.unmodifiableMap(copy);
        others = Collections.unmodifiableMap(new LinkedHashMap<>(others));
    }

    /** Returns which quantities there are, without holding on to their readings. */
    Set<Quantity> quantities() {
        return known.isEmpty() ? Set.of() : EnumSet.copyOf(known.keySet());
    }

    boolean isEmpty() {
        return known.isEmpty() && others.isEmpty();
    }

    /**
     * Returns a number that two sets of the same readings share, whatever time their clocks start at; 0 for fewer than
     * {@value #FEWEST_TO_COMPARE} bean temperatures, which two roasts may well have in common.
     */
    long fingerprint() {
        Curve bean = known.get(Quantity.BEAN_TEMPERATURE);
        if (bean == null || bean.size() < FEWEST_TO_COMPARE) {
            return 0;
        }
        long print = bean.size();
        for (int i = 0; i < bean.size(); i++) {
            // Milliseconds: a clock that starts elsewhere leaves other last digits.
            long since = Math.round(1000 * (bean.secondsAt(i) - bean.secondsAt(0)));
            print = 1_099_511_628_211L * (1_099_511_628_211L * print ^ since)
                    ^ Double.doubleToLongBits(bean.valueAt(i));
            print ^= print >>> 29;
        }
        return print;
    }

    /** Returns roughly how many bytes the readings take. */
    long bytes() {
        long readings = 0;
        for (Curve curve : known.values()) {
            readings += curve.size();
        }
        for (Curve curve : others.values()) {
            readings += curve.size();
        }
        return 16 * readings + 200;
    }
}
