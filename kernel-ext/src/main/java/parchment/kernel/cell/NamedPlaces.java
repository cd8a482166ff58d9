package parchment.kernel.cell;

import java.util.Set;
import java.util.TreeSet;
import parchment.display.answer.Spelling;

/** Keeps under which names a session has shown something that may change later. Safe for threads. */
final class NamedPlaces {
    private static final int LISTED = 8;

    private final Set<String> names = new TreeSet<>();

    synchronized void add(String name) {
        names.add(name);
    }

    /** @throws IllegalArgumentException if nothing was shown under the name */
    synchronized void check(String name) {
        if (names.contains(name)) {
            return;
        }
        String first = "Show it there first: Display.show(\"" + name + "\", value).";
        if (names.isEmpty()) {
            throw new IllegalArgumentException(
                    "Nothing on this page was shown under the name '" + name + "', nor under any other. " + first);
        }
        throw new IllegalArgumentException("Nothing on this page was shown under the name '" + name + "'. "
                + Spelling.closest(name, names)
                        .map(closest -> "Did you mean '" + closest + "'? ")
                        .orElse("")
                + "Names: " + String.join(", ", names.stream().limit(LISTED).toList())
                + (names.size() > LISTED ? " and " + (names.size() - LISTED) + " more. " : ". ")
                + first);
    }
}
