package parchment.logbook;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.logbook.written.Problem;
import parchment.sheet.Words;

/**
 * Lists what could not be read as written, in the order it was met.
 *
 * @param list the problems
 */
public record Problems(List<Problem> list) implements Showable, Iterable<Problem> {
    /** More than these are told by kind. */
    static final int SENTENCES_SHOWN = 30;

    /** Copies the list. */
    public Problems {
        list = List.copyOf(list);
    }

    /** Returns the number of problems. */
    public int size() {
        return list.size();
    }

    /** Returns the problems of one file. */
    public Problems in(String file) {
        return new Problems(list.stream().filter(p -> p.file().equals(file)).toList());
    }

    /** Returns the problems with the row or the curve of one batch. */
    public Problems of(String batch) {
        return new Problems(list.stream().filter(p -> p.batch().equals(batch)).toList());
    }

    /**
     * Says why nothing of batches.csv was read, as in "batches.csv was left out because it has no column 'roasted at'", without a full stop;
     * empty if it was read or is not there.
     */
    public Optional<String> batchesLeftOut() {
        return in(BatchesFile.FILE).list().stream()
                .filter(Problem::leavesOutItsFile)
                .findFirst()
                .map(problem -> BatchesFile.FILE + " was left out because "
                        + (problem.found().startsWith("no column ") ? "it has " : "of this: ") + problem.found());
    }

    private record Kind(String folder, String column, String expected, String done) {
        static Kind of(Problem problem) {
            int slash = problem.file().indexOf('/');
            String folder = slash < 0 ? problem.file() : problem.file().substring(0, slash + 1) + "…";
            return new Kind(folder, problem.column(), problem.expected(), problem.done());
        }
    }

    private record Group(Kind kind, List<Problem> problems) {}

    /** Returns the problems by what was expected and what was done, the most frequent first, each with its number and its first place. */
    public Table kinds() {
        Map<Kind, List<Problem>> byKind = new LinkedHashMap<>();
        list.forEach(problem -> byKind.computeIfAbsent(Kind.of(problem), kind -> new ArrayList<>())
                .add(problem));
        List<Group> groups = byKind.entrySet().stream()
                .map(entry -> new Group(entry.getKey(), entry.getValue()))
                .sorted((a, b) ->
                        Integer.compare(b.problems().size(), a.problems().size()))
                .toList();
        return Table.titled("Kinds of problems")
                .withNumber("problems", "", 0, groups, group -> group.problems().size())
                .withText("file", groups, group -> group.kind().folder())
                .withText("column", groups, group -> group.kind().column())
                .withText("first found", groups, group -> place(group.problems().get(0)))
                .withText("expected", groups, group -> group.kind().expected())
                .withText("done", groups, group -> group.kind().done())
                .withDashForMissing("not in one column");
    }

    private static String place(Problem problem) {
        return problem.found() + " (" + problem.file() + (problem.line() > 0 ? ", line " + problem.line() : "") + ")";
    }

    /** Returns the problems one by one. */
    public Table table() {
        return Table.titled("Problems")
                .withText("file", list, Problem::file)
                .withText("line", list, problem -> problem.line() > 0 ? Integer.toString(problem.line()) : "")
                .withText("column", list, Problem::column)
                .withText("found", list, Problem::found)
                .withText("expected", list, Problem::expected)
                .withText("done", list, Problem::done)
                .withDashForMissing("not on one line, or not in one column");
    }

    @Override
    public Iterator<Problem> iterator() {
        return list.iterator();
    }

    @Override
    public String toString() {
        if (list.isEmpty()) {
            return "No problems: everything was read as written.";
        }
        long files = list.stream().map(Problem::file).distinct().count();
        return Words.count(list.size(), "problem", "problems") + " in " + Words.count(files, "file", "files") + ".";
    }

    @Override
    public String text() {
        if (list.isEmpty()) {
            return toString();
        }
        String rest = list.size() <= SENTENCES_SHOWN
                ? ""
                : "\nand " + (list.size() - SENTENCES_SHOWN) + " more; problems().kinds() groups them.";
        return this + "\n"
                + list.stream().limit(SENTENCES_SHOWN).map(Problem::toString).collect(Collectors.joining("\n"))
                + rest;
    }

    @Override
    public Optional<String> html() {
        if (list.isEmpty()) {
            return Optional.of("<p>" + this + "</p>");
        }
        String kinds = list.size() <= SENTENCES_SHOWN ? "" : kinds().html().orElse("");
        return Optional.of("<p>" + this + "</p>" + kinds + table().html().orElse(""));
    }
}
