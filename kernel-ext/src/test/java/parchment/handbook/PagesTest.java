package parchment.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import parchment.notebook.Markdown;

/** Holds the pages of the handbook together: where a link leads, and what a picture says to those who do not see it. */
class PagesTest {
    private static final Path HOME = Path.of("..").toAbsolutePath().normalize();
    private static final Pattern LINK =
            Pattern.compile("(!?)\\[((?:[^\\[\\]]|\\[[^\\]]*\\])*)\\]\\(([^()\\s]*(?:\\([^()]*\\))?[^()\\s]*)\\)");
    private static final Pattern CODE = Pattern.compile("(?ms)^ *```.*?^ *```|`+[^`\n]*`+");

    private static List<Path> pages() throws IOException {
        List<Path> pages = new ArrayList<>(
                List.of(HOME.resolve("README.md"), HOME.resolve("DEVELOPERS.md"), HOME.resolve("CHANGES.md")));
        try (Stream<Path> docs = Files.walk(HOME.resolve("docs"))) {
            docs.filter(page -> page.toString().endsWith(".md")).sorted().forEach(pages::add);
        }
        return pages;
    }

    @Test
    void everyLinkLeadsToAPageAndAHeadingThatAreThere() throws IOException {
        List<String> broken = new ArrayList<>();
        int links = 0;
        for (Path page : pages()) {
            Matcher link = LINK.matcher(CODE.matcher(Files.readString(page)).replaceAll("code"));
            while (link.find()) {
                String target = link.group(3);
                if (target.matches("[a-z]+:.*")) {
                    continue;
                }
                links++;
                int hash = target.indexOf('#');
                Path file = hash == 0
                        ? page
                        : page.resolveSibling(hash < 0 ? target : target.substring(0, hash))
                                .normalize();
                if (!Files.exists(file)) {
                    broken.add(HOME.relativize(page) + ": " + target + ": no such file");
                } else if (hash >= 0 && !headings(file).contains(target.substring(hash + 1))) {
                    broken.add(
                            HOME.relativize(page) + ": " + target + ": no such heading; there are " + headings(file));
                }
            }
        }
        assertEquals(List.of(), broken);
        assertTrue(links > 100, links + " links found");
    }

    private static Collection<String> headings(Path page) throws IOException {
        return HeadingNames.of(Markdown.parse(Files.readString(page))).values();
    }

    @Test
    void headingsAreNamedAsTheSitesThatShowMarkdownNameThem() {
        String page = """
                # Files of another form
                ## `logbook.properties` : settings
                ## What it *does*, & [doesn't](elsewhere.md)
                ## Röstung, 2024 - 2025
                ## under_score
                ## again
                ### Again!
                ## ???
                ```
                # not a heading
                ```
                """;
        assertEquals(
                List.of(
                        "files-of-another-form",
                        "logbookproperties--settings",
                        "what-it-does--doesnt",
                        "röstung-2024---2025",
                        "under_score",
                        "again",
                        "again-1"),
                List.copyOf(HeadingNames.of(Markdown.parse(page)).values()));
    }

    @Test
    void everyPictureHasASentenceForThoseWhoDoNotSeeIt() throws IOException {
        int pictures = 0;
        for (Path page : pages()) {
            Matcher link = LINK.matcher(CODE.matcher(Files.readString(page)).replaceAll("code"));
            while (link.find()) {
                if (link.group(1).equals("!")) {
                    pictures++;
                    assertTrue(link.group(2).split(" ").length >= 6, page + ": " + link.group());
                }
            }
        }
        assertTrue(pictures > 0, "no picture found");
    }

    @Test
    void theContentsNameEveryPageOnce() throws IOException {
        Path docs = HOME.resolve("docs");
        List<String> listed = new ArrayList<>();
        Matcher link = LINK.matcher(
                CODE.matcher(Files.readString(docs.resolve("README.md"))).replaceAll("code"));
        while (link.find()) {
            listed.add(link.group(3));
        }
        List<String> expected = new ArrayList<>();
        for (Path page : pages()) {
            String name = docs.relativize(page).toString().replace('\\', '/');
            if (!name.equals("README.md") && !name.equals("../CHANGES.md")) {
                expected.add(name);
            }
        }
        assertEquals(
                expected.stream().sorted().toList(),
                listed.stream().sorted().toList(),
                "what docs/README.md should name, and what it names");
    }
}
