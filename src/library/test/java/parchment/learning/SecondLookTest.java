package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.align.Unusual;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

class SecondLookTest {
    private static final Logbook HILLSIDE = Logbook.open(Path.of("..", "datasets", "hillside"));

    @Test
    void everyBatchThatALookFindsIsInOneOfTheThreeLists() {
        SecondLook found = SecondLook.of(HILLSIDE);
        Set<String> first = new HashSet<>();
        Unusual.of(HILLSIDE).list().forEach(one -> first.add(one.batch().name()));
        assertEquals(first, union(found.both(), found.onlyFirst()));
        Set<String> second = new HashSet<>();
        found.apart().forEach(one -> second.add(one.batch().name()));
        assertEquals(second, union(found.both(), found.onlySecond()));
        assertTrue(!second.isEmpty(), found.text());
        ShortSentences.keptBy(found.inShort());
    }

    private static Set<String> union(List<String> one, List<String> other) {
        Set<String> all = new HashSet<>(one);
        all.addAll(other);
        assertEquals(one.size() + other.size(), all.size(), "no batch stands in two lists");
        return all;
    }

    @Test
    void theSameLogbookIsAnsweredInTheSameWords() {
        assertEquals(SecondLook.of(HILLSIDE).text(), SecondLook.of(HILLSIDE).text());
    }

    /** Tukey's inner fence: the middle half of 0.4, 0.5, 0.6, 0.7, 0.8 runs from 0.5 to 0.7. */
    @Test
    void aScoreStandsApartBeyondTheInnerFenceAndNeverBelowTheUsual() {
        assertEquals(1.0, SecondLook.apartFrom(new double[] {0.4, 0.5, 0.6, 0.7, 0.8}), 1e-12);
        assertEquals(0.5, SecondLook.apartFrom(new double[] {0.3, 0.3, 0.3, 0.3, 0.3}), 1e-12);
    }

    /** Asserts the whole page: a refusal tells what is missing and what to do, nothing else. */
    private static void refuses(SecondLook few, String missing, String next) {
        assertEquals(List.of(), few.apart());
        ShortSentences.keptBy(few.inShort());
        assertEquals(
                List.of("A second look at unusual batches cannot be taken.", missing, next),
                few.text().lines().filter(line -> !line.isBlank()).skip(1).toList());
    }

    @Test
    void aRefusalTellsWhatIsMissingAndNothingElse() {
        SecondLook three = SecondLook.of(HILLSIDE.only("K001", "K002", "K003"));
        refuses(three, "It takes 20 batches with a curve; there are 3.", "Ask again when more are roasted.");
        assertEquals("3 batches of " + HILLSIDE.name() + ", no second look taken", three.toString());
        SecondLook one = SecondLook.of(HILLSIDE.only("K001"));
        refuses(one, "It takes 20 batches with a curve; there is 1.", "Ask again when more are roasted.");
        assertEquals("1 batch of " + HILLSIDE.name() + ", no second look taken", one.toString());
        refuses(
                SecondLook.of(HILLSIDE.only(batch -> false)),
                "It takes 20 batches with a curve; there are 0.",
                "Ask again when more are roasted.");
    }

    @Test
    void nineteenBatchesAreTooFewAndTwentyAreNot() {
        List<String> names = HILLSIDE.batches().stream()
                .filter(batch -> batch.beanTemperature().isPresent())
                .map(Batch::name)
                .toList();
        assertTrue(SecondLook.of(
                        HILLSIDE.only(batch -> names.indexOf(batch.name()) >= 0 && names.indexOf(batch.name()) < 19))
                .toString()
                .endsWith(", no second look taken"));
        assertTrue(SecondLook.of(
                        HILLSIDE.only(batch -> names.indexOf(batch.name()) >= 0 && names.indexOf(batch.name()) < 20))
                .toString()
                .contains(" of 20 batches "));
    }

    private static void says(String found, String howSure, String next, int first, int second, List<String> both) {
        InShort said = SecondLook.said(40, first, second, both, new ApartByChance(3.4, 7));
        ShortSentences.keptBy(said);
        assertEquals(List.of(found, howSure, next), List.of(said.found(), said.howSure(), said.next()));
    }

    @Test
    void whatTheTwoLooksFindIsToldBesideWhatChanceWouldFind() {
        says(
                "Neither look finds an unusual batch.",
                "Both went through 40 batches.",
                "Go on as you do.",
                0,
                0,
                List.of());
        says(
                "No batch stands apart at both looks.",
                "The first look finds 0 of 40 batches, the second 3; by chance alone the second would find about 3.",
                "Glance at their curves: some stand apart in any logbook.",
                0,
                3,
                List.of());
        says(
                "No batch stands apart at both looks.",
                "The first look finds 2 of 40 batches, the second 0; by chance alone the second would find about 3.",
                "Go by the reasons that the first look names; unusual is not bad.",
                2,
                0,
                List.of());
        says(
                "One batch stands apart at both looks: T081.",
                "The first look finds 2 of 40 batches, the second 4; by chance alone the second would find about 3.",
                "Cup it beside a usual batch: unusual is not bad.",
                2,
                4,
                List.of("T081"));
        says(
                "2 batches stand apart at both looks, first of all batch T081.",
                "The first look finds 2 of 40 batches, the second 4; by chance alone the second would find about 3.",
                "Cup those that both find beside a usual batch: unusual is not bad.",
                2,
                4,
                List.of("T081", "T003"));
    }

    /** Rows of chance alone stand apart about as often as those drawn like them. */
    @Test
    void whatChanceAloneSetsApartIsCounted() {
        SplittableRandom random = new SplittableRandom(5);
        List<double[]> rows = IntStream.range(0, 60)
                .mapToObj(i -> random.doubles(6, -1, 1).toArray())
                .toList();
        ApartByChance chance = ApartByChance.of(rows, 1);
        assertEquals(chance, ApartByChance.of(rows, 1), "drawn by a seed");
        assertTrue(chance.mean() > 0.2 && chance.mean() < 6 && chance.most() >= chance.mean(), chance.toString());
    }

    @Test
    void aCountByChanceIsToldWhole() {
        assertEquals("none as a rule", new ApartByChance(0.45, 2).about());
        assertEquals("about 1", new ApartByChance(0.55, 2).about());
        assertEquals("about 4", new ApartByChance(4.2, 7).about());
    }
}
