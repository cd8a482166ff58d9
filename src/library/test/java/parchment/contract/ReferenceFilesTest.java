package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every file of outside numbers says where it comes from, and under terms that go with this project's own. */
class ReferenceFilesTest {
    private static final Path REFERENCE = Path.of("library", "test", "resources", "reference");
    /** Version 2 of that licence and no other: it may not be given on under version 3. */
    private static final Pattern SECOND_ALONE =
            Pattern.compile("GPL-2(?!\\.0-or-later)(?! or later)(?! or GPL-3)(?! \\| GPL-3)");

    static List<Path> folders() throws IOException {
        try (Stream<Path> folders = Files.list(REFERENCE)) {
            return folders.sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("folders")
    void eachFolderSaysWhereItsFilesComeFrom(Path folder) throws IOException {
        String told = told(folder);
        assertFalse(told.isBlank(), folder + " has no README.md, no SOURCE.md, and files without a line \"# Source\"");
        assertFalse(SECOND_ALONE.matcher(told).find(), folder + " holds a file under GPL-2 alone: " + told);
    }

    @Test
    void theLicenceThatDoesNotFitIsTold() {
        assertTrue(SECOND_ALONE.matcher("from a package (GPL-2)").find());
        assertFalse(SECOND_ALONE.matcher("from a package (GPL-2 or later)").find());
        assertFalse(SECOND_ALONE.matcher("GPL-2 | GPL-3, GPL-2 or GPL-3").find());
    }

    /** What the folder's page says, or the first lines of its files. */
    private static String told(Path folder) throws IOException {
        for (String name : List.of("README.md", "SOURCE.md")) {
            if (Files.exists(folder.resolve(name))) {
                return Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
            }
        }
        StringBuilder heads = new StringBuilder();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.sorted().toList()) {
                String head = Files.readAllLines(file, StandardCharsets.UTF_8).stream()
                        .takeWhile(line -> line.startsWith("#"))
                        .collect(Collectors.joining("\n"));
                if (!head.contains("Source") && Files.notExists(folder.resolve("fit.R"))) {
                    return "";
                }
                heads.append(head);
            }
        }
        return heads.toString();
    }

    /** The page that answers for the sources names only tests that there are. */
    @Test
    void thePageOfSourcesNamesTestsThatThereAre() throws IOException {
        String page = Files.readString(Path.of("..", "docs", "measurements", "sources.md"), StandardCharsets.UTF_8);
        Set<String> missing = new TreeSet<>();
        Matcher named = Pattern.compile("`([A-Z][A-Za-z]+Test)`").matcher(page);
        int count = 0;
        while (named.find()) {
            count++;
            if (testFiles().stream().noneMatch((named.group(1) + ".java")::equals)) {
                missing.add(named.group(1));
            }
        }
        assertTrue(count >= 14, "named tests: " + count);
        assertEquals(Set.of(), missing);
    }

    private static Set<String> testFiles() throws IOException {
        try (Stream<Path> library = Files.walk(Path.of("library", "test", "java"));
                Stream<Path> roastery = Files.walk(Path.of("roastery", "test", "java"))) {
            return Stream.concat(library, roastery)
                    .map(file -> file.getFileName().toString())
                    .collect(Collectors.toSet());
        }
    }
}
