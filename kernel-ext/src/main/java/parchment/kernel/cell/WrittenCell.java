package parchment.kernel.cell;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import parchment.file.FileWords;
import parchment.kernel.cell.PercentLines.Piece;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.source.CellText;
import parchment.kernel.words.CellError;
import parchment.kernel.words.CompileErrors;

/** A cell as it was written, which may hold lines that are no Java: runs what they stand for, and the Java between them. */
final class WrittenCell {
    /** Files that load files end here, so that two that load each other are told and not followed for ever. */
    private static final int DEEPEST = 16;

    private final Session session;
    private final CellPage page;
    private final List<Path> loading;

    WrittenCell(Session session, CellPage page) {
        this(session, page, List.of());
    }

    private WrittenCell(Session session, CellPage page, List<Path> loading) {
        this.session = session;
        this.page = page;
        this.loading = loading;
    }

    /** Runs it. */
    Outcome run(CellText cell) {
        if (!PercentLines.mayBeIn(cell.written())) {
            return new CellRun(session, cell, page).run();
        }
        List<Piece> pieces;
        try {
            pieces = PercentLines.pieces(cell.written());
        } catch (PercentLines.Unknown e) {
            List<String> lines = new ArrayList<>(cell.pointAt(e.offset()));
            lines.add(e.words());
            return Outcome.failed(new CellError(CompileErrors.NAME, e.words(), lines));
        }
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            CellPage shown = i < pieces.size() - 1 ? new WithoutResult(page) : page;
            CellText java = new CellText(cell.number(), piece.java(), piece.written(), cell.name());
            Outcome outcome = piece.file().isPresent()
                    ? load(cell, Path.of(piece.file().get()))
                    : new CellRun(session, java, shown).run();
            if (!outcome.fine()) {
                return outcome;
            }
        }
        return Outcome.FINE;
    }

    private Outcome load(CellText cell, Path file) {
        Path whole = file.toAbsolutePath().normalize();
        if (loading.contains(whole)) {
            return refused(file, "It is being loaded already, by itself or by a file that it loads.");
        }
        if (loading.size() >= DEEPEST) {
            return refused(file, "Files load each other here without end.");
        }
        List<String> cells;
        try {
            cells = cellsOf(file);
        } catch (IOException e) {
            return refused(file, FileWords.of(e));
        } catch (IllegalArgumentException e) {
            return refused(file, String.valueOf(e.getMessage()));
        }
        List<Path> all = new ArrayList<>(loading);
        all.add(whole);
        String name = String.valueOf(file.getFileName());
        for (int i = 0; i < cells.size(); i++) {
            String where = cells.size() > 1 ? name + ", cell " + (i + 1) : name;
            CellText loaded = new CellText(cell.number(), cells.get(i), cells.get(i), where);
            Outcome outcome = new WrittenCell(session, new WithoutResult(page), List.copyOf(all)).run(loaded);
            if (!outcome.fine()) {
                return in(where, outcome);
            }
        }
        return Outcome.FINE;
    }

    /** Returns an outcome whose error begins with where it was. */
    static Outcome in(String where, Outcome outcome) {
        return outcome.error()
                .map(error -> {
                    List<String> lines = new ArrayList<>(List.of("In " + where + ":"));
                    lines.addAll(error.lines());
                    return Outcome.failed(new CellError(error.name(), "In " + where + ": " + error.message(), lines));
                })
                .orElse(outcome);
    }

    private static List<String> cellsOf(Path file) throws IOException {
        String text = Files.readString(file).replace("\r\n", "\n");
        return file.toString().endsWith(".ipynb") ? NotebookCode.of(text) : List.of(text);
    }

    private static Outcome refused(Path file, String why) {
        String words = "%load could not load '" + file + "'. " + why;
        return Outcome.failed(new CellError("Not loaded", words, List.of(words)));
    }

    /** Leaves out the value of a cell's last line, which is not the last of the whole. What the cell shows itself never comes by here. */
    private record WithoutResult(CellPage page) implements CellPage {
        @Override
        public void print(Stream stream, String text) {
            page.print(stream, text);
        }

        @Override
        public void show(Shown shown) {
            page.show(shown);
        }

        @Override
        public void result(Shown shown) {
            // Not the last.
        }
    }
}
