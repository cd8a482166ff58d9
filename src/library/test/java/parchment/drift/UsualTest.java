package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.Upkeep;
import parchment.phase.ExampleRoast;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/** A record on each side of each rule of "is this batch like its lot's others". */
class UsualTest {
    /** Charge temperatures of the others; median 180, the furthest 4 °C away. */
    private static final double[] CHARGES = {178, 179, 179.5, 180, 180, 180.5, 181, 184};

    private static Usual charged(double own, double... others) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (double charge : others) {
            rows.add(BuiltBatch.of(2).withCharge(charge));
        }
        rows.add(BuiltBatch.of(2).withCharge(own));
        Logbook logbook = BuiltBatch.logbook(rows);
        return Usual.of(logbook.batch("B" + rows.size()), logbook);
    }

    private static Usual.Compared of(Usual usual, String feature) {
        return usual.compared().stream()
                .filter(c -> c.feature().name().equals(feature))
                .findFirst()
                .orElseThrow();
    }

    /** Worked out again from the definition: the larger of two spreads, and Student's t at 0.05 over eleven features. */
    private static double halfWidth(double[] others, double median) {
        return halfWidth(others, median, 0.05);
    }

    private static double halfWidth(double[] others, double median, double alarm) {
        double[] away =
                Arrays.stream(others).map(v -> Math.abs(v - median)).sorted().toArray();
        double middle = (away[(away.length - 1) / 2] + away[away.length / 2]) / 2;
        double mean = Arrays.stream(away).average().orElse(0);
        double spread = Math.max(1.4826 * middle, Math.sqrt(Math.PI / 2) * mean);
        double t = new TDistribution(others.length - 1).inverseCumulativeProbability(1 - alarm / 11 / 2);
        return spread * t * Math.sqrt(1 + Math.PI / 2 / others.length);
    }

    @Test
    void theRangeIsThatOfTheStatedAlarm() {
        Usual.Compared charge = of(charged(181, CHARGES), "charge temperature");
        assertEquals(180, charge.usual(), 1e-9);
        assertEquals(8, charge.others());
        assertEquals(180 - halfWidth(CHARGES, 180), charge.range().lower(), 1e-6);
        assertEquals(180 + halfWidth(CHARGES, 180), charge.range().upper(), 1e-6);
        assertEquals(1 - 0.05 / 11, charge.range().level(), 1e-12);
        // Most are the same and one lies far off: the mean of the deviations is the spread.
        double[] most = {180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 188};
        Usual.Compared same = of(charged(181, most), "charge temperature");
        double t = new TDistribution(14).inverseCumulativeProbability(1 - 0.05 / 11 / 2);
        assertEquals(
                180 + 8.0 / 15 * Math.sqrt(Math.PI / 2) * Math.sqrt(1 + Math.PI / 2 / 15) * t,
                same.range().upper(),
                1e-6);
    }

    @Test
    void aNumberBeyondItsRangeNeverPrintsAsAnEndOfIt() {
        double upper = of(charged(181, CHARGES), "charge temperature").range().upper();
        Usual just = charged(upper + 0.002, CHARGES);
        assertEquals(Usual.Verdict.UNLIKE_THE_OTHERS, just.verdict());
        Usual.Compared one = of(just, "charge temperature");
        Unit unit = UsualPage.unit(just, one);
        assertFalse(unit.format(one.value(), just.reader())
                .equals(unit.format(one.range().upper(), just.reader())));
        String page = just.byFeature().text();
        assertTrue(page.contains(unit.format(one.value(), just.reader())), page);
        // A number within, or one that lies well beyond, keeps the feature's own digits.
        for (double own : new double[] {upper - 0.002, upper + 5}) {
            Usual plain = charged(own, CHARGES);
            assertEquals(
                    1, UsualPage.unit(plain, of(plain, "charge temperature")).digits());
        }
    }

    @ParameterizedTest
    @CsvSource({"10.001,false", "9.999,true"})
    void oneBatchBeyondTenSpreadsDoesNotWidenWhatIsUsual(double spreads, boolean widens) {
        // Sixteen others, five of them a degree and five two degrees away: with the far one the median of the
        // deviations is 1.
        double[] others = {180, 180, 180, 180, 180, 181, 181, 181, 179, 179, 182, 182, 182, 178, 178, 0};
        others[15] = 180 + spreads * 1.4826;
        double[] near = Arrays.copyOf(others, 15);
        Usual.Compared charge = of(charged(181, others), "charge temperature");
        double[] away = Arrays.stream(widens ? others : near)
                .map(v -> Math.abs(v - 180))
                .toArray();
        double spread = Math.max(
                1.4826, Math.sqrt(Math.PI / 2) * Arrays.stream(away).average().orElse(0));
        double t = new TDistribution(15).inverseCumulativeProbability(1 - 0.05 / 11 / 2);
        assertEquals(
                180 + spread * t * Math.sqrt(1 + Math.PI / 2 / 16),
                charge.range().upper(),
                1e-6);
        assertEquals(16, charge.others());
        // A slip of 45 °C among the others does not hide one of 12 °C.
        double[] slip = others.clone();
        slip[15] = 225;
        assertEquals(Usual.Verdict.UNLIKE_THE_OTHERS, charged(192, slip).verdict());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "4; 15.01; ' (perhaps first crack was marked about 30 s too late: the development time is 15 s shorter than usual)'",
                "4; 14.99; ''",
                "4; -30; ''",
                "4; NaN; ''",
                "-4; -15.01; ' (perhaps first crack was marked about 30 s too early: the development time is 15 s longer than usual)'",
                "-4; -14.99; ''",
                "-4; 30; ''"
            })
    void aMarkMayBeLateWhereTheDevelopmentTimeIsShortByHalfOfTheDelayAtLeast(double off, double shorter, String words) {
        assertEquals(words, UsualReasons.markWords(off, 8, shorter));
    }

    @Test
    void aChargeTemperatureIsHeldAgainstThoseOfTheSameProbeAndItsAgreementWithTheCurveAgainstAll() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            rows.add(BuiltBatch.of(2).withMachine("north").withCharge(i < 10 ? 180 + i % 3 : 190 + i % 3));
        }
        Logbook built = BuiltBatch.logbook(rows);
        Upkeep moved = new Upkeep("north", LocalDate.of(2025, 1, 11), "probe moved", Optional.empty());
        Logbook logbook =
                Logbook.of(built.contents().toBuilder().upkeep(List.of(moved)).build());
        Usual.Compared before = of(Usual.of(logbook.batch("B5"), logbook), "charge temperature");
        assertEquals(9, before.others());
        assertEquals(181, before.usual(), 1.01);
        assertEquals(181, before.value(), 1e-9);
        Usual.Compared after = of(Usual.of(logbook.batch("B15"), logbook), "charge temperature");
        assertEquals(9, after.others());
        assertEquals(191, after.usual(), 1.01);
    }

    @ParameterizedTest
    @CsvSource({
        "0.05,1,1.001,UNLIKE_THE_OTHERS",
        "0.05,1,0.999,A_LITTLE_UNLIKE_THE_OTHERS",
        "0.05,-1,1.001,UNLIKE_THE_OTHERS",
        "0.05,-1,0.999,A_LITTLE_UNLIKE_THE_OTHERS",
        "0.2,1,1.001,A_LITTLE_UNLIKE_THE_OTHERS",
        "0.2,1,0.999,LIKE_THE_OTHERS",
        "0.2,-1,1.001,A_LITTLE_UNLIKE_THE_OTHERS",
        "0.2,-1,0.999,LIKE_THE_OTHERS"
    })
    void isALittleUnlikeBetweenTheTwoRangesAndUnlikeBeyondThem(
            double alarm, int side, double times, Usual.Verdict verdict) {
        double own = 180 + side * times * halfWidth(CHARGES, 180, alarm);
        Usual usual = charged(own, CHARGES);
        assertEquals(verdict, usual.verdict());
        assertEquals(verdict, of(usual, "charge temperature").verdict());
        assertEquals(Usual.Verdict.CANNOT_TELL, of(usual, "drying time").verdict());
        assertEquals(
                verdict == Usual.Verdict.LIKE_THE_OTHERS ? 0 : 1,
                usual.reasons().size());
    }

    @Test
    void theNarrowerRangeIsThatOfOneOrdinaryBatchInFive() {
        Usual.Compared charge = of(charged(181, CHARGES), "charge temperature");
        assertEquals(180 - halfWidth(CHARGES, 180, 0.2), charge.narrower().lower(), 1e-6);
        assertEquals(180 + halfWidth(CHARGES, 180, 0.2), charge.narrower().upper(), 1e-6);
        assertEquals(1 - 0.2 / 11, charge.narrower().level(), 1e-12);
    }

    /** Beside what makes a batch unlike the others, what is a little off is in the table and no reason. */
    @Test
    void theWordOfTheBatchIsThatOfItsOddestFeature() {
        double[] losses = {0.15, 0.151, 0.149, 0.152, 0.148, 0.15, 0.153, 0.147};
        List<BuiltBatch> rows = new ArrayList<>();
        for (int k = 0; k < 8; k++) {
            rows.add(BuiltBatch.losing(losses[k]).withCharge(CHARGES[k]));
        }
        double little = 180 + 0.999 * halfWidth(CHARGES, 180);
        rows.add(BuiltBatch.losing(0.15).withCharge(little));
        Logbook one = BuiltBatch.logbook(rows);
        Usual middle = Usual.of(one.batch("B9"), one);
        assertEquals(Usual.Verdict.A_LITTLE_UNLIKE_THE_OTHERS, middle.verdict());
        assertEquals(1, middle.reasons().size());
        rows.set(8, BuiltBatch.losing(0.1588).withCharge(little));
        Logbook two = BuiltBatch.logbook(rows);
        Usual twice = Usual.of(two.batch("B9"), two);
        assertEquals(Usual.Verdict.A_LITTLE_UNLIKE_THE_OTHERS, twice.verdict());
        assertEquals(2, twice.reasons().size());
        assertEquals(
                "One more thing is so; about 10 of 100 ordinary batches are called a little unlike.",
                ShortSentences.keptBy(twice.inShort()).howSure());
        rows.set(8, BuiltBatch.losing(0.25).withCharge(little));
        Logbook both = BuiltBatch.logbook(rows);
        Usual unlike = Usual.of(both.batch("B9"), both);
        assertEquals(Usual.Verdict.UNLIKE_THE_OTHERS, unlike.verdict());
        assertEquals(List.of("mass loss 25.0 %, which is 10.0 % above the usual"), unlike.reasons());
        assertEquals("a little unlike", row(unlike.text(), "charge temperature").get(5));
        assertEquals("unlike", row(unlike.text(), "mass loss").get(5));
    }

    @Test
    void saysWhatIsALittleOff() {
        Usual usual = charged(186, CHARGES);
        assertEquals(
                "batch B9 is a little unlike 8 others of lot one, about the same mass: charge temperature 186.0 °C, which is 6.0"
                        + " °C above the usual",
                usual.toString());
        assertEquals(
                new InShort(
                        "Batch B9 is a little unlike the others: charge temperature 186.0 °C, 6.0 °C above the usual.",
                        "About 10 of 100 ordinary batches are called a little unlike, so it may be chance.",
                        "Nothing to do yet; keep it in mind when you taste it."),
                usual.inShort());
        ShortSentences.keptBy(usual.inShort());
    }

    @Test
    void saysHowFarAboveOrBelow() {
        assertEquals(
                "batch B9 is unlike 8 others of lot one, about the same mass: charge temperature 225.0 °C, which is 45.0 °C above"
                        + " the usual",
                charged(225, CHARGES).toString());
        assertEquals(
                "batch B9 is unlike 8 others of lot one, about the same mass: charge temperature 150.0 °C, which is 30.0 °C below"
                        + " the usual",
                charged(150, CHARGES).toString());
        assertEquals(
                "batch B9 is like 8 others of lot one, about the same mass",
                charged(181, CHARGES).toString());
        assertEquals(
                "Cannot tell whether batch B8 is like the others: there are 7 others of lot one, and 8 are needed",
                charged(181, Arrays.copyOf(CHARGES, 7)).toString());
        assertEquals(
                "Cannot tell whether batch B2 is like the others: there is 1 other of lot one, and 8 are needed",
                charged(181, 180).toString());
        assertEquals("Cannot tell whether batch B1 is like the others: no lot was written for it", noLot().toString());
        String page = charged(225, CHARGES).text();
        assertTrue(page.lines().anyMatch(l -> l.contains("charge temperature") && l.contains("unlike")), page);
        page = charged(181, CHARGES).text();
        assertTrue(page.lines().anyMatch(l -> l.contains("charge temperature") && l.contains("as usual")), page);
    }

    private static Usual noLot() {
        Logbook logbook = BuiltBatch.logbook(List.of(BuiltBatch.of(2).withLot("")));
        return Usual.of(logbook.batch("B1"), logbook);
    }

    @ParameterizedTest
    @CsvSource({"2.199,8", "2.201,0", "1.801,8", "1.799,0"})
    void heldAgainstThoseOfAboutTheSameMassWhereThereAreEnoughAndElseNotByWhatFollowsFromIt(double mass, int others) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            rows.add(BuiltBatch.of(i < 8 ? mass : 3).withCharge(180 + i % 3));
        }
        rows.add(BuiltBatch.of(2).withCharge(181));
        Logbook logbook = BuiltBatch.logbook(rows);
        assertEquals(
                others,
                of(Usual.of(logbook.batch("B17"), logbook), "charge temperature")
                        .others());
        rows.set(0, rows.get(0).withGreen(3));
        Logbook seven = BuiltBatch.logbook(rows);
        assertEquals(
                0, of(Usual.of(seven.batch("B17"), seven), "charge temperature").others());
    }

    /** Seven others of its charge, and as many of another or one more. */
    @ParameterizedTest
    @CsvSource({"7,14,false", "8,0,true"})
    void aChargeIsOddWhereMoreThanHalfOfTheOthersAreOfAnother(int ofAnother, int others, boolean odd) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 7 + ofAnother; i++) {
            rows.add(BuiltBatch.of(i < 7 ? 2 : 4).withCharge(180 + i % 3));
        }
        rows.add(BuiltBatch.of(2).withCharge(181));
        Logbook logbook = BuiltBatch.logbook(rows);
        Usual usual = Usual.of(logbook.batch("B" + rows.size()), logbook);
        assertEquals(others, of(usual, "charge temperature").others());
        assertEquals(odd, usual.oddCharge().isPresent());
    }

    /** Nine others of 4 kg that lost 14 %; the batch's charge temperature is far off, as that of another charge may be. */
    private static Usual ofCharge(double green, double loss) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            rows.add(BuiltBatch.losing(0.138 + 0.001 * (i % 5)).withGreen(4).withCharge(180 + i % 3));
        }
        rows.add((Double.isNaN(loss) ? BuiltBatch.of(2) : BuiltBatch.losing(loss))
                .withGreen(green)
                .withCharge(150));
        Logbook logbook = BuiltBatch.logbook(rows);
        return Usual.of(logbook.batch("B10"), logbook);
    }

    @ParameterizedTest
    @CsvSource({
        "2,a half charge (2 kg; usually 4 kg)",
        "2.19,a half charge (2.19 kg; usually 4 kg)",
        "2.21,a small charge (2.21 kg; usually 4 kg)",
        "1.81,a half charge (1.81 kg; usually 4 kg)",
        "1.79,a small charge (1.79 kg; usually 4 kg)",
        "4.5,a large charge (4.5 kg; usually 4 kg)"
    })
    void aChargeIsCalledByItsSize(double green, String words) {
        assertEquals(words, ofCharge(green, 0.14).oddCharge().orElseThrow().words());
    }

    /** Seven others are too few to say anything, whatever their charge. */
    @ParameterizedTest
    @CsvSource({"7,false", "8,true"})
    void aChargeIsOddOnlyBesideEightOthers(int others, boolean odd) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < others; i++) {
            rows.add(BuiltBatch.of(4));
        }
        rows.add(BuiltBatch.of(2));
        Logbook logbook = BuiltBatch.logbook(rows);
        assertEquals(
                odd,
                Usual.of(logbook.batch("B" + rows.size()), logbook).oddCharge().isPresent());
    }

    @Test
    void anOddChargeIsSaidFirstAndWhatFollowsFromItMakesNothingUnlike() {
        Usual like = ofCharge(2, 0.14);
        assertEquals(Usual.Verdict.LIKE_THE_OTHERS, like.verdict());
        assertEquals(
                new InShort(
                        "Batch B10 was a half charge (2 kg; usually 4 kg).",
                        "Too few are like it to say more than this: mass loss is as usual.",
                        "Nothing to do; the cup decides."),
                ShortSentences.keptBy(like.inShort()));
        assertEquals(
                "batch B10 was a half charge (2 kg; usually 4 kg), too few like it to say more than this: in mass loss it is"
                        + " like 9 others of lot one",
                like.toString());
        Usual little = ofCharge(2, 0.1456);
        assertEquals(Usual.Verdict.A_LITTLE_UNLIKE_THE_OTHERS, little.verdict());
        assertEquals(
                new InShort(
                        "Batch B10 was a half charge (2 kg; usually 4 kg) and is a little unlike the others.",
                        "Too few are like it to say more than this: mass loss 14.6 %, 0.6 % above the usual.",
                        "Nothing to do yet; keep it in mind when you taste it."),
                ShortSentences.keptBy(little.inShort()));
        Usual unlike = ofCharge(2, 0.25);
        assertEquals(
                new InShort(
                        "Batch B10 was a half charge (2 kg; usually 4 kg) and is unlike the others.",
                        "Too few are like it to say more than this: mass loss 25.0 %, 11.0 % above the usual.",
                        "Cup it beside a usual batch before you decide: unlike is not bad."),
                ShortSentences.keptBy(unlike.inShort()));
        assertEquals(
                "batch B10 was a half charge (2 kg; usually 4 kg), too few like it to say more than this: in mass loss it is"
                        + " unlike 9 others of lot one: mass loss 25.0 %, which is 11.0 % above the usual",
                unlike.toString());
        Usual unknown = ofCharge(2, Double.NaN);
        assertEquals(
                new InShort(
                        "Batch B10 was a half charge (2 kg; usually 4 kg).",
                        "Too few are like it to say anything.",
                        "Ask again when 9 of that charge are roasted."),
                ShortSentences.keptBy(unknown.inShort()));
        assertEquals(
                "Cannot tell whether batch B10 is like the others: it was a half charge (2 kg; usually 4 kg), and too few are"
                        + " like it to say anything",
                unknown.toString());
    }

    @Test
    void rangesNeverReachBeyondWhatIsPossible() {
        double[] losses = {0.14, 0.05, 0.22, 0.10, 0.18, 0.14, 0.03, 0.30};
        List<BuiltBatch> rows = new ArrayList<>();
        for (double loss : losses) {
            rows.add(BuiltBatch.losing(loss));
        }
        rows.add(BuiltBatch.losing(0.14));
        Logbook logbook = BuiltBatch.logbook(rows);
        Usual.Compared loss = of(Usual.of(logbook.batch("B9"), logbook), "mass loss");
        assertEquals(0.14, loss.usual(), 1e-9);
        assertTrue(
                loss.range().lower() > 0
                        && loss.range().upper() > 0.3
                        && loss.range().upper() < 1,
                loss.toString());
    }

    private static List<String> row(String page, String feature) {
        return page.lines()
                .filter(line -> line.startsWith(feature + " "))
                .findFirst()
                .map(line -> List.of(line.strip().split(" {2,}")))
                .orElseThrow();
    }

    @Test
    void thePageShowsEachFeatureBesideWhatIsUsual() {
        Usual usual = charged(225, CHARGES);
        assertEquals("B9", usual.batch().name());
        String page = usual.text();
        Usual.Compared charge = of(usual, "charge temperature");
        assertEquals(
                List.of(
                        "charge temperature",
                        "225.0 °C",
                        "180.0 °C",
                        String.format(
                                java.util.Locale.ROOT,
                                "%.1f to %.1f °C",
                                charge.narrower().lower(),
                                charge.narrower().upper()),
                        String.format(
                                java.util.Locale.ROOT,
                                "%.1f to %.1f °C",
                                charge.range().lower(),
                                charge.range().upper()),
                        "unlike",
                        "8"),
                row(page, "charge temperature"),
                page);
        // What was not measured is neither unlike nor as usual.
        assertTrue(page.lines().noneMatch(line -> line.startsWith("drying time")), page);
        assertTrue(
                page.contains(
                        "Not measured in this batch and in too few others: charge temperature as written less as read, turning"
                                + " point temperature, drying time, browning time, development time,"),
                page);
        assertTrue(
                page.contains(
                        "A batch has 11 such numbers, so each range is wide: it is meant to hold 98.2 and 99.5 of 100 batches in its"
                                + " own row, and all rows of a batch at once in 80 and 95 of 100."),
                page);
        assertTrue(page.endsWith("Unlike is not bad: the cup decides."), page);
        String few = charged(181, Arrays.copyOf(CHARGES, 7)).text();
        assertEquals(
                "Is batch B8 like the others?\n\nWhether batch B8 is like the others cannot be told.\nThere are 7 others of lot one,"
                        + " and 8 are needed.\nAsk again when more of the lot are roasted.\n\nHow this was worked out\n\nCannot tell"
                        + " whether batch B8 is like the others: there are 7 others of lot one, and 8 are needed.",
                few);
    }

    /** Half a printed step is no difference, however alike the others are. */
    @ParameterizedTest
    @CsvSource({"180.1, LIKE_THE_OTHERS", "179.9, LIKE_THE_OTHERS", "180.5, UNLIKE_THE_OTHERS"})
    void othersThatAreAllTheSameLeaveAPrintedStep(double own, Usual.Verdict verdict) {
        double[] same = new double[12];
        Arrays.fill(same, 180);
        assertEquals(verdict, charged(own, same).verdict());
    }

    @Test
    void theFirstSentencesSayWhetherItIsLikeTheOthers() {
        assertEquals(
                new InShort(
                        "Batch B9 is like 8 others of lot one, about the same mass.",
                        "The one number that can be held against theirs lies where 80 of 100 batches have all theirs; of 10 more it cannot be told.",
                        "Nothing to do; the cup decides."),
                ShortSentences.keptBy(charged(181, CHARGES).inShort()));
        assertEquals(
                new InShort(
                        "Batch B9 is unlike the others: charge temperature 260.0 °C, 80.0 °C above the usual.",
                        "No other number of it could be held against the others.",
                        "Cup it beside a usual batch before you decide: unlike is not bad."),
                charged(260, CHARGES).inShort());
        assertEquals(
                new InShort(
                        "Whether batch B2 is like the others cannot be told.",
                        "There is 1 other of lot one, and 8 are needed.",
                        "Ask again when more of the lot are roasted."),
                ShortSentences.keptBy(charged(181, 180).inShort()));
        Logbook nameless =
                BuiltBatch.logbook(List.of(BuiltBatch.of(2).withLot("").withCharge(180)));
        assertEquals(
                new InShort(
                        "Whether batch B1 is like the others cannot be told.",
                        "No lot was written for it.",
                        "Write its lot into the list of batches and ask again."),
                ShortSentences.keptBy(Usual.of(nameless.batch("B1"), nameless).inShort()));
    }

    @Test
    void batchesWithoutALotAreNobodysOthers() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int k = 0; k < 10; k++) {
            rows.add(BuiltBatch.of(2).withLot("").withCharge(180 + k % 3));
        }
        Logbook logbook = BuiltBatch.logbook(rows);
        Usual usual = Usual.of(logbook.batch("B1"), logbook);
        assertEquals(Usual.Verdict.CANNOT_TELL, usual.verdict());
        assertEquals(0, of(usual, "charge temperature").others());
    }

    /** Of sixteen others as many as said were roasted by the batch's own recipe; from eight on they alone are the others. */
    @ParameterizedTest
    @CsvSource({"8, 8", "7, 16"})
    void heldAgainstThoseOfTheSameRecipeWhereThereAreEnough(int same, int others) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int k = 0; k < 17; k++) {
            rows.add(BuiltBatch.of(2).withCharge(180 + k % 3));
        }
        Logbook built = BuiltBatch.logbook(rows);
        List<Batch> batches = new ArrayList<>();
        for (Batch batch : built.batches()) {
            int k = batches.size();
            batches.add(batch.toBuilder()
                    .label(Batch.Label.RECIPE, k < same || k == 16 ? "filter" : "espresso")
                    .build());
        }
        Logbook logbook = Logbook.of(LogbookContents.ofBatches("recipes", batches));
        Usual usual = Usual.of(logbook.batch("B17"), logbook);
        assertEquals(others, of(usual, "charge temperature").others());
        assertEquals(
                "batch B17 is like " + others + " others of lot one" + (others == 8 ? ", recipe filter" : "")
                        + ", about the same mass",
                usual.toString());
    }

    @ParameterizedTest
    @CsvSource({"8, ''", "10, ' and 2 more'"})
    void itsTwinsAreNamedUpToEight(int twins, String more) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int k = 0; k <= twins; k++) {
            rows.add(BuiltBatch.of(2).withAim(205).withCharge(180));
        }
        Logbook logbook = BuiltBatch.logbook(rows);
        String page = Usual.of(logbook.batch("B" + rows.size()), logbook).text();
        assertTrue(
                page.contains("Meant like it, as far as was written: B1, B2, B3, B4, B5, B6, B7, B8" + more + "."),
                page);
        assertTrue(!charged(181, CHARGES).text().contains("Meant like it"), "no drop was planned");
    }

    /** Twelve of the example roast, the crack written within 8 s of 600 s, and one more. */
    private static Usual cracked(double own) {
        List<Batch> batches = new ArrayList<>();
        for (int k = 0; k <= 12; k++) {
            double crack = k == 12 ? own : 600 + 4 * (k % 5 - 2);
            batches.add(Batch.named("C" + k)
                    .curve(Quantity.BEAN_TEMPERATURE, ExampleRoast.bean(-40, 740))
                    .roastedAt(LocalDate.of(2025, 1, 1).plusDays(k).atTime(9, 0).atOffset(ZoneOffset.UTC))
                    .lot("one")
                    .writtenMark(MarkKind.YELLOWING, Elapsed.seconds(360 + k % 3))
                    .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(crack))
                    .writtenMark(MarkKind.DROP, Elapsed.seconds(740))
                    .build());
        }
        Logbook logbook = Logbook.of(LogbookContents.ofBatches("cracked", batches));
        return Usual.of(logbook.batch("C12"), logbook);
    }

    /** The middle one of the others cracked at 598 s; 62 s at 12 °C/min are 12.4 °C, and the development is as much shorter. */
    @Test
    void aCrackAtAnotherTemperatureIsPerhapsALateOrEarlyMark() {
        Usual late = cracked(660);
        assertEquals(140, of(late, "development time").usual(), 2.5);
        assertTrue(
                late.toString()
                        .contains(
                                "first crack temperature 212.0 °C, which is 12.4 °C above the usual (perhaps first crack was marked"
                                        + " about 62 s too late: the development time is 62 s shorter than usual)"),
                late.toString());
        Usual early = cracked(540);
        assertTrue(
                early.toString()
                        .contains(
                                " below the usual (perhaps first crack was marked about 58 s too early: the development time is 58 s"
                                        + " longer than usual)"),
                early.toString());
        // Only what is said of the crack has a word about its mark.
        assertEquals(1, late.toString().split("perhaps first crack", -1).length - 1, late.toString());
    }

    /** Nine others of 4 kg beside one of 2 kg: most of its numbers go with the charge. A probe moved before it leaves none on its own. */
    @Test
    void aNumberThatCannotBeHeldSaysWhyThereAreTooFewOthers() {
        assertEquals(
                List.of("charge temperature", "150.0 °C", "–", "–", "–", "too few others of its charge", "0"),
                row(ofCharge(2, 0.14).text(), "charge temperature"));
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            BuiltBatch row = BuiltBatch.losing(0.138 + 0.001 * (i % 5));
            rows.add(i < 7 ? row.withCharge(180 + i % 3) : row);
        }
        rows.add(BuiltBatch.losing(0.14).withCharge(181));
        Logbook logbook = BuiltBatch.logbook(rows);
        assertEquals(
                List.of("charge temperature", "181.0 °C", "–", "–", "–", "too few others on its probe", "7"),
                row(Usual.of(logbook.batch("B10"), logbook).text(), "charge temperature"));
        List<BuiltBatch> few = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            few.add(i < 7 ? BuiltBatch.losing(0.14) : BuiltBatch.of(2).withCharge(180 + i % 3));
        }
        for (int i = 0; i < 8; i++) {
            few.add(BuiltBatch.of(2).withCharge(180 + i % 3));
        }
        few.add(BuiltBatch.losing(0.14).withCharge(181));
        Logbook lossOfSeven = BuiltBatch.logbook(few);
        assertEquals(
                List.of("mass loss", "14.0 %", "–", "–", "–", "too few others have it", "7"),
                row(Usual.of(lossOfSeven.batch("B18"), lossOfSeven).text(), "mass loss"));
    }

    /** The middle of the others' masses is 4.01 kg; the charge is 4 kg wherever it is told. */
    @Test
    void theUsualChargeIsToldAsTheSizeThatItIs() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            rows.add(BuiltBatch.losing(0.14).withGreen(i % 2 == 0 ? 4.01 : 4.02));
        }
        rows.add(BuiltBatch.losing(0.14).withGreen(2));
        Logbook logbook = BuiltBatch.logbook(rows);
        assertEquals(
                "a half charge (2 kg; usually 4 kg)",
                Usual.of(logbook.batch("B10"), logbook).rareCharge().orElseThrow());
        assertEquals(Optional.empty(), Usual.of(logbook.batch("B1"), logbook).rareCharge());
    }
}
