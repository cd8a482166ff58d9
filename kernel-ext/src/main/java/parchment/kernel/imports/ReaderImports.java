package parchment.kernel.imports;

import java.lang.reflect.Member;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What a reader has imported, from which places a name of a cell comes then. A name that they import by itself goes before whole packages, as in Java;
 * of two packages that have it, the later is asked first.
 */
public final class ReaderImports {
    private static final Pattern COMMENT = Pattern.compile("//[^\\n]*|/\\*.*?\\*/", Pattern.DOTALL);
    private static final Pattern IMPORT =
            Pattern.compile("^\\s*import\\s+(static\\s+)?([\\w.$]+?)\\.(\\*|[\\w$]+)\\s*;?\\s*$");
    private static final Pattern TYPE = Pattern.compile("(?<![\\w$])[A-Z][\\w$]*");
    private static final Pattern CALL = Pattern.compile("(?<![.\\w$])([a-z][\\w$]*)\\s*\\(");

    /** What a declaration imports: everything in a place, or one name of it. */
    public record Declared(boolean isStatic, String place, String name) {
        boolean isWhole() {
            return name.equals("*");
        }

        String code() {
            return "import " + (isStatic ? "static " : "") + place + "." + name + ";";
        }
    }

    private final List<Declared> whole = new ArrayList<>();
    private final Set<String> byName = new HashSet<>();

    /** Returns what a snippet imports, if it is an import. */
    public static Optional<Declared> in(String snippet) {
        Matcher matcher = IMPORT.matcher(COMMENT.matcher(snippet).replaceAll(" "));
        return matcher.matches()
                ? Optional.of(new Declared(matcher.group(1) != null, matcher.group(2), matcher.group(3)))
                : Optional.empty();
    }

    /** Tells whether the reader has imported nothing that could stand in the way of ours. */
    boolean areNone() {
        return whole.isEmpty();
    }

    /** Takes note of an import of the reader's. */
    void add(Declared declared) {
        if (declared.isWhole()) {
            whole.remove(declared);
            whole.add(declared);
        } else {
            byName.add(declared.name());
        }
    }

    /** Takes note of a type that a cell declares: its name means nothing else from then on. */
    void addType(String name) {
        byName.add(name);
    }

    /** Tells whether the reader has imported everything in a place. */
    boolean hasWhole(String place) {
        return whole.stream().anyMatch(declared -> declared.place().equals(place));
    }

    /** Returns the names in the code that may come of whole packages and classes. */
    List<String> namesIn(String code) {
        Stream<String> types = TYPE.matcher(code).results().map(MatchResult::group);
        Stream<String> calls = whole.stream().noneMatch(Declared::isStatic)
                ? Stream.empty()
                : CALL.matcher(code).results().map(match -> match.group(1));
        return Stream.concat(types, calls)
                .distinct()
                .filter(name -> !byName.contains(name))
                .toList();
    }

    /**
     * Returns the import that a name comes of, as it would be written for this name alone; nothing if it comes of none.
     *
     * @param loader finds the reader's classes
     */
    Optional<Declared> of(String name, ClassLoader loader) {
        for (int i = whole.size() - 1; i >= 0; i--) {
            Declared from = whole.get(i);
            if (Character.isUpperCase(name.charAt(0)) && isPublicType(from.place() + "." + name, loader)) {
                return Optional.of(new Declared(false, from.place(), name));
            }
            if (from.isStatic() && hasStatic(from.place(), name, loader)) {
                return Optional.of(new Declared(true, from.place(), name));
            }
        }
        return Optional.empty();
    }

    private static boolean isPublicType(String name, ClassLoader loader) {
        return load(name, loader)
                .filter(type -> Modifier.isPublic(type.getModifiers()))
                .isPresent();
    }

    private static boolean hasStatic(String type, String name, ClassLoader loader) {
        return load(type, loader).stream()
                .flatMap(found ->
                        Stream.<Member>concat(Arrays.stream(found.getMethods()), Arrays.stream(found.getFields())))
                .anyMatch(member -> member.getName().equals(name) && Modifier.isStatic(member.getModifiers()));
    }

    /** Finds a class by its name as Java code has it, in which one class within another follows a dot too. */
    private static Optional<Class<?>> load(String name, ClassLoader loader) {
        String binary = name;
        while (true) {
            try {
                return Optional.of(Class.forName(binary, false, loader));
            } catch (ClassNotFoundException | LinkageError e) {
                int dot = binary.lastIndexOf('.');
                if (dot < 0 || !Character.isUpperCase(binary.charAt(binary.lastIndexOf('.', dot - 1) + 1))) {
                    return Optional.empty();
                }
                binary = binary.substring(0, dot) + "$" + binary.substring(dot + 1);
            }
        }
    }
}
