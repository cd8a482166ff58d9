package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/** Takes a column apart that holds a batch's number and its lot in one cell, such as "61/Low Orchard". */
final class NamePairs {
    private static final Pattern PAIR =
            Pattern.compile("\\s*(\\S*\\d\\S*?)\\s*(?:[/|;,]|\\s[-–—]\\s)\\s*(\\p{L}.*?)\\s*");
    private static final int FEWEST = 3;
    private static final int LONGEST = 200;
    private static final String LOT = "Lot";

    private NamePairs() {}

    /** Returns the table with the lots as a column of their own behind the others; the same table where no column is such. */
    static FoundTable apart(FoundTable table) {
        boolean hasLot = table.headings().stream()
                .anyMatch(heading -> TradeWords.of(heading).whole().contains(ListMeaning.LOT)
                        && !TradeWords.of(heading).whole().contains(ListMeaning.BATCH));
        for (int c = 0; c < table.headings().size() && !hasLot; c++) {
            List<String[]> pairs = pairs(table.column(c));
            if (TradeWords.of(table.headings().get(c)).strength(ListMeaning.BATCH) > 0 && !pairs.isEmpty()) {
                return with(table, c, pairs);
            }
        }
        return table;
    }

    /** The numbers stand once each, and of the lots some stand on several rows. */
    private static List<String[]> pairs(List<String> cells) {
        List<String[]> pairs = new ArrayList<>();
        Set<String> numbers = new HashSet<>();
        Set<String> lots = new HashSet<>();
        for (String cell : cells) {
            if (cell.length() > LONGEST) {
                return List.of();
            }
            Matcher pair = PAIR.matcher(cell);
            if (!pair.matches() || !numbers.add(pair.group(1))) {
                return List.of();
            }
            lots.add(pair.group(2).toLowerCase(Locale.ROOT));
            pairs.add(new String[] {pair.group(1), pair.group(2)});
        }
        return pairs.size() >= FEWEST && lots.size() < pairs.size() ? pairs : List.of();
    }

    private static FoundTable with(FoundTable table, int place, List<String[]> pairs) {
        List<String> headings = new ArrayList<>(table.headings());
        headings.add(LOT);
        List<List<String>> rows = new ArrayList<>();
        for (int r = 0; r < pairs.size(); r++) {
            List<String> row = new ArrayList<>(table.rows().get(r));
            row.set(place, pairs.get(r)[0]);
            row.add(pairs.get(r)[1]);
            rows.add(row);
        }
        List<String> told = new ArrayList<>(table.leftOut());
        told.add("The column " + Words.quote(table.headings().get(place))
                + " holds a batch and its lot in one cell: the lots became a column " + Words.quote(LOT) + ".");
        return new FoundTable(table.sheet(), table.above(), headings, rows, table.lines(), told);
    }
}
