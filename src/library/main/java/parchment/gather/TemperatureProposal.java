package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.gather.ColumnClaim.UnitDoubt;
import parchment.gather.StrangeColumn.Form;
import parchment.logbook.Quantity;
import parchment.quantity.TemperatureUnit;

/**
 * Proposes which columns of a recording are the temperatures of the beans and of the air, and their scale.
 *
 * <p>Values alone never make a temperature of what is headed as something else: 1,400 rounds of a fan fall and climb too. Ranges are
 * common practice, no source: beans are dropped between 170 and 260 °C, which is 340 to 500 °F.
 */
final class TemperatureProposal {
    /** No bean stands as many °C. */
    static final double MOST_CELSIUS = 300;

    private static final double SMOOTH = 0.3;
    private static final double LEAST_RANGE = 40;
    private static final int MANY_VALUES = 40;
    private static final double LEAST = 120;
    private static final double MOST = 1000;
    private static final double COLD = 60;

    private record Scale(TemperatureUnit unit, String reason, UnitDoubt doubt) {
        Scale(TemperatureUnit unit, String reason) {
            this(unit, reason, UnitDoubt.KNOWN);
        }
    }

    private final List<StrangeColumn> columns;

    private TemperatureProposal(List<StrangeColumn> columns) {
        this.columns = columns;
    }

    /** Returns the proposals by the column's place, for the columns that are not taken. */
    static Map<Integer, MeaningProposal> in(List<StrangeColumn> columns, Set<Integer> taken) {
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            if (!taken.contains(i) && looksLikeTemperature(columns.get(i))) {
                places.add(i);
            }
        }
        return places.isEmpty() ? Map.of() : new TemperatureProposal(columns).of(places);
    }

    private static boolean looksLikeTemperature(StrangeColumn column) {
        double high = column.quantile(0.98);
        double low = column.quantile(0.02);
        boolean inRange = column.mostly(Form.NUMBER)
                && column.numberCount() >= MeaningProposal.FEWEST_ROWS
                && high > LEAST
                && high < MOST;
        if (!inRange || CurveHeading.of(column).isNoTemperature()) {
            return false;
        }
        boolean moves = high - low >= LEAST_RANGE && column.roughness() < SMOOTH;
        // An air temperature may hardly move, but it takes many values where a control takes few.
        boolean manyValues = low > COLD && column.distinct() >= MANY_VALUES;
        return moves || manyValues || CurveHeading.of(column).isTemperature();
    }

    private Map<Integer, MeaningProposal> of(List<Integer> places) {
        Map<Integer, MeaningProposal> found = new LinkedHashMap<>();
        int bean = bean(places);
        Scale scale = scale(bean, places);
        found.put(
                bean,
                new MeaningProposal(
                        Meaning.of(Quantity.BEAN_TEMPERATURE, scale.unit().symbol()),
                        reason(bean, places) + "; " + scale.reason(),
                        scale.doubt()));
        int air = air(places, bean);
        for (int place : places) {
            if (place == air) {
                Optional<Scale> stated = stated(columns.get(place));
                String why = heading(place).isAir() ? "its heading says so" : "it is the other temperature";
                found.put(
                        place,
                        new MeaningProposal(
                                Meaning.of(
                                        Quantity.AIR_TEMPERATURE,
                                        stated.orElse(scale).unit().symbol()),
                                why + "; "
                                        + stated.map(Scale::reason)
                                                .orElse("it is in the unit of the bean temperature")));
            } else if (place != bean) {
                found.put(place, new MeaningProposal(Meaning.EXTRA, "a third temperature has no place of its own"));
            }
        }
        return found;
    }

    private CurveHeading heading(int place) {
        return CurveHeading.of(columns.get(place));
    }

    private boolean isNamedBean(List<Integer> places) {
        return places.stream().anyMatch(i -> heading(i).isBean());
    }

    private int bean(List<Integer> places) {
        Optional<Integer> named =
                places.stream().filter(i -> heading(i).isBean()).findFirst();
        if (named.isPresent()) {
            return named.get();
        }
        int bean = places.get(0);
        for (int place : places) {
            boolean air = heading(place).isAir() || heading(place).isSet();
            boolean bestAir = heading(bean).isAir() || heading(bean).isSet();
            if (bestAir && !air
                    || air == bestAir
                            && columns.get(place).quantile(0.02)
                                    < columns.get(bean).quantile(0.02)) {
                bean = place;
            }
        }
        return bean;
    }

    private String reason(int bean, List<Integer> places) {
        return isNamedBean(places)
                ? "its heading says so"
                : places.size() == 1
                        ? "it is the only temperature"
                        : String.format(
                                Locale.ROOT,
                                "of the temperatures it falls lowest, to %.0f, as cold beans make it",
                                columns.get(bean).quantile(0.02));
    }

    /** The air is the one that is named so, and else the first that is no set point; -1 if there is none. */
    private int air(List<Integer> places, int bean) {
        List<Integer> others = places.stream().filter(place -> place != bean).toList();
        return others.stream()
                .filter(place -> heading(place).isAir() && !heading(place).isSet())
                .findFirst()
                .or(() -> others.stream()
                        .filter(place ->
                                !heading(place).isSet() && !heading(place).isBean())
                        .findFirst())
                .or(() ->
                        others.stream().filter(place -> !heading(place).isSet()).findFirst())
                .orElse(-1);
    }

    private static Optional<Scale> stated(StrangeColumn column) {
        return CurveHeading.of(column).temperatureUnit().map(unit -> new Scale(unit, "its heading has the unit"));
    }

    private Scale scale(int bean, List<Integer> places) {
        StrangeColumn column = columns.get(bean);
        double high = column.quantile(0.98);
        Optional<Scale> own = stated(column);
        if (own.isPresent()) {
            boolean tooHot = own.get().unit() == TemperatureUnit.CELSIUS && high > MOST_CELSIUS;
            return tooHot
                    ? new Scale(
                            TemperatureUnit.FAHRENHEIT,
                            String.format(
                                    Locale.ROOT,
                                    "its heading says °C, but values go up to %.0f, which no bean stands in °C",
                                    high),
                            UnitDoubt.OPEN)
                    : own.get();
        }
        // A recording is of one logger: where another of its temperatures has a unit, that is the beans' too if they
        // can stand it.
        Optional<Scale> other = places.stream()
                .flatMap(place -> stated(columns.get(place)).stream())
                .filter(scale -> scale.unit() != TemperatureUnit.CELSIUS || high <= MOST_CELSIUS)
                .findFirst();
        if (other.isPresent()) {
            return new Scale(
                    other.get().unit(),
                    "the unit is not written; another temperature beside it is in "
                            + other.get().unit().symbol());
        }
        String values = String.format(Locale.ROOT, "the unit is not written; values up to %.0f fit a drop in ", high);
        return high > MOST_CELSIUS
                ? new Scale(TemperatureUnit.FAHRENHEIT, values + "°F, and no bean stands that many °C")
                : new Scale(TemperatureUnit.CELSIUS, values + "°C, and too few for °F");
    }
}
