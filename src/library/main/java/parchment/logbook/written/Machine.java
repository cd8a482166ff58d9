package parchment.logbook.written;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;

/**
 * What the maker and the owner tell of a machine, by which masses are doubted and plans are bounded.
 *
 * @param name the machine's name, unique in the logbook
 * @param leastAirflow the least airflow that the maker allows, with the unit label it was written with
 * @param probeDiameterMillimetres the bean probe's diameter
 * @param extras every other column that was filled in, by header
 */
public record Machine(
        String name,
        Optional<Mass> capacity,
        Optional<Mass> smallestBatch,
        Optional<Mass> largestBatch,
        Optional<String> heatSource,
        Optional<Temperature> highestAirTemperature,
        Optional<String> leastAirflow,
        Optional<String> probePlace,
        OptionalDouble probeDiameterMillimetres,
        Map<String, String> extras) {

    /** Copies the extras, keeping the order of the columns. */
    public Machine {
        extras = Collections.unmodifiableMap(new LinkedHashMap<>(extras));
    }
}
