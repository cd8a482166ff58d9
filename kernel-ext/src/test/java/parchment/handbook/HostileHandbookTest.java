package parchment.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static parchment.handbook.MadePages.all;
import static parchment.handbook.MadePages.assertLoadsNothing;
import static parchment.handbook.MadePages.body;
import static parchment.handbook.MadePages.broken;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Makes the handbook of somebody who means harm, or who links to what is not there. */
class HostileHandbookTest {
    private static Path write(Path folder, String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    @Test
    void whatIsNotInTheBookStaysAsItsWords(@TempDir Path temporary) throws IOException {
        Path home = temporary.resolve("hóme of pages");
        write(home, "LICENSE", "words");
        write(home, "src/Some.java", "class Some {}");
        write(temporary, "secret.md", "# Secret\n\ndo not show");
        write(temporary, "secret.svg", "<svg/>");
        write(home, "docs/other.md", "# Other\n\n## Heading\n\n[unlisted](unlisted.md)");
        write(home, "docs/unlisted.md", "# Unlisted\n");
        write(
                home,
                "docs/deep/folder/page.md",
                "# Deep\n\n[up](../../other.md#heading) [folder](..) [home](../../README.md)");
        write(home, "docs/README.md", """
                # Book

                ## Part

                [other](other.md), [other again](other.md#heading), [secret](../../secret.md), [deep](deep/folder/page.md),
                [licence](../LICENSE) [source](../src/Some.java) [none](none.md)
                [lost heading](other.md#lost) [lost here](#lost) [here](#part) [out](https://example.org/a?b=1&c=2)
                [absolute](/etc/hosts) [file](file:///etc/hosts)

                ![a picture that is not in the project](../../secret.svg)
                """);
        Map<String, String> book = Handbook.of(home).pages();
        assertEquals(List.of("index.html", "other.html", "deep/folder/page.html"), List.copyOf(book.keySet()));
        assertEquals(List.of(), broken(book));
        String contents = body(book.get("index.html"));
        assertEquals(
                List.of(
                        "other.html",
                        "other.html#heading",
                        "deep/folder/page.html",
                        "other.html",
                        "#part",
                        "https://example.org/a?b=1&amp;c=2"),
                all(contents, "a", "href"));
        for (String words : List.of("secret", "licence", "source", "none", "lost here", "absolute", "file")) {
            assertTrue(
                    Pattern.compile("[ \\n>]" + words + "[ ,\\n<]")
                            .matcher(contents)
                            .find(),
                    words + ": " + contents);
        }
        assertTrue(book.get("other.html").contains("<p>unlisted</p>"), "no page of the contents, so no link");
        assertTrue(contents.contains("<em>a picture that is not in the project</em>"), contents);
        assertFalse(String.join("", book.values()).contains("do not show"));
        assertEquals(
                List.of("../../other.html#heading", "../../index.html", "../../index.html"),
                all(body(book.get("deep/folder/page.html")), "a", "href"));
    }

    @Test
    void markupInAPageIsShownAsItIsWritten(@TempDir Path home) throws IOException {
        String script = "<script>alert(1)</script>";
        String image = "\"><img src=x onerror=alert(1)>";
        write(home, "docs/README.md", "# " + script + "\n\n## " + image + "\n\n[" + script + image + "](bad.md)\n");
        write(
                home,
                "docs/bad.md",
                String.join(
                        "\n\n",
                        "# " + script + " @WORDS@ @LIST@",
                        "## " + image,
                        script,
                        "in a line " + script + " and " + image,
                        "[words](javascript:alert(1)) [more](data:text/html,x) [x](JaVaScRiPt:alert(1)) <javascript:alert(1)>",
                        "[titled](other.md \"" + "x' onmouseover='alert(1)" + "\")",
                        "![" + script + "](https://example.org/x.png) ![" + image.replace("\"", "\\\"") + "](bad.svg)",
                        "```java\nvar s = \"" + script + "\"; // " + image + "\n```",
                        "```\" onclick=\"alert(1)\n" + script + "\n```",
                        "| " + script + " | b |\n| --- | --- |\n| " + image + " | <iframe src=x> |",
                        "<iframe src=\"https://example.org\"></iframe>",
                        "<style>body{display:none}</style>"));
        write(home, "docs/bad.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\">" + script + "</svg>");
        Map<String, String> book = Handbook.of(home).pages();
        assertEquals(2, book.size());
        assertEquals(List.of(), broken(book));
        book.forEach((file, html) -> {
            assertLoadsNothing(html, file);
            assertEquals(
                    List.of(),
                    all(html, "a", "href").stream()
                            .filter(address -> address.matches("(?i)(javascript|data):.*"))
                            .toList());
            all(html, "img", "src").forEach(address -> assertTrue(address.startsWith("data:image/"), address));
            assertTrue(html.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), html);
        });
        assertTrue(book.get("bad.html").contains("@WORDS@ @LIST@</h1>"), "a page's words are not taken for the form's");
        assertTrue(
                book.get("bad.html").contains("@WORDS@ @LIST@ - Parchment handbook</title>"),
                "a page's words are not taken for the form's");
    }
}
