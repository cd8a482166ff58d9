package parchment.gather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

/** Makes tables for tests out of lines with bars between the cells; the first line holds the headings. */
final class MadeTables {
    private MadeTables() {}

    static FoundTable of(String... lines) {
        return named("scores.csv", "", List.of(), lines);
    }

    static FoundTable named(String file, String tab, List<String> above, String... lines) {
        List<List<String>> rows = new ArrayList<>();
        for (String line : lines) {
            rows.add(cells(line));
        }
        List<List<String>> all =
                new ArrayList<>(above.stream().map(MadeTables::cells).toList());
        all.addAll(rows);
        List<String> headings = new ArrayList<>();
        for (int i = 0; i < rows.get(0).size(); i++) {
            headings.add(
                    rows.get(0).get(i).isEmpty() ? "#" + (i + 1) : rows.get(0).get(i));
        }
        int before = above.size() + 2;
        return new FoundTable(
                new Sheet(Path.of(file), tab, ',', Numbers.Decimal.EITHER, all),
                above.stream().map(MadeTables::cells).toList(),
                headings,
                rows.subList(1, rows.size()),
                IntStream.range(0, rows.size() - 1).map(i -> i + before).boxed().toList(),
                List.of());
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.split("\\|", -1)) {
            cells.add(cell.strip());
        }
        return cells;
    }

    /** Returns cups as lines of words, sorted, to be compared with what is expected. */
    static List<String> words(List<TastedCup> cups) {
        return cups.stream()
                .map(cup -> (cup.tastedOn().map(d -> d + " ").orElse("")
                                + cup.cupping() + (cup.cupping().isEmpty() ? "" : " ")
                                + (cup.cupper().isEmpty() ? "nobody" : cup.cupper())
                                + (cup.batch().isEmpty() ? "" : " batch " + cup.batch())
                                + (cup.code().isEmpty() ? "" : " code " + cup.code())
                                + (cup.lot().isEmpty() ? "" : " lot " + cup.lot())
                                + (cup.cup() == 0 ? "" : " cup " + cup.cup())
                                + (cup.position() == 0 ? "" : " place " + cup.position())
                                + " " + cup.scores()
                                + (cup.note().isEmpty() ? "" : " '" + cup.note() + "'"))
                        .strip())
                .sorted()
                .toList();
    }
}
