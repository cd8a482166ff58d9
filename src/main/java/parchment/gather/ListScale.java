package parchment.gather;

import java.util.List;

/** Says on which scale a list writes its temperatures: it is written by one hand, and pounds go with Fahrenheit. */
enum ListScale {
    CELSIUS,
    FAHRENHEIT,
    UNKNOWN;

    private static final double LEAST_FAHRENHEIT = 290;

    /** Finds the scale from units that stand there, from temperatures of roasts that fit one only, and from words. */
    static ListScale of(List<ColumnValues> columns) {
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
        return words && !fahrenheit ? CELSIUS : UNKNOWN;
    }
}
