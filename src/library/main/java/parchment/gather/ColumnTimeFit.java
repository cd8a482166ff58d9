package parchment.gather;

import java.util.Arrays;
import java.util.Optional;
import parchment.gather.ColumnClaim.UnitDoubt;

/** Finds out whether a column holds times since the charge or times of day, and how they are written. */
final class ColumnTimeFit {
    private static final int FEW = 8;
    private static final double MOSTLY_RISING = 0.6;
    private static final double SHORTEST = 10;
    private static final double LONGEST = 3_600;
    private static final int FEWEST_READ = 3;

    /** No whole roast is shorter or longer, in seconds (common practice, no source). */
    private static final double SHORTEST_DROP = 180;

    private static final double LONGEST_DROP = 1_800;

    private ColumnTimeFit() {}

    /** Returns the form of times since the charge; "" if the values are none. */
    static ColumnFit form(ColumnValues column) {
        if (column.mostly(CellForm.CLOCK)) {
            boolean hours = column.cells().stream().anyMatch(cell -> cell.matches("\\d+:\\d{2}:\\d{2}.*"));
            boolean spreadsheet = column.cells().stream()
                    .filter(cell -> CellForm.of(cell) == CellForm.CLOCK)
                    .allMatch(cell -> cell.matches("\\d{1,2}:[0-5]?\\d:00([.,]0+)?"));
            boolean zero = column.cells().stream()
                    .filter(cell -> CellForm.of(cell) == CellForm.CLOCK)
                    .allMatch(cell -> cell.matches("0{1,2}:.*"));
            String form = !hours
                    ? ColumnTimes.MINUTES_AND_SECONDS
                    : spreadsheet && !zero ? ColumnTimes.SPREADSHEET : ColumnTimes.HOURS;
            return ColumnFit.known(
                    1,
                    form,
                    form.equals(ColumnTimes.SPREADSHEET)
                            ? "holds times such as " + first(column)
                                    + ", which is how a spreadsheet writes minutes and seconds"
                            : "holds minutes and seconds");
        }
        if (!column.mostly(CellForm.NUMBER) || column.unit().matches("kg|g|lb|oz|°C|°F|K|%")) {
            return ColumnFit.none();
        }
        double median = column.quantile(0.5);
        if (median > 0 && column.quantile(1) < 1) {
            String form = median < 0.025 ? ColumnTimes.SHARE_OF_DAY : ColumnTimes.SHARE_OF_DAY_AS_HOURS;
            return ColumnFit.known(0.8, form, "holds times as shares of a day");
        }
        if (median > 40) {
            return ColumnFit.known(
                    0.8, ColumnTimes.SECONDS, "has a median of " + ColumnFit.written(median) + ", so seconds");
        }
        if (median < 0.2) {
            return ColumnFit.none();
        }
        return minutes(column);
    }

    /** 9.30 is nine minutes and a half by a calculator, and nine minutes thirty by many hands. */
    private static ColumnFit minutes(ColumnValues column) {
        int twoPlaces = 0;
        int above = 0;
        int numbers = 0;
        for (String cell : column.cells()) {
            if (CellForm.of(cell) == CellForm.NUMBER) {
                numbers++;
                twoPlaces += cell.matches("\\d{1,2}[.,]\\d{2}") || cell.matches("\\d{1,2}") ? 1 : 0;
                above += cell.matches("\\d{1,2}[.,][6-9]\\d?.*") ? 1 : 0;
            }
        }
        if (column.unit().equals(ColumnTimes.MINUTES_AND_SECONDS)) {
            return ColumnFit.known(
                    1, ColumnTimes.MINUTES_AND_SECONDS, "holds minutes and seconds with a point between them");
        }
        boolean pointed = twoPlaces == numbers && above == 0 && !column.isWhole();
        if (pointed) {
            return new ColumnFit(
                    0.8,
                    ColumnTimes.MINUTES_AND_SECONDS,
                    numbers >= FEW && column.unit().isEmpty() ? UnitDoubt.KNOWN : UnitDoubt.OPEN,
                    "has no part above 59 behind the point, so minutes and seconds");
        }
        return ColumnFit.known(
                0.8,
                ColumnTimes.MINUTES,
                "has a median of " + ColumnFit.written(column.quantile(0.5)) + ", so minutes");
    }

