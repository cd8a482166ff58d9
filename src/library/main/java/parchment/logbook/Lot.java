package parchment.logbook;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One purchase of green coffee.
 *
 * @param name the lot's name, unique in the logbook
 * @param moisture the moisture on arrival, a share from 0 to 1
 * @param density the density on arrival, in grams per litre
 * @param extras every other column that was filled in, by header
 */
public record Lot(
        String name,
        Optional<String> origin,
        Optional<String> process,
        Optional<String> variety,
        Optional<String> decaffeination,
        Optional<LocalDate> harvestedOn,
        Optional<LocalDate> arrivedOn,
        Optional<String> storage,
        Optional<String> screenSize,
        OptionalDouble moisture,
        OptionalDouble density,
        Optional<String> note,
        Map<String, String> extras) {

    /** Copies the extras, keeping the order of the columns. */
    public Lot {
        extras = Collections.unmodifiableMap(new LinkedHashMap<>(extras));
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("lot ").append(name);
        origin.ifPresent(o -> text.append(", ").append(o));
        process.ifPresent(p -> text.append(", ").append(p));
        arrivedOn.ifPresent(a -> text.append(", arrived ").append(a));
        return text.toString();
    }
}
