package parchment.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.display.answer.Spelling;
import parchment.feature.kind.FeatureList;
import parchment.logbook.contents.LogbookException;

/**
 * Offers the features that are built in; each method returns one. Their definitions, units and needs are in {@link #all()}.
 *
 * <pre>{@code
 * BatchTable.of(logbook, dropTemperature(), secondsBetween(150, 190))
 * }</pre>
 *
 * <p>None of the temperatures is a property of the beans alone: a probe reads late, and a small batch covers it less.
 */
public final class Features {
    private static final FeatureList ALL = FeatureList.of("Features", collect());

    private Features() {}

    private static List<Feature> collect() {
        List<Feature> all = new ArrayList<>();
        all.addAll(TemperatureFeatures.all());
        all.addAll(TimeFeatures.all());
        all.addAll(RateFeatures.all());
        all.addAll(ControlFeatures.all());
        all.addAll(ConditionFeatures.all());
        return all;
    }

    /** Says whether a feature of this name is settled at the moment of the drop: another drop temperature moves it along by its nature. */
    public static boolean isSettledAtDrop(String feature) {
        return SettledAtDrop.holds(feature);
    }

    /** Returns every built-in feature; shows itself as a table of definitions, units and needs. */
    public static FeatureList all() {
        return ALL;
    }

    /**
     * Returns the feature of the given name, as in {@code Features.named("drop temperature")}.
     *
     * @throws LogbookException if there is none of that name; the message says which was probably meant
     */
    public static Feature named(String name) {
        return find(name)
                .orElseThrow(() -> new LogbookException("There is no feature '" + name + "'."
                        + Spelling.question(name, ALL.names())
                        + " Features.all() lists the " + ALL.list().size()
                        + " features there are; a column of batches.csv is had with Features.column(\"" + name
                        + "\")."));
    }

    private static Optional<Feature> find(String name) {
        return ALL.list().stream()
                .filter(feature -> feature.name().equalsIgnoreCase(name.strip()))
                .findFirst();
    }

    /**
     * Returns a numeric column of {@code batches.csv} as a feature, with or without its unit in brackets. A column that is a built-in
     * feature ("ground colour", "room temperature") is that feature.
     */
    public static Feature column(String header) {
        return find(header).orElseGet(() -> ConditionFeatures.column(header));
    }

    /**
     * Returns the time in which the beans rise from one temperature to another, both in °C.
     *
     * @throws IllegalArgumentException if the first is not the lower one
     */
    public static Feature secondsBetween(double fromCelsius, double toCelsius) {
        return RateFeatures.secondsBetween(fromCelsius, toCelsius);
    }

    /** Returns the time from charge to drop. */
    public static Feature dropTime() {
        return TimeFeatures.DROP_TIME;
    }

    /** Returns the time from charge to yellowing. */
    public static Feature dryingTime() {
        return TimeFeatures.DRYING_TIME;
    }

    /** Returns the time from yellowing to the start of first crack. */
    public static Feature browningTime() {
        return TimeFeatures.BROWNING_TIME;
    }

    /** Returns the time from the start of first crack to the drop. */
    public static Feature developmentTime() {
        return TimeFeatures.DEVELOPMENT_TIME;
    }

    /** Returns the time from charge to the start of first crack. */
    public static Feature firstCrackTime() {
        return TimeFeatures.FIRST_CRACK_TIME;
    }

    /** Returns how long first crack lasted. */
    public static Feature firstCrackLength() {
        return TimeFeatures.FIRST_CRACK_LENGTH;
    }

    /** Returns the time from charge to the turning point. */
    public static Feature turningPointTime() {
        return TimeFeatures.TURNING_POINT_TIME;
    }

    /** Returns the share of drying in the drop time. */
    public static Feature dryingShare() {
        return TimeFeatures.DRYING_SHARE;
    }

    /** Returns the share of browning in the drop time. */
    public static Feature browningShare() {
        return TimeFeatures.BROWNING_SHARE;
    }

    /** Returns the development time divided by the drop time. */
    public static Feature developmentRatio() {
        return TimeFeatures.DEVELOPMENT_RATIO;
    }

    /** Returns the log-ratio of drying to browning. */
    public static Feature dryingAgainstBrowning() {
        return TimeFeatures.DRYING_AGAINST_BROWNING;
    }

    /** Returns the log-ratio of the early phases to development. */
    public static Feature earlyAgainstDevelopment() {
        return TimeFeatures.EARLY_AGAINST_DEVELOPMENT;
    }

    /** Returns the bean temperature at the drop. */
    public static Feature dropTemperature() {
        return TemperatureFeatures.DROP_TEMPERATURE;
    }

    /** Returns the bean temperature at the start of first crack. */
    public static Feature firstCrackTemperature() {
        return TemperatureFeatures.FIRST_CRACK_TEMPERATURE;
    }

    /** Returns the bean temperature at yellowing. */
    public static Feature yellowingTemperature() {
        return TemperatureFeatures.YELLOWING_TEMPERATURE;
    }

    /** Returns the lowest bean-probe reading after charge. */
    public static Feature turningPointTemperature() {
        return TemperatureFeatures.TURNING_POINT_TEMPERATURE;
    }

    /** Returns the bean-probe reading just before charge. */
    public static Feature chargeTemperature() {
        return TemperatureFeatures.CHARGE_TEMPERATURE;
    }

    /** Returns the rise from the start of first crack to the drop. */
    public static Feature riseAfterFirstCrack() {
        return TemperatureFeatures.RISE_AFTER_FIRST_CRACK;
    }

    /** Returns the rise from yellowing to the start of first crack. */
    public static Feature riseInBrowning() {
        return TemperatureFeatures.RISE_IN_BROWNING;
    }

