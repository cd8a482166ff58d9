package parchment.notebook;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.display.Html;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;

/**
 * One self-contained HTML page of a notebook: text, code and outputs, readable on a light and on a dark screen and in print, with
 * nothing loaded from anywhere. Text from the notebook's markdown is shown as written: raw HTML in it is escaped.
 */
public final class HtmlPage {
    /** Colour and cursor codes that programs for terminals print. */
    private static final Pattern TERMINAL_CODES = Pattern.compile("\u001b\\[[0-9;?]*[A-Za-z]");

    /** Pictures that a browser draws, the sharpest first. */
    private static final List<String> DOTS = List.of("image/png", "image/webp", "image/gif", "image/jpeg");

    private HtmlPage() {}

    /** Returns the page; {@code name} is its title if the notebook has no heading. */
    public static String of(Notebook notebook, String name) {
        return of(notebook, name, List.of());
    }

    /** Returns the page with sentences at its foot, about the page as a whole. */
    public static String of(Notebook notebook, String name, List<String> foot) {
        StringBuilder body = new StringBuilder();
        int number = 0;
        for (Cell cell : notebook.cells()) {
            switch (cell.kind()) {
                case MARKDOWN ->
                    body.append("<section class=\"words\">\n")
                            .append(Markdown.html(Markdown.parse(cell.source())))
                            .append("</section>\n");
                case CODE -> {
                    if (!cell.source().isBlank()) {
                        number++;
                        code(cell, number, body);
                    }
                }
                case RAW ->
                    body.append("<pre class=\"raw\" tabindex=\"0\">")
                            .append(Html.escape(cell.source()))
                            .append("</pre>\n");
            }
        }
        if (!foot.isEmpty()) {
            body.append("<footer class=\"foot\">\n");
            foot.forEach(
                    sentence -> body.append("<p>").append(Html.escape(sentence)).append("</p>\n"));
            body.append("</footer>\n");
        }
        return Html.allowed(PageForm.filled(
                HtmlPage.class,
                Map.of(
                        "LANGUAGE", Html.escape(notebook.language()),
                        "TITLE", Html.escape(notebook.title(name)),
                        "BODY", body.toString())));
    }

    private static void code(Cell cell, int number, StringBuilder body) {
        body.append("<section class=\"cell\" aria-label=\"Cell ").append(number).append("\">\n");
        body.append("<pre class=\"code\" tabindex=\"0\"><span class=\"number\" aria-hidden=\"true\">")
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
        Optional<String> dots = DOTS.stream().filter(shown.forms()::containsKey).findFirst();
        String markdown = shown.forms().get("text/markdown");
        if (html != null) {
            body.append("<div class=\"output\">").append(html).append("</div>\n");
        } else if (svg != null) {
            body.append("<figure class=\"output\" role=\"img\" aria-label=\"")
                    .append(Html.escape(shown.text()))
                    .append("\">")
                    .append(svg)
                    .append("</figure>\n");
        } else if (dots.isPresent()) {
            body.append("<figure class=\"output\"><img alt=\"")
                    .append(Html.escape(shown.text()))
                    .append("\" src=\"data:")
                    .append(dots.get())
                    .append(";base64,")
                    .append(Html.escape(
                            shown.forms().getOrDefault(dots.get(), "").replaceAll("\\s", "")))
                    .append("\"></figure>\n");
        } else if (markdown != null) {
            body.append("<div class=\"output\">")
                    .append(Markdown.html(Markdown.parse(markdown)))
                    .append("</div>\n");
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
}
