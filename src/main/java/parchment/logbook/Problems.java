package parchment.logbook;

import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.display.Html;
import parchment.display.Showable;

/**
 * Lists what could not be read as written, in the order it was met.
 *
 * @param list the problems
 */
public record Problems(List<Problem> list) implements Showable, Iterable<Problem> {

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
        return String.format(
                Locale.ROOT,
                "%d %s in %d %s.",
                list.size(),
                list.size() == 1 ? "problem" : "problems",
                files,
                files == 1 ? "file" : "files");
    }

    @Override
    public String text() {
        return list.isEmpty()
                ? toString()
                : this + "\n" + list.stream().map(Problem::toString).collect(Collectors.joining("\n"));
    }

    @Override
    public Optional<String> html() {
        return Optional.of("<p>" + Html.escape(toString()) + "</p>"
                + list.stream()
                        .map(p -> "<li>" + Html.escape(p.toString()) + "</li>")
                        .collect(Collectors.joining("", "<ul>", "</ul>")));
    }
}
