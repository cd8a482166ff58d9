package parchment.kernel.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import jdk.jshell.EvalException;
import jdk.jshell.UnresolvedReferenceException;
import org.jspecify.annotations.Nullable;
import parchment.control.Control;
import parchment.control.ControlBox;
import parchment.file.FileWords;
import parchment.file.NotWrittenException;
import parchment.kernel.source.CellText;
import parchment.kernel.stop.CellStop;
import parchment.kernel.stop.CellThrew;

/** Tells why a running cell failed: the user's own lines only, the message, and the causes. */
public final class CellExceptions {
    /** How Java begins what it says of a class whose first use failed. */
    private static final String NOT_READY = "Could not initialize class ";

    private static final int PLACES = 5;
    private static final int CAUSES = 4;

    /** The most of what was thrown says that is shown, in characters. */
    static final int LONGEST = 10_000;

    private static final Pattern SNIPPET_CLASS = Pattern.compile("\"?REPL\\.\\$JShell\\$\\w+[.$]");

    /** Where the text of a snippet stands. */
    public record Place(CellText cell, int offset) {
        public int line(int snippetLine) {
            return cell.line(offset) + snippetLine - 1;
        }
    }

    private CellExceptions() {}

    /**
     * Explains what a snippet threw. What that says of itself may be the cell's own code, so it is asked on the thread of cells.
     *
     * @param thrown the error itself, with its causes
     * @param traced JShell's copy, whose frames name snippets and their lines
     * @param places where each snippet stands, by its id
     */
    public static CellError explain(
            Throwable thrown, @Nullable EvalException traced, Map<String, Place> places, CellText cell) {
        try {
            return explained(thrown, traced, places, cell);
        } catch (CellStop | ThreadDeath stop) {
            throw stop;
        } catch (RuntimeException | Error e) {
            CellError error = explained(new TextFailed(thrown), traced, places, cell);
            return new CellError(thrown.getClass().getSimpleName(), error.message(), error.lines());
        }
    }

    private static CellError explained(
            Throwable thrown, @Nullable EvalException traced, Map<String, Place> places, CellText cell) {
        List<String> lines = new ArrayList<>();
        Set<String> calls = new LinkedHashSet<>();
        boolean marked = false;
        StackTraceElement[] frames = traced == null ? new StackTraceElement[0] : traced.getStackTrace();
        for (StackTraceElement frame : frames) {
            String file = frame.getFileName();
            Place place = file == null || !file.startsWith("#") ? null : places.get(file.substring(1));
            if (place == null) {
                continue;
            }
            int line = place.line(frame.getLineNumber());
            String where = place.cell().name().equals(cell.name())
                    ? place.cell().mark(line)
                    : place.cell().name() + ", line " + line + ":  "
                            + place.cell().lineText(line).strip();
            if (!marked) {
                lines.add(where);
                marked = true;
            } else if (calls.size() < PLACES && !lines.get(0).equals(where)) {
                calls.add("  called from " + where);
            }
        }
        String message = message(thrown);
        lines.add(message);
        String advice = speaksToTheUser(thrown) ? "" : Advice.on(thrown, words(thrown));
        if (!advice.isEmpty()) {
            lines.add(advice);
        }
        lines.addAll(calls);
        lines.addAll(causes(thrown));
        return new CellError(thrown.getClass().getSimpleName(), message, lines);
    }

    /** Explains a call of something whose body names what does not exist. */
    public static CellError unresolved(UnresolvedReferenceException e, List<String> missing) {
        String message = "`" + e.getSnippet().name() + "` cannot run: nothing here is named "
                + String.join(
                        ", ",
                        missing.stream()
                                .map(name -> "`" + name.replaceFirst("^(variable|method|class) ", "") + "`")
                                .toList())
                + ". Define it in a cell first.";
        return new CellError("Not defined", message, List.of(message));
    }

    /** Explains a value whose own text or picture failed. */
    public static CellError notShown(Throwable thrown, @Nullable Object value, CellText cell) {
        String what = "The " + (value == null ? "value" : nameOf(value.getClass()));
        CellError error = explain(thrown, null, Map.of(), cell);
        String failed = value instanceof Control || value instanceof ControlBox
                ? " was made, but what it shows of its value could not be worked out: what showing(...) was given failed."
                : " was made, but could not be shown: the method that puts it into words or draws it failed.";
        List<String> lines = new ArrayList<>(List.of(what + failed));
        lines.addAll(error.lines());
        return new CellError(error.name(), error.message(), lines);
    }

    /** Returns what a reader calls a value of a class: what only its maker can name is a value. */
    private static String nameOf(Class<?> type) {
        String name = type.getSimpleName();
        boolean named = Modifier.isPublic(type.getModifiers()) || type.getName().startsWith("REPL.");
        return named && !name.isEmpty() && name.indexOf('$') < 0 ? name : "value";
    }

