package parchment.kernel.words;

import java.io.FileNotFoundException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.NoSuchElementException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Adds to Java's own message of an error what a beginner needs to know to get over it. */
final class Advice {
    private static final Pattern NOT_A_NUMBER = Pattern.compile("For input string: \"(.*)\".*");
    private static final Pattern OUT_OF_BOUNDS = Pattern.compile(".*?(-?\\d+) out of bounds for length (\\d+).*");
    private static final Pattern SIZE = Pattern.compile("Index: (-?\\d+),? Size: (\\d+)");
    private static final Pattern CAST =
            Pattern.compile("class (\\S+) cannot be cast to class (\\S+).*", Pattern.DOTALL);
    private static final Pattern NULL = Pattern.compile(".*because (.+) is null", Pattern.DOTALL);

    private Advice() {}

    /** Returns one sentence, or an empty text where Java's message says all there is. */
    static String on(Throwable thrown, String words) {
        if (thrown instanceof NumberFormatException) {
            Matcher text = NOT_A_NUMBER.matcher(words);
            return text.matches() ? "The text \"" + text.group(1) + "\" is not a number that Java can read." : "";
        }
        if (thrown instanceof ArithmeticException && words.equals("/ by zero")) {
            return "A whole number was divided by 0. With a point (1.0 / x) the answer would be Infinity.";
        }
        if (thrown instanceof IndexOutOfBoundsException) {
            return bounds(words);
        }
        if (thrown instanceof NullPointerException) {
            Matcher what = NULL.matcher(words);
            return what.matches() ? "There is no value here to work with: " + what.group(1) + " is null." : "";
        }
        if (thrown instanceof ClassCastException) {
            Matcher cast = CAST.matcher(words);
            return cast.matches()
                    ? "The value is of type " + simple(cast.group(1)) + ", not " + simple(cast.group(2)) + "."
                    : "";
        }
        if (thrown instanceof UnsupportedOperationException && fromImmutable(thrown)) {
            return "What List.of, Map.of and toList() give cannot be changed; copy it first: new ArrayList<>(list).";
        }
        if (thrown instanceof NoClassDefFoundError && words.startsWith("com/ibm/icu/")) {
            return "Tablesaw guesses the letters of a file with a library that is not here. Say which they are by opening the file yourself:"
                    + " Table.read().csv(Files.newBufferedReader(Path.of(\"sales.csv\"))) reads UTF-8.";
        }
        if (thrown instanceof NoClassDefFoundError && words.matches("[\\w/$]+")) {
            return "A jar here needs another that is not here. A library that is named, Jars.add(\"group:artifact:version\"), brings"
                    + " along what it needs; a jar added by its path does not.";
        }
        if (thrown instanceof NoSuchFileException || thrown instanceof FileNotFoundException) {
            return "There is no such file, seen from the folder " + Path.of("").toAbsolutePath() + ".";
        }
        return thrown instanceof NoSuchElementException && words.equals("No line found")
                ? "Nobody answered: a cell can ask for input in an open notebook only."
                : "";
    }

    private static String bounds(String words) {
        Matcher found = OUT_OF_BOUNDS.matcher(words);
        if (!found.matches()) {
            found = SIZE.matcher(words);
            if (!found.matches()) {
                return "";
            }
        }
        int length = Integer.parseInt(found.group(2));
        return length == 0
                ? "There is nothing in it, so there is no place " + found.group(1) + "."
                : "Places are numbered from 0 to " + (length - 1) + "; there is no place " + found.group(1) + ".";
    }

    private static String simple(String type) {
        return type.replaceFirst(".*[.$]", "");
    }

    private static boolean fromImmutable(Throwable thrown) {
        StackTraceElement[] frames = thrown.getStackTrace();
        return frames.length > 0 && frames[0].getClassName().equals("java.util.ImmutableCollections");
    }
}
