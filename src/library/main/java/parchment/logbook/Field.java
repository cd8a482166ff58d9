package parchment.logbook;

import java.util.List;
import parchment.sheet.Header;
import parchment.sheet.Value;

/**
 * Describes a column before any file is seen, so that a table is read by a list of these.
 *
 * @param name the heading without its unit
 * @param kind what stands in it
 * @param need whether the file makes sense without it
 * @param earlierNames headings of earlier logbooks that mean the same
 */
record Field(String name, Kind kind, Need need, List<String> earlierNames) {

    /** Says what stands in a column, and so which units its heading may carry. */
    enum Kind {
        TEXT("no unit"),
        /** A text of at most {@link Bounds#LONGEST_NAME} letters. */
        NAME("no unit"),
        NUMBER("no unit"),
        /** A number on somebody's own scale; the unit is kept as a label. */
        LABELLED("any unit"),
        TEMPERATURE("[°C], [°F] or [K]"),
        MASS("[kg], [g], [lb] or [oz]"),
        TIME("[s], [min], [min:s] or [h:min:s]"),
        SHARE("[%]"),
        PRESSURE("[hPa], [mbar] or [kPa]"),
        DENSITY("[g/L]"),
        MILLIMETRES("[mm]"),
        DATE("no unit"),
        DATE_TIME("no unit");

        private final String units;

        Kind(String units) {
            this.units = units;
        }

        /** Returns the accepted units, for a message. */
        String units() {
            return units;
        }
    }

    enum Need {
        REQUIRED,
        OPTIONAL
    }

    static Field required(String name, Kind kind) {
        return new Field(name, kind, Need.REQUIRED, List.of());
    }

    static Field optional(String name, Kind kind) {
        return new Field(name, kind, Need.OPTIONAL, List.of());
    }

    /** Returns the column that is also found under the heading of earlier logbooks. */
    Field earlier(String heading) {
        return new Field(name, kind, need, List.of(heading));
    }

    /** Returns whether a heading's unit is one of this column's. */
    boolean accepts(Header header) {
        String unit = header.plainUnit();
        return switch (kind) {
            case TEMPERATURE -> Header.temperatureUnit(unit).isPresent();
            case MASS -> Header.massUnit(unit).isPresent();
            case TIME -> Value.TimeUnit.of(unit).isPresent();
            case SHARE -> unit.equals("%");
            case DENSITY -> unit.equals("g/l");
            case MILLIMETRES -> unit.equals("mm");
            case PRESSURE -> pressureInHectopascals(unit) > 0;
            // A unit on words or on a date says nothing that would change how they are read.
            case TEXT, NAME, NUMBER, LABELLED, DATE, DATE_TIME -> true;
        };
    }

    static double pressureInHectopascals(String plainUnit) {
        return switch (plainUnit) {
            case "hpa", "mbar" -> 1;
            case "kpa" -> 10;
            default -> 0;
        };
    }
}
