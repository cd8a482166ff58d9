package parchment.sheet;

import org.jspecify.annotations.Nullable;

/** Reads where a cell stands, as in B7. */
final class CellPlace {
    private static final int FARTHEST = 1 << 21;

    private CellPlace() {}

    /** Returns the row and the column, from 0; null if it is no place. */
    static int @Nullable [] of(String place) {
        int column = 0;
        int i = 0;
        while (i < place.length() && place.charAt(i) >= 'A' && place.charAt(i) <= 'Z') {
            column = Math.min(column * 26 + place.charAt(i) - 'A' + 1, FARTHEST);
            i++;
        }
        int row = 0;
        int digits = i;
        while (i < place.length() && place.charAt(i) >= '0' && place.charAt(i) <= '9') {
            row = Math.min(row * 10 + place.charAt(i) - '0', FARTHEST);
            i++;
        }
        return column == 0 || row == 0 || i < place.length() || digits == i ? null : new int[] {row - 1, column - 1};
    }
}
