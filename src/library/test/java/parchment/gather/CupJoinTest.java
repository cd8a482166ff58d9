package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds that a cup is joined to its batch with the reason, and never in silence where several batches can be meant. */
class CupJoinTest {
    private static final LocalDate DAY = LocalDate.of(2031, 6, 4);
    private static final FoundTable SHEET = MadeTables.of("a|b");

    private static final List<NamedBatch> BATCHES = List.of(
            batch("Batch 101 - Wren", "2031-06-01", "Low Orchard"),
            batch("102", "2031-06-02", "Far Terrace"),
            batch("103", "2031-06-02", "Far Terrace"),
            batch("104", "2031-06-03", "Hill"),
            batch("105", "2031-05-01", "Hill"),
            batch("2030-7", "2030-06-03", "Quay"),
            batch("2031-7", "2031-06-03", "Quay", "7"),
            batch("2030 no 7", "2030-05-03", "Quay", "7"));

    private static NamedBatch batch(String name, String day, String lot, String... others) {
        return new NamedBatch(name, List.of(others), Optional.of(LocalDate.parse(day)), Optional.empty(), lot);
    }

    private static TastedCup cup(String batch, String code, String lot) {
        return new TastedCup(Optional.of(DAY), "", "Ana", batch, code, lot, 0, Map.of("body", 7.0), 0, "", SHEET, 5);
    }

    private static BlindKey key(String... rows) {
        String[] lines = new String[rows.length + 1];
        lines[0] = "Date|Code|Batch";
        System.arraycopy(rows, 0, lines, 1, rows.length);
        return BlindKey.of(MadeTables.named("key.csv", "", List.of(), lines), ScoreClues.of(List.of()))
                .orElseThrow();
    }

    static Stream<Arguments> certain() {
        return Stream.of(
                Arguments.of(cup("102", "", ""), "102", "scores.csv line 5 is batch 102: the name '102' stands there."),
                Arguments.of(
                        cup("#102", "", ""), "102", "scores.csv line 5 is batch 102: the name '#102' stands there."),
                Arguments.of(
                        cup("Batch 102", "", ""),
                        "102",
                        "scores.csv line 5 is batch 102: the name 'Batch 102' stands there."),
                Arguments.of(
                        cup("Charge 0102", "", ""),
                        "102",
                        "scores.csv line 5 is batch 102: the name 'Charge 0102' stands there."),
                Arguments.of(
                        cup("101", "", ""),
                        "Batch 101 - Wren",
                        "scores.csv line 5 is batch Batch 101 - Wren: the name '101' stands there."),
                Arguments.of(
                        cup("7", "", ""),
                        "2031-7",
                        "scores.csv line 5 is batch 2031-7: of those called '7' it alone was roasted in the 21 days before."),
                Arguments.of(
                        cup("", "K7", ""),
                        "103",
                        "scores.csv line 5: code 'K7' of 2031-06-04 is batch 103, by the key's line 2 (key.csv)."),
                Arguments.of(
                        cup("first", "K7", ""),
                        "103",
                        "scores.csv line 5: code 'K7' of 2031-06-04 is batch 103, by the key's line 2 (key.csv)."),
                Arguments.of(
                        cup("", "k7", ""),
                        "103",
                        "scores.csv line 5: code 'k7' of 2031-06-04 is batch 103, by the key's line 2 (key.csv)."),
                Arguments.of(
                        cup("2031-06-01", "", "Low Orchard"),
                        "Batch 101 - Wren",
                        "scores.csv line 5 is batch Batch 101 - Wren: the only one of lot 'Low Orchard' roasted on 2031-06-01."),
                Arguments.of(
                        cup("", "", "hill"),
                        "104",
                        "scores.csv line 5 names the lot 'hill' alone; batch 104 alone of it was roasted in the 21 days before."));
    }

    @ParameterizedTest(name = "{2}")
    @MethodSource("certain")
    void joinsWithAReason(TastedCup cup, String batch, String reason) {
        CupJoin join = CupJoin.of(List.of(cup), List.of(key("2031-06-04|K7|103", "2031-06-05|K7|102")), BATCHES);
        assertEquals(List.of(new CupJoin.Joined(cup, batch, reason)), join.joined());
    }

