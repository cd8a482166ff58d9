package parchment.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.Diag;
import jdk.jshell.SourceCodeAnalysis;

/** Says in plain words why a cell is not valid Java, where, and what was most likely meant. */
final class CompileErrors {
    static final String NAME = "Not valid Java";
    private static final int AT_MOST = 3;
    private static final Pattern SYMBOL = Pattern.compile("symbol:\\s+(\\w+) ([\\w$]+)(\\([^)]*\\))?");
    private static final Pattern LOCATION =
            Pattern.compile("location:\\s+(?:variable (\\w+) of type (\\S+)|(?:class|interface|enum) (\\S+))");
    private static final Pattern FOUND_REQUIRED =
            Pattern.compile("incompatible types: (.+) cannot be converted to (.+)");
    private static final Pattern SNIPPET_CLASS = Pattern.compile("(REPL\\.)?\\$JShell\\$\\w+\\.?");

    private static final Pattern PACKAGE = Pattern.compile("\\b(?:[a-z]\\w*\\.)+(?=[A-Z])");

    private static final Pattern NO_SUITABLE =
            Pattern.compile("no suitable (?:method|constructor) found for (\\w+)\\((.*)\\)");
    private static final Pattern TAKES =
            Pattern.compile("(?:method|constructor) [\\w.<>,]*\\((.*?)\\) is not applicable");
    private static final int MOST_FORMS = 4;

    private final SourceCodeAnalysis analysis;

    CompileErrors(SourceCodeAnalysis analysis) {
        this.analysis = analysis;
    }

    /** Explains the diagnostics of one part of a cell; at most three, since the first ones tend to cause the rest. */
    CellError explain(CellText cell, CellSplitter.Part part, List<Diag> diagnostics) {
        List<String> lines = new ArrayList<>();
        String first = "";
        for (Diag diagnostic :
                diagnostics.stream().filter(Diag::isError).limit(AT_MOST).toList()) {
            int place = place(part, diagnostic);
            String words = words(part.source(), diagnostic);
            if (first.isEmpty()) {
                first = "Line " + cell.line(place) + ": " + words;
            } else {
                lines.add("");
            }
            lines.addAll(cell.pointAt(place));
            lines.add(words);
        }
        if (lines.isEmpty()) {
            first = "Java did not accept this cell, and gave no reason.";
            lines.add(first);
        }
        return new CellError(NAME, first, lines);
    }

    /** Explains a cell that ends before what it began does. */
    static CellError unfinished(CellText cell, CellSplitter.Part part) {
        Brackets.Open open = Brackets.lastOpen(part.source());
        List<String> lines = new ArrayList<>();
        String words;
        if (open == null) {
            lines.add(cell.mark(cell.line(cell.code().stripTrailing().length())));
            words = "The cell ends in the middle of a statement.";
        } else {
            lines.addAll(cell.pointAt(part.offset() + open.offset()));
            words = "The " + open.what() + " opened here is never closed: " + open.closing() + " is missing.";
        }
        lines.add(words);
        return new CellError(NAME, words, lines);
    }

    /** Returns a sentence for each name that a method in the cell uses and that nobody has defined. */
    String notYet(String what, List<String> missing) {
        return "`" + what + "` is noted, but cannot be used yet: nothing here is named "
                + String.join(", ", missing.stream().map(CompileErrors::bare).toList()) + ".";
    }

    private static String bare(String dependency) {
        return "`" + dependency.replaceFirst("^(variable|method|class) ", "") + "`";
    }

    private static int place(CellSplitter.Part part, Diag diagnostic) {
        long position =
                diagnostic.getPosition() == Diag.NOPOS ? diagnostic.getStartPosition() : diagnostic.getPosition();
        return part.offset()
                + (int) Math.max(0, Math.min(position, part.source().length()));
    }

