package parchment.notebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import parchment.display.Html;
import parchment.kernel.CellPage;
import parchment.kernel.Shown;

/**
 * One self-contained HTML page of a notebook: text, code and outputs, readable on a light and on a dark screen and in print, with
 * nothing loaded from anywhere. Text from the notebook's markdown is shown as written: raw HTML in it is escaped.
 */
public final class HtmlPage {
    private static final List<TablesExtension> TABLES = List.of((TablesExtension) TablesExtension.create());
    private static final Parser MARKDOWN = Parser.builder().extensions(TABLES).build();
    private static final HtmlRenderer RENDERER = HtmlRenderer.builder()
            .extensions(TABLES)
            .escapeHtml(true)
            .nodeRendererFactory(ImagesAsWords::new)
            .sanitizeUrls(true)
            .build();
    /** Colour and cursor codes that programs for terminals print. */
    private static final Pattern TERMINAL_CODES = Pattern.compile("\u001b\\[[0-9;?]*[A-Za-z]");

    private HtmlPage() {}

    /** Returns the page; {@code name} is its title if the notebook has no heading. */
    public static String of(Notebook notebook, String name) {
        StringBuilder body = new StringBuilder();
        int number = 0;
        for (Cell cell : notebook.cells()) {
            switch (cell.kind()) {
                case MARKDOWN ->
                    body.append("<section class=\"words\">\n")
                            .append(RENDERER.render(MARKDOWN.parse(cell.source())))
                            .append("</section>\n");
                case CODE -> {
                    if (!cell.source().isBlank()) {
                        number++;
                        code(cell, number, body);
                    }
                }
                case RAW ->
                    body.append("<pre class=\"raw\">")
                            .append(Html.escape(cell.source()))
                            .append("</pre>\n");
            }
        }
        return template()
                .replace("@LANGUAGE@", Html.escape(notebook.language()))
                .replace("@TITLE@", Html.escape(notebook.title(name)))
                .replace("@BODY@", body);
    }

    private static void code(Cell cell, int number, StringBuilder body) {
        body.append("<section class=\"cell\" aria-label=\"Cell ").append(number).append("\">\n");
        body.append("<pre class=\"code\"><span class=\"number\" aria-hidden=\"true\">")
                .append(number)
                .append("</span><code>")
                .append(CodeColours.html(cell.source().stripTrailing()))
                .append("</code></pre>\n");
        for (CellOutput output : cell.outputs()) {
            output(output, body);
        }
        body.append("</section>\n");
    }

    private static void output(CellOutput output, StringBuilder body) {
        if (output instanceof CellOutput.Printed printed) {
            String kind = printed.stream() == CellPage.Stream.STDERR ? "printed err" : "printed";
            pre(kind, printed.text(), body);
        } else if (output instanceof CellOutput.Failed failed) {
            body.append("<div role=\"alert\">");
            pre("error", failed.error().text(), body);
            body.append("</div>\n");
        } else if (output instanceof CellOutput.Display display) {
            shown(display.shown(), body);
        } else if (output instanceof CellOutput.Result result) {
            shown(result.shown(), body);
        }
    }

    private static void shown(Shown shown, StringBuilder body) {
        String html = shown.forms().get(Shown.HTML);
        String svg = shown.forms().get(Shown.SVG);
        String png = shown.forms().get("image/png");
        if (html != null) {
            body.append("<div class=\"output\">").append(html).append("</div>\n");
        } else if (svg != null) {
            body.append("<figure class=\"output\" role=\"img\" aria-label=\"")
                    .append(Html.escape(shown.text()))
                    .append("\">")
                    .append(svg)
                    .append("</figure>\n");
        } else if (png != null) {
            body.append("<figure class=\"output\"><img alt=\"")
                    .append(Html.escape(shown.text()))
                    .append("\" src=\"data:image/png;base64,")
                    .append(Html.escape(png.replaceAll("\\s", "")))
                    .append("\"></figure>\n");
        } else {
            pre("output text", shown.text(), body);
        }
    }

    private static void pre(String kind, String text, StringBuilder body) {
        String plain = TERMINAL_CODES.matcher(text).replaceAll("");
        body.append("<pre class=\"")
                .append(kind)
                .append("\" tabindex=\"0\">")
                .append(Html.escape(plain))
                .append("</pre>\n");
    }

    private static String template() {
        try (InputStream in = HtmlPage.class.getResourceAsStream("page.html")) {
            if (in == null) {
                throw new IllegalStateException("The page template is missing from the jar.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
