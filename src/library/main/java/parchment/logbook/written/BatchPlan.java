package parchment.logbook.written;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import parchment.quantity.Temperature;

/**
 * What was decided before charge, so that what was meant can be told from what came out.
 *
 * @param dropTemperature the drop temperature that was aimed at
 * @param plannedBy how that aim was chosen
 * @param others what was planned for other controls, by the control's name, such as "charge temperature" or "first gas"
 * @param trial the trial that the batch belongs to
 * @param set the number of its set in the trial
 */
public record BatchPlan(
        Optional<Temperature> dropTemperature,
        PlannedBy plannedBy,
        Map<String, Planned> others,
        Optional<String> trial,
        Optional<String> set) {

    /** Says how a target was chosen. Only chance lets a comparison speak of an effect. */
    public enum PlannedBy {
        /** The target was drawn by chance before charge. */
        CHANCE,
        /** Somebody chose the target. */
        CHOICE,
        /** The logbook does not say. */
        NOT_WRITTEN
    }

    /**
     * What was planned for one control.
     *
     * @param value the number; temperatures in degrees Celsius
     * @param unit "°C" for every temperature, else the label that stands in the heading, or empty
     */
    public record Planned(double value, String unit) {}

    /** Holds nothing: no plan was written. */
    public static final BatchPlan NOT_WRITTEN = new BatchPlan(Optional.empty(), PlannedBy.NOT_WRITTEN);

    private static final String DROP = "drop temperature";
    private static final String CELSIUS = "°C";

    /** Copies what was planned for other controls, keeping the order of the columns. */
    public BatchPlan {
        others = others.isEmpty() ? Map.of() : Collections.unmodifiableMap(new LinkedHashMap<>(others));
    }

    /** Makes a plan of the drop alone, of a batch of no trial. */
    public BatchPlan(Optional<Temperature> dropTemperature, PlannedBy plannedBy) {
        this(dropTemperature, plannedBy, Map.of(), Optional.empty(), Optional.empty());
    }

    /** Returns what was planned for a control, such as "drop temperature" or "first gas". */
    public Optional<Planned> planned(String control) {
        return control.equals(DROP)
                ? dropTemperature.map(drop -> new Planned(drop.celsius(), CELSIUS))
                : Optional.ofNullable(others.get(control));
    }
}