    /** Returns what was thrown in one line. */
    public static String line(Throwable thrown) {
        return message(thrown);
    }

    /** Returns an error in words: what happened, what helps a beginner over it, and a line for each cause. */
    public static List<String> inWords(Throwable thrown) {
        List<String> lines = new ArrayList<>(List.of(message(thrown)));
        String advice = speaksToTheUser(thrown) ? "" : Advice.on(thrown, words(thrown));
        if (!advice.isEmpty()) {
            lines.add(advice);
        }
        lines.addAll(causes(thrown));
        return lines;
    }

    private static String message(Throwable thrown) {
        String words = words(thrown);
        if (thrown instanceof OutOfMemoryError) {
            return String.format(
                    java.util.Locale.ROOT,
                    "The cell needed more memory than this session has (%d MB). What earlier cells defined is still there.",
                    Runtime.getRuntime().maxMemory() >> 20);
        }
        if (thrown instanceof StackOverflowError) {
            return isOfCompiler(thrown)
                    ? "Java's compiler has no room for so deep an expression (StackOverflowError): write it in several lines, each with a variable of its own,"
                            + " or as a loop."
                    : "A method here calls itself without end (StackOverflowError): it needs a case in which it stops.";
        }
        if (thrown instanceof NoClassDefFoundError && words.startsWith(NOT_READY)) {
            return "`" + words.substring(NOT_READY.length())
                    + "` cannot be used any more, because getting it ready for its first use failed or was stopped: run the cell with"
                    + " the class again.";
        }
        Optional<String> ofFile = ofFile(thrown);
        if (ofFile.isPresent()) {
            return ofFile.get();
        }
        if (speaksToTheUser(thrown) && !words.isEmpty()) {
            return words;
        }
        String name = thrown.getClass().getSimpleName();
        return words.isEmpty() ? name : name + ": " + words;
    }

    private static boolean isOfCompiler(Throwable thrown) {
        return Arrays.stream(thrown.getStackTrace())
                .anyMatch(frame -> frame.getClassName().startsWith("com.sun.tools.javac."));
    }

    /** Returns what the disk said in words; nothing where it is the cell's own code that threw something else of that kind. */
    private static Optional<String> ofFile(Throwable thrown) {
        if (thrown instanceof UncheckedIOException unchecked && isOurs(thrown)) {
            return Optional.of(FileWords.of(unchecked));
        }
        return thrown instanceof IOException file && (FileWords.knows(file) || isOurs(thrown))
                ? Optional.of(FileWords.of(file))
                : Optional.empty();
    }

    private static boolean isOurs(Throwable thrown) {
        StackTraceElement[] frames = CellThrew.trace(thrown);
        return frames.length > 0 && frames[0].getClassName().startsWith("parchment.");
    }

    /** The library's own messages are written for the roaster and need no class name before them. */
    private static boolean speaksToTheUser(Throwable thrown) {
        if (thrown.getClass().getName().startsWith("parchment.")) {
            return true;
        }
        boolean refusal = thrown instanceof IllegalArgumentException
                || thrown instanceof IllegalStateException
                || thrown instanceof UnsupportedOperationException
                || thrown instanceof java.util.NoSuchElementException;
        return refusal && isOurs(thrown);
    }

    private static List<String> causes(Throwable thrown) {
        List<String> lines = new ArrayList<>();
        if (thrown instanceof NotWrittenException) {
            return lines; // It says why in its own words.
        }
        if (thrown instanceof NoClassDefFoundError && words(thrown).startsWith(NOT_READY)) {
            String why = thrown.getCause() == null ? "" : words(thrown.getCause());
            if (why.contains(CellStop.class.getName())) {
                return lines; // The stop has been told where it was asked for.
            }
        }
        Throwable cause = thrown.getCause();
        while (cause != null && lines.size() < CAUSES) {
            String words = words(cause);
            String line = "Cause: "
                    + ofFile(cause)
                            .orElse(
                                    isOurs(cause) && !words.isEmpty()
                                            ? words
                                            : cause.getClass().getSimpleName() + (words.isEmpty() ? "" : ": " + words));
            if (lines.contains(line) || line.equals("Cause: " + message(thrown))) {
                break;
            }
            lines.add(line);
            cause = cause.getCause();
        }
        return lines;
    }

    private static String words(Throwable thrown) {
        String message = thrown.getMessage();
        if (message == null) {
            return "";
        }
        String shown = message.length() <= LONGEST
                ? message
                : message.substring(0, LONGEST) + "\n... and " + (message.length() - LONGEST)
                        + " characters more, not shown";
        return SNIPPET_CLASS.matcher(shown).replaceAll(m -> m.group().startsWith("\"") ? "\"" : "");
    }
}
