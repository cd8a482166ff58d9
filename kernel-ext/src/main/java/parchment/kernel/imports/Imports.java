package parchment.kernel.imports;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.SortedMap;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a cell finds imported without a line of its own: the rooms of the library, and of Java what a beginner's cell uses.
 *
 * <p>JShell takes some milliseconds for each import, so that a session begins with none: an import is made when a cell first has a
 * name that needs it, and the rest while the session idles. To the cells it is as if all had been there from the start.
 *
 * <p>A library type named as one of Java's (a Clock, say), or as one that it builds on, is imported by its name, which in Java goes
 * before a whole package.
 */
final class Imports {
    private static final List<String> JAVA = List.of(
            "java.util",
            "java.util.stream",
            "java.util.function",
            "java.time",
            "java.nio.file",
            "java.io",
            "java.math",
            "java.util.concurrent",
            "java.util.regex",
            "java.net",
            "java.util.prefs");

    /** Rooms that others build on: where one of the others has a type of the same name, a cell means that one. */
    static final Set<String> FOUNDATIONS = Set.of("quantity", "stats", "chart", "display", "curve");

    /** The room and class whose static methods read as words in a cell: {@code dropTemperature()}. */
    private static final String WORDS_ROOM = "feature";

    private static final String WORDS = "Features";

    private static final Pattern NAME = Pattern.compile("(?<![\\w$])[A-Z][\\w$]*");
    /** A call of a method that stands alone; a bracket behind a word of Java's own, as of a loop, is none. */
    private static final Pattern BARE_CALL = Pattern.compile(
            "(?<![.\\w$])"
                    + "(?!(?:for|if|while|switch|case|catch|try|synchronized|return|throw|yield|assert|this|super)\\b)[a-z][\\w$]*\\s*\\(");

    private static final Pattern OWN_TYPE = Pattern.compile("\\b(?:class|record|interface|enum)\\s+([A-Z][\\w$]*)");

    private final SortedMap<String, Set<String>> rooms = Rooms.typesForNotebooks();
    private final Set<String> made = new LinkedHashSet<>();
    private final Set<String> seen = new LinkedHashSet<>();
    private final Set<String> own = new LinkedHashSet<>();
    private final Set<String> closed = new LinkedHashSet<>();
    private @Nullable Queue<String> queue;

    /** Returns the names of the types that the code declares itself. */
    static List<String> typesDeclaredIn(String code) {
        return OWN_TYPE.matcher(code).results().map(match -> match.group(1)).toList();
    }

    /** Leaves a name to the reader from now on. */
    void leave(String name) {
        own.add(name);
    }

    /** Takes a name back that was left to the reader, who had no use for it. */
    void takeBack(String name) {
        own.remove(name);
        seen.remove(name);
        made.removeIf(declaration -> declaration.endsWith("." + name + ";"));
        queue = null;
    }

    /** Returns the rooms that have a public type of that name. */
    List<String> roomsOf(String name) {
        return rooms.entrySet().stream()
                .filter(room -> room.getValue().contains(name))
                .map(Map.Entry::getKey)
                .filter(room -> isPublic("parchment." + room + "." + name))
                .toList();
    }

    /** Imports no room as a whole any more, but each of its types when a name first needs it; returns the import that is in the way. */
    String close(String room) {
        closed.add(room);
        seen.clear();
        return "parchment." + room + ".*";
    }

    /** Tells whether a name is Java's own and imported for every session. */
    static boolean isOfJava(String name) {
        return JAVA.stream().anyMatch(place -> JavaTypeNames.isOne(place + "." + name));
    }

    /** Tells whether a package of Java is imported for every session. */
    static boolean isPlaceOfJava(String place) {
        return JAVA.contains(place);
    }

    /** Tells whether a name reads as a word of ours in a cell. */
    boolean isWord(String name) {
        try {
            return hasWords()
                    && Arrays.stream(Class.forName("parchment." + WORDS_ROOM + "." + WORDS)
                                    .getMethods())
                            .anyMatch(method -> method.getName().equals(name));
        } catch (ClassNotFoundException | LinkageError e) {
            return false;
        }
    }

