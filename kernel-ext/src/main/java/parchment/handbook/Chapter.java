package parchment.handbook;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import parchment.notebook.Markdown;

/**
 * One page of the book, as it was read.
 *
 * @param source the Markdown file
 * @param file the name of its HTML file, with slashes, as seen from the contents
 * @param called what the contents call it
 * @param document the words
 * @param headings their headings, with the names that they are linked by
 */
record Chapter(Path source, String file, String called, Node document, Map<Heading, String> headings) {
    private static final String MARKDOWN = ".md";

    /** Reads the page that the contents call so; {@code docs} is the folder of the contents. */
    static Chapter read(Path source, Path docs, String called) throws IOException {
        Node document = Markdown.parse(Files.readString(source, StandardCharsets.UTF_8));
        return new Chapter(source, fileName(source, docs), called, document, HeadingNames.of(document));
    }

    static boolean isMarkdown(Path file) {
        return file.toString().endsWith(MARKDOWN) && Files.isRegularFile(file);
    }

    /** A page from outside the folder gets its name in small letters, so that none takes another's place. */
    private static String fileName(Path source, Path docs) {
        boolean within = source.startsWith(docs);
        String name = (within ? docs : docs.resolveSibling("."))
                .normalize()
                .relativize(source)
                .toString()
                .replace('\\', '/');
        name = name.substring(0, name.length() - MARKDOWN.length()) + ".html";
        return within ? name : "project/" + name.toLowerCase(Locale.ROOT);
    }

    /** Returns the page's own title, else what the contents call it. */
    String title() {
        return headings.keySet().stream()
                .filter(heading -> heading.getLevel() == 1)
                .map(Markdown::words)
                .findFirst()
                .orElse(called);
    }

    boolean hasHeading(String name) {
        return headings.containsValue(name);
    }

    /** Returns the address of another page of the book, as a link on this one. */
    String linkTo(String other) {
        return "../".repeat((int) file.chars().filter(c -> c == '/').count()) + other;
    }
}
