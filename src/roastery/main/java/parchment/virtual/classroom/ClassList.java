package parchment.virtual.classroom;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.file.FileName;
import parchment.file.NameForms;
import parchment.virtual.physics.VirtualChecks;

/**
 * Checks the names of a class's students before folders are named after them: names as people bear them, which any system can hold.
 *
 * <p>"Ana Núñez" and "O'Neil" are names; "../x" is none. An accent that is typed as a character of its own is joined to its letter
 * (Unicode normalization form C, UAX #15), so that a name is the same name wherever it was typed. Two names that would make one file's
 * name, such as "O'Neil" and "O Neil", are refused.
 *
 * @param names the names, in the order of the list
 * @see <a href="https://www.unicode.org/reports/tr15/">Unicode Standard Annex #15, Unicode Normalization Forms</a>
 */
public record ClassList(List<String> names) {
    /** Letters that a name may have at most, so that with what is put behind it the name of a file stays within 255 bytes. */
    public static final int MOST_LETTERS = 40;

    /** Students that a class may have at most. */
    public static final int MOST_STUDENTS = 1000;

    private static final Pattern NAME =
            Pattern.compile("[\\p{L}\\p{N}](?:[\\p{L}\\p{M}\\p{N} .'\u2019-]*[\\p{L}\\p{M}\\p{N}])?");
    /** A number that every spreadsheet saves as it stands; a longer one, or one that begins with 0, it does not. */
    private static final Pattern KEPT_NUMBER = Pattern.compile("0|[1-9][0-9]{0,9}");
    /** What a spreadsheet may take for a number, a time of day or a truth value. */
    private static final Pattern TAKEN_FOR_ANOTHER = Pattern.compile(
            "[^\\p{L}]+|[0-9. ]+[eE][ -]?[0-9]+|[0-9. ]+[aApP][mM]?|true|false", Pattern.CASE_INSENSITIVE);
    /** Digits before or behind one word, which together are a date where the word is a month. */
    private static final Pattern DIGITS_AND_A_WORD =
            Pattern.compile("(?:[0-9]+[ .-]*)?(\\p{L}+)\\.?(?:[ .-]*[0-9]+){0,2}");

    private static final Set<String> MONTHS = months();
    private static final String UNNAMED = "unnamed";

    /**
     * Checks the names and joins their accents.
     *
     * @throws IllegalArgumentException if there is no student or more than {@link #MOST_STUDENTS}, a name is not allowed, or two would
     *     make one file's name
     */
    public ClassList {
        if (names.isEmpty()) {
            throw new IllegalArgumentException("A class needs at least one student.");
        }
        if (names.size() > MOST_STUDENTS) {
            throw new IllegalArgumentException(
                    "A class has at most " + MOST_STUDENTS + " students; this list has " + names.size() + ".");
        }
        List<String> joined = new ArrayList<>();
        Map<String, String> files = new LinkedHashMap<>();
        for (String written : names) {
            String name = joined(written);
            check(name, joined.size() + 1);
            String other = files.put(key(name), name);
            if (other != null) {
                throw new IllegalArgumentException(
                        other.equalsIgnoreCase(name)
                                ? "Two students are named '" + name + "'; give each their own name."
                                : "The names '" + other + "' and '" + name + "' would both make the file name '"
                                        + inFileName(name) + "'; tell one of them apart by more than that.");
            }
            joined.add(name);
        }
        names = List.copyOf(joined);
    }

