package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.chart.Points;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.quantity.Mass;
import parchment.stats.Interval;

class WeekPictureTest {
    /** So many batches of one lot a day on two days, the last of which loses as much as is said. */
    private static Logbook ofTwoDays(int number, double last) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            double loss = i == number - 1 ? last : 0.14 + 0.001 * (i * 7 % 5);
            batches.add(Batch.named(String.format(Locale.ROOT, "B%02d", i + 1))
                    .lot("one")
                    .roastedAt(LocalDate.of(2025, 1, 1 + 2 * i / number)
                            .atTime(8, 0)
                            .plusMinutes(10L * i)
                            .atOffset(ZoneOffset.UTC))
                    .conditions(new BatchConditions(
                            Optional.of(Mass.kilograms(2)),
                            Optional.of(Mass.kilograms(2 * (1 - loss))),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty(),
                            OptionalDouble.empty(),
                            OptionalDouble.empty(),
                            Optional.empty()))
                    .build());
        }
        return Logbook.of(LogbookContents.ofBatches("built", batches));
    }

    private static String svg(Logbook logbook) {
        return WeekPicture.of(Week.of(logbook)).chart().svg().orElseThrow();
    }

    @Test
    void aRowIsABatchAndTheFirstOfADayBearsTheDay() {
        String svg = svg(ofTwoDays(24, 0.14));
        assertTrue(svg.contains(">2025-01-01   B01, one<"), svg);
        assertTrue(svg.contains(">B02, one<"), svg);
        assertTrue(svg.contains(">2025-01-02   B13, one<"), svg);
        assertTrue(svg.contains(">24 of 24 batches drawn; none left out.<"), svg);
        assertFalse(svg.contains("unlike"), svg);
    }

    @Test
    void inAWeekOfMoreThan24BatchesARowIsALotsDay() {
        String svg = svg(ofTwoDays(25, 0.14));
        assertTrue(svg.contains(">2025-01-01 one<"), svg);
        assertFalse(svg.contains(">B02, one<"), svg);
    }

    @Test
    void aNumberThatIsUnlikeIsNamedInTheKeyAndWithWhatIsUsual() {
        String svg = svg(ofTwoDays(12, 0.25));
        assertTrue(svg.contains(">mass loss unlike<"), svg);
        assertTrue(svg.contains("batch B12, mass loss 25.0 %, where 1"), svg);
    }

    /** A loss of 14.7 % lies beyond what holds 80 of 100 and within what holds 95 of 100. */
    @Test
    void aNumberThatIsALittleUnlikeIsNotCalledUsual() {
        String svg = svg(ofTwoDays(12, 0.147));
        assertTrue(svg.contains(">a number a little unlike<"), svg);
        assertFalse(svg.contains(">mass loss unlike<"), svg);
    }

    @Test
    void aPlaceIsInPartsOfTheWayToTheEdgeOfTheUsual() {
        Usual.Compared above = Usual.of(ofTwoDays(12, 0.25).batch("B12"), ofTwoDays(12, 0.25)).compared().stream()
                .filter(one -> one.feature().name().equals(Features.massLoss().name()))
                .findFirst()
                .orElseThrow();
        Interval range = above.range();
        double expected = (above.value() - above.usual()) / (range.upper() - above.usual());
        assertEquals(expected, WeekPicture.place(above), 1e-12);
        assertTrue(expected > 1, above.toString());
    }

    @Test
    void whereNothingCanBeToldThereIsNoPicture() {
        String page = Week.of(ofTwoDays(3, 0.14)).text();
        assertFalse(page.contains("Each batch against what is usual"), page);
        assertTrue(Week.of(ofTwoDays(12, 0.14)).text().contains("Each batch against what is usual"), "with 12 batches");
    }

    /** 24 quiet batches and two whose probe reads thirty degrees higher, and that are dropped later if it is said so. */
    private static Week far(double longer) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 26; i++) {
            LocalDate day = LocalDate.of(2025, 1, 1).plusDays(7L * (i / 4));
            batches.add(WeekCausesTest.batch(i + 1, "one", day, i < 24 ? 0 : 30, i < 24 ? 0 : longer));
        }
        return Week.of(Logbook.of(LogbookContents.ofBatches("built", batches)));
    }

    private static List<Points> unlike(Week week) {
        return WeekPicture.of(week).layers().stream()
                .filter(layer -> layer instanceof Points points
                        && points.label().endsWith(" unlike")
                        && !points.label().startsWith("a number"))
                .map(Points.class::cast)
                .toList();
    }

    /** Four numbers have a name of their own in both batches; the fifth and the sixth share one. */
    @ParameterizedTest
    @CsvSource({"0,false", "120,true"})
    void fourNumbersAreNamedAndTheOthersShareAName(double longer, boolean another) {
        List<Points> unlike = unlike(far(longer));
        List<String> labels = unlike.stream().map(Points::label).toList();
        assertEquals(another, labels.contains("another number unlike"), labels.toString());
        assertEquals(another ? 5 : 4, labels.size(), labels.toString());
        unlike.stream()
                .filter(points -> !points.label().startsWith("another"))
                .forEach(points -> assertEquals(2, points.size(), points.label()));
    }

    @Test
    void whatLiesFartherThanThreeIsDrawnAtThree() {
        Week week = far(0);
        assertTrue(
                week.batches().stream()
                        .flatMap(usual -> usual.compared().stream())
                        .anyMatch(one -> WeekPicture.place(one) > 4),
                "none lies so far off");
        for (Points points : unlike(week)) {
            for (int i = 0; i < points.size(); i++) {
                assertEquals(3, points.x(i), points.label());
            }
        }
    }
}
