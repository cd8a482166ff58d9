package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Finds the numbers by which a roaster may mean a batch, in the name of a file and in the lines above its readings. The words for a batch are common
 * practice, no source.
 */
final class BatchNumbers {
    private static final String BATCH =
            "(?:batch|roast|charge|röstung|roestung|röst|tueste|tostado|tanda|hornada|torra|torrefação|torrefacao|batelada"
                    + "|fournée|fournee|torréfaction|torrefaction|cuisson|tostatura|cotta)(?:es|s|en)?";
    private static final String NUMBER_WORD = "(?:no|nr|num|number|nummer|numero|número|numéro|n|id|name)?";
    private static final String SIGNS = "[\\s:#.°º№_=-]*";
    private static final Pattern AFTER_WORD = Pattern.compile("(?iu)(?<!\\p{L})" + BATCH + SIGNS + NUMBER_WORD + SIGNS
            + "(\\p{L}{0,3}-?\\d{1,8}\\p{L}?)(?![\\p{L}\\d:])");
    private static final Pattern ONLY_WORD = Pattern.compile("(?iu)" + BATCH + SIGNS + NUMBER_WORD + "[\\s:#.°º№]*");
    private static final Pattern DATES = Pattern.compile("(?<!\\d)(?:19|20)\\d{2}([-_.]?)\\d{2}\\1\\d{2}(?!\\d)"
            + "|(?<!\\d)\\d{1,2}[-_./]\\d{1,2}[-_./](?:19|20)?\\d{2}(?!\\d)");
    private static final Pattern TIMES =
            Pattern.compile("(?iu)(?<!\\d)\\d{1,2}[:h]\\d{2}(?:[:m]\\d{2})?s?(?:\\s?[ap]m)?(?!\\d)");
    /** A time of day that follows a date in the name of a file has no colon, which no file's name may hold. */
    private static final Pattern TIME_AFTER_DATE =
            Pattern.compile("\\u0000[T_\\s.-]*\\d{2}[-_.h]?\\d{2}(?:[-_.m]?\\d{2})?(?!\\d)");

    private static final Pattern NUMBERED = Pattern.compile(
            "(?iu)(?:#|№|(?<!\\p{L})(?:n[°º]|no\\.?|nr\\.?|num|number|nummer|n[uú]mero))[\\s:._-]*(\\d{1,8})(?![\\d:.,])");

    private static final Pattern SIGNS_BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");

    private static final Pattern NUMBER = Pattern.compile("\\d+");

    private BatchNumbers() {}

    /** Returns a number or a name with one as two writings of it are compared: without zeros in front, in small letters. */
    static String plain(String name) {
        Matcher digits = NUMBER.matcher(name.strip().toLowerCase(Locale.ROOT));
        return digits.replaceAll(match -> {
            String shorter = match.group().replaceFirst("^0+(?=\\d)", "");
            return Matcher.quoteReplacement(shorter);
        });
    }

    /** Returns the last number of a name, without zeros in front; empty if there is none. */
    static Optional<String> last(String name) {
        List<String> all = all(name);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    /** Returns the numbers of a name that are no part of a date or a time of day, without zeros in front. */
    static List<String> all(String name) {
        List<String> numbers = new ArrayList<>();
        Matcher number = NUMBER.matcher(withoutDates(name));
        while (number.find()) {
            numbers.add(number.group().replaceFirst("^0+(?=\\d)", ""));
        }
        return numbers;
    }

    /** Returns the number, as written, that a word for a batch stands before, in a name that has one such. */
    static Optional<String> afterWord(String text) {
        Matcher match = AFTER_WORD.matcher(withoutDates(text));
        if (!match.find()) {
            return Optional.empty();
        }
        String found = match.group(1);
        return match.find() && !plain(match.group(1)).equals(plain(found)) ? Optional.empty() : Optional.of(found);
    }

    /** Returns the names that lines above a table give a batch: what stands behind the word for a batch, in its cell or the next one. */
    static Set<String> titles(List<List<String>> above) {
        Set<String> names = new LinkedHashSet<>();
        for (List<String> row : above) {
            List<String> cells = row.stream()
                    .map(String::strip)
                    .filter(cell -> !cell.isEmpty())
                    .toList();
            for (int i = 0; i < cells.size(); i++) {
                if (ONLY_WORD.matcher(cells.get(i)).matches() && i + 1 < cells.size()) {
                    names.add(cells.get(i + 1));
                } else {
                    afterWord(cells.get(i)).ifPresent(names::add);
                }
            }
        }
        return names;
    }

    /** Returns whether a heading is a word for a batch, with or without one for its number. */
    static boolean isWord(String heading) {
        return ONLY_WORD.matcher(heading.strip()).matches();
    }

    /** Returns every cell above a table that could be a name. */
    static Set<String> cells(List<List<String>> above) {
        Set<String> cells = new LinkedHashSet<>();
        above.forEach(row -> row.stream()
                .map(String::strip)
                .filter(cell -> !cell.isEmpty() && cell.length() <= 60)
                .flatMap(cell -> Stream.of(cell, plain(cell)))
                .forEach(cells::add));
        return cells;
    }

    /** Returns whether a name stands among cells, as words of its own; a bare number only behind a sign or a word for a number. */
    static boolean hold(List<String> cells, String name) {
        String plain = words(name);
        if (plain.length() < 2 || cells.stream().allMatch(String::isBlank)) {
            return false;
        }
        if (name.matches("\\d+")) {
            return cells.stream().flatMap(cell -> numbered(cell).stream()).anyMatch(plain::equals);
        }
        return cells.stream().anyMatch(cell -> (" " + words(cell) + " ").contains(" " + plain + " "));
    }

    /** Returns the first number, without zeros in front, that a sign or a word for a number stands before. */
    static Optional<String> numbered(String cell) {
        Matcher match = NUMBERED.matcher(withoutDates(cell));
        return match.find() ? Optional.of(plain(match.group(1))) : Optional.empty();
    }

    /** Returns a text in small letters, with one blank between its words and numbers, which have no zeros in front. */
    static String words(String text) {
        return spaced(plain(text)).strip();
    }

    /** Returns a text with one blank for all signs between its words and numbers, and at its ends where signs stand there. */
    static String spaced(String text) {
        return SIGNS_BETWEEN.matcher(text).replaceAll(" ");
    }

    private static String withoutDates(String text) {
        String dated = DATES.matcher(text).replaceAll("\u0000");
        String timed = TIME_AFTER_DATE.matcher(dated).replaceAll(" ");
        return TIMES.matcher(timed).replaceAll(" ").replace('\u0000', ' ');
    }
}
