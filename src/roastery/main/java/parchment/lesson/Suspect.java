package parchment.lesson;

import java.util.Arrays;
import java.util.List;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.written.VirtualBatch;

/** Is what may be behind the strange autumn of lesson eight. The book says the same in all three. */
enum Suspect {
    /** From one day on the sacks of one lot held another. */
    BEAN(
            "bean",
            "The bean: the probe was put back where it had been. But from that day the sacks with the name of Low Orchard held Salt"
                    + " Meadow, which cracks earlier."),
    /** From one day on the probe sat elsewhere. */
    MACHINE(
            "machine",
            "The machine: the probe was put back one hand lower. From that day every temperature in the logbook is on another scale."),
    /** The room became cold. */
    WEATHER(
            "weather",
            "The weather: the probe was put back where it had been, and the sacks were what they said. The room had become cold, and a"
                    + " cold room takes longer.");

    private static final String ACTUAL = "Salt Meadow";

    private final String word;
    private final String opened;

    Suspect(String word, String opened) {
        this.word = word;
        this.opened = opened;
    }

    /** Returns the word that a student answers with. */
    String word() {
        return word;
    }

    /** Returns what the envelope tells. */
    String opened() {
        return opened;
    }

    static List<String> words() {
        return Arrays.stream(values()).map(Suspect::word).toList();
    }

    static Suspect drawn(long draw) {
        return values()[Chance.of(draw, "suspect").below(values().length)];
    }

    /** Tells which of the three was made. */
    static Suspect behind(VirtualLogbook all) {
        List<VirtualBatch> batches = all.batches();
        VirtualBatch last = batches.get(batches.size() - 1);
        if (!batches.get(0).conditions().probes().equals(last.conditions().probes())) {
            return MACHINE;
        }
        return batches.stream().anyMatch(batch -> batch.plan().lot().name().equals(ACTUAL)) ? BEAN : WEATHER;
    }

    VirtualRoastery roastery() {
        return VirtualRoastery.of(Scenario.packed(Suspect.class, "autumn.scenario", "autumn-" + word + ".scenario"));
    }
}
