package parchment.kernel;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Documentation;
import org.jspecify.annotations.Nullable;
import parchment.display.Html;

/** Says what the name at the cursor is: its signatures, and the documentation where sources are on the class path. */
final class Inspection {
    private static final Pattern WORD_END = Pattern.compile("^[\\w$]*");

    private Inspection() {}

    static @Nullable Shown at(SourceCodeAnalysis analysis, String code, int cursor) {
        int end = Math.max(0, Math.min(cursor, code.length()));
        Matcher rest = WORD_END.matcher(code.substring(end));
        if (rest.find()) {
            end += rest.end();
        }
        int begin = Completions.statementStart(analysis, code, end);
        String statement = code.substring(begin, end);
        List<Documentation> found = analysis.documentation(statement, statement.length(), true);
        if (found.isEmpty()) {
            // A method is documented from inside its brackets on.
            found = analysis.documentation(statement + "(", statement.length() + 1, true);
        }
        if (found.isEmpty()) {
            return null;
        }
        String text = found.stream().map(Inspection::text).distinct().collect(Collectors.joining("\n\n"));
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(Shown.TEXT, text);
        forms.put(Shown.HTML, "<pre>" + Html.escape(text) + "</pre>");
        return new Shown(forms);
    }

    private static String text(Documentation documentation) {
        String javadoc = documentation.javadoc();
        return javadoc == null || javadoc.isBlank()
                ? documentation.signature()
                : documentation.signature() + "\n\n" + javadoc.strip();
    }
}
