package parchment.gather;

import java.util.Locale;
import java.util.Optional;
import parchment.logbook.Quantity;
import parchment.sheet.Header;
import parchment.sheet.Value;

/**
 * What a column of a strange file is taken for, in the one form that proposals, questions and answers share.
 *
 * @param kind what it is
 * @param quantity which quantity, for a quantity
 * @param unit its unit, or how a time is written
 */
record Meaning(Kind kind, Optional<Quantity> quantity, String unit) {
    static final String TIME_OF_DAY = "time of day";
    static final String DATE_AND_TIME = "date and time";
    static final String MILLISECONDS = "ms";
    static final String HOURS = "h";

    /** Hours and minutes since the start: 0:09 for nine minutes. */
    static final String HOURS_AND_MINUTES = "h:min";

    /** A spreadsheet's time since the start: 0.00023 for 20 s. */
    static final String SHARE_OF_DAY = "share of a day";

    /** A spreadsheet's date and time: days since the end of 1899. */
    static final String SERIAL = "days since 1899";

    enum Kind {
        TIME,
        QUANTITY,
        /** Words that tell what happened, some of them marks. */
        EVENTS,
        /** Kept under its own heading. */
        EXTRA,
        LEFT_OUT
    }

    static final Meaning LEFT_OUT = new Meaning(Kind.LEFT_OUT, Optional.empty(), "");
    static final Meaning EXTRA = new Meaning(Kind.EXTRA, Optional.empty(), "");
    static final Meaning EVENTS = new Meaning(Kind.EVENTS, Optional.empty(), "");

    static Meaning time(String form) {
        return new Meaning(Kind.TIME, Optional.empty(), form);
    }

    static Meaning of(Quantity quantity, String unit) {
        return new Meaning(Kind.QUANTITY, Optional.of(quantity), unit);
    }

    /** Reads what a person answered; empty if it is not understood. */
    static Optional<Meaning> parse(String answer) {
        Header header = Header.parse(answer);
        String name = Header.plain(header.name());
        switch (name) {
            case "events":
                return Optional.of(EVENTS);
            case "extra":
                return Optional.of(EXTRA);
            case "leave out", "left out", "no":
                return Optional.of(LEFT_OUT);
            case "time":
                String form = header.unit().toLowerCase(Locale.ROOT).strip();
                boolean known = form.equals(TIME_OF_DAY)
                        || form.equals(DATE_AND_TIME)
                        || form.equals(MILLISECONDS)
                        || form.equals(HOURS)
                        || form.equals(HOURS_AND_MINUTES)
                        || form.equals(SHARE_OF_DAY)
                        || form.equals(SERIAL)
                        || Value.TimeUnit.of(header.plainUnit()).isPresent();
                return known ? Optional.of(time(form)) : Optional.empty();
            default:
                break;
        }
        return Quantity.named(name)
                .filter(quantity ->
                        quantity.isControl() || header.temperatureUnit().isPresent())
                .map(quantity -> of(quantity, header.unit()));
    }

    /** What may be answered, for a message. */
    static String choices() {
        return "time [s], [min], [h], [ms], [min:s], [h:min], [h:min:s], [time of day], [date and time], [share of a day] or [days since 1899]; bean temperature or air"
                + " temperature with [°C], [°F] or [K]; gas, heater power, airflow or drum speed with any unit; events; extra; leave out";
    }

    /** Prints the meaning as it is answered. */
    @Override
    public String toString() {
        String name = switch (kind) {
            case TIME -> "time";
            case QUANTITY -> quantity.map(Quantity::words).orElse("");
            case EVENTS -> "events";
            case EXTRA -> "extra";
            case LEFT_OUT -> "leave out";
        };
        return unit.isEmpty() ? name : name + " [" + unit + "]";
    }
}
