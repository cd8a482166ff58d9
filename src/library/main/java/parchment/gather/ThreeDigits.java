package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import parchment.sheet.Numbers;

/**
 * Decides what three digits behind a point or a comma are: "1,250" can be one and a quarter or twelve hundred and fifty. The other numbers
 * of the column decide, then those of the table.
 */
enum ThreeDigits {
    DECIMALS,
    THOUSANDS,
    /** Nothing tells: read as decimals, and a person is told. */
    OPEN;

    private static final Pattern AMBIGUOUS = Pattern.compile("[+-]?[1-9]\\d{0,2}[.,]\\d{3}(\\s?\\p{L}{1,4}\\.?)?");
    private static final double LIGHTEST_BATCH_GRAMS = 50;

    /** Returns whether a cell is a number with a sign that can be either. */
    static boolean isAmbiguous(String cell) {
        return cell.length() < 16 && AMBIGUOUS.matcher(cell).matches();
    }

    /** Returns the sign of a cell that is ambiguous. */
    static char sign(String cell) {
        return cell.indexOf(',') >= 0 ? ',' : '.';
    }

    /**
     * Decides for the cells of one column.
     *
     * @param table the table that it stands in
     * @param unit the column's unit, "" if it is not known
     */
    static ThreeDigits of(FoundTable table, int place, char sign, String unit) {
        List<String> cells = table.column(place);
        if (unit.equals("g") && allGrams(cells)) {
            return THOUSANDS;
        }
        // A workbook keeps numbers with a point, and so does a text with commas between its columns.
        if (sign == '.' && table.sheet().decimal() == Numbers.Decimal.POINT) {
            return DECIMALS;
        }
        ThreeDigits own = shown(cells, sign);
        if (own != OPEN) {
            return own;
        }
        ThreeDigits near = nearer(cells, sign);
        if (near != OPEN) {
            return near;
        }
        List<String> all = new ArrayList<>();
        table.rows().forEach(all::addAll);
        return shown(all, sign);
    }

    /** Grams with three places behind a point or comma are thousands: "5.000 g" is five kilograms, and nobody roasts five grams. */
    private static boolean allGrams(List<String> cells) {
        boolean any = false;
        for (String cell : cells) {
            if (CellForm.of(cell) == CellForm.NUMBER) {
                if (!cell.matches("\\d{1,2}[.,]\\d{3}(\\s?g)?") || decimals(cell) >= LIGHTEST_BATCH_GRAMS) {
                    return false;
                }
                any = true;
            }
        }
        return any;
    }

    /** Returns what cells show that can be read in one way only; the other sign before decimals makes this one stand in thousands. */
    private static ThreeDigits shown(List<String> cells, char sign) {
        String own = sign == '.' ? "\\." : ",";
        String other = sign == '.' ? "," : "\\.";
        String unit = "(\\s?[\\p{L}%°]{1,4}\\.?)?";
        Pattern decimals = Pattern.compile("[+-]?(\\d+" + own + "(\\d{1,2}|\\d{4,})|0" + own + "\\d+|\\d{1,3}(" + other
                + "\\d{3})+" + own + "\\d+)" + unit);
        Pattern thousands = Pattern.compile("[+-]?(\\d{1,3}(" + own + "\\d{3}){2,}|\\d{1,3}(" + own + "\\d{3})+" + other
                + "\\d+|\\d+" + other + "(\\d{1,2}|\\d{4,})|0" + other + "\\d+)" + unit);
        boolean asDecimals = false;
        boolean asThousands = false;
        for (String cell : cells) {
            if (cell.length() < 24 && (cell.indexOf('.') > 0 || cell.indexOf(',') > 0)) {
                asDecimals |= decimals.matcher(cell).matches();
                asThousands |= thousands.matcher(cell).matches();
            }
        }
        return asDecimals == asThousands ? OPEN : asDecimals ? DECIMALS : THOUSANDS;
    }

    /** Returns which reading lies nearer to the numbers of the column that can be read in one way only. */
    private static ThreeDigits nearer(List<String> cells, char sign) {
        List<Double> sure = new ArrayList<>();
        List<Double> open = new ArrayList<>();
        for (String cell : cells) {
            if (isAmbiguous(cell)) {
                if (sign(cell) == sign) {
                    open.add(Math.abs(decimals(cell)));
                }
            } else if (CellForm.of(cell) == CellForm.NUMBER) {
                CellNumber.of(cell, Numbers.Decimal.EITHER)
                        .filter(number -> number.value() > 0)
                        .ifPresent(number -> sure.add(number.value()));
            }
        }
        if (sure.isEmpty() || open.isEmpty()) {
            return OPEN;
        }
        double known = Math.log(median(sure));
        double small = Math.log(median(open));
        return Math.abs(small - known) <= Math.abs(small + Math.log(1000) - known) ? DECIMALS : THOUSANDS;
    }

    private static double median(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList();
        return sorted.get(sorted.size() / 2);
    }

    private static double decimals(String cell) {
        return CellNumber.of(cell, Numbers.Decimal.EITHER)
                .map(CellNumber::value)
                .orElse(Double.NaN);
    }
}
