package parchment.handbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import parchment.notebook.Markdown;

/**
 * The order of the book, as its page of contents gives it: every Markdown file that the page links to is a chapter, once, in the part
 * under whose heading it first stands.
 *
 * @param home the project's folder; nothing outside it is read
 * @param page the page of contents itself
 * @param parts the parts, in order
 */
record Contents(Path home, Chapter page, List<Part> parts) {
    static final String FILE = "index.html";

    /**
     * One part of the book.
     *
     * @param title its heading in the contents
     * @param name the name that the heading is linked by
     * @param chapters its chapters, in order
     */
    record Part(String title, String name, List<Chapter> chapters) {}

    /** @throws IllegalArgumentException if the folder has no page of contents */
    static Contents read(Path project) throws IOException {
        Path home = project.toAbsolutePath().normalize();
        Path docs = home.resolve("docs");
        Path source = docs.resolve("README.md");
        if (!Files.isRegularFile(source)) {
            throw new IllegalArgumentException("The pages of the handbook are not here: there is no file " + source
                    + ". They come with the release and with the sources, in the folder docs.");
        }
        Node document = Markdown.parse(Files.readString(source, StandardCharsets.UTF_8));
        Map<Heading, String> headings = HeadingNames.of(document);
        Chapter page = new Chapter(source, FILE, "Contents", document, headings);
        List<Part> parts = new ArrayList<>();
        parts.add(new Part("", "", new ArrayList<>())); // What stands before the first heading.
        Set<Path> seen = new HashSet<>(Set.of(source));
        document.accept(new AbstractVisitor() {
            @Override
            public void visit(Heading heading) {
                if (heading.getLevel() > 1 && headings.containsKey(heading)) {
                    parts.add(new Part(Markdown.words(heading), headings.get(heading), new ArrayList<>()));
                }
                visitChildren(heading);
            }

            @Override
            public void visit(Link link) {
                Optional<Path> target =
                        file(home, source, Address.of(link.getDestination()).file());
                if (target.isPresent() && Chapter.isMarkdown(target.get()) && seen.add(target.get())) {
                    try {
                        parts.get(parts.size() - 1)
                                .chapters()
                                .add(Chapter.read(target.get(), docs, Markdown.words(link)));
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                }
            }
        });
        return new Contents(
                home,
                page,
                parts.stream()
                        .filter(part -> !part.chapters().isEmpty())
                        .map(part -> new Part(part.title(), part.name(), List.copyOf(part.chapters())))
                        .toList());
    }

    /** Returns every page of the book, the contents first. */
    List<Chapter> chapters() {
        List<Chapter> chapters = new ArrayList<>(List.of(page));
        parts.forEach(part -> chapters.addAll(part.chapters()));
        return chapters;
    }

    Optional<Chapter> of(Path source) {
        return chapters().stream()
                .filter(chapter -> chapter.source().equals(source))
                .findFirst();
    }

    /** Returns the file or folder inside the project that an address on a page leads to, if it is one. */
    Optional<Path> file(Chapter from, String address) {
        return file(home, from.source(), address);
    }

    private static Optional<Path> file(Path home, Path from, String address) {
        if (address.isEmpty() || address.startsWith("/") || address.matches("[A-Za-z][A-Za-z0-9+.-]*:.*")) {
            return Optional.empty();
        }
        try {
            Path file = from.resolveSibling(address).normalize();
            return file.startsWith(home)
                            && Files.exists(file)
                            && file.toRealPath().startsWith(home.toRealPath())
                    ? Optional.of(file)
                    : Optional.empty();
        } catch (InvalidPathException | IOException e) {
            return Optional.empty(); // No address of a file.
        }
    }
}
