package parchment.kernel.words;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.Diag;
import jdk.jshell.SourceCodeAnalysis;
import org.jspecify.annotations.Nullable;
import parchment.kernel.imports.Rooms;

/** Guesses what a name that Java does not know was most likely meant to be. */
final class UnknownNames {
    private static final Pattern SYMBOL = Pattern.compile("symbol:\\s+(\\w+) ([\\w$]+)(\\([^)]*\\))?");
    private static final Pattern LOCATION =
            Pattern.compile("location:\\s+(?:variable (\\w+) of type (\\S+)|(?:class|interface|enum) (\\S+))");

    /** Words of other languages, and what they are in Java. */
    private static final Map<String, String> ELSEWHERE = Map.ofEntries(
            Map.entry("True", "`true`"),
            Map.entry("False", "`false`"),
            Map.entry("None", "`null`"),
            Map.entry("nil", "`null`"),
            Map.entry("NULL", "`null`"),
            Map.entry("bool", "`boolean`"),
            Map.entry("str", "`String`"),
            Map.entry("Int", "`int`"),
            Map.entry("integer", "`int`"),
            Map.entry("float64", "`double`"),
            Map.entry("self", "`this`"),
            Map.entry("print", "`System.out.println(...)`"),
            Map.entry("println", "`System.out.println(...)`"),
            Map.entry("printf", "`System.out.printf(...)`"),
            Map.entry("len", "`x.length()` for a text, `x.size()` for a list, `x.length` for an array"),
            Map.entry("range", "`IntStream.range(0, 10)`"),
            Map.entry("input", "`new Scanner(System.in).nextLine()`"));

    /** Methods that other notebooks have at hand without an object, and what is written here. */
    private static final Map<String, String> OF_NOTEBOOKS = Map.of(
            "display", "To show a value, let it stand in the last line, or write `Display.show(...)`.",
            "updateDisplay", "To change what was shown, write `Display.update(\"its name\", ...)`.",
            "render", "To show a value in a form of your own, write `Display.as(\"text/html\", ...)`.",
            "eval", "A cell runs Java as it is written, so leave `eval` out and write the code itself.");

    private final SourceCodeAnalysis analysis;
    private final Set<String> failed;

    /** @param failed variables whose cell failed, so that they have no value */
    UnknownNames(SourceCodeAnalysis analysis, Set<String> failed) {
        this.analysis = analysis;
        this.failed = failed;
    }

    /** Explains a name that cannot be found; the message is the compiler's, without packages. Null if it names no symbol. */
    @Nullable
    String explain(String source, Diag diagnostic, String message) {
        Matcher symbol = SYMBOL.matcher(message);
        if (!symbol.find()) {
            return null;
        }
        String kind = symbol.group(1);
        String name = symbol.group(2);
        int from = (int) Math.max(0, Math.min(diagnostic.getPosition(), source.length()));
        int at = source.indexOf(name, from);
        int start = at >= 0 ? at : Math.max(0, source.indexOf(name));
        Matcher location = LOCATION.matcher(message);
        boolean located = location.find();
        boolean alone = !located || location.group(2) == null && location.group(3) == null;
        if (alone && failed.contains(name)) {
            return "`" + name + "` has no value, because the cell that makes it failed: run that cell again first.";
        }
        if (alone && ELSEWHERE.containsKey(name)) {
            return "There is nothing named `" + name + "` in Java; write " + ELSEWHERE.get(name) + ".";
        }
        if (alone && kind.equals("method") && OF_NOTEBOOKS.containsKey(name)) {
            return "There is no method `" + name + "` here. " + OF_NOTEBOOKS.get(name);
        }
        String owner = alone ? "" : owner(location);
        List<String> suggestions = suggestionsAt(source, start);
        if (!alone && kind.equals("variable") && suggestions.contains(name + "(")
                || suggestions.contains(name + "()")) {
            return "`" + name + "` is a method, so it is called with brackets: `" + name + "()`.";
        }
        if (!alone && kind.equals("method") && suggestions.contains(name)) {
            return "`" + name + "` is not a method, so it is written without brackets.";
        }
        List<String> near = Names.near(
                name,
                suggestions.stream().map(s -> s.replaceFirst("[(<].*", "")).toList());
        String what = switch (kind) {
            case "method" -> "no method `" + name + "`";
            case "class" -> "no type `" + name + "`";
            default -> owner.isEmpty() ? "nothing named `" + name + "`" : "no `" + name + "`";
        };
        String toImport = alone && !kind.equals("method") ? howToImport(name) : "";
        if (!toImport.isEmpty()) {
            return "There is " + what + " yet." + toImport;
        }
        return "There is " + what + owner + "." + Names.question(near)
                + (alone ? advice(kind, name, source, start) : "");
    }

    private static String howToImport(String name) {
        String inJava = JavaTypes.howToImport(name);
        return inJava.isEmpty() && Character.isUpperCase(name.charAt(0)) ? Rooms.howToImport(name) : inJava;
    }

    /** Explains the head of a chain, which Java takes for a package when it knows nothing of that name. */
    String explainPackage(String source, Diag diagnostic, String name) {
        int start = Math.max(0, source.lastIndexOf(name, (int)
                Math.max(0, Math.min(diagnostic.getPosition(), source.length()))));
        if (source.startsWith("import")) {
            return "There is no package `" + name
                    + "` here. Where a library has it, name that first: Jars.add(\"group:artifact:version\").";
        }
        if (failed.contains(name)) {
            return "`" + name + "` has no value, because the cell that makes it failed: run that cell again first.";
        }
        List<String> near = Names.near(
                name,
                suggestionsAt(source, start).stream()
                        .map(s -> s.replaceFirst("[(<].*", ""))
                        .toList());
        return "There is nothing named `" + name + "`." + Names.question(near)
                + advice("variable", name, source, start);
    }

    private static String owner(Matcher location) {
        if (location.group(2) == null) {
            return " in " + location.group(3);
        }
        String type = location.group(2);
        return " in " + location.group(1) + ", which is " + article(type) + " " + type;
    }

    private static String article(String type) {
        return "AEIOU".indexOf(type.charAt(0)) >= 0 || type.startsWith("int") ? "an" : "a";
    }

    private static String advice(String kind, String name, String source, int start) {
        String rest = source.substring(Math.min(source.length(), start + name.length()));
        if (kind.equals("method")) {
            return Character.isUpperCase(name.charAt(0))
                    ? " To make an object, write `new` before its type: `new " + name + "(...)`."
                    : "";
        }
        if (!kind.equals("variable") || Character.isUpperCase(name.charAt(0))) {
            return "";
        }
        boolean given = source.substring(0, start).isBlank() && rest.matches("(?s)\\s*=[^=].*");
        return given
                ? " To make a new variable, write `var " + name + " = ...`."
                : " If another cell defines it, run that cell first.";
    }

    private List<String> suggestionsAt(String source, int start) {
        int[] anchor = new int[1];
        return analysis.completionSuggestions(source.substring(0, start), start, anchor).stream()
                .map(SourceCodeAnalysis.Suggestion::continuation)
                .toList();
    }
}
