package parchment.kernel.help;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import parchment.display.Html;
import parchment.kernel.page.Shown;

/**
 * A page of documentation, as text and as HTML. All that came from a comment or a value is escaped; no script, style sheet or picture
 * is in it.
 *
 * @param blocks from the top down
 */
record DocPage(List<DocPage.Block> blocks) {
    private static final int WIDTH = 92;

    DocPage {
        blocks = List.copyOf(blocks);
    }

    /** How a run of words is set. */
    enum Style {
        WORDS,
        CODE,
        STRONG,
        EMPHASIS
    }

    /** A run of words in one style, and where it leads if it is a link. */
    record Span(Style style, String text, @Nullable String address) {
        static Span words(String text) {
            return new Span(Style.WORDS, text, null);
        }

        static Span code(String text) {
            return new Span(Style.CODE, text, null);
        }

        String html() {
            String escaped = Html.escape(text);
            String set = switch (style) {
                case WORDS -> escaped;
                case CODE -> "<code>" + escaped + "</code>";
                case STRONG -> "<b>" + escaped + "</b>";
                case EMPHASIS -> "<em>" + escaped + "</em>";
            };
            return address == null
                    ? set
                    : "<a href=\"" + Html.escape(address) + "\" rel=\"noopener noreferrer\">" + set + "</a>";
        }

        String plain() {
            return address == null ? text : text + " (" + address + ")";
        }
    }

    /** A piece of the page. */
    sealed interface Block {}

    /** A line over what follows. */
    record Heading(String words) implements Block {}

    /** How a name is declared. */
    record Signature(String line) implements Block {}

    /** Code, line for line. */
    record Code(String lines) implements Block {}

    /** Running words. */
    record Paragraph(List<Span> spans) implements Block {
        static Paragraph of(String words) {
            return new Paragraph(List.of(Span.words(words)));
        }
    }

    /** A list. */
    record Items(List<List<Span>> items) implements Block {}

    /** Rows of cells. */
    record Rows(List<List<List<Span>>> rows) implements Block {}

    /** Names and what each means. */
    record Terms(List<Term> terms) implements Block {}

    /** A name and what it means. */
    record Term(String name, List<Span> meaning) {}

    /** Returns the page in the forms that a notebook can show. */
    Shown shown() {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(Shown.TEXT, text());
        forms.put(Shown.HTML, html());
        return new Shown(forms);
    }

    /** Returns the page as text, at most 92 characters wide where it is running words. */
    String text() {
        StringBuilder text = new StringBuilder();
        Block above = null;
        for (Block block : blocks) {
            if (above != null) {
                text.append(above instanceof Heading ? "\n" : "\n\n");
            }
            text.append(text(block));
            above = block;
        }
        return text.toString();
    }

    private static String text(Block block) {
        if (block instanceof Heading heading) {
            return heading.words() + ":";
        } else if (block instanceof Signature signature) {
            return wrapped(signature.line(), "", "        ");
        } else if (block instanceof Code code) {
            return code.lines().indent(4).stripTrailing();
        } else if (block instanceof Paragraph paragraph) {
            return wrapped(plain(paragraph.spans()), "", "");
        } else if (block instanceof Items list) {
            return list.items().stream()
                    .map(item -> wrapped(plain(item), "  - ", "    "))
                    .collect(Collectors.joining("\n"));
        } else if (block instanceof Rows table) {
            return table.rows().stream()
                    .map(row -> "  " + row.stream().map(DocPage::plain).collect(Collectors.joining("  |  ")))
                    .collect(Collectors.joining("\n"));
        } else if (block instanceof Terms list) {
            return list.terms().stream()
                    .map(term -> wrapped(term.name() + ": " + plain(term.meaning()), "  ", "      "))
                    .collect(Collectors.joining("\n"));
        }
        throw new IllegalStateException("A block of another kind: " + block);
    }

    /** Returns the page as a fragment of HTML. */
    String html() {
        StringBuilder html = new StringBuilder("<div>\n");
        blocks.forEach(block -> html.append(html(block)).append('\n'));
        return html.append("</div>").toString();
    }

    private static String html(Block block) {
        if (block instanceof Heading heading) {
            return "<p><b>" + Html.escape(heading.words()) + "</b></p>";
        } else if (block instanceof Signature signature) {
            return "<p><b><code>" + Html.escape(signature.line()) + "</code></b></p>";
        } else if (block instanceof Code code) {
            return "<pre style=\"white-space: pre-wrap\"><code>" + Html.escape(code.lines()) + "</code></pre>";
        } else if (block instanceof Paragraph paragraph) {
            return "<p>" + rich(paragraph.spans()) + "</p>";
        } else if (block instanceof Items list) {
            return list.items().stream()
                    .map(item -> "<li>" + rich(item) + "</li>")
                    .collect(Collectors.joining("", "<ul>", "</ul>"));
        } else if (block instanceof Rows table) {
            return table.rows().stream()
                    .map(row -> row.stream()
                            .map(cell -> "<td>" + rich(cell) + "</td>")
                            .collect(Collectors.joining("", "<tr>", "</tr>")))
                    .collect(Collectors.joining("", "<table>", "</table>"));
        } else if (block instanceof Terms list) {
            return list.terms().stream()
                    .map(term -> "<dt><code>" + Html.escape(term.name()) + "</code></dt><dd>" + rich(term.meaning())
                            + "</dd>")
                    .collect(Collectors.joining("", "<dl>", "</dl>"));
        }
        throw new IllegalStateException("A block of another kind: " + block);
    }

    private static String rich(List<Span> spans) {
        return spans.stream().map(Span::html).collect(Collectors.joining());
    }

    private static String plain(List<Span> spans) {
        return spans.stream().map(Span::plain).collect(Collectors.joining());
    }

    private static String wrapped(String words, String first, String rest) {
        StringBuilder text = new StringBuilder(first);
        int column = first.length();
        boolean fresh = true;
        for (String word : words.strip().split("\\s+")) {
            if (!fresh && column + 1 + word.length() > WIDTH) {
                text.append('\n').append(rest);
                column = rest.length();
                fresh = true;
            }
            if (!fresh) {
                text.append(' ');
                column++;
            }
            text.append(word);
            column += word.length();
            fresh = false;
        }
        return text.toString();
    }
}
