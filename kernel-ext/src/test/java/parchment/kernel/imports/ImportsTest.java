package parchment.kernel.imports;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ImportsTest {

    @Test
    void findsTheRoomsOfTheLibraryAndNothingElse() {
        Set<String> rooms = Rooms.types().keySet();
        assertTrue(rooms.containsAll(Set.of("quantity", "display")), rooms.toString());
        assertFalse(rooms.contains("kernel"), rooms.toString());
    }

    @Test
    void leavesBackRoomsAndWorkshopsToAnImportOfTheReaders() {
        Set<String> rooms = Rooms.types().keySet();
        for (String back : Set.of("file", "sheet", "chart", "period", "linear", "mixed", "physics")) {
            assertFalse(rooms.contains(back), rooms.toString());
        }
        assertTrue(rooms.containsAll(Set.of("stats", "virtual", "phase", "calendar")), rooms.toString());
        assertEquals(
                " It is for those who build on Parchment; write: `import parchment.stats.mixed.LinearMixedModel;`",
                Rooms.howToImport("LinearMixedModel"));
        assertEquals(
                " It is for those who build on Parchment; write: `import parchment.period.ProbePeriods;`",
                Rooms.howToImport("ProbePeriods"));
        assertEquals("", Rooms.howToImport("MixedSearch"), "not public");
        assertEquals("", Rooms.howToImport("PeriodOfMyOwn"));
    }

    @Test
    void leavesNoPublicTypeThatACellCouldNotName() throws ClassNotFoundException {
        Map<String, List<String>> homes = new TreeMap<>();
        for (var room : Rooms.types().entrySet()) {
            for (String type : room.getValue()) {
                Class<?> loaded = Class.forName(
                        "parchment." + room.getKey() + "." + type,
                        false,
                        getClass().getClassLoader());
                if (Modifier.isPublic(loaded.getModifiers())) {
                    homes.computeIfAbsent(type, t -> new ArrayList<>()).add(room.getKey());
                }
            }
        }
        homes.values()
                .removeIf(rooms -> rooms.size() == 1
                        || rooms.stream()
                                        .filter(room -> !Imports.FOUNDATIONS.contains(room))
                                        .count()
                                == 1);
        assertEquals(Map.of(), homes, "two rooms of equal standing have these");
    }

    @Test
    void namesEachTypeOnce() {
        List<String> declarations = new Imports().declarations();
        assertEquals(declarations.size(), Set.copyOf(declarations).size());
        assertTrue(declarations.contains("import parchment.align.Clock;"), "a Clock of Java's own would hide it");
    }

    @Test
    void makesAnImportWhenANameFirstNeedsIt() {
        Imports imports = new Imports();
        assertEquals(List.of(), imports.neededBy("1 + 1"));
        assertEquals(List.of("import java.util.*;"), imports.neededBy("List.of(1)"));
        assertEquals(List.of(), imports.neededBy("List.of(2)"));
        assertEquals(
                List.of("import parchment.align.*;", "import parchment.align.Clock;"),
                imports.neededBy("Clock.SINCE_CHARGE").stream()
                        .filter(declaration -> declaration.contains("parchment"))
                        .toList());
        assertEquals(List.of("import static parchment.feature.Features.*;"), imports.neededBy("dropTemperature()"));
    }

    @Test
    void takesTheBracketOfALoopForNoCall() {
        Imports imports = new Imports();
        String words = "import static parchment.feature.Features.*;";
        for (String code : List.of(
                "for (int i = 0; i < 3; i++) { }",
                "while(true) { }",
                "if (x > 1) { } else if (x > 0) { }",
                "switch (x) { default: }",
                "try { } catch (Throwable t) { }",
                "synchronized (this) { }",
                "a.b(1)",
                "return (x);")) {
            assertFalse(imports.neededBy(code).contains(words), code);
        }
        for (String code : List.of("forTheRecord(1)", "for (var d : dropTime()) { }", "iffy ()")) {
            assertTrue(new Imports().neededBy(code).contains(words), code);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "java.util.List",
                "java.util.Clock",
                "java.time.Clock",
                "java.lang.String",
                "java.lang.Roast",
                "java.util.prefs.Preferences",
                "java.util.Map$Entry",
                "java.util.stream",
                "java.net.URI",
                "harbour.none.Bean",
                "List"
            })
    void aTypeOfJavaIsFoundInTheListOfItsPackageAsByItsName(String name) {
        assertEquals(JavaTypeNames.isOne(name), JavaTypeNames.isListed(name));
    }

    @Test
    void leavesATypeOfTheCellsOwnAlone() {
        Imports imports = new Imports();
        assertFalse(imports.neededBy("record Clock(int hours) { }").contains("import parchment.align.Clock;"));
        for (String next = imports.next(); next != null; next = imports.next()) {
            assertFalse(next.equals("import parchment.align.Clock;"));
        }
    }
}
