package parchment.kernel.help;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import parchment.feature.Features;
import parchment.kernel.source.Brackets;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;

/**
 * What could be written between quotes: names that the session's logbooks hold (attributes, lots, batches), and names of features. The
 * method that is called tells which are meant, where its name does.
 */
final class TextCompletions {
    private static final Pattern CALLED = Pattern.compile("([\\p{L}_$][\\p{L}\\d_$]*)\\s*$");

    /** Names with these would need to be written differently in code. */
    private static final Pattern NEEDS_ESCAPE = Pattern.compile("[\"\\\\\\p{Cntrl}]");

    private static final int MOST = 500;

    private TextCompletions() {}

    /**
     * Returns the names that go on from what is written after the quote.
     *
     * @param start the place of the quote
     * @param values what the session's variables hold
     */
    static Completions in(Stream<?> values, String code, int start, int cursor) {
        if (code.charAt(start) != '"' || code.startsWith("\"\"\"", start)) {
            return new Completions(List.of(), cursor, cursor);
        }
        String written = code.substring(start + 1, cursor);
        String low = written.toLowerCase(Locale.ROOT);
        List<Logbook> logbooks = values.filter(Logbook.class::isInstance)
                .map(Logbook.class::cast)
                .distinct()
                .toList();
        List<String> matches = names(called(code, start), logbooks)
                .filter(name -> name.toLowerCase(Locale.ROOT).startsWith(low))
                .filter(name -> !NEEDS_ESCAPE.matcher(name).find())
                .distinct()
                .limit(MOST)
                .toList();
        return new Completions(matches, start + 1, cursor);
    }

    private static Stream<String> names(String called, List<Logbook> logbooks) {
        String low = called.toLowerCase(Locale.ROOT);
        Stream<String> attributes = logbooks.stream().flatMap(logbook -> logbook.attributes().stream());
        Stream<String> lots =
                logbooks.stream().flatMap(logbook -> logbook.lots().stream().map(Lot::name));
        Stream<String> batches =
                logbooks.stream().flatMap(logbook -> logbook.batches().stream().map(Batch::name));
        if (low.contains("lot")) {
            return lots;
        }
        if (low.contains("batch") || low.equals("find")) {
            return batches;
        }
        if (low.equals("named")) {
            return Features.all().names().stream();
        }
        return Stream.of(attributes, lots, batches).flatMap(names -> names);
    }

    private static String called(String code, int quote) {
        int open = Brackets.innermostCall(code.substring(0, quote));
        Matcher name = CALLED.matcher(code.substring(0, Math.max(0, open)));
        return name.find() ? name.group(1) : "";
    }
}
