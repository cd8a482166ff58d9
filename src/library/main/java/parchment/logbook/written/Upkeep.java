package parchment.logbook.written;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One piece of work on a machine; work on the bean probe parts what can be compared.
 *
 * @param machine the machine's name
 * @param doneOn the day it was done
 * @param what what was done, as in "probe moved" or "burner cleaned"
 * @param kind what kind of work it was
 * @param knownBy whether the kind was written or is proposed from the words
 * @param note whatever else was written
 */
public record Upkeep(
        String machine, LocalDate doneOn, String what, UpkeepKind kind, KnownBy knownBy, Optional<String> note) {

    /** Says how the kind of a piece of work is known. */
    public enum KnownBy {
        /** The column {@code kind} says it. */
        WRITTEN,
        /** It is proposed from the words of the column {@code what}. */
        PROPOSED
    }

    /** Holds a piece of work whose kind is proposed from its words. */
    public Upkeep(String machine, LocalDate doneOn, String what, Optional<String> note) {
        this(machine, doneOn, what, UpkeepKind.proposed(what), KnownBy.PROPOSED, note);
    }

    /** Holds a piece of work whose kind is written. */
    public Upkeep(String machine, LocalDate doneOn, String what, UpkeepKind kind, Optional<String> note) {
        this(machine, doneOn, what, kind, KnownBy.WRITTEN, note);
    }

    /** Returns what was done and, of work on a probe, what it is taken for: "new thermocouple (taken as: bean probe replaced)". */
    public String words() {
        String as = kind.words();
        boolean onAProbe = kind.changesTheBeanProbe() || kind == UpkeepKind.AIR_PROBE;
        return !onAProbe || what.equalsIgnoreCase(as)
                ? what
                : what + (knownBy == KnownBy.WRITTEN ? " (" + as + ")" : " (taken as: " + as + ")");
    }

    /**
     * Says whether the work was on the bean probe, moved or not: then readings since are looked at, though only a change of the probe
     * makes them incomparable.
     */
    public boolean concernsTheBeanProbe() {
        return kind.changesTheBeanProbe() || kind == UpkeepKind.OTHER && UpkeepKind.namesABeanProbe(what);
    }

    /** Returns the sentence that says how to settle a proposed kind; empty where it was written. */
    public Optional<String> toSettle() {
        return knownBy == KnownBy.WRITTEN
                ? Optional.empty()
                : Optional.of("The kind of this work was not written; from the words \"" + what + "\" it is taken as "
                        + (kind == UpkeepKind.OTHER ? "no change of the bean probe" : kind.words())
                        + ". Write the kind in upkeep.csv to settle it.");
    }
}
