package parchment.feature;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.kind.Role;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.Batch;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** What was weighed, read or counted around the roast. */
final class ConditionFeatures {
    /** What a scale shows of a small batch; common practice, no source. */
    private static final double SCALE_KILOGRAMS = 0.005;

    private static final Unit MINUTES = Unit.labelled("min").withDigits(0).withNaturalStep(5);

    static final Feature GREEN_MASS = written(
                    "green mass",
                    Unit.KILOGRAMS,
                    Family.MASS,
                    "mass of green coffee charged",
                    b -> number(b.conditions().greenMass().map(Mass::kilograms)))
            .as(Role.CONTROL)
            .needing(Need.GREEN_MASS);
    static final Feature MASS_LOSS = NamedFeature.of(
                    "mass loss",
                    Unit.SHARE,
                    Family.MASS,
                    "1 - roasted mass / green mass, weighed cooled and before sorting; scales are taken as good to 5 g (common practice,"
                            + " no source)",
                    ConditionFeatures::massLoss)
            .needing(Need.GREEN_MASS, Need.ROASTED_MASS);
    static final Feature BATCH_OF_THE_DAY = NamedFeature.of(
                    "batch of the day",
                    Unit.COUNT,
                    Family.DAY,
                    "place of the batch among those of its day on the same machine, counted from 1",
                    path -> path.day().batchOfTheDay())
            .needing(Need.ROASTED_AT);
    static final Feature MINUTES_SINCE_LAST_DROP = NamedFeature.of(
                    "minutes since last drop",
                    MINUTES,
                    Family.DAY,
                    "time from the drop of the batch before it on the same machine and day to this charge; missing for the first batch",
                    path -> perSixty(path.day().secondsSinceLastDrop()))
            .needing(Need.ROASTED_AT);
    static final Feature DAYS_SINCE_ARRIVAL = NamedFeature.of(
                    "days since arrival",
                    Unit.DAYS.withNaturalStep(30),
                    Family.DAY,
                    "days from the lot's arrival to the roast",
                    path -> path.day().daysSinceArrival())
            .needing(Need.ROASTED_AT, Need.LOT_DATE);
    static final Feature REST_DAYS = NamedFeature.of(
                    "rest days",
                    Unit.DAYS.withNaturalStep(1),
                    Family.DAY,
                    "days from the roast to its first cupping",
                    path -> path.day().restDays())
            .needing(Need.ROASTED_AT, Need.CUPPING);
    static final Feature ROOM_TEMPERATURE = room(
            "room temperature",
            Unit.TEMPERATURE.withNaturalStep(5),
            "temperature of the room",
            b -> number(b.conditions().roomTemperature().map(Temperature::celsius)));
    static final Feature ROOM_HUMIDITY = room(
            "room humidity",
            Unit.SHARE.withNaturalStep(0.1),
            "relative humidity of the room",
            b -> b.conditions().roomHumidity());
    static final Feature ROOM_PRESSURE = room(
            "room pressure",
            Unit.labelled("hPa").withDigits(0).withNaturalStep(10),
            "air pressure in the room",
            b -> b.conditions().roomPressure());
    static final Feature GREEN_TEMPERATURE = written(
                    "green temperature",
                    Unit.TEMPERATURE.withNaturalStep(5),
                    Family.START,
                    "temperature of the green coffee before charge",
                    b -> number(b.conditions().greenTemperature().map(Temperature::celsius)))
            .as(Role.CALENDAR);
    static final Feature WARM_UP = written(
            "warm-up",
            MINUTES,
            Family.DAY,
            "how long the machine was warmed before the first batch",
            b -> number(b.conditions().warmUp().map(e -> e.seconds() / 60)));
    static final Feature WHOLE_BEAN_COLOUR = written(
            "whole-bean colour",
            Unit.NONE.withDigits(1),
            Family.OTHER,
            "the colour meter's reading on whole beans, on the meter's own scale",
            b -> b.looks().wholeBeanColour());
    static final Feature GROUND_COLOUR = written(
            "ground colour",
            Unit.NONE.withDigits(1),
            Family.OTHER,
            "the colour meter's reading on ground coffee, on the meter's own scale",
            b -> b.looks().groundColour());
    static final Feature QUAKERS = written(
            "quakers",
            Unit.labelled("in 100 g").withDigits(0).withNaturalStep(1),
            Family.OTHER,
            "pale beans found in 100 g",
            b -> b.looks().quakers());

    private ConditionFeatures() {}

