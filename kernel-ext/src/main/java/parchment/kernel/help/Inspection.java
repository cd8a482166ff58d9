package parchment.kernel.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.lang.model.element.Element;
import jdk.jshell.JShell;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Documentation;
import org.jspecify.annotations.Nullable;
import parchment.kernel.help.DocPage.Block;
import parchment.kernel.page.Shown;
import parchment.kernel.source.Brackets;
import parchment.kernel.source.CellSplitter;

/**
 * Explains the name at the cursor: how it is written, what it means, its units, parameters, failures, and an example.
 *
 * <p>Between the brackets of a call, or in a text there, it is the method called. The words are those of the library's own sources.
 *
 * @param shell knows what the session has defined
 * @param splitter cuts a cell into its parts
 * @param classPath what cells are compiled against
 * @param values gives the present value of a variable of the session, or null
 */
public record Inspection(
        JShell shell, CellSplitter splitter, String classPath, Function<String, @Nullable Object> values) {
    private static final Pattern NAME_AHEAD = Pattern.compile("^[\\p{L}\\d_$]*");
    private static final Pattern NAME_BEHIND = Pattern.compile("[\\p{L}_$][\\p{L}\\d_$]*$");
    private static final Pattern CALLED = Pattern.compile("([\\p{L}_$][\\p{L}\\d_$]*)\\s*(?:<[^<>]*>)?\\s*$");

    /** Where a name stands in a cell. */
    private record Place(int begin, int end) {}

    /** Returns what is known of the name at the cursor, or null if it names nothing. */
    public @Nullable Shown at(String code, int cursor) {
        Place place = nameAt(code, Math.max(0, Math.min(cursor, code.length())));
        if (place == null) {
            return null;
        }
        String name = code.substring(place.begin(), place.end());
        CellUnit unit = CellUnit.of(shell, splitter, code, place.begin(), place.end());
        NameAtCursor read = NameAtCursor.read(unit, name, classPath);
        List<Element> meanings = read.meanings();
        if (!meanings.isEmpty() && !Documents.isJavas(meanings.get(0))) {
            return new Documents(read, values).page(meanings).shown();
        }
        return javas(shell.sourceCodeAnalysis(), code, place.end())
                .or(() -> meanings.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Documents(read, values).page(meanings).shown()))
                .orElse(null);
    }

    private static @Nullable Place nameAt(String code, int cursor) {
        CodePlace place = CodePlace.at(code, cursor);
        if (place.kind() == CodePlace.Kind.COMMENT) {
            return null;
        }
        if (place.kind() == CodePlace.Kind.CODE) {
            Matcher ahead = NAME_AHEAD.matcher(code.substring(cursor));
            int end = cursor + (ahead.find() ? ahead.end() : 0);
            Matcher behind = NAME_BEHIND.matcher(code.substring(0, end));
            if (behind.find()) {
                return new Place(behind.start(), end);
            }
        }
        int open = Brackets.innermostCall(code.substring(0, place.start()));
        Matcher called = open < 0 ? null : CALLED.matcher(code.substring(0, open));
        return called != null && called.find() ? new Place(called.start(1), called.end(1)) : null;
    }

    /** JShell knows the documentation of Java's own names, where Java's sources are installed. */
    private static Optional<Shown> javas(SourceCodeAnalysis analysis, String code, int end) {
        String statement = code.substring(Completions.statementStart(analysis, code, end), end);
        List<Documentation> found = analysis.documentation(statement, statement.length(), true);
        if (found.isEmpty()) {
            // A method is documented from inside its brackets on.
            found = analysis.documentation(statement + "(", statement.length() + 1, true);
        }
        List<Block> blocks = new ArrayList<>();
        for (Documentation documentation : found) {
            blocks.add(new DocPage.Signature(documentation.signature()));
            String javadoc = documentation.javadoc();
            if (javadoc != null && !javadoc.isBlank()) {
                blocks.addAll(Documents.ofComment(javadoc));
            }
        }
        return blocks.isEmpty() ? Optional.empty() : Optional.of(new DocPage(blocks).shown());
    }
}
