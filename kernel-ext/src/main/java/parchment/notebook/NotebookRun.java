package parchment.notebook;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;
import parchment.kernel.words.CellError;

/**
 * Runs the code cells of a notebook in order and stops at the first that fails, unless that cell carries the tag {@code
 * raises-exception}, which says that it is meant to fail.
 */
public final class NotebookRun {

    /** Is told how the run goes. */
    public interface Progress {
        void cellBegins(int number, int of, Cell cell);

        void cellEnded(int number, int of, Duration took, Outcome outcome);
    }

    /**
     * What a run gave.
     *
     * @param notebook the notebook with the outputs of every cell that ran
     * @param failedCell number of the code cell that failed, from 1, or nothing
     * @param error why it failed, or nothing
     */
    public record Result(Notebook notebook, Optional<Integer> failedCell, Optional<CellError> error) {}

    private final Notebook notebook;
    private final Evaluator evaluator;

    private NotebookRun(Notebook notebook, Evaluator evaluator) {
        this.notebook = notebook;
        this.evaluator = evaluator;
    }

    /** Prepares to run the notebook in the evaluator's session. */
    public static NotebookRun of(Notebook notebook, Evaluator evaluator) {
        return new NotebookRun(notebook, evaluator);
    }

    /** Runs the cells. */
    public Result run(Progress progress) {
        return run(progress, () -> false);
    }

    /**
     * Runs the cells unless it was asked to stop before the next.
     *
     * @param stopAsked says whether it was; {@link Evaluator#interrupt} is to be called after this has become true
     */
    public Result run(Progress progress, BooleanSupplier stopAsked) {
        int count = (int) notebook.cells().stream().filter(NotebookRun::isToRun).count();
        List<Supplier<Cell>> done = new ArrayList<>(); // A later cell may change what an earlier one has shown.
        int number = 0;
        Optional<Integer> failedCell = Optional.empty();
        Optional<CellError> error = Optional.empty();
        Set<String> pageNotes = new HashSet<>();
        List<CollectedPage> earlier = new ArrayList<>();
        for (Cell cell : notebook.cells()) {
            if (!isToRun(cell)) {
                done.add(() -> cell.kind() == Cell.Kind.CODE ? cell.notRun() : cell);
                continue;
            }
            number++;
            if (failedCell.isPresent()) {
                done.add(cell::notRun);
                continue;
            }
            progress.cellBegins(number, count, cell);
            long start = System.nanoTime();
            CollectedPage page = new CollectedPage(earlier, pageNotes);
            Outcome outcome = evaluator.run(number, cell.source(), page, stopAsked);
            page.end(outcome);
            earlier.add(page);
            int ran = number;
            done.add(() -> cell.ran(ran, page.outputs()));
            progress.cellEnded(number, count, Duration.ofNanos(System.nanoTime() - start), outcome);
            if (!outcome.fine() && !cell.tagged("raises-exception")) {
                failedCell = Optional.of(number);
                error = outcome.error();
            }
        }
        return new Result(notebook.withCells(done.stream().map(Supplier::get).toList()), failedCell, error);
    }

    private static boolean isToRun(Cell cell) {
        return cell.kind() == Cell.Kind.CODE && !cell.source().isBlank();
    }
}