    static List<Feature> all() {
        return List.of(
                GREEN_MASS,
                MASS_LOSS,
                BATCH_OF_THE_DAY,
                MINUTES_SINCE_LAST_DROP,
                DAYS_SINCE_ARRIVAL,
                REST_DAYS,
                ROOM_TEMPERATURE,
                ROOM_HUMIDITY,
                ROOM_PRESSURE,
                GREEN_TEMPERATURE,
                WARM_UP,
                WHOLE_BEAN_COLOUR,
                GROUND_COLOUR,
                QUAKERS);
    }

    private static OptionalDouble number(Optional<Double> value) {
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }

    private static NamedFeature written(
            String name, Unit unit, Family family, String definition, Function<Batch, OptionalDouble> read) {
        return NamedFeature.of(name, unit, family, definition + ", as written", path -> {
                    OptionalDouble value = read.apply(path.batch());
                    return value.isPresent()
                            ? Measured.written(value.getAsDouble())
                            : Measured.missing(name + " was not written.");
                })
                .needing(Need.COLUMN);
    }

    private static Feature room(String name, Unit unit, String definition, Function<Batch, OptionalDouble> read) {
        return written(name, unit, Family.DAY, definition, read).needing(Need.ROOM);
    }

    private static Measured massLoss(BatchPath path) {
        Optional<Mass> green = path.batch().conditions().greenMass();
        Optional<Mass> roasted = path.batch().conditions().roastedMass();
        if (green.isEmpty() || roasted.isEmpty()) {
            return Measured.missing((green.isEmpty() ? "green mass" : "roasted mass")
                    + " was not written, or was set aside (see the problems).");
        }
        OptionalDouble loss = path.batch().conditions().massLoss();
        if (loss.isEmpty()) {
            return Measured.missing("green mass is written as 0.");
        }
        double kilograms = green.get().kilograms();
        double rounding = SCALE_KILOGRAMS / Math.sqrt(12);
        return Measured.of(loss.getAsDouble(), rounding / kilograms * Math.hypot(1, 1 - loss.getAsDouble()));
    }

    private static Measured perSixty(Measured seconds) {
        return seconds.isMissing() ? seconds : Measured.of(seconds.value() / 60, seconds.standardError() / 60);
    }

    /** What was meant before charge; not among the features that are compared with scores, which take a plan with what it is the plan of. */
    private static final Feature PLANNED_DROP = NamedFeature.of(
                    "planned drop temperature",
                    Unit.TEMPERATURE,
                    Family.OTHER,
                    "the drop temperature that was meant before charge, as written",
                    path -> path.batch()
                            .plan()
                            .dropTemperature()
                            .map(planned -> Measured.written(planned.celsius()))
                            .orElse(Measured.missing("planned drop temperature was not written.")))
            .as(Role.CONTROL);

    /** A column of batches.csv that has no meaning of its own, or the plan's. */
    static Feature column(String header) {
        if (sameHeader(header, PLANNED_DROP.name())) {
            return PLANNED_DROP;
        }
        String label = header.contains("[") && header.endsWith("]")
                ? header.substring(header.indexOf('[') + 1, header.length() - 1)
                : "";
        return NamedFeature.of(
                        header.strip(),
                        label.isEmpty() ? Unit.NONE : Unit.labelled(label),
                        Family.OTHER,
                        "the column '" + header.strip() + "' of batches.csv, as written",
                        path -> read(path.batch(), header))
                .needing(Need.COLUMN);
    }

    private static Measured read(Batch batch, String header) {
        for (Map.Entry<String, String> extra : batch.extras().entrySet()) {
            if (sameHeader(extra.getKey(), header) && !extra.getValue().isBlank()) {
                double number = batch.extraNumber(extra.getKey());
                return Double.isNaN(number)
                        ? Measured.missing("the column '" + header + "' holds '" + extra.getValue() + "', which is "
                                + (extra.getValue().matches("[-+]?\\d{16,}.*|[-+]?[\\d.]+[eE].*")
                                        ? "too long a number to count with."
                                        : "not a number."))
                        : Measured.written(number);
            }
        }
        return Measured.missing("the column '" + header + "' was left blank.");
    }

    /** Headers are the same without regard to case, blanks around them, and a unit in brackets that was left out. */
    static boolean sameHeader(String written, String asked) {
        String a = written.strip().toLowerCase(Locale.ROOT);
        String b = asked.strip().toLowerCase(Locale.ROOT);
        return a.equals(b) || a.replaceAll("\\s*\\[[^\\]]*\\]$", "").equals(b);
    }
}
