package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.Column;
import parchment.display.Table;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;

/** Which lots are a guide to a new one, a record on each side of each rule. */
class NearLotsTest {
    /** Makes a lot of three words: its name, its process and its origin, where "-" is not written. */
    private static Lot lot(String words) {
        String[] parts = words.split(",");
        return new Lot(
                parts[0],
                Optional.of(parts[2]).filter(p -> !p.equals("-")),
                Optional.of(parts[1]).filter(p -> !p.equals("-")),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Map.of());
    }

    private static NearLots near(CardLogbook built, String... lots) {
        return NearLots.of(
                "new",
                Logbook.of(built.contents().toBuilder()
                        .lots(Stream.of(lots).map(NearLotsTest::lot).toList())
                        .build()));
    }

    private static CardLogbook batches(int... counts) {
        CardLogbook built = new CardLogbook(List.of(), List.of());
        String[] names = {"a", "b", "c"};
        for (int i = 0; i < counts.length; i++) {
            built = built.with(names[i], names[i], counts[i], true);
        }
        return built;
    }

    /** Returns the lots that are laid side by side, in their order. */
    private static List<String> order(NearLots near) {
        return near.table().columns().stream().map(Column::heading).skip(1).toList();
    }

    private static List<String> row(NearLots near, int row) {
        Table table = near.table();
        return IntStream.range(0, table.columns().size())
                .mapToObj(column -> table.cell(row, column))
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "new,washed,north|a,washed,north|process and origin",
                "new,washed,north|a, WASHED ,south|process",
                "new, Washed ,north|a,washed,south|process",
                "new,washed,north|a,natural,North|origin",
                "new,washed,north|a,natural,south|",
                "new,-,north|a,-,south|",
                "new,-,north|a,-,north|origin",
                "new,washed,-|a,washed,-|process",
                "new,washed,-|a,-,-|",
                "new,-,-|a,washed,north|"
            })
    void whatTwoLotsHaveInCommonIsWhatIsWrittenOfBoth(String asked, String other, String alike) {
        NearLots near = near(batches(3), asked, other);
        assertEquals(alike == null, near.isEmpty());
        if (alike != null) {
            assertEquals(List.of("the same", alike), row(near, 0));
        }
    }

    /** The same of both goes before the same process, that before the same origin, whatever the number of batches; of three the last is left out. */
    @Test
    void processAndOriginGoBeforeProcessAndThatBeforeOrigin() {
        assertEquals(
                List.of("c", "b"),
                order(near(
                        batches(5, 4, 3), "new,washed,north", "a,natural,north", "b,washed,south", "c,washed,north")));
        assertEquals(
                List.of("b", "a"), order(near(batches(5, 4), "new,washed,north", "a,natural,north", "b,washed,south")));
    }

    @Test
    void ofLotsAsMuchAlikeThatOfMoreBatchesGoesBeforeAndThenTheName() {
        assertEquals(
                List.of("c", "b"),
                order(near(batches(3, 4, 5), "new,washed,-", "a,washed,-", "b,washed,-", "c,washed,-")));
        assertEquals(
                List.of("a", "b"),
                order(near(batches(3, 3, 3), "new,washed,-", "c,washed,-", "b,washed,-", "a,washed,-")));
    }

    /** More than five are held, five are shown: the eight that it was chosen from count. */
    @Test
    void theBatchesThatWereLookedAtCountAndNotTheFewThatAreShown() {
        assertEquals(List.of("b", "a"), order(near(batches(6, 8), "new,washed,-", "a,washed,-", "b,washed,-")));
    }

    @ParameterizedTest
    @CsvSource({"2,true", "3,false"})
    void aGuideHasThreeBatches(int batches, boolean none) {
        assertEquals(none, near(batches(batches), "new,washed,-", "a,washed,-").isEmpty());
    }

    @Test
    void aLotIsNoGuideToItselfAndOneThatIsNotListedHasNone() {
        CardLogbook built = batches(3).with("N", "new", 4, true);
        assertEquals(List.of("a"), order(near(built, "new,washed,north", "a,washed,south")));
        assertTrue(near(built, "a,washed,south").isEmpty());
    }

    @Test
    void theTableLaysTheirMiddlesSideBySide() {
        NearLots near = near(
                batches(3, 3).change("a1", b -> b.label(Batch.Label.RECIPE, "filter")),
                "new,washed,north",
                "a,washed,south",
                "b,washed,south");
        assertEquals(List.of("b"), order(near), "of a there are but two by its newest batch's recipe");
        assertEquals(
                "Other beans, so a weaker guide: the last good batches of the lots that are written down as most like new.",
                near.words("new"));
        assertEquals(
                "No other lot with 3 batches or more is written down with the process or the origin of new, so no other lot can be a"
                        + " guide.",
                near(batches(2), "new,washed,-", "a,washed,-").words("new"));
        assertEquals(List.of("batches", "3"), row(near, 1));
        assertEquals(List.of("went well by", "nothing known; the last"), row(near, 2));
        assertEquals(List.of("drop time", "11:20 (11:10 to 11:30)"), row(near, 5));
    }
}
