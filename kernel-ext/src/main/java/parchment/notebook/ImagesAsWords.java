package parchment.notebook;

import java.util.Map;
import java.util.Set;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.renderer.NodeRenderer;
import org.commonmark.renderer.html.HtmlNodeRendererContext;

/**
 * Shows the words of an image of the notebook's text in its place: a page that loads nothing cannot fetch the image itself. Images
 * that the notebook carries inside (data addresses) are shown.
 */
final class ImagesAsWords implements NodeRenderer {
    private static final String INSIDE = "data:image/";

    private final HtmlNodeRendererContext context;

    ImagesAsWords(HtmlNodeRendererContext context) {
        this.context = context;
    }

    @Override
    public Set<Class<? extends Node>> getNodeTypes() {
        return Set.of(Image.class);
    }

    @Override
    public void render(Node node) {
        Image image = (Image) node;
        String words = Markdown.words(image);
        if (image.getDestination().startsWith(INSIDE)) {
            context.getWriter().tag("img", Map.of("src", image.getDestination(), "alt", words), true);
        } else {
            context.getWriter().tag("em");
            context.getWriter().text(words.isEmpty() ? image.getDestination() : words);
            context.getWriter().tag("/em");
        }
    }
}
