package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import parchment.align.Unusual;
import parchment.display.ShortSentences;
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

    @Test
    void aFewBatchesAreTooFew() {
        SecondLook few = SecondLook.of(HILLSIDE.only("K001", "K002", "K003"));
        assertEquals(List.of(), few.apart());
        ShortSentences.keptBy(few.inShort());
        assertEquals(
                "It takes 20 batches with a curve; there are 3.", few.inShort().howSure());
    }
}
