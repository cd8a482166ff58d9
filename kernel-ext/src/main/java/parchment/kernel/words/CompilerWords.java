package parchment.kernel.words;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.Diag;

/** Puts one message of the compiler into plain words. */
final class CompilerWords {
    private static final Pattern FOUND_REQUIRED =
            Pattern.compile("incompatible types: (.+) cannot be converted to (.+)");
    private static final Pattern LOSSY =
            Pattern.compile("incompatible types: possible lossy conversion from (\\w+) to (\\w+)");
    private static final Pattern BOUNDS =
            Pattern.compile("(?s)incompatible bounds\\s+equality constraints: (\\S+)\\s+lower bounds: (\\S+)");
    private static final Pattern OPERANDS =
            Pattern.compile("(?s)operator '(.+)'\\s+first type:\\s+(\\S+)\\s+second type:\\s+(\\S+)");
    private static final Pattern SNIPPET_CLASS = Pattern.compile("(REPL\\.)?\\$JShell\\$\\w+\\.?");
    private static final Pattern PACKAGE = Pattern.compile("\\b(?:[a-z]\\w*\\.)+(?=[A-Z])");
    private static final Pattern CODE_POINT = Pattern.compile("'\\\\u([0-9a-fA-F]{4})'");
    private static final Pattern ONE_FORM = Pattern.compile(
            "(?:method|constructor) (\\S+) in (?:class|interface|record|enum) (\\S+) cannot be applied to given types;"
                    + "\\s+required:\\s+(.*?)\\s+found:\\s+(.*?)\\s+reason:",
            Pattern.DOTALL);
    private static final Pattern NO_SUITABLE =
            Pattern.compile("no suitable (?:method|constructor) found for (\\w+)\\((.*)\\)");
    private static final Pattern TAKES =
            Pattern.compile("(?:method|constructor) [\\w.<>,]*\\((.*?)\\) is not applicable");
    private static final Pattern RECORD =
            Pattern.compile("constructor in record (\\w+)\\s+\\(attempting to assign stronger access privileges");
    private static final Pattern BOTH = Pattern.compile(
            "reference to (\\w+) is ambiguous\\s+both [a-z ]+ (\\S+) in \\S+ and [a-z ]+ (\\S+) in \\S+ match");
    private static final int MOST_FORMS = 4;

    private static final Map<String, String> BOXES = Map.of(
            "int", "Integer",
            "double", "Double",
            "long", "Long",
            "boolean", "Boolean",
            "char", "Character",
            "float", "Float",
            "short", "Short",
            "byte", "Byte");

    /** After one of these the compiler has lost its place, so that what it says next is noise. */
    private static final Set<String> CONFUSING = Set.of(
            "compiler.err.expected",
            "compiler.err.expected2",
            "compiler.err.expected3",
            "compiler.err.expected4",
            "compiler.err.premature.eof",
            "compiler.err.unclosed.str.lit",
            "compiler.err.unclosed.char.lit",
            "compiler.err.illegal.char",
            "compiler.err.illegal.esc.char",
            "compiler.err.illegal.start.of.expr",
            "compiler.err.illegal.start.of.type",
            "compiler.err.illegal.start.of.stmt",
            "compiler.err.not.stmt");

    private final UnknownNames unknown;

    CompilerWords(UnknownNames unknown) {
        this.unknown = unknown;
    }

    /** Tells whether what the compiler says after this is not worth telling. */
    static boolean isConfusing(Diag diagnostic) {
        return CONFUSING.contains(String.valueOf(diagnostic.getCode()));
    }

