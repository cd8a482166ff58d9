package parchment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

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

    /** Returns the names that a page's headings are linked by: small letters and dashes, a number after a name that comes again. */
    private static Set<String> headings(Path page) throws IOException {
        Set<String> names = new HashSet<>();
        Map<String, Integer> seen = new HashMap<>();
        for (String line : Pattern.compile("(?ms)^ *```.*?^ *```")
                .matcher(Files.readString(page))
                .replaceAll("")
                .split("\n")) {
            if (line.matches("#{1,6} .*")) {
                String name = line.replaceFirst("#+ ", "")
                        .strip()
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[^\\p{L}\\p{N} _-]", "")
                        .replace(' ', '-');
                int times = seen.merge(name, 1, Integer::sum);
                names.add(times == 1 ? name : name + "-" + (times - 1));
            }
        }
        return names;
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
    void theContentsNameEveryPage() throws IOException {
        String contents = Files.readString(HOME.resolve("docs").resolve("README.md"));
        for (Path page : pages()) {
            String name = HOME.resolve("docs").relativize(page).toString().replace('\\', '/');
            if (!name.equals("README.md") && !name.equals("../CHANGES.md")) {
                assertTrue(contents.contains("](" + name + ")"), "docs/README.md does not name " + name);
            }
        }
    }
}
