package parchment.sheet;

/** How a date that is not in ISO form is to be read. */
public enum DateOrder {
    ISO_ONLY("year-month-day"),
    DAY_MONTH_YEAR("day/month/year"),
    MONTH_DAY_YEAR("month/day/year");

    private final String words;

    DateOrder(String words) {
        this.words = words;
    }

    /** Returns the order as a person writes it. */
    public String words() {
        return words;
    }
}
