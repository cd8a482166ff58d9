package parchment.feature.kind;

import java.util.stream.Collectors;
import parchment.feature.Feature;

/** Names what a feature cannot do without. */
public enum Need {
    /** The bean-temperature curve. */
    BEAN_TEMPERATURE("a bean-temperature curve", Had.LOGGED, "the bean temperature"),
    /** The air-temperature curve. */
    AIR_TEMPERATURE("an air-temperature curve", Had.LOGGED, "the air temperature"),
    /** The gas curve. */
    GAS("a gas curve", Had.LOGGED, "the gas"),
    /** The airflow curve. */
    AIRFLOW("an airflow curve", Had.LOGGED, "the airflow"),
    /** The curve of any control. */
    CONTROL("a curve of a control", Had.LOGGED, "a control"),
    /** The charge temperature as written, or readings before charge. */
    CHARGE_TEMPERATURE("charge temperature, or readings before charge", Had.WRITTEN, "the charge temperature"),
    /** The turning point. */
    TURNING_POINT("a turning point on the curve", Had.LOGGED, "the bean temperature"),
    /** Yellowing as written. */
    YELLOWING("yellowing", Had.WRITTEN, "yellowing"),
    /** The start of first crack as written. */
    FIRST_CRACK_START("first crack start", Had.WRITTEN, "first crack start"),
    /** The end of first crack as written. */
    FIRST_CRACK_END("first crack end", Had.WRITTEN, "first crack end"),
    /** The drop, written or found. */
    DROP("the drop", Had.WRITTEN, "the drop"),
    /** The green mass. */
    GREEN_MASS("green mass", Had.WRITTEN, "the green mass"),
    /** The roasted mass. */
    ROASTED_MASS("roasted mass", Had.WRITTEN, "the roasted mass"),
    /** When the batch was roasted. */
    ROASTED_AT("the date and time of the roast", Had.WRITTEN, "the day and time"),
    /** The conditions of the room. */
    ROOM("the room's readings", Had.WRITTEN, ""),
    /** The date the lot arrived. */
    LOT_DATE("the lot's date of arrival", Had.WRITTEN, "the day its lot arrived"),
    /** A cupping of the batch. */
    CUPPING("a cupping of the batch", Had.WRITTEN, "the cupping"),
    /** A column of batches.csv. */
    COLUMN("a column of batches.csv", Had.WRITTEN, "");

    private enum Had {
        LOGGED,
        WRITTEN
    }

    private final String words;
    private final Had had;
    private final String asked;

    /** @param asked what a roaster is asked for; empty for what is called as the feature is */
    Need(String words, Had had, String asked) {
        this.words = words;
        this.had = had;
        this.asked = asked;
    }

    /** Returns the need in words. */
    public String words() {
        return words;
    }

    /**
     * Says how more batches get a feature, as in "log the bean temperature and write the drop": a number that is worked out has no column to be
     * written into. Empty for a feature that declares no needs.
     */
    public static String howToHave(Feature feature) {
        String logged = asked(feature, Had.LOGGED);
        String written = asked(feature, Had.WRITTEN);
        return (logged.isEmpty() ? "" : "log " + logged)
                + (logged.isEmpty() || written.isEmpty() ? "" : " and ")
                + (written.isEmpty() ? "" : "write " + written);
    }

    private static String asked(Feature feature, Had had) {
        return feature.needs().stream()
                .filter(need -> need.had == had)
                .map(need -> need.asked.isEmpty() ? "the " + feature.name() : need.asked)
                .distinct()
                .collect(Collectors.joining(" and "));
    }
}
