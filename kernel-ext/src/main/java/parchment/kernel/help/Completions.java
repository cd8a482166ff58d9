package parchment.kernel.help;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Suggestion;
import parchment.feature.Features;
import parchment.kernel.imports.Rooms;

/**
 * What could stand at the cursor.
 *
 * @param matches what to put in place of the characters between start and end: those that fit the type needed first, the library's
 *     before Java's, and what every value has last
 * @param start first character to replace
 * @param end character after the last to replace
 */
public record Completions(List<String> matches, int start, int end) {
    /** What every value has from Java and few cells need. */
    private static final Set<String> LAST = Stream.concat(
                    Arrays.stream(Object.class.getDeclaredMethods()).map(Method::getName),
                    Stream.of("class", "EnumDesc", "describeConstable"))
            .collect(Collectors.toUnmodifiableSet());

    private static final Comparator<Suggestion> ORDER = Comparator.comparing(
                    (Suggestion suggestion) -> LAST.contains(nameIn(suggestion)))
            .thenComparing(suggestion -> !suggestion.matchesType())
            .thenComparing(suggestion -> !OurNames.ALL.contains(nameIn(suggestion)));

    /** The names that cells begin with, found when somebody first completes one. */
    private static final class OurNames {
        static final Set<String> ALL = Stream.concat(
                        Rooms.typesForNotebooks().values().stream().flatMap(Set::stream),
                        Arrays.stream(Features.class.getMethods())
                                .filter(method -> Modifier.isStatic(method.getModifiers()))
                                .map(Method::getName))
                .collect(Collectors.toUnmodifiableSet());
    }

    public Completions {
        matches = List.copyOf(matches);
    }

    /**
     * Returns what could be written at the cursor.
     *
     * @param values gives what the session's variables hold; it is asked for inside a text only
     */
    public static Completions at(SourceCodeAnalysis analysis, Supplier<Stream<?>> values, String code, int cursor) {
        CodePlace place = CodePlace.at(code, cursor);
        if (place.kind() == CodePlace.Kind.COMMENT) {
            return new Completions(List.of(), cursor, cursor);
        }
        if (place.kind() == CodePlace.Kind.TEXT) {
            return TextCompletions.in(values.get(), code, place.start(), cursor);
        }
        int begin = statementStart(analysis, code, cursor);
        Completions alone = in(analysis, "", code.substring(begin, cursor), begin, cursor);
        if (begin == 0 || !alone.matches().isEmpty()) {
            return alone;
        }
        // The statements before it have not run, so their variables are known only if the cell is read as one block.
        return in(analysis, "{", code.substring(0, cursor), 0, cursor);
    }

    private static String nameIn(Suggestion suggestion) {
        String text = suggestion.continuation();
        int bracket = text.indexOf('(');
        return bracket < 0 ? text : text.substring(0, bracket);
    }

    private static Completions in(SourceCodeAnalysis analysis, String lead, String text, int offset, int cursor) {
        int[] anchor = new int[1];
        List<String> matches =
                analysis.completionSuggestions(lead + text, lead.length() + text.length(), anchor).stream()
                        .filter(suggestion -> !suggestion.continuation().startsWith("$"))
                        .sorted(ORDER)
                        .map(Suggestion::continuation)
                        .distinct()
                        .toList();
        int start = matches.isEmpty() ? cursor : offset + anchor[0] - lead.length();
        return new Completions(matches, start, cursor);
    }

    /** JShell completes one snippet, so what stands before the statement with the cursor is passed over. */
    static int statementStart(SourceCodeAnalysis analysis, String code, int cursor) {
        int begin = 0;
        while (begin < cursor) {
            String rest = code.substring(begin, cursor);
            var info = analysis.analyzeCompletion(rest);
            String remaining = info.remaining();
            if (!info.completeness().isComplete() || remaining.isBlank() || !rest.endsWith(remaining)) {
                break;
            }
            begin = cursor - remaining.length();
        }
        return begin;
    }
}
