package parchment.handbook;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import parchment.notebook.Markdown;

/**
 * The names that a page's headings are linked by: the heading in small letters without punctuation, a dash for each blank, and a number
 * after a name that comes again. It is the rule by which the sites that show a project's Markdown name headings, so that a link works
 * in both places.
 */
public final class HeadingNames {
    private HeadingNames() {}

    /** Returns the headings of a document with their names, in the order of the page; a heading without a letter or digit has none. */
    public static Map<Heading, String> of(Node document) {
        Map<Heading, String> names = new LinkedHashMap<>();
        Map<String, Integer> seen = new HashMap<>();
        document.accept(new AbstractVisitor() {
            @Override
            public void visit(Heading heading) {
                String name = name(Markdown.words(heading));
                if (!name.isEmpty()) {
                    int before = seen.merge(name, 1, Integer::sum) - 1;
                    names.put(heading, before == 0 ? name : name + "-" + before);
                }
            }
        });
        return Collections.unmodifiableMap(names);
    }

    private static String name(String words) {
        return words.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N} _-]", "")
                .replace(' ', '-');
    }
}