    static Stream<Arguments> doubtful() {
        return Stream.of(
                Arguments.of(
                        cup("", "", "Far Terrace"),
                        List.of("102", "103"),
                        "scores.csv line 5 names the lot 'Far Terrace' alone; 2 batches of it can be meant."),
                Arguments.of(
                        cup("2031-06-02", "", ""),
                        List.of("102", "103"),
                        "scores.csv line 5: 2 batches were roasted on 2031-06-02."),
                Arguments.of(
                        cup("", "M2", ""),
                        List.of("102"),
                        "scores.csv line 5: the key has the code 'M2' of 2031-06-04 for another day (2031-06-05)."),
                Arguments.of(
                        cup("", "P3", ""),
                        List.of("102", "104"),
                        "scores.csv line 5: the key has the code 'P3' of 2031-06-04 for several batches."));
    }

    @ParameterizedTest(name = "{2}")
    @MethodSource("doubtful")
    void doesNotJoinInSilenceWhereSeveralCanBeMeant(TastedCup cup, List<String> batches, String reason) {
        CupJoin join = CupJoin.of(
                List.of(cup), List.of(key("2031-06-05|M2|102", "2031-06-04|P3|102", "2031-06-04|P3|104")), BATCHES);
        assertEquals(
                List.of(cup),
                join.doubtful().stream().map(CupJoin.Doubtful::cup).toList(),
                join.toString());
        CupJoin.Doubtful found = join.doubtful().get(0);
        assertEquals(batches.get(0), found.likeliest());
        assertEquals(batches.subList(1, batches.size()), found.alternatives());
        assertEquals(reason, found.reason());
        assertEquals(batches.size() == 1 ? batches.get(0) : "", found.unlessTold(), "one of several is a guess");
    }

    static Stream<Arguments> nothing() {
        return Stream.of(
                Arguments.of(
                        cup("batch 1O3", "", ""), "scores.csv line 5: no batch is called 'batch 1O3'; nearest is 103."),
                Arguments.of(cup("999999", "", ""), "scores.csv line 5: no batch is called '999999'."),
                Arguments.of(
                        cup("", "Z9", ""),
                        "scores.csv line 5: no key has the code 'Z9' of 2031-06-04, and no batch is called so."),
                Arguments.of(
                        cup("", "", "Valley"),
                        "scores.csv line 5 names the lot 'Valley' alone, and no batch of it is known."),
                Arguments.of(cup("", "", ""), "scores.csv line 5 names no batch, no code and no lot."),
                Arguments.of(
                        cup("2031-06-30", "", ""),
                        "scores.csv line 5: no batch is known that was roasted on 2031-06-30."),
                Arguments.of(
                        cup("", "K7", ""),
                        "scores.csv line 5: the code 'K7' of 2031-06-04 is '1033' by the key's line 2 (key.csv), and no batch is called so; nearest is 103."));
    }

    @ParameterizedTest(name = "{1}")
    @MethodSource("nothing")
    void namesWhatJoinsNothing(TastedCup cup, String reason) {
        CupJoin join = CupJoin.of(List.of(cup), List.of(key("2031-06-04|K7|1033")), BATCHES);
        assertEquals(
                List.of(reason),
                join.unjoined().stream().map(CupJoin.Unjoined::reason).toList(),
                join.toString());
    }

    @Test
    void readsKeysWithoutDaysAndBesideAList() {
        FoundTable list = MadeTables.of("Charge|Rohkaffee kg|Code", "101|5|K7", "102|5|", "103|5|M2", "104|5|M2");
        BlindKey key = BlindKey.of(list, ScoreClues.of(List.of())).orElseThrow();
        assertEquals(
                List.of("K7 101", "M2 103", "M2 104"),
                key.entries().stream().map(e -> e.code() + " " + e.batch()).toList());
        assertEquals(
                List.of(
                        "Line 5: the code 'M2' stands for '104' here and for '103' on line 4; cups of that code are asked about."),
                key.told());
        assertEquals("It has codes under 'Code' and batches under 'Charge'.", key.reason());
    }

    @Test
    void readsAKeyWhoseHeadingsAreStrangeByItsBatches() {
        FoundTable table = MadeTables.of("Muestra|Lo que es", "A|101", "B|102");
        BlindKey key = BlindKey.of(table, ScoreClues.of(List.of("101", "102"))).orElseThrow();
        assertEquals(
                List.of("A 101", "B 102"),
                key.entries().stream().map(e -> e.code() + " " + e.batch()).toList());
    }

