package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Reads a corner of facts above the readings of one batch: headings, each with its value to the right, in two or more such columns beside one
 * another.
 */
final class FactPairs {
    private static final int FEWEST_ROWS = 2;
    private static final int MOST_ROWS = 40;
    private static final int FEWEST_COLUMNS = 2;
    private static final int FEWEST_KNOWN = 3;

    /** Holds a heading and the value beside it; "" if none stands there. */
    private record Pair(String heading, String value, int place) {}

    private final List<Pair> pairs;
    private final int line;

    private FactPairs(List<Pair> pairs, int line) {
        this.pairs = List.copyOf(pairs);
        this.line = line;
    }

    /** Returns the facts of a block, if every cell of it is such a heading or its value. */
    static Optional<FactPairs> of(SheetArea area, int from, int to) {
        if (to - from < FEWEST_ROWS || to - from > MOST_ROWS) {
            return Optional.empty();
        }
        List<Pair> pairs = new ArrayList<>();
        for (int r = from; r < to; r++) {
            List<String> cells = area.row(r);
            for (int c = 0; c < cells.size(); c++) {
                if (cells.get(c).isEmpty()) {
                    continue;
                }
                boolean valued = c + 1 < cells.size() && !cells.get(c + 1).isEmpty();
                boolean more =
                        valued && c + 2 < cells.size() && !cells.get(c + 2).isEmpty();
                if (more || CellForm.of(cells.get(c)) != CellForm.WORDS) {
                    return Optional.empty();
                }
                pairs.add(new Pair(cells.get(c).replaceAll("\\s*:$", ""), valued ? cells.get(c + 1) : "", c));
                c += valued ? 1 : 0;
            }
        }
        return areFacts(pairs) ? Optional.of(new FactPairs(pairs, area.sheet().line(from))) : Optional.empty();
    }

    /** Half of the headings in each column are words of the trade, and they say three different things or more. */
    private static boolean areFacts(List<Pair> pairs) {
        Map<Integer, List<Pair>> columns = new TreeMap<>();
        pairs.forEach(pair ->
                columns.computeIfAbsent(pair.place(), c -> new ArrayList<>()).add(pair));
        long distinct = pairs.stream().map(Pair::heading).distinct().count();
        long known = pairs.stream().filter(FactPairs::isKnown).count();
        return columns.size() >= FEWEST_COLUMNS
                && distinct == pairs.size()
                && known >= FEWEST_KNOWN
                && columns.values().stream()
                        .allMatch(column ->
                                2 * column.stream().filter(FactPairs::isKnown).count() >= column.size());
    }

    private static boolean isKnown(Pair pair) {
        return TradeWords.of(pair.heading()).isKnown() || BatchNumbers.isWord(pair.heading());
    }

    /** Returns the facts as a list of one row; empty where the form was never filled in. */
    Optional<FoundTable> table(SheetArea area, List<List<String>> above) {
        Map<String, String> filled = new LinkedHashMap<>();
        pairs.stream()
                .filter(pair -> !pair.value().isEmpty())
                .forEach(pair -> filled.put(pair.heading(), pair.value()));
        return filled.isEmpty()
                ? Optional.empty()
                : Optional.of(new FoundTable(
                        area.sheet(),
                        above,
                        List.copyOf(filled.keySet()),
                        List.of(List.copyOf(filled.values())),
                        List.of(line),
                        List.of("The sheet holds one row of values, each beside its heading.")));
    }
}
