package parchment.handbook;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import parchment.file.Rights;
import parchment.notebook.OurPage;

/**
 * The handbook as HTML pages: readable on a light and on a dark screen, on a phone and on paper, with nothing loaded from anywhere.
 * Pictures lie inside the pages. Links between the pages work wherever the folder is put; a link to what is not in the book stays as
 * its words.
 */
public final class Handbook {
    private final Map<String, String> pages;

    private Handbook(Map<String, String> pages) {
        this.pages = Collections.unmodifiableMap(pages);
    }

    /**
     * Reads the pages that {@code docs/README.md} of a project's folder names, in its order.
     *
     * @throws IllegalArgumentException if the folder has no such file
     */
    public static Handbook of(Path project) throws IOException {
        Contents contents = Contents.read(project);
        Map<String, String> pages = new LinkedHashMap<>();
        for (Chapter chapter : contents.chapters()) {
            pages.put(chapter.file(), ChapterPage.of(contents, chapter));
        }
        return new Handbook(pages);
    }

    /** Returns each page's HTML by the name of its file, with slashes; the contents come first. */
    public Map<String, String> pages() {
        return pages;
    }

    /**
     * Writes the pages into a folder, which is made if need be, and returns the file of the contents. Other files there are left.
     *
     * @throws IOException if a page cannot be written, or a file of its name is there that is no page of ours; nothing is written then
     */
    public Path writeTo(Path folder) throws IOException {
        for (String name : pages.keySet()) {
            OurPage.check(folder.resolve(name));
        }
        for (Map.Entry<String, String> page : pages.entrySet()) {
            Path file = folder.resolve(page.getKey());
            Path above = file.toAbsolutePath().getParent();
            if (above != null) {
                Rights.USUAL.makeFolder(above);
            }
            OurPage.write(file, page.getValue());
        }
        return folder.resolve(Contents.FILE);
    }

    /** Says how many pages there are. */
    @Override
    public String toString() {
        return "The handbook, " + pages.size() + " pages";
    }
}