    static ColumnFit sinceCharge(ColumnValues column, ListMeaning meaning) {
        ColumnFit form = form(column);
        if (form.score() == 0) {
            return form;
        }
        double median = ColumnValues.quantile(column.seconds(form.unit()), 0.5);
        if (!(median >= SHORTEST && median <= LONGEST)) {
            return ColumnFit.none();
        }
        double[] range = switch (meaning) {
            case TURNING_POINT -> new double[] {25, 200};
            case YELLOWING -> new double[] {90, 800};
            case DEVELOPMENT_TIME -> new double[] {10, 420};
            case DROP -> new double[] {200, 2_000};
            default -> new double[] {180, 1_500};
        };
        boolean inside = median >= range[0]
                && median <= range[1]
                && (meaning != ListMeaning.DROP || canBeDrops(column, column.seconds(form.unit())));
        // Roasts last now longer, now shorter; a column that rises row by row is a clock on the wall.
        double[] seconds = column.seconds(form.unit());
        boolean clock = column.mostly(CellForm.CLOCK)
                && column.cells().size() >= 4
                && rising(seconds) > 0.9
                && ColumnValues.quantile(seconds, 1) - ColumnValues.quantile(seconds, 0) > 120;
        // Under "Time", values that rise row by row may be either: they are asked about.
        boolean either = meaning == ListMeaning.DROP
                && isNamedTimeOfDay(column)
                && column.mostly(CellForm.CLOCK)
                && column.cells().size() >= 4
                && rising(seconds) > 0.9;
        double score = clock ? 0.6 : either ? 0.75 : form.score();
        return new ColumnFit(inside ? score : 0.2 * form.score(), form.unit(), form.doubt(), form.reason());
    }

    /** Times of day go through the hours of a day; roasts of one roastery end within minutes of one another. */
    static ColumnFit timeOfDay(ColumnValues column) {
        double[] hours = new double[column.cells().size()];
        boolean marked = false;
        for (int i = 0; i < hours.length; i++) {
            String cell = column.cells().get(i);
            marked |= cell.matches("(?i).*([ap]\\.?m\\.?|uhr|\\dh\\d\\d)$");
            double share = column.number(i);
            hours[i] = WrittenDay.timeOfDay(cell)
                    .filter(t -> CellForm.of(cell) == CellForm.CLOCK)
                    .map(time -> time.toSecondOfDay() / 3600.0)
                    .orElse(share > 0 && share < 1 ? 24 * share : Double.NaN);
        }
        long read = Arrays.stream(hours).filter(hour -> !Double.isNaN(hour)).count();
        // One slip such as 24:00 or 12:60 in a few rows takes no column away; its line is told.
        boolean mostly = read >= 0.85 * column.filled() || read >= FEWEST_READ && column.filled() - read <= 1;
        if (!mostly) {
            return ColumnFit.none();
        }
        Optional<ClockTurn> turn = isNamedTimeOfDay(column) ? ClockTurn.of(column.cells()) : Optional.empty();
        turn.ifPresent(clock -> Arrays.setAll(hours, i -> clock.hours(hours[i])));
        double spread = ColumnValues.quantile(hours, 0.95) - ColumnValues.quantile(hours, 0.05);
        boolean work = ColumnValues.quantile(hours, 0.05) >= 4;
        boolean rising = rising(hours) >= MOSTLY_RISING;
        double score = marked ? 1 : !work ? 0 : spread <= 0.7 ? 0.3 : !rising ? 0.35 : spread >= 2.5 ? 0.95 : 0.8;
        String unit = column.mostly(CellForm.NUMBER) ? ColumnTimes.SHARE_OF_DAY : "";
        if (turn.isPresent() && !marked && work) {
            boolean noon = turn.get().turn() == ClockTurn.Turn.NOON;
            return new ColumnFit(
                    Math.max(score, 0.95),
                    noon ? ColumnTimes.TWELVE_HOURS : unit,
                    UnitDoubt.OPEN,
                    turn.get().reason());
        }
        return ColumnFit.known(score, unit, "holds times that go through " + hours(spread) + " of the day");
    }

    private static boolean isNamedTimeOfDay(ColumnValues column) {
        return column.named().whole().contains(ListMeaning.TIME_OF_DAY);
    }

    /** Where a heading can be a time of day, a column in which a value is no roast's length is none of drops. */
    private static boolean canBeDrops(ColumnValues column, double[] seconds) {
        return !isNamedTimeOfDay(column)
                || !column.mostly(CellForm.CLOCK)
                || Arrays.stream(seconds)
                        .filter(each -> !Double.isNaN(each))
                        .allMatch(each -> each >= SHORTEST_DROP && each <= LONGEST_DROP);
    }

    private static String hours(double spread) {
        String hours = ColumnFit.written(Math.max(0.1, Math.round(10 * spread) / 10.0));
        return hours + (hours.equals("1") ? " hour" : " hours");
    }

    private static double rising(double[] values) {
        int up = 0;
        int pairs = 0;
        for (int i = 1; i < values.length; i++) {
            pairs += Double.isNaN(values[i] - values[i - 1]) ? 0 : 1;
            up += values[i] > values[i - 1] ? 1 : 0;
        }
        return pairs == 0 ? 1 : up / (double) pairs;
    }

    private static String first(ColumnValues column) {
        return column.cells().stream()
                .filter(cell -> !cell.isEmpty())
                .findFirst()
                .orElse("");
    }
}