    /** Explains a message about a snippet. */
    String of(String source, Diag diagnostic) {
        String code = String.valueOf(diagnostic.getCode());
        String message = plainTypes(diagnostic.getMessage(Locale.ROOT));
        if (code.startsWith("compiler.err.cant.resolve")) {
            String words = unknown.explain(source, diagnostic, message);
            return words == null ? sentence(message) : words;
        }
        String types = types(source, diagnostic, message);
        if (!types.isEmpty()) {
            return types;
        }
        return switch (code) {
            case "compiler.err.doesnt.exist" ->
                unknown.explainPackage(
                        source, diagnostic, message.replaceFirst("(?s)package (\\S+) does not exist.*", "$1"));
            case "compiler.err.expected",
                    "compiler.err.expected2",
                    "compiler.err.expected3",
                    "compiler.err.expected4" -> expected(message);
            case "compiler.err.premature.eof" -> "The cell ends before the block does: a closing } or ) is missing.";
            case "compiler.err.unclosed.str.lit" -> "The text that begins here has no closing quote (\") on its line.";
            case "compiler.err.unclosed.char.lit" ->
                "Single quotes hold one letter; a text stands in double quotes: \"like this\".";
            case "compiler.err.empty.char.lit" -> "Single quotes hold one letter; an empty text is written \"\".";
            case "compiler.err.illegal.esc.char" ->
                "In a text a backslash is written twice (\\\\); in a path a / does as well, on every system.";
            case "compiler.err.illegal.char" ->
                letter(message)
                        .replaceFirst(
                                "illegal character: (.*)",
                                "The character $1 has no meaning in"
                                        + " Java here; quotes must be straight (\") and names have letters, digits and _ only.");
            case "compiler.err.illegal.start.of.expr", "compiler.err.illegal.start.of.type" ->
                "A value was expected here; something before it is missing or too much.";
            case "compiler.err.illegal.start.of.stmt" ->
                "A statement cannot begin here; something before it is missing or too much.";
            case "compiler.err.not.stmt" ->
                "This is not a whole statement: a call, an assignment or a declaration was expected.";
            case "compiler.err.limit.code" ->
                "One method or cell line may become 64 kB of Java's own code at most, and this is more."
                        + " Many numbers or texts are better kept in a file and read: `Files.readAllLines(Path.of(\"cups.csv\"))`.";
            case "compiler.err.ref.ambiguous" -> ambiguous(diagnostic.getMessage(Locale.ROOT));
            case "compiler.err.unclosed.comment" -> "The comment that begins here is never closed: */ is missing.";
            case "compiler.err.already.defined" -> "This name is already taken in the same block: choose another.";
            case "compiler.err.var.might.not.have.been.initialized" ->
                "This variable has no value yet on some way to this line.";
            case "compiler.err.missing.ret.stmt" -> "The method must return a value on every way through it.";
            case "compiler.err.unreachable.stmt" -> "This can never run: what stands before it always leaves.";
            case "compiler.err.int.number.too.large" ->
                "A whole number above 2,147,483,647 needs an L at its end, as in `3000000000L`, and the type `long`.";
            case "compiler.err.unreported.exception.need.to.catch.or.throw" -> mayFail(message);
            case "compiler.err.cant.infer.local.var.type" -> noTypeForVar(message);
            case "compiler.err.cant.ref.non.effectively.final.var" ->
                "A variable that changes cannot be used inside -> or an inner"
                        + " class: copy it into a new variable first.";
            case "compiler.err.cant.apply.symbol", "compiler.err.cant.apply.symbols" -> arguments(message);
            case "compiler.err.invalid.canonical.constructor.in.record" -> ofRecord(source, diagnostic, message);
            case "compiler.err.void.not.allowed.here", "compiler.err.illegal.initializer.for.type" ->
                "This call gives no value, but one is needed here.";
            default -> message.contains("must not match Object methods") ? ofObject() : sentence(message);
        };
    }

    /** Two imports of whole packages have the same name; an import of its own decides. */
    private static String ambiguous(String message) {
        Matcher both = BOTH.matcher(message);
        return both.find()
                ? "`" + both.group(1)
                        + "` is in two of the packages that are imported. Say which one is meant by an import of its own: `import "
                        + both.group(3) + ";` or `import " + both.group(2) + ";`."
                : sentence(plainTypes(message));
    }

    private static String ofRecord(String source, Diag diagnostic, String message) {
        Matcher record = RECORD.matcher(message);
        if (!record.find()) {
            return sentence(message);
        }
        int at = (int) Math.max(0, Math.min(diagnostic.getPosition(), source.length()));
        String name = record.group(1);
        boolean isCompact = source.substring(at).matches("(?s)" + Pattern.quote(name) + "\\s*\\{.*");
        return "In a cell a record is public, and so must be its constructor: write `public " + name
                + (isCompact ? " { ... }`." : "(...) { ... }`.");
    }

