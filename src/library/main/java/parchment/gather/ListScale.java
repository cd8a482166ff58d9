package parchment.gather;

import java.util.List;
import java.util.Optional;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

/** Settles on which scale a list writes its temperatures: it is written by one hand, and pounds go with Fahrenheit. */
enum ListScale {
    CELSIUS,
    FAHRENHEIT,
    UNKNOWN;

    private static final double LEAST_FAHRENHEIT = 290;

    /** Finds the scale from units that stand there, from temperatures of roasts that fit one only, from words, and from the folder at last. */
    static ListScale of(List<ColumnValues> columns, ListScale folder) {
        boolean celsius = false;
        boolean fahrenheit = false;
        boolean words = false;
        for (ColumnValues column : columns) {
            boolean roast = column.mostly(CellForm.NUMBER)
                    && column.named().whole().stream().anyMatch(m -> m.kind() == ListMeaning.Kind.ROAST_TEMPERATURE);
            double median = column.quantile(0.5);
            celsius |= column.unit().equals("°C") || column.unit().isEmpty() && roast && median > 120 && median < 245;
            fahrenheit |= column.unit().equals("°F")
                    || column.unit().isEmpty() && roast && median > LEAST_FAHRENHEIT && median < 520;
            words |= TradeWords.isForeign(column.heading());
        }
        if (celsius != fahrenheit) {
            return celsius ? CELSIUS : FAHRENHEIT;
        }
        // Pounds and Fahrenheit are written where English is.
        return words && !fahrenheit ? CELSIUS : fahrenheit ? UNKNOWN : folder;
    }

    /** Returns the scale of a folder whose curves are all in °F and whose dates are month/day/year; not known for any other. */
    static ListScale ofFolder(List<GatheredBatch> curves, DateOrder dates) {
        List<String> units = curves.stream()
                .flatMap(curve -> curve.recording().stream())
                .flatMap(recording -> recording.meanings().stream())
                .filter(meaning -> meaning.quantity().equals(Optional.of(Quantity.BEAN_TEMPERATURE)))
                .map(Meaning::unit)
                .distinct()
                .toList();
        return units.equals(List.of("°F")) && dates == DateOrder.MONTH_DAY_YEAR ? FAHRENHEIT : UNKNOWN;
    }
}
