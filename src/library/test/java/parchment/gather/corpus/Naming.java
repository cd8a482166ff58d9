package parchment.gather.corpus;

import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/**
 * Says what a roast's file or tab is called, and what that tells.
 *
 * @param facts what the name tells
 * @param name the name
 */
record Naming(Set<Fact> facts, Function<Roast, String> name) {
    static DateTimeFormatter pattern(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH);
    }

    /** Returns names that hold the running number, as in "Batch %d.csv". */
    static Naming number(String format) {
        return new Naming(Set.of(Fact.BATCHES), roast -> String.format(Locale.ROOT, format, roast.number()));
    }

    /** Returns names that hold number and lot, as in "Batch %d - %s.csv". */
    static Naming numberAndLot(String format) {
        return new Naming(
                Set.of(Fact.BATCHES),
                roast -> String.format(
                        Locale.ROOT, format, roast.number(), roast.lot().replace('/', '-')));
    }

    /** Returns names that are the moment the recording began. */
    static Naming started(String pattern) {
        return new Naming(
                Set.of(Fact.DAYS, Fact.TIMES),
                roast -> pattern(pattern).format(roast.chargedAt().plusSeconds((long)
                        roast.readings().get(0).seconds())));
    }

    /** Returns names that are the moment of the charge. */
    static Naming charged(String pattern) {
        return new Naming(
                Set.of(Fact.DAYS, Fact.TIMES), roast -> pattern(pattern).format(roast.chargedAt()));
    }

    /** Returns names that are the day and which roast of the day it was. */
    static Naming dayAndNumber(String pattern, String format) {
        return new Naming(
                Set.of(Fact.DAYS, Fact.BATCHES),
                roast ->
                        String.format(Locale.ROOT, format, pattern(pattern).format(roast.chargedAt()), roast.number()));
    }

    /** Returns the same names, which tell less than it seems. */
    Naming telling(Fact... told) {
        return new Naming(Set.of(told), name);
    }
}
