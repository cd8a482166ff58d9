package parchment.stats;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Numbers that a committed script printed as case, quantity, value. */
public final class ReferenceFits {
    private final Map<String, Map<String, Double>> cases = new LinkedHashMap<>();

    public static ReferenceFits of(String script) {
        ReferenceFits fits = new ReferenceFits();
        ReferenceData data = ReferenceData.table("fits/" + script + ".csv");
        List<String> names = data.words("case");
        List<String> quantities = data.words("quantity");
        double[] values = data.numbers("value");
        for (int i = 0; i < values.length; i++) {
            fits.cases
                    .computeIfAbsent(names.get(i), name -> new LinkedHashMap<>())
                    .put(quantities.get(i), values[i]);
        }
        return fits;
    }

    public double value(String name, String quantity) {
        Double value = all(name).get(quantity);
        if (value == null) {
            throw new IllegalStateException("No '" + quantity + "' of '" + name + "' among the reference fits");
        }
        return value;
    }

    public Map<String, Double> all(String name) {
        return cases.getOrDefault(name, Map.of());
    }
}
