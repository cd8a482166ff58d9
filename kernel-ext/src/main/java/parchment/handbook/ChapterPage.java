package parchment.handbook;

import java.util.List;
import java.util.Map;
import org.commonmark.node.Heading;
import parchment.display.Html;
import parchment.notebook.Markdown;
import parchment.notebook.PageForm;

/** One chapter as HTML: its words, the way back and on, and where it stands in the book. */
final class ChapterPage {
    /** A part with more chapters than this opens in the list at the side only on its own pages. */
    private static final int LONG_PART = 8;

    private final Contents contents;
    private final Chapter chapter;

    private ChapterPage(Contents contents, Chapter chapter) {
        this.contents = contents;
        this.chapter = chapter;
    }

    /** Returns the page. */
    static String of(Contents contents, Chapter chapter) {
        return new ChapterPage(contents, chapter).html();
    }

    private String html() {
        Addresses.putRight(contents, chapter);
        Frame.around(chapter.document());
        String words = Markdown.html(chapter.document(), context -> new ChapterNodes(chapter.headings(), context));
        boolean isContents = chapter.equals(contents.page());
        String title = chapter.title() + (isContents ? " - Parchment" : " - Parchment handbook");
        return PageForm.filled(
                ChapterPage.class,
                Map.of(
                        "TITLE",
                        Html.escape(title),
                        "CONTENTS",
                        contentsLink(),
                        "AROUND",
                        around(),
                        "KIND",
                        isContents ? "book contents" : "book",
                        "LIST",
                        isContents ? "" : list(),
                        "WORDS",
                        words));
    }

    private String contentsLink() {
        return chapter.equals(contents.page())
                ? "<span aria-current=\"page\">Contents</span>"
                : link(Contents.FILE, "Contents");
    }

    /** The way back and on. */
    private String around() {
        List<Chapter> all = contents.chapters();
        int place = all.indexOf(chapter);
        StringBuilder html = new StringBuilder();
        if (place > 0) {
            html.append("<span class=\"back\">Before: ")
                    .append(link(all.get(place - 1)))
                    .append("</span>");
        }
        if (place + 1 < all.size()) {
            html.append("<span class=\"on\">Next: ")
                    .append(link(all.get(place + 1)))
                    .append("</span>");
        }
        return html.toString();
    }

    /** The list of the book's chapters, with the sections of this one. */
    private String list() {
        StringBuilder html = new StringBuilder("<nav class=\"list\" aria-label=\"Chapters\">\n");
        for (Contents.Part part : contents.parts()) {
            boolean folded =
                    part.chapters().size() > LONG_PART && !part.chapters().contains(chapter);
            html.append("<h2>")
                    .append(link(
                            Contents.FILE + (part.name().isEmpty() ? "" : "#" + part.name()),
                            part.title() + (folded ? " (" + part.chapters().size() + " pages)" : "")))
                    .append("</h2>\n");
            if (folded) {
                continue;
            }
            html.append("<ul>\n");
            for (Chapter each : part.chapters()) {
                html.append("<li>");
                if (each.equals(chapter)) {
                    html.append("<a href=\"#top\" aria-current=\"page\">")
                            .append(Html.escape(each.called()))
                            .append("</a>");
                    sections(html);
                } else {
                    html.append(link(each));
                }
                html.append("</li>\n");
            }
            html.append("</ul>\n");
        }
        return html.append("</nav>").toString();
    }

    private void sections(StringBuilder html) {
        List<Map.Entry<Heading, String>> sections = chapter.headings().entrySet().stream()
                .filter(each -> each.getKey().getLevel() == 2)
                .toList();
        if (!sections.isEmpty()) {
            html.append("\n<ul>\n");
            sections.forEach(each -> html.append("<li><a href=\"#")
                    .append(Html.escape(each.getValue()))
                    .append("\">")
                    .append(Html.escape(Markdown.words(each.getKey())))
                    .append("</a></li>\n"));
            html.append("</ul>\n");
        }
    }

    private String link(Chapter other) {
        return link(other.file(), other.called());
    }

    private String link(String file, String words) {
        return "<a href=\"" + Html.escape(chapter.linkTo(file)) + "\">" + Html.escape(words) + "</a>";
    }
}