    /** Returns the names student-01, student-02 and so on. */
    public static ClassList numbered(int students) {
        VirtualChecks.positive("number of students", students);
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= Math.min(students, MOST_STUDENTS + 1); i++) {
            names.add(String.format(Locale.ROOT, "student-%02d", i));
        }
        return new ClassList(names);
    }

    private static void check(String name, int number) {
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException(
                    "A student's name has letters, digits, blanks, dashes, apostrophes and full stops, and"
                            + " begins and ends with a letter or digit, because a folder is named after it; number "
                            + number
                            + " is '" + name + "'."
                            + wayOut(name));
        }
        if (name.codePointCount(0, name.length()) > MOST_LETTERS) {
            throw new IllegalArgumentException("A student's name has at most " + MOST_LETTERS
                    + " letters, because a folder is named after it; number " + number + " has "
                    + name.codePointCount(0, name.length()) + ": '" + name + "'.");
        }
        if (FileName.isKeptByWindows(name)) {
            throw new IllegalArgumentException("No folder can be named '" + name
                    + "' on Windows, which keeps that word for itself; give number " + number
                    + " a longer name.");
        }
    }

    /** Says what to write instead where only the ends of a name are in the way, such as the last full stop of "Ana P.". */
    private static String wayOut(String name) {
        String inner = name.replaceAll("^[ .'\u2019-]+|[ .'\u2019-]+$", "");
        return NAME.matcher(inner).matches() ? " Write '" + inner + "' instead." : "";
    }

    /** Names of months as spreadsheets in some languages know them; a spreadsheet in another language knows more. */
    private static Set<String> months() {
        Set<String> words = new HashSet<>();
        for (String language : List.of("en", "de", "fr", "es", "it", "pt", "nl")) {
            for (Month month : Month.values()) {
                for (TextStyle style : List.of(TextStyle.FULL, TextStyle.SHORT)) {
                    words.add(month.getDisplayName(style, Locale.forLanguageTag(language))
                            .replace(".", "")
                            .toLowerCase(Locale.ROOT));
                }
            }
        }
        return Set.copyOf(words);
    }

    /**
     * Returns the same list, if a spreadsheet saves each of its names as it stands: a sheet of answers bears the student's name, and
     * "007" would come back as 7, "1-2" as a date.
     *
     * @throws IllegalArgumentException if a spreadsheet may take a name for a number, a date or a time of day
     */
    public ClassList keptBySpreadsheets() {
        for (String name : names) {
            if (isTakenForAnother(name)) {
                throw new IllegalArgumentException("A spreadsheet would take the name '" + name
                        + "' for a number, a date or a time, and save something else on the sheets of answers; number "
                        + (names.indexOf(name) + 1) + " needs a letter more, such as 'student " + name + "'.");
            }
        }
        return this;
    }

    private static boolean isTakenForAnother(String name) {
        if (TAKEN_FOR_ANOTHER.matcher(name).matches()) {
            return !KEPT_NUMBER.matcher(name).matches();
        }
        Matcher matcher = DIGITS_AND_A_WORD.matcher(name);
        return matcher.matches()
                && name.chars().anyMatch(Character::isDigit)
                && MONTHS.contains(matcher.group(1).toLowerCase(Locale.ROOT));
    }

    /** Returns the student that a name means, as it was written or as it stands in the name of a file. */
    public Optional<String> find(String written) {
        String wanted = joined(written);
        Optional<String> same = names.stream().filter(wanted::equals).findFirst();
        return same.isPresent()
                ? same
                : names.stream().filter(name -> key(name).equals(key(wanted))).findFirst();
    }

    /** Returns whether a text is a name that a student of a class may bear, and so can name a folder as it stands. */
    public static boolean isName(String text) {
        try {
            return new ClassList(List.of(text)).names().get(0).equals(text);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /**
     * Returns any text as it can stand in the name of a file or folder on any system: its letters and digits with single dashes
     * between, at most {@link #MOST_LETTERS} characters; "unnamed" if it has none. Never a way to another folder.
     */
    public static String inFileName(String text) {
        String kept = joined(text).replaceAll("[^\\p{L}\\p{M}\\p{N}]+", "-").replaceAll("^-|-$", "");
        String shortened = kept.codePointCount(0, kept.length()) > MOST_LETTERS
                ? kept.substring(0, kept.offsetByCodePoints(0, MOST_LETTERS))
                : kept;
        return shortened.isEmpty() || FileName.isKeptByWindows(shortened)
                ? UNNAMED + (shortened.isEmpty() ? "" : "-" + shortened)
                : shortened;
    }

    private static String key(String name) {
        return inFileName(name).toLowerCase(Locale.ROOT);
    }

    private static String joined(String text) {
        return NameForms.composed(text.strip());
    }
}
