package parchment.feature.path;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;

/** Finds the unit label that most batches of a logbook log each control in, so that scales are not mixed. */
final class UsualLabels {
    private UsualLabels() {}

    static Map<Quantity, String> of(Logbook logbook) {
        Map<Quantity, String> usual = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            if (!quantity.isControl()) {
                continue;
            }
            Map<String, Integer> counts = new HashMap<>();
            for (Batch batch : logbook.batches()) {
                batch.curve(quantity)
                        .ifPresent(curve -> counts.merge(curve.unit().toString(), 1, Integer::sum));
            }
            counts.entrySet().stream()
                    .max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                    .ifPresent(most -> usual.put(quantity, most.getKey()));
        }
        return usual;
    }
}
