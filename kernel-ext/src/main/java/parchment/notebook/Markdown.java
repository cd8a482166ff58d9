package parchment.notebook;

import java.util.ArrayList;
import java.util.List;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.Code;
import org.commonmark.node.Node;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlNodeRendererFactory;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * Markdown as our pages show it (docs/decisions/0011): with tables; raw HTML is shown as written, addresses that are not plain links
 * are dropped, and an image that is not carried inside shows as its words, so that a page loads nothing.
 */
public final class Markdown {
    private static final List<TablesExtension> TABLES = List.of((TablesExtension) TablesExtension.create());
    private static final Parser PARSER = Parser.builder().extensions(TABLES).build();

    /** A name or a number with its error is no longer than this and stays on one line in a table. */
    private static final int LONGEST_NAME = 18;

    private Markdown() {}

    /** Reads a text. Any text is Markdown; nothing is refused. */
    public static Node parse(String text) {
        return PARSER.parse(text);
    }

    /** Returns the document as HTML; the renderers given come before ours for the nodes that they name. */
    public static String html(Node document, HtmlNodeRendererFactory... before) {
        List<HtmlNodeRendererFactory> renderers = new ArrayList<>(List.of(before));
        renderers.add(ImagesAsWords::new);
        HtmlRenderer.Builder builder = HtmlRenderer.builder()
                .extensions(TABLES)
                .escapeHtml(true)
                .sanitizeUrls(true)
                // Long lines of code move sideways in a narrow window, which the keyboard must be able to do.
                .attributeProviderFactory(context -> (node, tag, attributes) -> {
                    if (tag.equals("pre")) {
                        attributes.put("tabindex", "0");
                    } else if (node instanceof TableCell && words(node).length() <= LONGEST_NAME) {
                        attributes.put("class", "whole");
                    }
                });
        renderers.forEach(builder::nodeRendererFactory);
        return builder.build().render(document);
    }

    /** Returns what is read of a node when its form is left away. */
    public static String words(Node node) {
        StringBuilder words = new StringBuilder();
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            if (child instanceof Text text) {
                words.append(text.getLiteral());
            } else if (child instanceof Code code) {
                words.append(code.getLiteral());
            } else if (child instanceof SoftLineBreak) {
                words.append(' ');
            } else {
                words.append(words(child));
            }
        }
        return words.toString();
    }
}
