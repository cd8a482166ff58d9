package parchment.gather;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Writes the tables of cuppings of a new logbook. */
final class CuppingsWriter {
    private final List<CupJoin.Joined> cups;
    private final List<ScoreSheet> sheets;

    private CuppingsWriter(List<CupJoin.Joined> cups, List<ScoreSheet> sheets) {
        this.cups = List.copyOf(cups);
        this.sheets = List.copyOf(sheets);
    }

    /**
     * Prepares the tables.
     *
     * @param cups cups with their batches
     * @param sheets the sheets that the cups are from, for scales and for what was served blind
     */
    static CuppingsWriter of(List<CupJoin.Joined> cups, List<ScoreSheet> sheets) {
        return new CuppingsWriter(cups, sheets);
    }

    /** Writes cuppings.csv and, where something is known of a cupping, sessions.csv. */
    void write(Path folder) throws IOException {}

    /** Returns the lines of logbook.properties that state scales. */
    List<String> settings() {
        return List.of();
    }

    /** Returns what was read another way than it stands, a sentence each. */
    List<String> told() {
        return cups.size() + sheets.size() == 0 ? List.of("No cup was scored.") : List.of();
    }
}
