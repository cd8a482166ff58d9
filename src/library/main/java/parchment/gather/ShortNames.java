package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Translates short names of lots by a table of two columns that says which lot each is.
 *
 * @param pairs its rows
 */
record ShortNames(List<Pair> pairs) {
    private static final int MOST_ROWS = 500;
    private static final int LONGEST = 8;

    /** Beside the names may stand numbers, such as how many bags are left. */
    private static final int MOST_COLUMNS = 4;

    private static final double CLAIM = 0.72;

    ShortNames {
        pairs = List.copyOf(pairs);
    }

    /** Holds a short name, its lot, and the line it stands on, counted from 1. */
    record Pair(String shortName, String lot, int line) {}

    /** Returns whether a table has the form of such a list, whatever its words are. */
    static boolean hasForm(FoundTable table) {
        return table.headings().size() >= 2
                && table.headings().size() <= MOST_COLUMNS
                && IntStream.range(2, table.headings().size())
                        .allMatch(place -> table.column(place).stream()
                                .map(CellForm::of)
                                .allMatch(form -> form == CellForm.NUMBER || form == CellForm.BLANK))
                && table.rows().size() <= MOST_ROWS
                && short0(table).isPresent();
    }

    /** Returns the place of the column of short names: short words, each once, shorter than those beside them. */
    private static Optional<Integer> short0(FoundTable table) {
        for (int place = 0; place < 2; place++) {
            Set<String> seen = new HashSet<>();
            boolean all = !table.rows().isEmpty();
            for (List<String> row : table.rows()) {
                String name = LotName.plain(row.get(place));
                String lot = LotName.plain(row.get(1 - place));
                all &= CellForm.of(name) == CellForm.WORDS
                        && CellForm.of(lot) == CellForm.WORDS
                        && name.length() <= LONGEST
                        && name.length() < lot.length();
                seen.add(name);
            }
            if (all && !seen.isEmpty()) {
                return Optional.of(place);
            }
        }
        return Optional.empty();
    }

    /** Reads a table as short names: where the headings are a row like the others, they count as one. */
    static ShortNames of(FoundTable table, Set<String> used) {
        int place = short0(table).orElse(0);
        List<Pair> pairs = new ArrayList<>();
        String first = LotName.plain(table.headings().get(place));
        if (used.contains(LotName.anyCase(first))) {
            int line = table.lines().isEmpty() ? 1 : Math.max(1, table.lines().get(0) - 1);
            pairs.add(new Pair(first, LotName.plain(table.headings().get(1 - place)), line));
        }
        for (int i = 0; i < table.rows().size(); i++) {
            List<String> row = table.rows().get(i);
            String name = LotName.plain(row.get(place));
            String lot = LotName.plain(row.get(1 - place));
            if (!lot.isEmpty()) {
                pairs.add(new Pair(name, lot, table.lines().get(i)));
            }
        }
        return new ShortNames(pairs);
    }

    /** Returns the claim of a table that two or more lots of the batches, or half of its rows, stand in it as short names. */
    static Optional<TableKind> claim(FoundTable table, Set<String> used) {
        if (!hasForm(table)) {
            return Optional.empty();
        }
        ShortNames names = of(table, used);
        long matched = names.pairs().stream()
                .filter(pair -> used.contains(LotName.anyCase(pair.shortName())))
                .count();
        return matched >= 2 || matched > 0 && 2 * matched >= names.pairs().size()
                ? Optional.of(new TableKind(
                        TableKind.What.SHORT_NAMES,
                        CLAIM,
                        "has a column of short words beside one of longer ones, and batches name " + matched
                                + " of its " + names.pairs().size() + " short names as their lots"))
                : Optional.empty();
    }
}
