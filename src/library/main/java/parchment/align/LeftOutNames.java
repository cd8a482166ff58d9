package parchment.align;

import java.util.Collection;
import java.util.List;
import java.util.Set;

/** Names the batches that a picture leaves out, so that one bad curve can be found. */
final class LeftOutNames {
    private static final int NAMED = 5;

    private LeftOutNames() {}

    /** Returns " Left out: H004." with up to {@value #NAMED} names and the number of the others; nothing if none is left out. */
    static String of(Collection<String> all, Set<String> drawn) {
        List<String> left = all.stream().filter(name -> !drawn.contains(name)).toList();
        if (left.isEmpty()) {
            return "";
        }
        String named = String.join(", ", left.subList(0, Math.min(NAMED, left.size())));
        return " Left out: " + named + (left.size() > NAMED ? " and " + (left.size() - NAMED) + " more." : ".");
    }
}
