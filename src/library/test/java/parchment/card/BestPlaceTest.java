package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import parchment.evidence.Evidence;
import parchment.evidence.LotBest;
import parchment.evidence.Peak;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.Cupping;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Fieller;

/** Of which lot on which machine the best place on a card is told, and when none is. */
class BestPlaceTest {
    private static final Logbook TWO = drawn(2);

    /**
     * Thirty roast days of four batches, dropped by chance about 205 °C: lot "one" is best at 203 °C on the drum and at 208 °C on the small drum, and lot
     * "other" rises over all that was tried. With one machine all are on the drum.
     */
    private static Logbook drawn(int machines) {
        Random random = new Random(11);
        CardLogbook built = CardLogbook.of(120);
        for (int i = 0; i < 120; i++) {
            boolean small = machines == 2 && i % 2 == 1;
            boolean one = i % 4 < 2;
            double drop = 205 + 3 * random.nextGaussian();
            double best = !one ? 235 : small ? 208 : 203;
            LocalDate day = LocalDate.of(2025, 1, 6).plusDays(i / 4);
            int hour = 9 + i % 4;
            String name = "B" + (i + 1);
            double seconds = 5 * (drop - 80);
            built = built.change(
                    name,
                    b -> b.roastedAt(CardLogbook.at(day, hour, 0))
                            .machine(small ? "small drum" : "drum")
                            .lot(one ? "one" : "other")
                            .curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, seconds + 4))
                            .writtenMark(MarkKind.DROP, Elapsed.seconds(seconds)));
            double score = 20 - 0.04 * (drop - best) * (drop - best) + (one ? 0 : 36);
            for (String cupper : List.of("Ida", "Jon", "Kai")) {
                built = built.cupBy(cupper, "blind", name, "liking", score + 0.2 * random.nextGaussian());
            }
        }
        return built.logbook();
    }

    private static GoodBatches good(Logbook logbook, String lot, String machine) {
        List<Batch> batches = logbook.batches().stream()
                .filter(b -> b.lot().equals(Optional.of(lot)) && b.machine().equals(Optional.of(machine)))
                .limit(4)
                .toList();
        return good(lot, batches, Optional.of(new ScoredLot("liking", Cupping.Said.YES, Set.of(), Map.of())));
    }

    private static GoodBatches good(String lot, List<Batch> batches, Optional<ScoredLot> scored) {
        return new GoodBatches(
                lot, GoodBatches.Ground.BLIND_SCORES, batches, 30, 4, scored, "", Optional.empty(), Optional.empty());
    }

    private static String words(Logbook logbook, String lot, String machine) {
        return BestPlace.of(good(logbook, lot, machine), logbook)
                .map(place -> place.words(
                        new double[] {place.best(), place.best(), place.best(), place.best()}, TemperatureUnit.CELSIUS))
                .orElse("");
    }

    private static String expected(Logbook logbook, String named, int batches, double near) {
        LotBest best =
                Evidence.of("liking", Features.dropTemperature(), logbook).best(named);
        assertEquals(Peak.Answer.INSIDE, best.best().answer());
        assertEquals(near, best.best().best(), 1);
        Fieller set = best.best().set().orElseThrow();
        return String.format(
                Locale.ROOT,
                "All %d scored batches of the lot together put the best drop for liking at %.1f °C (%.1f to %.1f °C), as today's probe"
                        + " reads: that is the surer number; these 4 are what it looked like on the drum. It is the best seen in this"
                        + " logbook, not a setting to make.",
                batches,
                best.best().best(),
                set.lower(),
                set.upper());
    }

    @Test
    void itIsThatOfTheLotOnTheMachineOfTheCard() {
        assertEquals(expected(TWO, "one on drum", 30, 203), words(TWO, "one", "drum"));
        assertEquals(expected(TWO, "one on small drum", 30, 208), words(TWO, "one", "small drum"));
    }

    @Test
    void withOneMachineItIsThatOfTheLot() {
        Logbook one = drawn(1);
        assertEquals(expected(one, "one", 60, 203), words(one, "one", "drum"));
        assertEquals("", words(one, "other", "drum"), "a lot that rises throughout has no best inside what was tried");
    }

    @Test
    void withoutScoresOrBatchesNoneIsTold() {
        assertEquals("", words(TWO, "other", "drum"));
        GoodBatches good = good(TWO, "one", "drum");
        assertEquals(Optional.empty(), BestPlace.of(good("one", List.of(), good.scored()), TWO));
        assertEquals(Optional.empty(), BestPlace.of(good("one", good.batches(), Optional.empty()), TWO));
        assertEquals("", words(TWO, "one", "no such drum"));
    }

    /** A filter leaves few batches in sight; the place is that of all that were scored. */
    @Test
    void aFilteredLogbookHasThePlaceOfTheWhole() {
        GoodBatches good = good(TWO, "one", "drum");
        assertEquals(
                BestPlace.of(good, TWO),
                BestPlace.of(good, TWO.only(good.batches().get(0).name())));
    }
}
