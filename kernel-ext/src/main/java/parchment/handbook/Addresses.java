package parchment.handbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Image;
import org.commonmark.node.Link;

/**
 * Leads the links of a chapter to the other pages of the book, and takes its pictures inside. A link that leads nowhere in the book, nor
 * out into the world, stays as its words.
 */
final class Addresses extends AbstractVisitor {
    private static final Map<String, String> PICTURES =
            Map.of("svg", "image/svg+xml", "png", "image/png", "jpg", "image/jpeg", "jpeg", "image/jpeg");

    private final Contents contents;
    private final Chapter chapter;

    private Addresses(Contents contents, Chapter chapter) {
        this.contents = contents;
        this.chapter = chapter;
    }

    /** Puts the addresses in the chapter's document right. */
    static void putRight(Contents contents, Chapter chapter) {
        chapter.document().accept(new Addresses(contents, chapter));
    }

    @Override
    public void visit(Link link) {
        visitChildren(link);
        Optional<String> address = address(link.getDestination());
        if (address.isPresent()) {
            link.setDestination(address.get());
        } else {
            while (link.getFirstChild() != null) {
                link.insertBefore(link.getFirstChild());
            }
            link.unlink();
        }
    }

    private Optional<String> address(String written) {
        if (written.matches("(?i)(https?|mailto):.*")) {
            return Optional.of(written);
        }
        Address address = Address.of(written);
        String file = address.file();
        String name = address.name();
        if (file.isEmpty()) {
            return chapter.hasHeading(name) ? Optional.of("#" + name) : Optional.empty();
        }
        Optional<Path> target = contents.file(chapter, file);
        if (target.isPresent() && Files.isDirectory(target.get())) {
            // The contents name the pages of a folder; a book has no other list of them.
            boolean hasPages =
                    contents.chapters().stream().anyMatch(each -> each.source().startsWith(target.get()));
            return hasPages ? Optional.of(chapter.linkTo(Contents.FILE)) : Optional.empty();
        }
        return target.flatMap(contents::of)
                .map(other -> chapter.linkTo(other.file()) + (other.hasHeading(name) ? "#" + name : ""));
    }

    @Override
    public void visit(Image image) {
        visitChildren(image);
        contents.file(chapter, image.getDestination())
                .flatMap(Addresses::inside)
                .ifPresent(image::setDestination);
    }

    private static Optional<String> inside(Path picture) {
        String name = String.valueOf(picture.getFileName());
        String kind = PICTURES.get(name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
        if (kind == null || !Files.isRegularFile(picture)) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    "data:" + kind + ";base64," + Base64.getEncoder().encodeToString(Files.readAllBytes(picture)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
