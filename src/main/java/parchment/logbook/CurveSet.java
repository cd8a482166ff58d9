package parchment.logbook;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import parchment.curve.Curve;

/**
 * Holds all that one curve file said.
 *
 * @param known the quantities that have a meaning
 * @param others every other column of numbers, by heading
 */
record CurveSet(Map<Quantity, Curve> known, Map<String, Curve> others) {
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