    /** Returns the imports that the code needs and that have not been returned before. */
    List<String> neededBy(String code) {
        own.addAll(typesDeclaredIn(code));
        if (queue != null && queue.isEmpty() && closed.isEmpty()) {
            return List.of(); // Everything is there.
        }
        List<String> needed = new ArrayList<>();
        NAME.matcher(code).results().map(MatchResult::group).filter(seen::add).forEach(name -> byName(name, needed));
        if (hasWords() && BARE_CALL.matcher(code).find()) {
            needed.add(wordsImport());
        }
        needed.removeIf(declaration -> !made.add(declaration));
        return needed;
    }

    /** Returns one more import that has not been returned before, or null once there is none. */
    @Nullable
    String next() {
        if (queue == null) {
            queue = new ArrayDeque<>(declarations());
        }
        for (String declaration = queue.poll(); declaration != null; declaration = queue.poll()) {
            String candidate = declaration;
            boolean hidden = own.stream().anyMatch(type -> candidate.endsWith("." + type + ";"))
                    || closed.stream().anyMatch(room -> candidate.equals(whole(room)));
            if (!hidden && made.add(candidate)) {
                return candidate;
            }
        }
        return null;
    }

    /** Returns all imports. */
    List<String> declarations() {
        List<String> imports = new ArrayList<>();
        JAVA.forEach(name -> imports.add("import " + name + ".*;"));
        rooms.keySet().forEach(room -> imports.add(whole(room)));
        rooms.forEach((room, types) -> types.stream()
                .filter(type -> goesByName(room, type, JavaTypeNames::isListed))
                .forEach(type -> imports.add(single(room, type))));
        if (hasWords()) {
            imports.add(wordsImport());
        }
        return imports;
    }

    private void byName(String name, List<String> needed) {
        JAVA.stream()
                .filter(place -> JavaTypeNames.isOne(place + "." + name))
                .forEach(place -> needed.add("import " + place + ".*;"));
        rooms.forEach((room, types) -> {
            if (types.contains(name)) {
                boolean alone = closed.contains(room);
                if (!alone) {
                    needed.add(whole(room));
                }
                if ((goesByName(room, name, JavaTypeNames::isOne) || alone && isMeant(room, name))
                        && !own.contains(name)) {
                    needed.add(single(room, name));
                }
            }
        });
    }

    /** Tells whether a cell that names a type means the one of that room. */
    private boolean isMeant(String room, String name) {
        List<String> having = roomsOf(name);
        return having.contains(room) && (having.size() == 1 || !FOUNDATIONS.contains(room));
    }

    private boolean goesByName(String room, String type, Predicate<String> isJava) {
        boolean hidden = isJava.test("java.lang." + type)
                || JAVA.stream().anyMatch(place -> isJava.test(place + "." + type))
                || !FOUNDATIONS.contains(room)
                        && FOUNDATIONS.stream()
                                .anyMatch(below ->
                                        rooms.getOrDefault(below, Set.of()).contains(type));
        return hidden && isPublic("parchment." + room + "." + type);
    }

    private static boolean isPublic(String name) {
        try {
            Class<?> type = Class.forName(name, false, Imports.class.getClassLoader());
            return java.lang.reflect.Modifier.isPublic(type.getModifiers());
        } catch (ClassNotFoundException | LinkageError e) {
            return false;
        }
    }

    private boolean hasWords() {
        return rooms.getOrDefault(WORDS_ROOM, Set.of()).contains(WORDS);
    }

    private static String wordsImport() {
        return "import static parchment." + WORDS_ROOM + "." + WORDS + ".*;";
    }

    private static String whole(String room) {
        return "import parchment." + room + ".*;";
    }

    private static String single(String room, String type) {
        return "import parchment." + room + "." + type + ";";
    }
}
