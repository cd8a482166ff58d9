package parchment.gather;

import java.util.Locale;
import java.util.Optional;
import parchment.gather.ColumnClaim.UnitDoubt;

/**
 * Weighs how well the values of a column fit a meaning that its heading names.
 *
 * <p>Ranges are common practice, no source: roasts take 4 to 30 minutes, beans are charged at 90 °C or more and dropped below 260 °C, and
 * lose 8 to 25 % of their mass.
 *
 * @param score 0 where the values cannot mean that, 1 where they are just what is expected
 * @param unit the unit that the values are in
 * @param doubt whether the unit is a guess
 * @param reason what the values are, as the rest of a sentence that begins with the column
 */
record ColumnFit(double score, String unit, UnitDoubt doubt, String reason) {
    private static final ColumnFit NONE = new ColumnFit(0, "", UnitDoubt.KNOWN, "");
    private static final double LEAST_ROOM_HUMIDITY = 20;
    private static final double MOST_CELSIUS = 262;

    /** Air and drums may be hotter than beans, and none is charged or dropped so hot (common practice, no source). */
    private static final double HOTTEST_CELSIUS = 330;

    /** Returns how well a column fits a meaning. */
    static ColumnFit of(ColumnValues column, ListMeaning meaning, ListScale scale) {
        if (column.filled() == 0) {
            return NONE;
        }
        return switch (meaning.kind()) {
            case MASS -> mass(column, scale);
            case SHARE -> share(column, meaning);
            case ROAST_TEMPERATURE -> temperature(column, scale);
            case ROOM_TEMPERATURE -> room(column, scale);
            case SINCE_CHARGE -> ColumnTimeFit.sinceCharge(column, meaning);
            case TIME_OF_DAY -> ColumnTimeFit.timeOfDay(column);
            case DAY -> ColumnDayFit.day(column);
            case DATE_AND_TIME -> ColumnDayFit.dateAndTime(column);
            case NUMBER ->
                column.mostly(CellForm.NUMBER)
                        ? new ColumnFit(0.7, column.unit(), UnitDoubt.KNOWN, "holds numbers")
                        : NONE;
            case WORD -> word(column, meaning);
            case TEXT -> text(column);
            case NAME, RUNNING, ANY -> NONE;
        };
    }

    static ColumnFit none() {
        return NONE;
    }

    static ColumnFit known(double score, String unit, String reason) {
        return new ColumnFit(score, unit, UnitDoubt.KNOWN, reason);
    }

    private static ColumnFit mass(ColumnValues column, ListScale scale) {
        double median = column.quantile(0.5);
        boolean wrongUnit = !column.unit().isEmpty() && !column.unit().matches("kg|g|lb|oz");
        if (!column.mostly(CellForm.NUMBER) || wrongUnit || column.quantile(0.05) <= 0) {
            return NONE;
        }
        if (!column.unit().isEmpty()) {
            return known(1, column.unit(), "holds masses in " + column.unit());
        }
        boolean degrees = median > 140
                && median < 500
                && column.named().whole().stream().anyMatch(m -> m.kind() == ListMeaning.Kind.ROAST_TEMPERATURE);
        if (degrees) {
            return new ColumnFit(0.6, "g", UnitDoubt.OPEN, "has a median of " + written(median) + ", grams or degrees");
        }
        Optional<String> groups = MassGroups.of(column);
        if (groups.isPresent()) {
            return new ColumnFit(0.9, median >= 100 ? "g" : "kg", UnitDoubt.OPEN, groups.get());
        }
        if (median >= 100) {
            boolean ounces = scale == ListScale.FAHRENHEIT && median < 1_000;
            return new ColumnFit(
                    0.9,
                    "g",
                    ounces ? UnitDoubt.OPEN : UnitDoubt.KNOWN,
                    "has a median of " + written(median) + ", so grams");
        }
        String unit = scale == ListScale.FAHRENHEIT ? "lb" : "kg";
        UnitDoubt doubt = scale == ListScale.CELSIUS && median < 40 ? UnitDoubt.KNOWN : UnitDoubt.OPEN;
        return new ColumnFit(
                median < 0.02 ? 0 : 0.9,
                unit,
                doubt,
                "has a median of " + written(median)
                        + (doubt == UnitDoubt.KNOWN
                                ? ", in a list with °C, so kg"
                                : " without a unit: kg or lb"
                                        + (unit.equals("lb") ? "; lb goes with temperatures in °F" : "")));
    }

