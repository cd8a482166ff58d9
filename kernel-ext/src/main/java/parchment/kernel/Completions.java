package parchment.kernel;

import java.util.List;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Suggestion;

/**
 * What could stand at the cursor.
 *
 * @param matches what to put in place of the characters between start and end; those that fit the type needed come first
 * @param start first character to replace
 * @param end character after the last to replace
 */
public record Completions(List<String> matches, int start, int end) {
    public Completions {
        matches = List.copyOf(matches);
    }

    static Completions at(SourceCodeAnalysis analysis, String code, int cursor) {
        int begin = statementStart(analysis, code, cursor);
        Completions alone = in(analysis, "", code.substring(begin, cursor), begin, cursor);
        if (begin == 0 || !alone.matches().isEmpty()) {
            return alone;
        }
        // The statements before it have not run, so their variables are known only if the cell is read as one block.
        return in(analysis, "{", code.substring(0, cursor), 0, cursor);
    }

    private static Completions in(SourceCodeAnalysis analysis, String lead, String text, int offset, int cursor) {
        int[] anchor = new int[1];
        List<String> matches =
                analysis.completionSuggestions(lead + text, lead.length() + text.length(), anchor).stream()
                        .sorted((a, b) -> Boolean.compare(b.matchesType(), a.matchesType()))
                        .map(Suggestion::continuation)
                        .filter(name -> !name.startsWith("$"))
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
