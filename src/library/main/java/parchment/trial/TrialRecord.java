package parchment.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import parchment.trial.sealed.Seal;

/**
 * Holds what was done with a trial since it was sealed, each entry chained to all before it, so that none can be changed, taken out or put in
 * without every later digit changing.
 *
 * <p>In its file an entry is two lines: what was done, and {@code = } with the SHA-256 of the digits of the entry before, the end of a line,
 * and what was done. Before the first entry stand the digits of the seal.
 *
 * @param seal the digits of the trial's seal
 * @param entries the entries, oldest first
 */
record TrialRecord(String seal, List<Entry> entries) {
    static final String HEADER = "parchment-record-1";

    private static final String DIGITS = "= ";

    /** Says what an entry tells. */
    enum Kind {
        /** The plan was sealed. */
        SEALED("sealed"),
        /** A set's batches were listed and weighed. */
        LISTED("listed"),
        /** A line was opened. */
        OPENED("opened"),
        /** Slips with every target were made. */
        SLIPS("slips"),
        /** The scores were looked at. */
        LOOKED("looked");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    /**
     * One thing that was done.
     *
     * @param text when, what, and the particulars, with blanks between them
     * @param digits the SHA-256 that chains it to those before
     */
    record Entry(String text, String digits) {
        /** Returns the time, in ISO 8601. */
        String at() {
            return text.substring(0, text.indexOf(' '));
        }

        /** Returns whether it tells of that. */
        boolean is(Kind kind) {
            return text.substring(text.indexOf(' ') + 1).startsWith(kind.word() + " ");
        }

        /** Returns the particulars. */
        String rest() {
            String what = text.substring(text.indexOf(' ') + 1);
            return what.substring(what.indexOf(' ') + 1);
        }
    }

    TrialRecord {
        entries = List.copyOf(entries);
    }

    /** Returns the record with one more entry. */
    TrialRecord with(String at, Kind kind, String rest) {
        String text = at + " " + kind.word() + " " + rest;
        List<Entry> longer = new ArrayList<>(entries);
        longer.add(new Entry(text, chained(last(), text)));
        return new TrialRecord(seal, longer);
    }

    /** Returns the digits of the newest entry, which bind whoever gives them away to all that was done so far. */
    String last() {
        return entries.isEmpty() ? seal : entries.get(entries.size() - 1).digits();
    }

    private static String chained(String before, String text) {
        return Seal.sha256(before + "\n" + text);
    }

    List<Entry> of(Kind kind) {
        return entries.stream().filter(entry -> entry.is(kind)).toList();
    }

    /** Returns the file's text. */
    String text() {
        return HEADER + "\n"
                + entries.stream()
                        .map(entry -> entry.text() + "\n" + DIGITS + entry.digits() + "\n")
                        .collect(Collectors.joining());
    }

    /** Begins the record of a trial that was sealed. */
    static TrialRecord begin(String seal, String at) {
        return new TrialRecord(seal, List.of()).with(at, Kind.SEALED, seal);
    }

    /**
     * Reads a record and holds its chain, which begins with the digits that its first entry tells.
     *
     * @throws IllegalArgumentException if an entry is not as it was written; the message names its line
     */
    static TrialRecord read(String text) {
        List<String> lines = List.of(text.split("\n", -1));
        if (!lines.get(0).equals(HEADER)) {
            throw new IllegalArgumentException("line 1 is not '" + HEADER + "'");
        }
        if (!lines.get(lines.size() - 1).isEmpty() || lines.size() % 2 != 0) {
            throw new IllegalArgumentException("it ends in the middle of an entry, after line " + lines.size());
        }
        if (lines.size() < 4 || !lines.get(1).matches("\\S+ " + Kind.SEALED.word() + " [0-9a-f]{64}")) {
            throw new IllegalArgumentException("line 2 does not tell of the seal");
        }
        String seal = lines.get(1).substring(lines.get(1).lastIndexOf(' ') + 1);
        List<Entry> entries = new ArrayList<>();
        String before = seal;
        for (int i = 1; i + 1 < lines.size(); i += 2) {
            Entry entry = new Entry(lines.get(i), lines.get(i + 1).replaceFirst("^" + DIGITS, ""));
            if (!lines.get(i + 1).equals(DIGITS + chained(before, entry.text()))) {
                throw new IllegalArgumentException("the entry in lines " + (i + 1) + " and " + (i + 2)
                        + " is not as it was written, or one before it was changed, taken out or put in");
            }
            if (!entry.text().matches("\\S+ \\S+ .+")) {
                throw new IllegalArgumentException("line " + (i + 1) + " tells nothing");
            }
            entries.add(entry);
            before = entry.digits();
        }
        return new TrialRecord(seal, entries);
    }
}