    private String words(String source, Diag diagnostic) {
        String code = String.valueOf(diagnostic.getCode());
        String message = plainTypes(diagnostic.getMessage(Locale.ROOT));
        if (code.startsWith("compiler.err.cant.resolve")) {
            return unknownName(source, diagnostic, message);
        }
        Matcher types = FOUND_REQUIRED.matcher(message);
        if (types.find()) {
            return "This is of type " + types.group(1) + ", but " + types.group(2) + " is needed here.";
        }
        return switch (code) {
            case "compiler.err.doesnt.exist" ->
                message.replaceFirst("package (\\S+) does not exist", "There is no package or variable named `$1`.");
            case "compiler.err.expected",
                    "compiler.err.expected2",
                    "compiler.err.expected3",
                    "compiler.err.expected4" -> expected(message);
            case "compiler.err.premature.eof" -> "The cell ends before the block does: a closing } or ) is missing.";
            case "compiler.err.unclosed.str.lit" -> "The text that begins here has no closing quote (\") on its line.";
            case "compiler.err.unclosed.char.lit" ->
                "Single quotes hold one letter; a text stands in double quotes: \"like this\".";
            case "compiler.err.empty.char.lit" -> "Single quotes hold one letter; an empty text is written \"\".";
            case "compiler.err.illegal.char" ->
                message.replaceFirst(
                        "illegal character: (.*)",
                        "The character $1 has no meaning in"
                                + " Java here; quotes must be straight (\") and names have letters, digits and _ only.");
            case "compiler.err.illegal.start.of.expr" ->
                "A value was expected here; something before it is missing or too much.";
            case "compiler.err.not.stmt" ->
                "This is not a whole statement: a call, an assignment or a declaration was expected.";
            case "compiler.err.unclosed.comment" -> "The comment that begins here is never closed: */ is missing.";
            case "compiler.err.already.defined" -> "This name is already taken in the same block: choose another.";
            case "compiler.err.var.might.not.have.been.initialized" ->
                "This variable has no value yet on some way to this line.";
            case "compiler.err.missing.ret.stmt" -> "The method must return a value on every way through it.";
            case "compiler.err.cant.ref.non.effectively.final.var" ->
                "A variable that changes cannot be used inside -> or an inner"
                        + " class: copy it into a new variable first.";
            case "compiler.err.cant.apply.symbol", "compiler.err.cant.apply.symbols" -> arguments(message);
            case "compiler.err.void.not.allowed.here", "compiler.err.illegal.initializer.for.type" ->
                "This call gives no value, but one is needed here.";
            default -> sentence(message);
        };
    }

    /** Drops what the reader did not write: the classes around snippets and the packages of types. */
    private static String plainTypes(String message) {
        return PACKAGE.matcher(SNIPPET_CLASS.matcher(message).replaceAll("")).replaceAll("");
    }

    private String unknownName(String source, Diag diagnostic, String message) {
        Matcher symbol = SYMBOL.matcher(message);
        if (!symbol.find()) {
            return sentence(message);
        }
        String kind = symbol.group(1);
        String name = symbol.group(2);
        int from = (int) Math.max(0, Math.min(diagnostic.getPosition(), source.length()));
        int at = source.indexOf(name, from);
        int start = at >= 0 ? at : Math.max(0, source.indexOf(name));
        List<String> near = Names.near(name, namesAt(source, start));
        Matcher location = LOCATION.matcher(message);
        String owner = "";
        if (location.find()) {
            owner = location.group(2) != null
                    ? " in " + location.group(1) + ", which is a " + location.group(2)
                    : location.group(3) != null ? " in " + location.group(3) : "";
        }
        String what = switch (kind) {
            case "method" -> "no method `" + name + "`";
            case "class" -> "no type `" + name + "`";
            default -> owner.isEmpty() ? "nothing named `" + name + "`" : "no `" + name + "`";
        };
        return "There is " + what + owner + "." + Names.question(near);
    }

    private List<String> namesAt(String source, int start) {
        int[] anchor = new int[1];
        return analysis.completionSuggestions(source.substring(0, start), start, anchor).stream()
                .map(suggestion -> suggestion.continuation().replaceFirst("[(<].*", ""))
                .toList();
    }

    private static String expected(String message) {
        return message.replaceFirst("^(.*?) expected.*", "Here Java expected $1.")
                .replace(", or", " or")
                .replaceFirst("<identifier>", "a name");
    }

    private static String arguments(String message) {
        Matcher one = Pattern.compile(
                        "(?:method|constructor) (\\S+) in (?:class|interface|record|enum) (\\S+) cannot be applied to given types;"
                                + "\\s+required:\\s+(.*?)\\s+found:\\s+(.*?)\\s+reason:",
                        Pattern.DOTALL)
                .matcher(message);
        if (one.find()) {
            return "`" + one.group(1) + "` takes " + kinds(one.group(3)) + ", but was given " + kinds(one.group(4))
                    + ".";
        }
        Matcher several = NO_SUITABLE.matcher(message);
        if (several.find()) {
            List<String> takes = TAKES.matcher(message)
                    .results()
                    .map(found -> kinds(found.group(1)))
                    .distinct()
                    .limit(MOST_FORMS)
                    .toList();
            return "`" + several.group(1) + "` was given " + kinds(several.group(2)) + ", but takes "
                    + String.join(", or ", takes) + ".";
        }
        return sentence(message);
    }

    private static String kinds(String types) {
        String list = types.strip();
        return list.isEmpty() || list.equals("no arguments") ? "nothing" : "(" + list.replace(",", ", ") + ")";
    }

    private static String sentence(String message) {
        String line = message.replaceAll("\\s*\\n\\s*", "; ").strip();
        if (line.isEmpty()) {
            return "This is not valid Java.";
        }
        String capital = line.substring(0, 1).toUpperCase(Locale.ROOT) + line.substring(1);
        return capital.endsWith(".") || capital.endsWith("?") ? capital : capital + ".";
    }
}
