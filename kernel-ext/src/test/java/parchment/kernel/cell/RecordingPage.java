package parchment.kernel.cell;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;

/** Keeps what a cell sent to its page. */
public final class RecordingPage implements CellPage {
    private final StringBuilder out = new StringBuilder();
    private final StringBuilder err = new StringBuilder();
    private final Deque<String> answers = new ArrayDeque<>();
    public final List<Shown> shown = new ArrayList<>();
    public final Map<String, List<Shown>> places = new LinkedHashMap<>();
    public final List<String> named = new ArrayList<>();
    public final List<Shown> feet = new ArrayList<>();
    public final List<Shown> pageNotes = new ArrayList<>();
    public final List<Shown> results = new ArrayList<>();

    public RecordingPage answering(String line) {
        answers.add(line);
        return this;
    }

    @Override
    public synchronized void print(Stream stream, String text) {
        (stream == Stream.STDOUT ? out : err).append(text);
    }

    @Override
    public void show(Shown value) {
        shown.add(value);
    }

    @Override
    public synchronized void show(String id, Shown value) {
        places.computeIfAbsent(id, place -> new ArrayList<>()).add(value);
    }

    @Override
    public void showNamed(String name, Shown value) {
        named.add(name + ": " + value.text());
    }

    @Override
    public void update(String name, Shown value) {
        named.add(name + " <- " + value.text());
    }

    @Override
    public void foot(Shown value) {
        feet.add(value);
    }

    @Override
    public void pageNote(Shown value) {
        pageNotes.add(value);
    }

    @Override
    public void result(Shown value) {
        results.add(value);
    }

    @Override
    public String readLine() throws IOException {
        if (answers.isEmpty()) {
            throw new IOException("no answer");
        }
        return answers.remove();
    }

    public synchronized String out() {
        return out.toString();
    }

    public synchronized String err() {
        return err.toString();
    }

    /** Returns the text of the one result, or a note if there is none. */
    public String result() {
        return results.isEmpty()
                ? "(nothing shown)"
                : results.get(results.size() - 1).text();
    }
}
