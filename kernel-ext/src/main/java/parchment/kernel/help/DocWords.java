package parchment.kernel.help;

import com.sun.source.doctree.AttributeTree;
import com.sun.source.doctree.DocTree;
import com.sun.source.doctree.EndElementTree;
import com.sun.source.doctree.EntityTree;
import com.sun.source.doctree.LinkTree;
import com.sun.source.doctree.LiteralTree;
import com.sun.source.doctree.StartElementTree;
import com.sun.source.doctree.TextTree;
import com.sun.source.doctree.ValueTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import parchment.kernel.help.DocPage.Block;
import parchment.kernel.help.DocPage.Span;
import parchment.kernel.help.DocPage.Style;

/**
 * Turns the words of a documentation comment into blocks of a page. Of HTML it knows what comments use; of an element that it does not
 * know only the words are kept.
 */
final class DocWords {
    private static final Map<String, String> ENTITIES = Map.of(
            "lt", "<", "gt", ">", "amp", "&", "quot", "\"", "nbsp", "\u00a0", "deg", "°", "times", "×", "ndash", "–",
            "mdash", "—", "minus", "−");

    private final Function<String, String> constants;
    private final List<Block> blocks = new ArrayList<>();
    private final StringBuilder code = new StringBuilder();
    private List<Span> line = new ArrayList<>();
    private @Nullable List<List<Span>> items;
    private @Nullable List<List<List<Span>>> rows;
    private @Nullable String address;
    private Style style = Style.WORDS;
    private boolean verbatim;

    private DocWords(Function<String, String> constants) {
        this.constants = constants;
    }

    /**
     * Returns the blocks that the words make.
     *
     * @param constants gives the value of a constant by its name, for {@code {@value}}
     */
    static List<Block> blocks(List<? extends DocTree> words, Function<String, String> constants) {
        DocWords reader = new DocWords(constants);
        words.forEach(reader::take);
        reader.endBlock();
        return reader.blocks;
    }

    /** Returns the words as one run; what breaks the line is a space. */
    static List<Span> spans(List<? extends DocTree> words, Function<String, String> constants) {
        List<Span> all = new ArrayList<>();
        for (Block block : blocks(words, constants)) {
            if (!all.isEmpty()) {
                all.add(Span.words(" "));
            }
            if (block instanceof DocPage.Paragraph paragraph) {
                all.addAll(paragraph.spans());
            } else if (block instanceof DocPage.Code lines) {
                all.add(Span.code(lines.lines()));
            } else if (block instanceof DocPage.Items list) {
                list.items().forEach(item -> {
                    all.addAll(item);
                    all.add(Span.words("; "));
                });
            }
        }
        return all;
    }

    private void take(DocTree tree) {
        switch (tree.getKind()) {
            case TEXT -> add(style, ((TextTree) tree).getBody());
            case CODE -> add(Style.CODE, ((LiteralTree) tree).getBody().getBody());
            case LITERAL -> add(style, ((LiteralTree) tree).getBody().getBody());
            case ENTITY -> add(style, character(((EntityTree) tree).getName().toString()));
            case LINK, LINK_PLAIN -> link((LinkTree) tree);
            case VALUE -> value((ValueTree) tree);
            case START_ELEMENT -> start((StartElementTree) tree);
            case END_ELEMENT -> end(((EndElementTree) tree).getName().toString().toLowerCase(Locale.ROOT));
            case INHERIT_DOC, COMMENT, DOC_ROOT -> {
                // Says nothing by itself.
            }
            default -> add(style, tree.toString());
        }
    }

    private void add(Style as, String words) {
        if (verbatim) {
            code.append(words);
        } else {
            line.add(new Span(as, words, address));
        }
    }

    private void link(LinkTree link) {
        String label = link.getLabel().stream()
                .map(part ->
                        part instanceof LiteralTree literal ? literal.getBody().getBody() : part.toString())
                .collect(Collectors.joining());
        String name = link.getReference() == null ? "" : link.getReference().getSignature();
        add(Style.CODE, label.isBlank() ? name.replaceFirst("^#", "").replace('#', '.') : label);
    }

    private void value(ValueTree value) {
        String name = value.getReference() == null ? "" : value.getReference().getSignature();
        add(style, constants.apply(name.substring(name.indexOf('#') + 1)));
    }

