package parchment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a cell may say stands in the front rooms, and a workshop serves its own room and those that the maintainer's page names. */
class FrontRoomsTest {
    private static final Path ROOT = Path.of("..");

    /** Rooms that only other rooms use: docs/decisions/0024. */
    private static final Set<String> BACK = Set.of("file", "sheet", "chart", "period");

    /** As many as somebody can learn in an afternoon; the number is the one that was set for it. */
    private static final int MOST = 130;

    /** Said by no cell, and in front all the same. */
    private static final Set<String> KEPT = Set.of(
            "LogbookFiles"); // the form of a logbook for rooms that write one: every part of it is this room's own

    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .withImportOption(location -> !location.contains("-tests.jar"))
            .importPackages("parchment");

    private static Stream<JavaClass> publicTypes() {
        return LIBRARY.stream()
                .filter(c -> c.getModifiers().contains(JavaModifier.PUBLIC))
                .filter(c -> c.isTopLevelClass() && !c.getSimpleName().equals("package-info"));
    }

    private static List<JavaClass> front() {
        return publicTypes()
                .filter(c -> c.getPackageName().split("\\.").length == 2)
                .filter(c -> !BACK.contains(roomOf(c)))
                .toList();
    }

    private static String roomOf(JavaClass type) {
        return type.getPackageName().split("\\.")[1];
    }

    private static String workshopOf(JavaClass type) {
        return type.getPackageName().substring("parchment.".length());
    }

    @Test
    void aFrontRoomHoldsOnlyWhatACellAPageOrAnotherFrontTypeNames() throws IOException {
        Set<String> said = saidToReaders();
        for (JavaClass type : front()) {
            for (JavaMethod method : type.getMethods()) {
                if (method.getModifiers().contains(JavaModifier.PUBLIC)) {
                    said.add(method.getRawReturnType().getSimpleName());
                    method.getReturnType().getAllInvolvedRawTypes().forEach(used -> said.add(used.getSimpleName()));
                    method.getParameterTypes()
                            .forEach(parameter ->
                                    parameter.getAllInvolvedRawTypes().forEach(used -> said.add(used.getSimpleName())));
                }
            }
            type.getAllRawSuperclasses().forEach(above -> said.add(above.getSimpleName()));
            type.getAllRawInterfaces().forEach(above -> said.add(above.getSimpleName()));
        }
        List<String> unsaid = front().stream()
                .filter(type -> !said.contains(type.getSimpleName()))
                .filter(type -> !KEPT.contains(type.getSimpleName()))
                .map(JavaClass::getName)
                .sorted()
                .toList();
        assertEquals(
                List.of(),
                unsaid,
                "in a front room, and named by no notebook, page or front type: docs/decisions/0024");
    }

    @Test
    void theFrontRoomsAreFewEnoughToLearn() {
        assertTrue(front().size() <= MOST, () -> front().size() + " types, of at most " + MOST);
        assertTrue(front().size() > MOST / 2, () -> front().size() + " types were found");
    }

    /** The table of the page is the list of what is allowed: a new user of a workshop is a line there, or the wrong place. */
    @Test
    void aWorkshopServesItsOwnRoomAndThoseThatThePageNames() throws IOException {
        SortedMap<String, SortedSetOfRooms> used = new TreeMap<>();
        for (JavaClass type : LIBRARY) {
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                JavaClass target = dependency.getTargetClass().getBaseComponentType();
                if (target.getPackageName().startsWith("parchment.")
                        && target.getPackageName().split("\\.").length > 2
                        && !roomOf(target).equals("stats")) {
                    SortedSetOfRooms rooms = used.computeIfAbsent(workshopOf(target), w -> new SortedSetOfRooms());
                    if (!roomOf(type).equals(roomOf(target))) {
                        rooms.add(roomOf(type));
                    }
                }
            }
        }
        SortedMap<String, String> found = new TreeMap<>();
        used.forEach((workshop, rooms) -> found.put(workshop, rooms.toString()));
        SortedMap<String, String> written = new TreeMap<>();
        Pattern row = Pattern.compile("\\| `([a-z]+\\.[a-z]+)` \\| .* \\| ([^|]*) \\|");
        for (String line :
                Files.readAllLines(ROOT.resolve("docs").resolve("architecture.md"), StandardCharsets.UTF_8)) {
            var cells = row.matcher(line);
            if (cells.matches()) {
                written.put(cells.group(1), cells.group(2));
            }
        }
        assertEquals(asText(found), asText(written));
    }

    private static String asText(SortedMap<String, String> rows) {
        return rows.entrySet().stream()
                .map(entry -> entry.getKey() + " | " + entry.getValue())
                .collect(Collectors.joining("\n"));
    }

    /** Rooms in the order of the alphabet, as the page writes them. */
    private static final class SortedSetOfRooms {
        private final TreeSet<String> rooms = new TreeSet<>();

        private void add(String room) {
            rooms.add(room);
        }

        @Override
        public String toString() {
            return rooms.isEmpty()
                    ? "-"
                    : rooms.stream().map(room -> "`" + room + "`").collect(Collectors.joining(", "));
        }
    }

    /** Returns every word with a capital that a notebook, a lesson or a page of the handbook holds. */
    private static Set<String> saidToReaders() throws IOException {
        Set<String> words = new TreeSet<>();
        List<Path> pages;
        try (Stream<Path> notebooks = Files.walk(ROOT.resolve("notebooks"));
                Stream<Path> docs = Files.list(ROOT.resolve("docs"))) {
            pages = Stream.concat(notebooks, docs)
                    .filter(file -> file.toString().matches(".*\\.(ipynb|txt|md)"))
                    .toList();
        }
        Pattern word = Pattern.compile("\\b[A-Z]\\w+");
        for (Path page : Stream.concat(pages.stream(), Stream.of(ROOT.resolve("README.md")))
                .toList()) {
            word.matcher(Files.readString(page, StandardCharsets.UTF_8))
                    .results()
                    .map(MatchResult::group)
                    .forEach(words::add);
        }
        assertTrue(words.containsAll(Arrays.asList("Logbook", "Evidence")), words.toString());
        return words;
    }
}
