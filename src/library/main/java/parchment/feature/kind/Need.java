package parchment.feature.kind;

/** Names what a feature cannot do without. */
public enum Need {
    /** The bean-temperature curve. */
    BEAN_TEMPERATURE("a bean-temperature curve"),
    /** The air-temperature curve. */
    AIR_TEMPERATURE("an air-temperature curve"),
    /** The gas curve. */
    GAS("a gas curve"),
    /** The airflow curve. */
    AIRFLOW("an airflow curve"),
    /** The curve of any control. */
    CONTROL("a curve of a control"),
    /** The charge temperature as written, or readings before charge. */
    CHARGE_TEMPERATURE("charge temperature, or readings before charge"),
    /** The turning point. */
    TURNING_POINT("a turning point on the curve"),
    /** Yellowing as written. */
    YELLOWING("yellowing"),
    /** The start of first crack as written. */
    FIRST_CRACK_START("first crack start"),
    /** The end of first crack as written. */
    FIRST_CRACK_END("first crack end"),
    /** The drop, written or found. */
    DROP("the drop"),
    /** The green mass. */
    GREEN_MASS("green mass"),
    /** The roasted mass. */
    ROASTED_MASS("roasted mass"),
    /** When the batch was roasted. */
    ROASTED_AT("the date and time of the roast"),
    /** The conditions of the room. */
    ROOM("the room's readings"),
    /** The date the lot arrived. */
    LOT_DATE("the lot's date of arrival"),
    /** A cupping of the batch. */
    CUPPING("a cupping of the batch"),
    /** A column of batches.csv. */
    COLUMN("a column of batches.csv");

    private final String words;

    Need(String words) {
        this.words = words;
    }

    /** Returns the need in words. */
    public String words() {
        return words;
    }
}