    /** The 21 days are common practice, no source. */
    @Test
    void takesTheBatchRoastedUpTo21DaysBeforeAndNotOneDayMore() {
        List<NamedBatch> two = List.of(
                batch("1", DAY.minusDays(21).toString(), "Hill"),
                batch("2", DAY.minusDays(22).toString(), "Hill"));
        assertEquals(
                "1",
                CupJoin.of(List.of(cup("", "", "Hill")), List.of(), two)
                        .joined()
                        .get(0)
                        .batch());
        List<NamedBatch> both = List.of(
                batch("1", DAY.minusDays(21).toString(), "Hill"),
                batch("2", DAY.minusDays(20).toString(), "Hill"));
        assertEquals(
                1,
                CupJoin.of(List.of(cup("", "", "Hill")), List.of(), both)
                        .doubtful()
                        .size());
        List<NamedBatch> old = List.of(batch("2", DAY.minusDays(22).toString(), "Hill"));
        assertEquals(
                1,
                CupJoin.of(List.of(cup("", "", "Hill")), List.of(), old)
                        .doubtful()
                        .size());
    }

    @Test
    void takesANumberThatNoBatchIsCalledByForACodeOfTheKey() {
        List<BlindKey> keys = List.of(BlindKey.of(
                        MadeTables.named("key.csv", "", List.of(), "Nummer|Röstung", "708|102", "813|103"),
                        ScoreClues.of(List.of()))
                .orElseThrow());
        assertEquals(
                "103",
                CupJoin.of(List.of(cup("813", "", "")), keys, BATCHES)
                        .joined()
                        .get(0)
                        .batch());
        assertEquals(
                1,
                CupJoin.of(List.of(cup("814", "", "")), keys, BATCHES)
                        .unjoined()
                        .size());
    }

    @Test
    void takesTheNumberOfACupForItsCodeWhereAKeyHasNothingElse() {
        List<BlindKey> keys = List.of(BlindKey.of(
                        MadeTables.named("key.csv", "", List.of(), "Cup|Roast", "1|102", "2|103"),
                        ScoreClues.of(List.of()))
                .orElseThrow());
        assertEquals(
                "103",
                CupJoin.of(List.of(cup("", "2", "")), keys, BATCHES)
                        .joined()
                        .get(0)
                        .batch());
    }

    @Test
    void takesABatchThatStandsUnderTheCoffeeOnlyWhereItSaysSo() {
        assertEquals(
                "104",
                CupJoin.of(List.of(cup("", "", "Batch 104 of Monday")), List.of(), BATCHES)
                        .joined()
                        .get(0)
                        .batch());
        assertEquals(
                "104",
                CupJoin.of(List.of(cup("", "", "104 Hill")), List.of(), BATCHES)
                        .joined()
                        .get(0)
                        .batch());
        assertEquals(
                1,
                CupJoin.of(List.of(cup("", "", "104 Terraces")), List.of(), BATCHES)
                        .unjoined()
                        .size());
    }

    private static TastedCup cup(int line, Optional<LocalDate> day, String batch, String code, FoundTable sheet) {
        return new TastedCup(day, "", "Ana", batch, code, "", 0, Map.of("body", 7.0), 0, "", sheet, line);
    }

    private static List<TastedCup> cups(Optional<LocalDate> day, String heading, String... names) {
        FoundTable sheet = MadeTables.of("a|b");
        return IntStream.range(0, names.length)
                .mapToObj(i -> cup(
                        i + 2,
                        day,
                        heading.equals("batch") ? names[i] : "",
                        heading.equals("code") ? names[i] : "",
                        sheet))
                .toList();
    }

    private static String words(CupJoin join) {
        return "joined " + join.joined().stream().map(CupJoin.Joined::batch).toList() + ", asked "
                + join.doubtful().stream()
                        .map(cup -> cup.likeliest() + " or " + cup.alternatives())
                        .toList()
                + ", none " + join.unjoined().size();
    }

