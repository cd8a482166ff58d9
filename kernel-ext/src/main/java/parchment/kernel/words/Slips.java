package parchment.kernel.words;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Knows what people write who come from other languages, or from the first pages of a book, and says how Java writes it.
 *
 * <p>Looked at only where a line is no Java, so that nothing which works is ever doubted.
 */
public final class Slips {
    /** What to say of a line that {@link #isLost}. */
    static final String LOST = "`return` belongs inside a method; a cell shows the value of its last line by itself.";

    /** A habit: what the line looks like, with texts and comments taken out, and what to write; {@code $1} is the first group. */
    private record Slip(Pattern line, String advice) {}

    private static final Pattern TEXT = Pattern.compile("\"[^\"\\\\]*+(?:\\\\.[^\"\\\\]*+)*+\"");
    private static final Pattern COMMENT = Pattern.compile("//.*|/\\*.*?\\*/");

    private static final String TYPE = "(?:var|int|long|short|byte|char|float|double|boolean|String)";

    private static final String KEYWORD =
            "(class|int|double|float|long|short|byte|char|boolean|new|for|if|else|while|do"
                    + "|switch|case|default|return|try|catch|finally|throw|throws|static|final|public|private|protected|void|this"
                    + "|super|import|package|interface|enum|break|continue|null|true|false|assert|const|goto|native|volatile)";

    private static final List<Slip> SLIPS = List.of(
            slip(
                    "^for\\s+(\\w+)\\s+in\\s+(.+?)\\s*:?$",
                    "In Java a loop over a list is written `for (var $1 : $2) { ... }`."),
            slip(
                    "^for\\s*\\(\\s*(\\w+)\\s+in\\s+(.+?)\\)",
                    "In Java a loop over a list is written `for (var $1 : $2)`."),
            slip(
                    "^def\\s+(\\w+)",
                    "In Java a method is written with its types and in braces:"
                            + " `double $1(double x) { return 2 * x; }`."),
            slip(
                    "^(?:from\\s+\\S+\\s+)?import\\s+\\w+(\\s+as\\s+\\w+)?\\s*;?$",
                    "Java imports a class by its full name, as in `import java.util.List;`. Packages of other languages"
                            + " cannot be used here."),
            slip("^from\\s+\\S+\\s+import\\b", "Java imports a class by its full name: `import java.util.List;`."),
            slip("^library\\(", "Java imports a class by its full name: `import java.util.List;`."),
            slip("^package\\b", "A cell belongs to no package: leave this line out."),
            slip("^%", "A line that begins with % is no Java, and cannot stand within it. Leave it out."),
            slip(
                    "^!\\w+( |$)",
                    "Lines that begin with ! speak to other kernels; here every line is Java. Leave it out."),
            slip("^#", "In Java a comment begins with //."),
            slip("^(elif|elsif|elseif)\\b", "In Java this is written `else if (...) { ... }`."),
            slip("^else\\b", "This `else` has no `if` before it; both must stand in one cell."),
            slip("^(catch|finally)\\b", "This `$1` has no `try` before it; both must stand in one cell."),
            slip(
                    "^(if|while|switch)\\s+[^(\\s]",
                    "In Java the condition stands in round brackets: `$1 (...) { ... }`."),
            slip(
                    "^(?:let|const|auto|val)\\s+(\\w+)\\s*=",
                    "A new variable begins with `var` or its type: `var $1 = ...`."),
            slip("^(\\w+)\\s*<-", "A value is given with =: `var $1 = ...`."),
            slip(
                    "\\b" + TYPE + "\\s+" + KEYWORD + "\\s*=",
                    "`$1` is a word of Java's own, so nothing can be called that."),
            slip("\\b" + TYPE + "\\s+(\\d\\w*)\\s*=", "A name begins with a letter; `$1` begins with a figure."),
            slip("\\b" + TYPE + "\\s+(\\w+-\\w[\\w-]*)\\s*=", "A name has no hyphen; write `_` or a capital in `$1`."),
            slip("\\blambda\\b", "In Java a function is written `x -> 2 * x`."),
            slip(
                    "(?<![\\w\\])>\"}\\s])\\s*\\[[^\\]]*\\]",
                    "In Java a list is written `List.of(1, 2, 3)`, and an array with its type: `int[] a = {1, 2, 3};`."),
            slip("\\b[fF]\"\"", "In Java values are put into a text with +: `\"count: \" + n`."),
            slip("\\*\\*", "In Java a power is written `Math.pow(x, 2)`."),
            slip("[\\w)]\\s+and\\s+[\\w(!]", "In Java `and` is written `&&`."),
            slip("[\\w)]\\s+or\\s+[\\w(!]", "In Java `or` is written `||`."),
            slip("(?<![\\w.])not\\s+[\\w(]", "In Java `not` is written `!`."),
            slip(
                    "(?<!new\\s)(?<![\\w.$])([A-Z]\\w*)\\s*<[^()]*>\\s*\\(",
                    "To make an object, write `new` before its type: `new $1<>(...)`."));

    private Slips() {}

    private static Slip slip(String line, String advice) {
        return new Slip(Pattern.compile(line), advice);
    }

    /** Returns what is wrong with a line, or nothing if it shows no known habit. */
    static Optional<String> in(String line) {
        String code = COMMENT.matcher(TEXT.matcher(line).replaceAll("\"\""))
                .replaceAll("")
                .strip();
        for (Slip slip : SLIPS) {
            Matcher found = slip.line.matcher(code);
            if (found.find()) {
                String advice = slip.advice;
                for (int group = found.groupCount(); group > 0; group--) {
                    advice = advice.replace("$" + group, String.valueOf(found.group(group)));
                }
                return Optional.of(advice);
            }
        }
        return Optional.empty();
    }

    /** Tells whether JShell would take the snippet and do nothing, where something was surely meant. */
    public static boolean isLost(String snippet) {
        return snippet.startsWith("return")
                && !Character.isJavaIdentifierPart((snippet + " ").charAt("return".length()));
    }
}
