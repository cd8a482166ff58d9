package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.sheet.Sheet;

/** Walks through one area of a sheet, block by block between blank rows, and finds its tables. */
final class TableFinder {
    private final SheetArea area;
    private final List<FoundTable> tables = new ArrayList<>();
    private final List<Integer> pending = new ArrayList<>();
    private @Nullable TableRows current;

    private TableFinder(SheetArea area) {
        this.area = area;
    }

    /** Finds the tables of a sheet, from the top, left before right. */
    static List<FoundTable> in(Sheet sheet) {
        List<FoundTable> found = new ArrayList<>();
        for (SheetArea part : SheetArea.of(sheet)) {
            found.addAll(new TableFinder(part).walk());
        }
        return found;
    }

    private List<FoundTable> walk() {
        int row = 0;
        while (row < area.until()) {
            if (area.isBlank(row)) {
                row++;
                continue;
            }
            int end = row;
            while (end < area.until() && !area.isBlank(end)) {
                end++;
            }
            block(row, end);
            row = end;
        }
        if (current == null && !pending.isEmpty()) {
            TableTurn.single(area, pending).ifPresent(tables::add);
            pending.clear();
        }
        close();
        return tables;
    }

    private void block(int from, int to) {
        TableRows open = current;
        if (open != null && (open.beginsAnother(area.row(from)) || open.goesOn(area.row(from)))) {
            add(open, from, to);
            return;
        }
        Optional<FactPairs> facts = FactPairs.of(area, from, to);
        if (facts.isPresent()) {
            close();
            facts.get().table(area, above(from)).ifPresent(tables::add);
            pending.clear();
            return;
        }
        Optional<FoundTable> turned = TableTurn.of(area, from, to, () -> above(from));
        if (turned.isPresent()) {
            close();
            tables.add(turned.get());
            pending.clear();
            return;
        }
        if (TableTurn.isKeys(area, from, to)) {
            wait(from, to);
            return;
        }
        Optional<TableHead> head = TableHead.find(area, from, to);
        if (head.isPresent() && head.get().from() == head.get().body()) {
            head = Optional.of(underPending(head.get(), from));
            if (open != null && continues(open, from, to)) {
                open.add(from, to);
                return;
            }
        }
        if (head.isEmpty()) {
            if (open != null && continues(open, from, to)) {
                open.add(from, to);
            } else {
                wait(from, to);
            }
            return;
        }
        List<List<String>> above = above(head.get().from());
        for (int r = from; r < head.get().from(); r++) {
            above.add(area.row(r));
        }
        close();
        pending.clear();
        TableRows next = new TableRows(area, head.get(), above);
        next.tellOddHeadings();
        current = next;
        add(next, head.get().body(), to);
    }

    /** Adds rows to a table, and begins another with the same headings where the number in their corner is another. */
    private void add(TableRows open, int from, int to) {
        TableRows rows = open;
        for (int r = from; r < to; r++) {
            if (rows.beginsAnother(area.row(r))) {
                List<List<String>> above = pending.isEmpty() ? rows.above() : above(r);
                close();
                pending.clear();
                rows = new TableRows(area, new TableHead(r, r + 1, area.row(r)), above);
                current = rows;
            } else {
                rows.add(r, r + 1);
            }
        }
    }

    /** Takes headings that stand above a blank row. */
    private TableHead underPending(TableHead head, int from) {
        if (pending.isEmpty() || head.body() != from) {
            return head;
        }
        int last = pending.get(pending.size() - 1);
        List<String> names = area.row(last);
        long words = names.stream()
                .filter(cell -> CellForm.of(cell) == CellForm.WORDS)
                .count();
        long values = names.stream().filter(cell -> CellForm.of(cell).isValue()).count();
        if (words < 2 || values > 0 || 2 * words < area.width()) {
            return head;
        }
        pending.remove(pending.size() - 1);
        List<String> filled = new ArrayList<>();
        for (int c = 0; c < names.size(); c++) {
            filled.add(names.get(c).isEmpty() ? "#" + (c + 1) : names.get(c));
        }
        return new TableHead(last, from, filled);
    }

    private boolean continues(TableRows open, int from, int to) {
        for (int r = from; r < to; r++) {
            if (open.goesOn(area.row(r))) {
                return true;
            }
        }
        return false;
    }

    private void wait(int from, int to) {
        for (int r = from; r < to; r++) {
            pending.add(r);
        }
    }

    private List<List<String>> above(int before) {
        List<List<String>> above = new ArrayList<>();
        for (int r : pending) {
            if (r < before) {
                above.add(area.row(r));
            }
        }
        return above;
    }

    private void close() {
        TableRows open = current;
        if (open == null) {
            return;
        }
        if (isLast()) {
            for (int r : pending) {
                open.note(area.row(r), area.sheet().line(r));
            }
            pending.clear();
        }
        FoundTable table = open.table();
        if (!table.rows().isEmpty()) {
            tables.add(table);
        }
        current = null;
    }

    private boolean isLast() {
        int last = pending.isEmpty() ? -1 : pending.get(pending.size() - 1);
        for (int r = last + 1; last >= 0 && r < area.until(); r++) {
            if (!area.isBlank(r)) {
                return false;
            }
        }
        return last >= 0;
    }
}