    /** Nine of ten names in the key are enough; common practice, no source. */
    @Test
    void takesNumbersThatBatchesHaveTooForCodesWhereTheKeyHasAllOfThem() {
        List<BlindKey> keys = List.of(key("|102|104", "|103|102", "|104|103"));
        CupJoin all = CupJoin.of(cups(Optional.of(DAY), "batch", "102", "103", "104"), keys, BATCHES);
        assertEquals("joined [104, 102, 103], asked [], none 0", words(all));
        assertEquals(
                List.of("102", "103", "104"),
                all.joined().stream().map(joined -> joined.cup().code()).toList());
        assertEquals(
                "scores.csv: '102' is read as a blind code, of batch 104 by the key; a batch is called so too.",
                all.told().get(0));
        CupJoin some = CupJoin.of(cups(Optional.of(DAY), "batch", "102", "103", "105"), keys, BATCHES);
        assertEquals("joined [105], asked [102 or [104], 103 or [102]], none 0", words(some));
        assertEquals(
                "scores.csv line 2: a batch is called '102', and the key has the code '102' for '104'.",
                some.doubtful().get(0).reason());
    }

    @Test
    void decidesBetweenANameAndACodeByTheDaysBeforeWhereTheKeyHasNotAll() {
        List<BlindKey> keys = List.of(key("|105|104"));
        CupJoin join = CupJoin.of(cups(Optional.of(DAY), "batch", "105", "102"), keys, BATCHES);
        assertEquals("joined [104, 102], asked [], none 0", words(join));
        assertEquals(
                "scores.csv line 2: a batch is called '105', and the key has the code '105' for '104'; 104 alone was roasted in the 21 days before.",
                join.joined().get(0).reason());
    }

    @Test
    void takesCodesWithoutAKeyForBatchesOnlyWhereAllAreCalledSoAndTheDaysFit() {
        assertEquals(
                "joined [102, 103], asked [], none 0",
                words(CupJoin.of(cups(Optional.of(DAY), "code", "102", "103"), List.of(), BATCHES)));
        assertEquals(
                "joined [], asked [102 or [], 103 or []], none 1",
                words(CupJoin.of(cups(Optional.of(DAY), "code", "102", "103", "417"), List.of(), BATCHES)));
        assertEquals(
                "joined [], asked [102 or [], 103 or []], none 0",
                words(CupJoin.of(cups(Optional.empty(), "code", "102", "103"), List.of(), BATCHES)));
        CupJoin old = CupJoin.of(cups(Optional.of(DAY), "code", "105"), List.of(), BATCHES);
        assertEquals("joined [], asked [105 or []], none 0", words(old));
        assertEquals(
                "scores.csv line 2: no key has the code '105' of 2031-06-04; a batch is called so, which can be chance.",
                old.doubtful().get(0).reason());
    }

    @Test
    void asksAboutABatchThatWasRoastedAfterItsTasting() {
        LocalDate roasted = LocalDate.of(2031, 6, 2);
        assertEquals(
                "joined [102], asked [], none 0",
                words(CupJoin.of(cups(Optional.of(roasted), "batch", "102"), List.of(), BATCHES)));
        CupJoin after = CupJoin.of(cups(Optional.of(roasted.minusDays(1)), "batch", "102"), List.of(), BATCHES);
        assertEquals("joined [], asked [102 or []], none 0", words(after));
        assertEquals(
                "scores.csv line 2: batch 102 was roasted on 2031-06-02, after it is said to be tasted.",
                after.doubtful().get(0).reason());
    }

    /** Three names that begin so make a word a word for a batch; common practice, no source. */
    @Test
    void readsANumberBehindAnyWordThatThreeBatchesBeginWith() {
        List<NamedBatch> three = List.of(
                batch("zoop1", "2031-06-01", ""), batch("zoop2", "2031-06-02", ""), batch("Zoop 03", "2031-06-03", ""));
        assertEquals(
                "joined [zoop2, Zoop 03], asked [], none 0",
                words(CupJoin.of(cups(Optional.of(DAY), "batch", "2", "3"), List.of(), three)));
        assertEquals(
                "joined [], asked [], none 1",
                words(CupJoin.of(cups(Optional.of(DAY), "batch", "2"), List.of(), three.subList(0, 2))));
        List<NamedBatch> more = new ArrayList<>(three);
        three.forEach(b -> more.add(batch(
                b.name().replaceAll("(?i)zoop", "vorp"), b.day().orElseThrow().toString(), "")));
        assertEquals(
                "joined [], asked [zoop2 or [vorp2]], none 0",
                words(CupJoin.of(cups(Optional.of(DAY), "batch", "2"), List.of(), more)));
    }
}
