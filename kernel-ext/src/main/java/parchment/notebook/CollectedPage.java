package parchment.notebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;

/** Gathers a cell's output, joining what was printed in pieces. What was shown under a name, later cells can change. */
final class CollectedPage implements CellPage {
    /** @param name under which it was shown; empty for most */
    private record Entry(String name, CellOutput output) {}

    private final List<Entry> entries = new ArrayList<>();
    private final StringBuilder printed = new StringBuilder();
    private Stream printedTo = Stream.STDOUT;
    private final List<CollectedPage> earlier;
    private final Set<String> pageNotes;
    private boolean clearing;

    /**
     * @param earlier what the cells before this one have shown
     * @param pageNotes what earlier cells have told of the whole page
     */
    CollectedPage(List<CollectedPage> earlier, Set<String> pageNotes) {
        this.earlier = List.copyOf(earlier);
        this.pageNotes = pageNotes;
    }

    @Override
    public synchronized void print(Stream stream, String text) {
        clearIfAsked();
        if (stream != printedTo) {
            flush();
            printedTo = stream;
        }
        printed.append(text);
    }

    @Override
    public void show(Shown shown) {
        add("", new CellOutput.Display(shown));
    }

    @Override
    public void showNamed(String name, Shown shown) {
        add(name, new CellOutput.Display(shown));
    }

    @Override
    public void update(String name, Shown shown) {
        earlier.forEach(page -> page.replace(name, shown));
        replace(name, shown);
    }

    @Override
    public void result(Shown shown) {
        add("", new CellOutput.Result(shown));
    }

    private synchronized void add(String name, CellOutput output) {
        clearIfAsked();
        flush();
        entries.add(new Entry(name, output));
    }

    private synchronized void replace(String name, Shown shown) {
        entries.replaceAll(entry -> entry.name().equals(name) ? new Entry(name, new CellOutput.Display(shown)) : entry);
    }

    @Override
    public void pageNote(Shown shown) {
        if (pageNotes.add(shown.text())) {
            foot(shown);
        }
    }

    /** Takes note of how the cell ended. */
    synchronized void end(Outcome outcome) {
        flush();
        outcome.error().ifPresent(error -> entries.add(new Entry("", new CellOutput.Failed(error))));
    }

    synchronized List<CellOutput> outputs() {
        return entries.stream().map(Entry::output).toList();
    }

    @Override
    public synchronized void clear() {
        clearing = true;
    }

    private void clearIfAsked() {
        if (clearing) {
            clearing = false;
            entries.clear();
            printed.setLength(0);
        }
    }

    private void flush() {
        if (printed.length() > 0) {
            entries.add(new Entry("", new CellOutput.Printed(printedTo, printed.toString())));
            printed.setLength(0);
        }
    }
}