    private static ColumnFit share(ColumnValues column, ListMeaning meaning) {
        double median = column.quantile(0.5);
        boolean wrongUnit = !column.unit().isEmpty() && !column.unit().equals("%");
        if (!column.mostly(CellForm.NUMBER) || wrongUnit) {
            return NONE;
        }
        double percent = median < 1 ? 100 * median : median;
        double[] range = switch (meaning) {
            case MASS_LOSS -> new double[] {6, 28};
            case DEVELOPMENT_RATIO -> new double[] {4, 45};
            case MOISTURE -> new double[] {5, 20};
            default -> new double[] {LEAST_ROOM_HUMIDITY, 100};
        };
        boolean inside = percent >= range[0] && percent <= range[1];
        return inside
                ? known(
                        column.unit().isEmpty() ? 0.8 : 1,
                        median < 1 ? "" : "%",
                        "has a median of " + written(percent) + " %")
                : NONE;
    }

    private static ColumnFit temperature(ColumnValues column, ListScale scale) {
        double low = column.quantile(0.05);
        double median = column.quantile(0.5);
        boolean wrongUnit = !column.unit().isEmpty() && !column.unit().matches("°C|°F|K");
        if (!column.mostly(CellForm.NUMBER) || wrongUnit || low < 70 || median > 560) {
            return NONE;
        }
        if (column.unit().equals("°C") && median > HOTTEST_CELSIUS) {
            return new ColumnFit(
                    1,
                    "°C",
                    UnitDoubt.OPEN,
                    "says °C and has a median of " + written(median) + ", which no roast reaches in °C: perhaps °F");
        }
        if (!column.unit().isEmpty()) {
            return known(1, column.unit(), "holds temperatures in " + column.unit());
        }
        // 250 to 290 can be a hot charge in °C or a cool one in °F.
        boolean middle = median > 245 && median < 290;
        String unit = median > MOST_CELSIUS || middle && scale == ListScale.FAHRENHEIT ? "°F" : "°C";
        boolean either = middle && scale == ListScale.UNKNOWN;
        return new ColumnFit(
                0.9,
                unit,
                either ? UnitDoubt.OPEN : UnitDoubt.KNOWN,
                "has a median of " + written(median)
                        + (either ? " without a unit: a hot charge in °C or a cool one in °F" : ", so " + unit));
    }

    private static ColumnFit room(ColumnValues column, ListScale scale) {
        double median = column.quantile(0.5);
        boolean wrongUnit = !column.unit().isEmpty() && !column.unit().matches("°C|°F|K");
        if (!column.mostly(CellForm.NUMBER)
                || wrongUnit
                || median < -20
                || median > 120 && !column.unit().equals("K")) {
            return NONE;
        }
        String unit = !column.unit().isEmpty() ? column.unit() : median > 44 ? "°F" : "°C";
        boolean odd = column.unit().isEmpty() && unit.equals("°C") && scale == ListScale.FAHRENHEIT && median > 32;
        return new ColumnFit(
                0.9,
                unit,
                odd ? UnitDoubt.OPEN : UnitDoubt.KNOWN,
                "has a median of " + written(median) + ", so " + unit);
    }

    private static ColumnFit word(ColumnValues column, ListMeaning meaning) {
        boolean codes = column.mostly(CellForm.NUMBER) && column.isWhole();
        if (codes) {
            return known(
                    column.distinct() < column.filled() ? 0.5 : 0.2,
                    "",
                    "holds numbers of which some stand on several rows");
        }
        if (!column.mostly(CellForm.WORDS)) {
            return column.count(CellForm.WORDS) > 0 ? known(0.4, "", "holds words and values") : NONE;
        }
        // In several languages a machine and a person who roasts are one word; machines have numbers in their names.
        boolean people =
                meaning == ListMeaning.MACHINE && column.cells().stream().noneMatch(cell -> cell.matches(".*\\d.*"));
        boolean machines = meaning == ListMeaning.OPERATOR
                && column.cells().stream().allMatch(cell -> cell.isBlank() || cell.matches(".*\\p{L}.*\\d\\s*"));
        boolean repeated = column.distinct() < 0.7 * column.filled() || column.filled() < 3;
        return known(
                (repeated ? 0.9 : 0.55) - (people || machines ? 0.2 : 0),
                "",
                repeated
                        ? "holds " + column.distinct() + " different words on " + column.filled() + " rows"
                        : "holds words");
    }

    private static ColumnFit text(ColumnValues column) {
        return column.count(CellForm.WORDS) >= 0.5 * column.filled()
                ? known(column.wordsEach() >= 2 ? 1 : 0.7, "", "holds words")
                : NONE;
    }

    static String written(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.1f", value);
    }
}
