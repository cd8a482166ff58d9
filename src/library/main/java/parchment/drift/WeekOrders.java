package parchment.drift;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.display.Table;
import parchment.display.answer.Sentence;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Lays the orders of a week out. */
final class WeekOrders {
    private WeekOrders() {}

    /** Returns the green coffee to be taken from each lot; empty where one order of one lot says it all. */
    static Optional<Table> table(Orders orders) {
        if (orders.needed().size() < 2 && !orders.hasBlendRoastedAsOne()) {
            return Optional.empty();
        }
        List<Map.Entry<String, Double>> green = List.copyOf(orders.green().entrySet());
        if (green.stream().allMatch(one -> Double.isNaN(one.getValue()))) {
            return Optional.empty();
        }
        return Optional.of(Table.titled("Green coffee from each lot, in whole charges")
                .withText("lot", green, Map.Entry::getKey)
                .withNumber(
                        "green coffee",
                        Unit.mass(orders.unit()).withDigits(orders.unit() == MassUnit.GRAM ? 0 : 2),
                        TemperatureUnit.CELSIUS,
                        green,
                        Map.Entry::getValue)
                .withDashForMissing("cannot be told"));
    }

    static List<String> workedOut(Orders orders) {
        return orders.needed().stream()
                .flatMap(one -> one.workedOut().stream())
                .map(Sentence::of)
                .distinct()
                .toList();
    }
}
