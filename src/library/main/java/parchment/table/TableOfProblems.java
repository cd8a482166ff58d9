package parchment.table;

import java.util.Optional;
import java.util.OptionalInt;
import parchment.logbook.Logbook;
import tech.tablesaw.api.Table;

/** A row for each thing that could not be read as written. */
final class TableOfProblems {
    private TableOfProblems() {}

    static Table of(Logbook logbook) {
        return Rows.of(logbook.problems().list(), logbook.readerUnit())
                .text("file", problem -> Optional.of(problem.file()))
                .whole("line", "", problem -> problem.line() > 0 ? OptionalInt.of(problem.line()) : OptionalInt.empty())
                .text("column", problem -> Optional.of(problem.column()))
                .text("batch", problem -> Optional.of(problem.batch()))
                .text("found", problem -> Optional.of(problem.found()))
                .text("expected", problem -> Optional.of(problem.expected()))
                .text("done", problem -> Optional.of(problem.done()))
                .table(TableNames.of("Problems", logbook));
    }
}