    /** Explains a clash of types, or returns an empty text if the message is of something else. */
    private static String types(String source, Diag diagnostic, String message) {
        Matcher lossy = LOSSY.matcher(message);
        if (lossy.find()) {
            return lossy(lossy.group(1), lossy.group(2));
        }
        Matcher clash = FOUND_REQUIRED.matcher(message);
        if (clash.find()) {
            int at = (int) Math.max(0, Math.min(diagnostic.getPosition(), source.length() - 1));
            boolean gives = clash.group(2).equals("boolean") && !source.isEmpty() && source.charAt(at) == '=';
            return gives
                    ? "One = gives a value; to compare, write ==."
                    : "This is of type " + clash.group(1) + ", but " + clash.group(2) + " is needed here.";
        }
        Matcher bounds = BOUNDS.matcher(message);
        if (bounds.find()) {
            return "This holds " + bounds.group(2) + ", but " + bounds.group(1) + " is needed here.";
        }
        Matcher operands = OPERANDS.matcher(message);
        if (operands.find()) {
            return "`" + operands.group(1) + "` does not work between " + operands.group(2) + " and "
                    + operands.group(3).replace("<nulltype>", "null").replace("<null>", "null") + ".";
        }
        if (message.startsWith("unexpected type") && message.contains("required: variable")) {
            return "Only a variable can stand to the left of =.";
        }
        if (message.startsWith("unexpected type") && message.contains("required: reference")) {
            String found = message.replaceFirst("(?s).*found:\\s+(\\w+).*", "$1");
            return "Between < and > stands a type of object: `" + BOXES.getOrDefault(found, "Integer") + "`, not `"
                    + found + "`.";
        }
        return "";
    }

    private static String lossy(String from, String to) {
        String begin = "This is of type " + from + ", but " + to + " is needed here, ";
        if (to.equals("float")) {
            return begin + "which is less exact: use `double`, or write an f after the number.";
        }
        return from.equals("double") || from.equals("float")
                ? begin + "which has no places after the point: use `double`, or round with `(" + to
                        + ") Math.round(x)`."
                : begin + "which may be too small for it: use `" + from + "`.";
    }

    private static String noTypeForVar(String message) {
        return message.contains("lambda") || message.contains("method reference")
                ? "A function needs its type written out: `Function<Integer, Integer> f = x -> x + 1;`."
                : "`var` takes its type from the value, and there is none: write the type, as in `String name = null;`.";
    }

    private static String mayFail(String message) {
        String exception = message.replaceFirst("(?s)unreported exception (\\S+?);.*", "$1");
        return "This may fail with " + exception + ": add `throws " + exception
                + "` after the method's brackets, or put it" + " into `try { ... } catch (" + exception
                + " e) { ... }`.";
    }

    private static String ofObject() {
        return "A method of this name belongs to every object, so it can only stand inside a class or record.";
    }

    private static String expected(String message) {
        String wanted = message.replaceFirst("(?s)^(.*?) expected.*", "$1")
                .replace(", or", " or")
                .replace("<identifier>", "a name");
        if (wanted.equals("';'")) {
            return "A semicolon (;) is missing here: it ends a statement.";
        }
        return wanted.matches("'.'( or '.')*")
                ? "A " + wanted.replace("'", "") + " is missing here."
                : "Here Java expected " + wanted + ".";
    }

    private static String arguments(String message) {
        Matcher one = ONE_FORM.matcher(message);
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

    /** The compiler writes a letter that is not plain as its number. */
    private static String letter(String message) {
        return CODE_POINT
                .matcher(message)
                .replaceAll(
                        found -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(found.group(1), 16))));
    }

    /** Drops what the reader did not write: the classes around snippets and the packages of types. */
    private static String plainTypes(String message) {
        return PACKAGE.matcher(SNIPPET_CLASS.matcher(message).replaceAll("")).replaceAll("");
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
