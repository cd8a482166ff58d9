package parchment.kernel;

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

class ImportsTest {

    @Test
    void findsTheRoomsOfTheLibraryAndNothingElse() {
        Set<String> rooms = Imports.rooms().keySet();
        assertTrue(rooms.containsAll(Set.of("quantity", "display")), rooms.toString());
        assertFalse(rooms.contains("kernel"), rooms.toString());
    }

    @Test
    void leavesNoPublicTypeThatACellCouldNotName() throws ClassNotFoundException {
        Map<String, List<String>> homes = new TreeMap<>();
        for (var room : Imports.rooms().entrySet()) {
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
        List<String> declarations = Imports.declarations();
        assertEquals(declarations.size(), Set.copyOf(declarations).size());
        assertTrue(declarations.contains("import parchment.align.Clock;"), "a Clock of Java's own would hide it");
    }
}