    /** Returns how much hotter the air was than the beans, on average. */
    public static Feature airAboveBeans() {
        return TemperatureFeatures.AIR_ABOVE_BEANS;
    }

    /** Returns the highest air temperature. */
    public static Feature peakAirTemperature() {
        return TemperatureFeatures.PEAK_AIR_TEMPERATURE;
    }

    /** Returns the air temperature at the start of first crack. */
    public static Feature airTemperatureAtFirstCrack() {
        return TemperatureFeatures.AIR_TEMPERATURE_AT_FIRST_CRACK;
    }

    /** Returns the air temperature at the drop. */
    public static Feature airTemperatureAtDrop() {
        return TemperatureFeatures.AIR_TEMPERATURE_AT_DROP;
    }

    /** Returns the mean rate of rise from the turning point to yellowing. */
    public static Feature dryingRate() {
        return RateFeatures.DRYING_RATE;
    }

    /** Returns the mean rate of rise in browning. */
    public static Feature browningRate() {
        return RateFeatures.BROWNING_RATE;
    }

    /** Returns the mean rate of rise in development. */
    public static Feature developmentRate() {
        return RateFeatures.DEVELOPMENT_RATE;
    }

    /** Returns the rate of rise at yellowing. */
    public static Feature rateAtYellowing() {
        return RateFeatures.RATE_AT_YELLOWING;
    }

    /** Returns the rate of rise at the start of first crack. */
    public static Feature rateAtFirstCrack() {
        return RateFeatures.RATE_AT_FIRST_CRACK;
    }

    /** Returns the rate of rise at the drop. */
    public static Feature rateAtDrop() {
        return RateFeatures.RATE_AT_DROP;
    }

    /** Returns how the rate of rise changes across first crack. */
    public static Feature rateChangeAcrossFirstCrack() {
        return RateFeatures.RATE_CHANGE_ACROSS_FIRST_CRACK;
    }

    /** Returns the highest rate of rise. */
    public static Feature peakRate() {
        return RateFeatures.PEAK_RATE;
    }

    /** Returns the time from yellowing to the first gas cut. */
    public static Feature gasCutAfterYellowing() {
        return ControlFeatures.GAS_CUT_AFTER_YELLOWING;
    }

    /** Returns the time from the last gas cut to the drop. */
    public static Feature lastGasCutBeforeDrop() {
        return ControlFeatures.LAST_GAS_CUT_BEFORE_DROP;
    }

    /** Returns how often the controls were moved. */
    public static Feature controlChanges() {
        return ControlFeatures.CONTROL_CHANGES;
    }

    /** Returns the time from the last move of a control to the drop. */
    public static Feature lastChangeBeforeDrop() {
        return ControlFeatures.LAST_CHANGE_BEFORE_DROP;
    }

    /** Returns the mean gas in drying. */
    public static Feature gasInDrying() {
        return ControlFeatures.GAS_IN_DRYING;
    }

    /** Returns the mean gas in development. */
    public static Feature gasInDevelopment() {
        return ControlFeatures.GAS_IN_DEVELOPMENT;
    }

    /** Returns the mean airflow in development. */
    public static Feature airflowInDevelopment() {
        return ControlFeatures.AIRFLOW_IN_DEVELOPMENT;
    }

    /** Returns the time from first crack to the largest increase of the airflow. */
    public static Feature airflowStepAfterFirstCrack() {
        return ControlFeatures.AIRFLOW_STEP_AFTER_FIRST_CRACK;
    }

    /** Returns the mass of green coffee. */
    public static Feature greenMass() {
        return ConditionFeatures.GREEN_MASS;
    }

    /** Returns the mass loss. */
    public static Feature massLoss() {
        return ConditionFeatures.MASS_LOSS;
    }

    /** Returns the place of the batch in its day. */
    public static Feature batchOfTheDay() {
        return ConditionFeatures.BATCH_OF_THE_DAY;
    }

    /** Returns the minutes since the drop before. */
    public static Feature minutesSinceLastDrop() {
        return ConditionFeatures.MINUTES_SINCE_LAST_DROP;
    }

    /** Returns the days since the lot arrived. */
    public static Feature daysSinceArrival() {
        return ConditionFeatures.DAYS_SINCE_ARRIVAL;
    }

    /** Returns the days from the roast to its first cupping. */
    public static Feature restDays() {
        return ConditionFeatures.REST_DAYS;
    }

    /** Returns the temperature of the room. */
    public static Feature roomTemperature() {
        return ConditionFeatures.ROOM_TEMPERATURE;
    }

    /** Returns the humidity of the room. */
    public static Feature roomHumidity() {
        return ConditionFeatures.ROOM_HUMIDITY;
    }

    /** Returns the air pressure in the room. */
    public static Feature roomPressure() {
        return ConditionFeatures.ROOM_PRESSURE;
    }

    /** Returns the temperature of the green coffee. */
    public static Feature greenTemperature() {
        return ConditionFeatures.GREEN_TEMPERATURE;
    }

    /** Returns how long the machine was warmed. */
    public static Feature warmUp() {
        return ConditionFeatures.WARM_UP;
    }

    /** Returns the colour of the whole beans. */
    public static Feature wholeBeanColour() {
        return ConditionFeatures.WHOLE_BEAN_COLOUR;
    }

    /** Returns the colour of the ground coffee. */
    public static Feature groundColour() {
        return ConditionFeatures.GROUND_COLOUR;
    }

    /** Returns the pale beans found in 100 g. */
    public static Feature quakers() {
        return ConditionFeatures.QUAKERS;
    }
}
