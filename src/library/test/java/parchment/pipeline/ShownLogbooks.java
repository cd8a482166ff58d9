package parchment.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import parchment.otherroastery.DropHabit;
import parchment.otherroastery.OtherLot;
import parchment.otherroastery.OtherRoastery;
import parchment.otherroastery.PlantedFaults;
import parchment.otherroastery.TrueCourse;
import parchment.otherroastery.Truth;

/**
 * Writes the three virtual logbooks of docs/measurements/before-and-after.md, each with a fixed seed, and prints what is true of them.
 *
 * <p>{@code FOLDER} makes the folders {@code unwritten-move}, {@code lockstep} and {@code no-effect} in it.
 */
final class ShownLogbooks {
    private static final long SEED = 1;
    private static final String ASKED = OtherCells.ASKED;
    private static final double SLOPE = 0.15;

    private ShownLogbooks() {}

    /** Writes the folders into the one named. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            System.err.println("Say the folder that the three logbooks are to be written into.");
            return;
        }
        Path folder = Path.of(arguments[0]);
        OtherRoastery ordinary = OtherRoastery.ordinary().withSeed(SEED);

        Truth moved = ordinary.withFaults(PlantedFaults.none()
                        .withProbeMoved(OtherCells.MOVE, 0.55, 1.12, PlantedFaults.Entry.NOT_WRITTEN))
                .writeTo(folder.resolve("unwritten-move"));
        say(
                "unwritten-move: the probe reads %.1f °C other from %s on",
                OtherCells.MOVE, moved.probeMovedOn().orElseThrow());
        for (OtherLot lot : ordinary.lots()) {
            say(
                    "unwritten-move: %s is best at %.1f °C as read at the end",
                    lot.name(), moved.bestReading(lot.name(), ASKED));
        }

        Truth lockstep = ordinary.withEveryLot(ASKED, TrueCourse.slope(6, SLOPE))
                .withDrop(ordinary.drop().by(DropHabit.Choice.LOCKSTEP).withHiddenCause(0.1, 0))
                .writeTo(folder.resolve("lockstep"));
        say(
                "lockstep: correlation of first gas and drop inside days %.2f; the drop's own slope %.2f points per °C",
                lockstep.insideDays(Truth.BatchTruth::gas, Truth.BatchTruth::endReading), lockstep.ownSlope(ASKED));

        ordinary.withEveryLot(ASKED, TrueCourse.none(6)).writeTo(folder.resolve("no-effect"));
        say("no-effect: %s is the same wherever a batch was dropped; lots %s", ASKED, names(ordinary.lots()));
    }

    private static String names(List<OtherLot> lots) {
        return String.join(", ", lots.stream().map(OtherLot::name).toList());
    }

    private static void say(String words, Object... numbers) {
        System.out.println(String.format(Locale.ROOT, words, numbers));
    }
}
