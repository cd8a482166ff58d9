package parchment.evidence;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import parchment.display.Showable;
import parchment.logbook.Logbook;
import parchment.logbook.written.Cupping;

/**
 * Counts the scores that were given blind and before anybody spoke.
 *
 * @param blindShare the share of scores from cuppings written down as blind, from 0 to 1
 * @param beforeDiscussionShare the share written down as scored before discussion
 */
record Blindness(double blindShare, double beforeDiscussionShare) implements Showable {
    /** Under this share of either the verdict is capped: a few cups of an open cupping do not spoil a year. */
    static final double ENOUGH = 0.95;

    static Blindness of(ModelFrame material, Logbook logbook) {
        return new Blindness(
                share(material, logbook, Cupping::blind), share(material, logbook, Cupping::beforeDiscussion));
    }

    private static double share(ModelFrame material, Logbook logbook, Function<Cupping, Cupping.Said> said) {
        long yes = material.scores().stream()
                .filter(score -> {
                    Optional<Cupping> cupping = logbook.cupping(score.cupping());
                    return cupping.isPresent() && said.apply(cupping.get()) == Cupping.Said.YES;
                })
                .count();
        return material.scores().isEmpty()
                ? 0
                : (double) yes / material.scores().size();
    }

    /** Says whether scores were blind and before discussion well enough to carry a strong verdict. */
    boolean enough() {
        return blindShare >= ENOUGH && beforeDiscussionShare >= ENOUGH;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%.0f %% of the scores were given blind and %.0f %% before discussion, as far as is written.",
                100 * blindShare,
                100 * beforeDiscussionShare);
    }
}
