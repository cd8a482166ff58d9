package parchment.virtual.written;

import java.time.LocalDate;
import java.util.List;
import parchment.virtual.people.GivenScore;

/**
 * A cupping of the virtual roastery: when, how, and every score.
 *
 * @param name the cupping's name
 * @param tastedOn the day
 * @param blind whether codes hid the batches
 * @param beforeDiscussion whether scores were written before anybody spoke
 * @param scores the scores, as written
 */
public record VirtualCupping(
        String name, LocalDate tastedOn, Blind blind, Talk beforeDiscussion, List<GivenScore> scores) {
    /** Copies the list. */
    public VirtualCupping {
        scores = List.copyOf(scores);
    }

    /** Says whether codes hid the batches. */
    public enum Blind {
        YES,
        NO
    }

    /** Says whether the scores were written before anybody spoke. */
    public enum Talk {
        SCORED_BEFORE,
        SCORED_AFTER
    }
}
