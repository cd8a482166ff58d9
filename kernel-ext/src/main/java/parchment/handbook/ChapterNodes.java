package parchment.handbook;

import java.util.Map;
import java.util.Set;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.renderer.NodeRenderer;
import org.commonmark.renderer.html.HtmlNodeRendererContext;
import org.commonmark.renderer.html.HtmlWriter;
import parchment.display.Html;
import parchment.notebook.CodeColours;

/** Writes what a chapter shows otherwise than a notebook's words: headings with names, Java in its colours, tables and pictures framed. */
final class ChapterNodes implements NodeRenderer {
    private final Map<Heading, String> names;
    private final HtmlNodeRendererContext context;
    private final HtmlWriter html;

    ChapterNodes(Map<Heading, String> names, HtmlNodeRendererContext context) {
        this.names = names;
        this.context = context;
        this.html = context.getWriter();
    }

    @Override
    public Set<Class<? extends Node>> getNodeTypes() {
        return Set.of(Heading.class, FencedCodeBlock.class, Frame.class);
    }

    @Override
    public void render(Node node) {
        html.line();
        if (node instanceof Heading heading) {
            heading(heading);
        } else if (node instanceof FencedCodeBlock code) {
            code(code);
        } else if (node instanceof Frame frame) {
            frame(frame);
        }
        html.line();
    }

    private void heading(Heading heading) {
        String tag = "h" + heading.getLevel();
        String name = names.get(heading);
        html.tag(tag, name == null ? Map.of() : Map.of("id", name));
        children(heading);
        html.tag("/" + tag);
    }

    private void code(FencedCodeBlock code) {
        boolean java = code.getInfo() != null && code.getInfo().equals("java");
        html.raw("<pre class=\"code\" tabindex=\"0\"><code>");
        html.raw(java ? CodeColours.html(code.getLiteral()) : lines(code.getLiteral()));
        html.raw("</code></pre>");
    }

    /** A formula or command too long for the page goes on below, set in, so that nothing of it is cut and its lines stay lines. */
    private static String lines(String text) {
        StringBuilder lines = new StringBuilder();
        text.lines()
                .forEach(line -> lines.append("<span class=\"line\">")
                        .append(Html.escape(line))
                        .append("\n</span>"));
        return lines.toString();
    }

    private void frame(Frame frame) {
        switch (frame.holds()) {
            case TABLE -> {
                html.raw("<div class=\"wide\" role=\"group\" aria-label=\"Table\" tabindex=\"0\">");
                children(frame);
                html.raw("</div>");
            }
            case PICTURE -> {
                html.raw("<figure class=\"picture\" tabindex=\"0\">");
                children(frame);
                html.raw("</figure>");
            }
        }
    }

    private void children(Node parent) {
        for (Node child = parent.getFirstChild(); child != null; ) {
            Node next = child.getNext();
            context.render(child);
            child = next;
        }
    }
}
