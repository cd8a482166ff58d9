package parchment.gather;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What one row of a list adds to one lot.
 *
 * @param name the lot
 * @param shortNames what else it is called in the folder's lists
 * @param written values under headings of the table of lots, or of their own, as they will be written
 * @param line the line in its sheet, counted from 1
 */
record ListedLot(String name, List<String> shortNames, Map<String, String> written, int line) {
    ListedLot {
        shortNames = List.copyOf(shortNames);
        written = Collections.unmodifiableMap(new LinkedHashMap<>(written));
    }
}
