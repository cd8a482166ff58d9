package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;

class GreenNeededTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    @Test
    void greenCoffeeForAnOrderFollowsTheMassLoss() {
        GreenNeeded needed = GreenNeeded.of("Cinder Ridge", Mass.kilograms(12), HARBOUR);
        assertTrue(needed.interval().contains(needed.kilograms()));
        assertTrue(needed.kilograms() > 13 && needed.kilograms() < 15, needed.toString());
        GreenNeeded twice = GreenNeeded.of("Cinder Ridge", Mass.kilograms(24), HARBOUR);
        assertEquals(2 * needed.kilograms(), twice.kilograms(), 1e-9);
    }

    /** Three lots whose losses differ by a point, and a lot of which some batches were weighed. */
    private static Logbook withNew(int weighed) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            rows.add(BuiltBatch.losing(0.14 + 0.01 * (i % 3) + 0.001 * ((i * 7) % 5))
                    .withLot("lot " + i % 3));
        }
        for (int i = 0; i < 4; i++) {
            rows.add((i < weighed ? BuiltBatch.losing(0.16 + 0.001 * i) : BuiltBatch.of(2)).withLot("new"));
        }
        return BuiltBatch.logbook(rows);
    }

    @Test
    void aLotThatWasHardlyWeighedIsTakenAsOneMoreOfTheOthers() {
        GreenNeeded none = GreenNeeded.of("new", Mass.kilograms(5), withNew(0));
        GreenNeeded two = GreenNeeded.of("new", Mass.kilograms(5), withNew(2));
        GreenNeeded four = GreenNeeded.of("new", Mass.kilograms(5), withNew(4));
        assertTrue(
                none.toString().endsWith("from 24 batches of 3 lots, because none of its own are weighed"),
                none.toString());
        assertTrue(
                two.toString().endsWith("from 26 batches of 4 lots, because only 2 of its own are weighed"),
                two.toString());
        assertTrue(four.toString().endsWith("from 4 batches"), four.toString());
        assertTrue(GreenNeeded.of("new", Mass.kilograms(5), withNew(1))
                .toString()
                .endsWith("only 1 of its own is weighed"));
        assertEquals(5 / (1 - 0.152), none.kilograms(), 0.01);
        assertTrue(two.kilograms() > none.kilograms() && two.kilograms() < 5 / (1 - 0.1605));
        assertTrue(width(none) > width(two) && width(two) > width(four));
    }

    private static double width(GreenNeeded needed) {
        assertTrue(needed.interval().lower() >= 5, needed.toString());
        return needed.interval().upper() - needed.interval().lower();
    }

    @Test
    void cannotTellFromTwoBatchesAlone() {
        GreenNeeded needed = GreenNeeded.of(
                "one",
                Mass.kilograms(5),
                BuiltBatch.logbook(List.of(BuiltBatch.losing(0.15), BuiltBatch.losing(0.16))));
        assertEquals(
                "Cannot tell how much green coffee 5.0 kg of one take: 2 of its batches have both masses, and 4 are needed, or 8"
                        + " of several lots",
                needed.toString());
    }
}