    private void start(StartElementTree element) {
        switch (element.getName().toString().toLowerCase(Locale.ROOT)) {
            case "p", "br", "div", "h1", "h2", "h3", "h4", "h5", "h6", "dt", "dd", "blockquote" -> endBlock();
            case "pre" -> {
                endBlock();
                verbatim = true;
            }
            case "ul", "ol" -> {
                endBlock();
                items = new ArrayList<>();
            }
            case "li" -> endItem();
            case "table" -> {
                endBlock();
                rows = new ArrayList<>();
            }
            case "tr" -> {
                if (rows != null) {
                    line = new ArrayList<>();
                    rows.add(new ArrayList<>());
                }
            }
            case "td", "th" -> endCell();
            case "b", "strong" -> style = Style.STRONG;
            case "em", "i" -> style = Style.EMPHASIS;
            case "code", "tt" -> style = Style.CODE;
            case "a" -> address = webAddress(element);
            default -> {
                // The words inside are kept.
            }
        }
    }

    private void end(String name) {
        switch (name) {
            case "p", "div", "h1", "h2", "h3", "h4", "h5", "h6", "dt", "dd", "blockquote", "pre" -> endBlock();
            case "li" -> endItem();
            case "ul", "ol" -> {
                endItem();
                if (items != null && !items.isEmpty()) {
                    blocks.add(new DocPage.Items(items));
                }
                items = null;
            }
            case "td", "th", "tr" -> endCell();
            case "table" -> {
                endCell();
                if (rows != null) {
                    rows.removeIf(List::isEmpty);
                    blocks.add(new DocPage.Rows(rows));
                }
                rows = null;
            }
            case "b", "strong", "em", "i", "code", "tt" -> style = Style.WORDS;
            case "a" -> address = null;
            default -> {
                // Nothing was begun with it.
            }
        }
    }

    private void endBlock() {
        if (verbatim) {
            // A comment has a blank after the star of each line; that of the first is gone already.
            String lines = code.toString().strip().replace("\n ", "\n");
            if (!lines.isEmpty()) {
                blocks.add(new DocPage.Code(lines));
            }
            code.setLength(0);
            verbatim = false;
        } else if (items != null && !items.isEmpty() || rows != null && !rows.isEmpty()) {
            line.add(Span.words(" ")); // A paragraph inside an item or a cell.
        } else {
            List<Span> words = tidy(line);
            if (!words.isEmpty()) {
                blocks.add(new DocPage.Paragraph(words));
            }
            line = new ArrayList<>();
        }
    }

    private void endItem() {
        List<Span> words = tidy(line);
        if (items != null && !words.isEmpty()) {
            items.add(words);
            line = new ArrayList<>();
        }
    }

    private void endCell() {
        List<Span> words = tidy(line);
        if (rows != null && !rows.isEmpty() && !words.isEmpty()) {
            rows.get(rows.size() - 1).add(words);
            line = new ArrayList<>();
        }
    }

    /** Makes every run of blanks one space, and none at the ends. */
    private static List<Span> tidy(List<Span> spans) {
        List<Span> tidy = new ArrayList<>();
        boolean blank = true;
        for (Span span : spans) {
            String text = span.text().replaceAll("[ \\t\\r\\n]+", " ");
            text = blank && text.startsWith(" ") ? text.substring(1) : text;
            if (!text.isEmpty()) {
                blank = text.endsWith(" ");
                tidy.add(new Span(span.style(), text, span.address()));
            }
        }
        if (!tidy.isEmpty()) {
            Span last = tidy.remove(tidy.size() - 1);
            String text = last.text().stripTrailing();
            if (!text.isEmpty()) {
                tidy.add(new Span(last.style(), text, last.address()));
            }
        }
        return tidy;
    }

    /** Only what leads to a page is a link; a script, say, is not. */
    private static @Nullable String webAddress(StartElementTree element) {
        return element.getAttributes().stream()
                .filter(AttributeTree.class::isInstance)
                .map(AttributeTree.class::cast)
                .filter(attribute -> attribute.getName().toString().equalsIgnoreCase("href"))
                .map(attribute -> attribute.getValue() == null
                        ? ""
                        : attribute.getValue().stream().map(DocTree::toString).collect(Collectors.joining()))
                .filter(target -> target.startsWith("https://") || target.startsWith("http://"))
                .findFirst()
                .orElse(null);
    }

    private static String character(String entity) {
        String known = ENTITIES.get(entity);
        if (known != null) {
            return known;
        }
        try {
            if (entity.startsWith("#x") || entity.startsWith("#X")) {
                return Character.toString(Integer.parseInt(entity.substring(2), 16));
            }
            if (entity.startsWith("#")) {
                return Character.toString(Integer.parseInt(entity.substring(1)));
            }
        } catch (IllegalArgumentException e) {
            return "&" + entity + ";"; // No such character; as written, then.
        }
        return "&" + entity + ";";
    }
}
