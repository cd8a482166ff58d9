package parchment.kernel.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import parchment.jars.PercentLine;
import parchment.kernel.help.Completions;
import parchment.kernel.source.Brackets;
import parchment.kernel.words.LongTexts;
import parchment.kernel.words.Names;

/**
 * The lines of other Java notebooks that begin with a percent sign and are no Java, such as {@code %maven group:artifact:version}. Each
 * becomes one line of Java in the same place, so that line numbers stay; {@code %load} is cut out, because it runs a file's cells.
 *
 * <p>A line that goes on with a calculation may begin with a percent sign too ({@code % count}): only a sign with a name right behind it counts, where
 * a statement may begin.
 */
final class PercentLines {
    static final String LOAD = "load";

    /** In characters, of which none takes more than three bytes: within {@link LongTexts#MOST_BYTES}. */
    private static final int LONGEST_TEXT = 20_000;

    private static final Pattern LINE =
            Pattern.compile("(\\s*(?:[\\w<>\\[\\],. ]+=)?\\s*)%(\\w+)(?:[ \\t]+(\\S.*?))?[ \\t;]*");
    private static final Pattern OVER_A_CELL = Pattern.compile("\\s*%%(\\w+)[ \\t]*([^\\n]*)(?:\\n([\\s\\S]*))?");
    private static final Pattern BEGUN = Pattern.compile("\\s*(%%?)(\\w*)");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|'([^']*)'|\\S+");
    /** No path, name or address begins so, with a blank or nothing behind it, but the rest of a calculation does. */
    private static final Pattern CALCULATES_ON =
            Pattern.compile("(?:[-+*/%&|^<>=?:]|[<>=!]=|<<|>>>?|&&|\\|\\||instanceof)(?:\\s|$)|[),;]");

    private static final Pattern ONLY_A_COMMENT = Pattern.compile("\\s*(//.*|/\\*.*\\*/\\s*)?");

    /**
     * A piece of a cell: Java, or the path of a file to load.
     *
     * @param java the whole cell's text with everything else blank, so that its places stay; empty for a file
     * @param written the whole cell as it was written
     * @param file the file to load before the next piece
     */
    record Piece(String java, String written, Optional<String> file) {}

    /** A percent line that cannot be done, and where it stands. */
    static final class Unknown extends Exception {
        private static final long serialVersionUID = 1L;
        private final String words;
        private final int offset;

        Unknown(String words, int offset) {
            super(words);
            this.words = words;
            this.offset = offset;
        }

        String words() {
            return words;
        }

        int offset() {
            return offset;
        }
    }

    private record Line(int start, String text) {
        int end() {
            return start + text.length();
        }
    }

    private PercentLines() {}

    /** Tells whether the cell may have such lines; takes no time where it has none. */
    static boolean mayBeIn(String code) {
        return code.indexOf('%') >= 0;
    }

    /** Returns the cell's pieces in order. */
    static List<Piece> pieces(String code) throws Unknown {
        Matcher over = OVER_A_CELL.matcher(code);
        if (over.matches()) {
            return List.of(new Piece(overACell(over, code), code, Optional.empty()));
        }
        List<Piece> pieces = new ArrayList<>();
        StringBuilder java = new StringBuilder();
        for (Line line : lines(code)) {
            Matcher matcher = LINE.matcher(line.text());
            if (!mayBeIn(line.text()) || !matcher.matches() || !begins(code, line.start(), matcher)) {
                java.append(line.text());
            } else {
                check(matcher.group(2), PercentLine.NAMES, "%", line.start() + matcher.end(1));
                if (!matcher.group(2).equals(LOAD)) {
                    java.append(asJava(matcher));
                } else {
                    String file = words(matcher.group(3)).stream()
                            .findFirst()
                            .orElseThrow(() -> new Unknown(
                                    "%load is followed by the path of a file of Java or of a notebook.", line.start()));
                    pieces.add(new Piece(java.toString(), code, Optional.empty()));
                    pieces.add(new Piece("", code, Optional.of(file)));
                    java.replace(0, java.length(), blank(code.substring(0, line.end())));
                }
            }
            if (line.end() < code.length()) {
                java.append('\n');
            }
        }
        pieces.add(new Piece(java.toString(), code, Optional.empty()));
        return pieces;
    }

    /** Returns the cell with blanks in the place of such lines, for what only reads Java; places stay. */
    static String blanked(String code) {
        if (!mayBeIn(code)) {
            return code;
        }
        if (OVER_A_CELL.matcher(code).matches()) {
            return blank(code);
        }
        return lines(code).stream()
                .map(line -> {
                    Matcher matcher = LINE.matcher(line.text());
                    boolean percent = mayBeIn(line.text()) && matcher.matches() && begins(code, line.start(), matcher);
                    return percent ? blank(line.text()) : line.text();
                })
                .collect(Collectors.joining("\n"));
    }

    /** Returns the names that go on what stands behind a percent sign just before the cursor; nothing where there is none. */
    static Optional<Completions> namesAt(String code, int cursor) {
        int line = code.lastIndexOf('\n', cursor - 1) + 1;
        Matcher begun = BEGUN.matcher(code.substring(line, cursor));
        if (!begun.matches()) {
            return Optional.empty();
        }
        boolean overACell =
                begun.group(1).equals("%%") && code.substring(0, line).isBlank();
        List<String> known = overACell ? PercentLine.CELL_NAMES : PercentLine.NAMES;
        List<String> fitting =
                known.stream().filter(name -> name.startsWith(begun.group(2))).toList();
        return Optional.of(new Completions(fitting, cursor - begun.group(2).length(), cursor));
    }

    private static List<Line> lines(String code) {
        List<Line> lines = new ArrayList<>();
        int start = 0;
        for (String text : code.split("\n", -1)) {
            lines.add(new Line(start, text));
            start += text.length() + 1;
        }
        return lines;
    }

    /** Returns whether a line stands where a statement may begin, outside brackets, texts and comments. */
    private static boolean begins(String code, int start, Matcher line) {
        String before = blanked(code, start);
        if (Brackets.lastOpen(before) != null) {
            return false;
        }
        String last = lastCode(before);
        boolean ended = last.isEmpty() || last.endsWith(";") || last.endsWith("}");
        // Without a semicolon before it, only a name that is known, with something behind it, is surely no calculation.
        String behind = line.group(3);
        return ended
                || PercentLine.NAMES.contains(line.group(2))
                        && behind != null
                        && !CALCULATES_ON.matcher(behind).lookingAt();
    }

    private static String blanked(String code, int end) {
        return code.substring(0, end)
                .lines()
                .map(line -> line.stripLeading().startsWith("%") ? "" : line)
                .collect(Collectors.joining("\n"));
    }

    private static String lastCode(String before) {
        String last = "";
        for (String line : before.split("\n", -1)) {
            if (!ONLY_A_COMMENT.matcher(line).matches()) {
                last = line.replaceFirst("//.*$", "").strip();
            }
        }
        return last;
    }

    private static String asJava(Matcher line) {
        String call = PercentLine.class.getName() + ".run(" + quoted(line.group(2), words(line.group(3))) + ")";
        return line.group(1).isBlank() ? line.group(1) + call + ";" : line.group(1) + call + ".paths();";
    }

    private static String overACell(Matcher over, String code) throws Unknown {
        String name = over.group(1);
        check(name, PercentLine.CELL_NAMES, "%%", over.start(1) - 2);
        String body = over.group(3) == null ? "" : over.group(3);
        List<String> arguments = new ArrayList<>(List.of(body));
        arguments.addAll(words(over.group(2)));
        return code.substring(0, over.start(1) - 2) + PercentLine.class.getName() + ".cell(" + quoted(name, arguments)
                + ");";
    }

    private static void check(String name, List<String> known, String sign, int offset) throws Unknown {
        if (!known.contains(name)) {
            String all = known.stream().map(each -> sign + each).collect(Collectors.joining(", "));
            List<String> near =
                    Names.near(name, known).stream().map(each -> sign + each).toList();
            throw new Unknown(
                    sign + name + " is no Java, and no percent line that is known here; leave it out."
                            + Names.question(near) + " Known: " + all + ".",
                    offset);
        }
    }

    private static List<String> words(@Nullable String text) {
        return text == null
                ? List.of()
                : WORD.matcher(text)
                        .results()
                        .takeWhile(word -> !word.group().startsWith("//")) // A comment.
                        .map(word -> word.group(1) != null
                                ? word.group(1)
                                : word.group(2) != null ? word.group(2) : word.group())
                        .toList();
    }

    private static String quoted(String name, List<String> words) {
        List<String> all = new ArrayList<>(List.of(name));
        all.addAll(words);
        return all.stream().map(PercentLines::quoted).collect(Collectors.joining(", "));
    }

    /** A text between quotes has a largest length, and a file that is pasted may be longer; texts joined by a call stay apart. */
    private static String quoted(String word) {
        if (word.length() <= LONGEST_TEXT) {
            return oneQuoted(word);
        }
        List<String> pieces = new ArrayList<>();
        for (int i = 0; i < word.length(); i += LONGEST_TEXT) {
            pieces.add(oneQuoted(word.substring(i, Math.min(word.length(), i + LONGEST_TEXT))));
        }
        return "\"\".concat(" + String.join(").concat(", pieces) + ")";
    }

    private static String oneQuoted(String word) {
        return '"'
                + word.replace("\\", "\\\\")
                        .replace("\"", "\\\"")
                        .replace("\r", "")
                        .replace("\n", "\\n")
                + '"';
    }

    private static String blank(String text) {
        return text.replaceAll("[^\n]", " ");
    }
}
