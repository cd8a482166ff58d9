package parchment.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.HeadlessException;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.knowm.xchart.XYSeries;
import parchment.display.Showable;
import parchment.feature.BatchTable;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.EmptyLogbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;
import parchment.quantity.Mass;
import parchment.quantity.TemperatureUnit;
import parchment.stats.linear.Robust;

class PicturesTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));
    private static final Pattern PNG = Pattern.compile("data:image/png;base64,([^\"]+)\"");

    /** Batches of one lot or of none, with a green mass and no curve. */
    private static Logbook massesOf(double... kilograms) {
        List<Batch> batches = new ArrayList<>();
        for (double mass : kilograms) {
            Batch.Builder batch = Batch.named("b" + batches.size())
                    .roastedAt(OffsetDateTime.of(2026, 1, 5, 8, 0, 0, 0, ZoneOffset.UTC)
                            .plusDays(batches.size()))
                    .lot("North");
            batches.add(
                    Double.isNaN(mass)
                            ? batch.build()
                            : batch.conditions(BatchConditions.NOT_WRITTEN.withGreenMass(Mass.kilograms(mass)))
                                    .build());
        }
        return Logbook.of(LogbookContents.ofBatches("Masses", batches));
    }

    private static final double[] TEN = {2, 2.2, 2.2, 2.4, 2.4, 2.4, 2.6, 2.6, 2.8, 5};

    @Test
    void sayWhatIsSeenAndOfHowManyBatches() {
        assertEquals(
                "Green mass of 10 batches. Half lie between 2.250 and 2.600 kg, the middle one at 2.400 kg. 1 of 11 batches has no green"
                        + " mass and is not counted.",
                Histogram.of(Features.greenMass(), massesOf(2, 2.2, 2.2, 2.4, 2.4, 2.4, 2.6, 2.6, 2.8, 5, Double.NaN))
                        .text());
        assertEquals(
                "Green mass by lot, 10 batches. The middle one of North is 2.400 kg. Each box holds the middle half and its line is the"
                        + " middle one. What differs here may be chance. Each dot is a batch more than one and a half lengths of its box"
                        + " away from it. It is unusual, or a slip of the pen.",
                BoxPlot.byLot(Features.greenMass(), massesOf(TEN)).text());
        assertEquals(
                "Green mass and batch of the day of 10 batches. The batch of the day of all is the same, 1; a map needs two that"
                        + " differ.",
                HeatMap.of(Features.greenMass(), Features.batchOfTheDay(), massesOf(TEN))
                        .text());
    }

    @Test
    void sayInWordsWhyNothingIsDrawn() {
        assertEquals(
                "Green mass of 0 batches. There is nothing to draw. " + EmptyLogbook.WORDS,
                Histogram.of(Features.greenMass(), massesOf()).text());
        assertEquals(
                "Green mass of 0 batches. There is nothing to draw. 2 of 2 batches have no green mass and are not counted.",
                Histogram.of(Features.greenMass(), massesOf(Double.NaN, Double.NaN))
                        .text());
        assertEquals(
                "Green mass of 1 batch. It is 2.500 kg; a histogram needs at least two.",
                Histogram.of(Features.greenMass(), massesOf(2.5)).text());
        assertEquals(
                "Green mass of 2 batches. All are the same, 2.500 kg; nothing is spread.",
                Histogram.of(Features.greenMass(), massesOf(2.5, 2.5)).text());
        assertEquals(
                "Green mass by lot, 0 batches. There is nothing to draw: no lot has 5 batches with a number. 1 lot with fewer than 5"
                        + " batches has no box (4 batches).",
                BoxPlot.byLot(Features.greenMass(), massesOf(2, 2.1, 2.2, 2.3)).text());
        assertEquals(
                "Green mass by month, 0 batches. There is nothing to draw: no month has 5 batches with a number. "
                        + EmptyLogbook.WORDS,
                BoxPlot.byMonth(Features.greenMass(), massesOf()).text());
        assertEquals(
                "Green mass and drop time of 0 batches. There is nothing to draw: no batch has both. 2 of 2 batches have no green mass or no"
                        + " drop time and are not counted.",
                HeatMap.of(Features.greenMass(), Features.dropTime(), massesOf(2, 3))
                        .text());
        assertEquals(
                "Green mass and batch of the day of 1 batch. They are 2.000 kg and 1; a map needs at least two batches.",
                HeatMap.of(Features.greenMass(), Features.batchOfTheDay(), massesOf(2))
                        .text());
        Histogram nothing = Histogram.of(Features.greenMass(), massesOf());
        assertFalse(nothing.html().orElseThrow().contains("<img"));
        assertTrue(nothing.otherForms().isEmpty());
        assertEquals(
                nothing.text(),
                assertThrows(IllegalStateException.class, nothing::chart).getMessage());
    }

    @Test
    void drawABoxFromFiveBatchesOn() {
        assertTrue(BoxPlot.byLot(Features.greenMass(), massesOf(2, 2.1, 2.2, 2.3, 2.4))
                .text()
                .startsWith("Green mass by lot, 5 batches. The middle one of North is 2.200 kg."));
    }

    /** Quarters and the middle are R's type 7, whiskers end at a batch, and each batch beyond one and a half lengths of the box is a dot (Tukey 1977). */
    @Test
    void drawBoxesAsTukeyDid() {
        var chart = BoxPlot.byLot(Features.greenMass(), massesOf(TEN)).chart();
        double low = Robust.quantile(TEN, 0.25);
        double high = Robust.quantile(TEN, 0.75);
        assertEquals(2.25, low, 1e-12);
        assertEquals(2.6, high, 1e-12);
        assertEquals(List.of(low, low, high, high, low), x(chart.getSeries("1 box")));
        assertEquals(List.of(2.4, 2.4), x(chart.getSeries("1 middle")));
        assertEquals(List.of(2.0, low), x(chart.getSeries("1 lower whisker")));
        assertEquals(List.of(high, 2.8), x(chart.getSeries("1 upper whisker")));
        assertEquals(List.of(5.0), x(chart.getSeries("1 far")));
    }

    /** The box reaches from 2.25 to 2.6 kg, so one and a half lengths of it end at 1.725 and at 3.125 kg. */
    @Test
    void endWhiskersOneAndAHalfLengthsOfTheBoxFromIt() {
        double[] inside = {1.73, 2.2, 2.2, 2.4, 2.4, 2.4, 2.6, 2.6, 2.8, 3.12};
        var whole = BoxPlot.byLot(Features.greenMass(), massesOf(inside)).chart();
        assertEquals(List.of(1.73, 2.25), x(whole.getSeries("1 lower whisker")));
        assertEquals(List.of(2.6, 3.12), x(whole.getSeries("1 upper whisker")));
        assertNull(whole.getSeries("1 far"));
        double[] outside = {1.72, 2.2, 2.2, 2.4, 2.4, 2.4, 2.6, 2.6, 2.8, 3.13};
        var cut = BoxPlot.byLot(Features.greenMass(), massesOf(outside)).chart();
        assertEquals(List.of(2.2, 2.25), x(cut.getSeries("1 lower whisker")));
        assertEquals(List.of(2.6, 2.8), x(cut.getSeries("1 upper whisker")));
        assertEquals(List.of(1.72, 3.13), x(cut.getSeries("1 far")));
    }

    /** Fields of one batch each all have the colour of fewest; with no room between fewest and most there would be no colour at all. */
    @Test
    void colourAMapWhoseFieldsHoldOneBatchEachFromOneToTwo() {
        Logbook two = Logbook.of(LogbookContents.ofBatches(
                "Masses",
                IntStream.range(0, 2)
                        .mapToObj(i -> Batch.named("b" + i)
                                .roastedAt(OffsetDateTime.of(2026, 1, 5, 8 + i, 0, 0, 0, ZoneOffset.UTC))
                                .conditions(BatchConditions.NOT_WRITTEN.withGreenMass(Mass.kilograms(2 + i)))
                                .build())
                        .toList()));
        var chart =
                HeatMap.of(Features.greenMass(), Features.batchOfTheDay(), two).chart();
        assertEquals(1, chart.getStyler().getMin());
        assertEquals(2, chart.getStyler().getMax());
    }

    private static List<Double> x(XYSeries series) {
        return Arrays.stream(series.getXData()).boxed().toList();
    }

    @Test
    void leaveOutTheSmallestOfManyGroupsAndTheEarliestOfManyMonths() {
        List<Integer> sizes = IntStream.rangeClosed(5, 18).boxed().toList();
        List<Double> numbers = new ArrayList<>();
        List<String> groups = new ArrayList<>();
        for (int size : sizes) {
            for (int i = 0; i < size; i++) {
                numbers.add(size + i * 0.1);
                groups.add(String.format(Locale.ROOT, "g%02d", size));
            }
        }
        numbers.add(1.0);
        groups.add("");
        BoxPlot plot = BoxPlot.of("price [euro]", numbers, groups);
        assertTrue(
                plot.text().startsWith("Price by group, 150 rows. The middle one of g07 is lowest, 7.30 euro,"),
                plot.text());
        assertTrue(plot.text().contains("There is room for 12 boxes; 2 smaller groups are not drawn."), plot.text());
        assertTrue(plot.text().contains("1 row names no group and is not drawn."), plot.text());
        DrawnNumbers measure = DrawnNumbers.of("price", numbers);
        Groups byName = Groups.of(measure, groups, new DrawnNumbers.Named("month", "months"), Groups.Order.BY_NAME);
        assertEquals("g07", byName.drawn().get(0).name());
        assertEquals("g18", byName.drawn().get(11).name());
        assertTrue(
                byName.notes().contains("There is room for 12 boxes; 2 earlier months are not drawn."),
                byName.toString());
    }

    @Test
    void nameWhatYourOwnGroupsAre() {
        List<Double> numbers = List.of(6.0, 6.0, 6.25, 6.5, 7.0, 99.0, 5.0, 5.0);
        List<String> groups = List.of("Ana", "Ana", "Ana", "Ana", "Ana", "Ana", "Ben", "");
        assertEquals(
                "Sweetness by cupper, 6 rows. The middle one of Ana is 6.38 points. 1 cupper with fewer than 5 rows has no box (1 row)."
                        + " 1 row names no cupper and is not drawn. Each box holds the middle half and its line is the middle one. What"
                        + " differs here may be chance. Each dot is a row more than one and a half lengths of its box away from it. It is"
                        + " unusual, or a slip of the pen.",
                BoxPlot.of("sweetness [points]", numbers, "cupper", groups).text());
        assertTrue(BoxPlot.of("sweetness", numbers, " ", groups).text().startsWith("Sweetness by group, 6 rows."));
        assertFalse(
                BoxPlot.of("sweetness", List.of(6.0, 6.0, 6.25, 6.5, 7.0), "cupper", List.of("A", "A", "A", "A", "A"))
                        .text()
                        .contains("dot"));
    }

    @Test
    void sayWhetherAnEarlierProbeIsWrittenOrInferred() {
        assertEquals("", DrawnNumbers.earlierProbe(0, 0, 0));
        assertEquals(
                "1 batch was read by an earlier probe, which may read otherwise; all are drawn as they were logged.",
                DrawnNumbers.earlierProbe(1, 0, 0));
        assertEquals(
                "2 batches were read before the probe seems to have changed: that is inferred from the readings, for no upkeep names it;"
                        + " all are drawn as they were logged.",
                DrawnNumbers.earlierProbe(0, 2, 0));
        assertEquals(
                "1 batch has no date, so which probe read it is not known; all are drawn as they were logged.",
                DrawnNumbers.earlierProbe(0, 0, 1));
        assertEquals(
                "3 batches were read by an earlier probe, which may read otherwise. 1 batch was read before the probe seems to have"
                        + " changed: that is inferred from the readings, for no upkeep names it. 2 batches have no date, so which probe"
                        + " read them is not known; all are drawn as they were logged.",
                DrawnNumbers.earlierProbe(3, 1, 2));
    }

    /** Without the upkeep the move of the probe shows in the readings alone. */
    @Test
    void tellAChangeThatNobodyWroteAsInferred() {
        Logbook unwritten =
                Logbook.of(HARBOUR.contents().toBuilder().upkeep(List.of()).build());
        ProbePeriods periods = ProbePeriods.of(unwritten);
        assertEquals(
                List.of(ProbeChange.Kind.FOUND_WITHOUT_ENTRY),
                periods.changes().stream()
                        .map(ProbeChange::kind)
                        .filter(ProbeChange.Kind::separatesPeriods)
                        .toList());
        assertTrue(unwritten.batches().stream().anyMatch(periods::isInferredEarlier));
        String words = Histogram.of(Features.dropTemperature(), unwritten).text();
        assertTrue(
                words.contains(" batches were read before the probe seems to have changed: that is inferred"), words);
        assertFalse(words.contains("by an earlier probe"), words);
        assertTrue(HARBOUR.batches().stream().noneMatch(ProbePeriods.of(HARBOUR)::isInferredEarlier));
    }

    @Test
    void refuseGroupsThatAreNotOfTheNumbers() {
        assertEquals(
                "Boxes need the group of each number: there are 2 numbers and 1 groups. Take both from the same table.",
                assertThrows(IllegalArgumentException.class, () -> BoxPlot.of("price", List.of(1.0, 2.0), List.of("a")))
                        .getMessage());
    }

    @Test
    void countEveryBatchOnce() {
        double[] drops = Arrays.stream(BatchTable.of(HARBOUR).values(Features.dropTemperature()))
                .filter(Double::isFinite)
                .toArray();
        XYSeries series =
                Histogram.of(Features.dropTemperature(), HARBOUR).chart().getSeries("batches");
        double area = IntStream.range(0, series.getYData().length)
                .filter(i -> i % 4 == 1)
                .mapToDouble(i -> series.getYData()[i])
                .sum();
        assertEquals(drops.length, area);
        DrawnNumbers first = DrawnNumbers.of(Features.dropTemperature(), HARBOUR);
        DrawnNumbers second = DrawnNumbers.of(Features.developmentTime(), HARBOUR);
        List<Integer> both = IntStream.range(0, first.values().size())
                .filter(i -> Double.isFinite(first.values().get(i))
                        && Double.isFinite(second.values().get(i)))
                .boxed()
                .toList();
        Grid grid = Grid.of(first.only(both), second.only(both), 9, 10);
        assertEquals(
                both.size(), grid.counts().stream().mapToInt(count -> count).sum());
        assertTrue(HeatMap.of(Features.dropTemperature(), Features.developmentTime(), HARBOUR)
                .text()
                .startsWith("Drop temperature and development time of " + both.size()
                        + " batches. The fullest field holds " + grid.most() + ": drop temperature (°C) "));
    }

    @Test
    void areInTheReadersUnitAndOnTheRoastClock() {
        Logbook fahrenheit = HARBOUR.in(TemperatureUnit.FAHRENHEIT);
        assertEquals(
                "drop temperature (°F)",
                Histogram.of(Features.dropTemperature(), fahrenheit).chart().getXAxisTitle());
        double middle = TemperatureUnit.FAHRENHEIT.fromCelsius(
                Robust.median(BatchTable.of(HARBOUR).values(Features.dropTemperature())));
        assertTrue(Histogram.of(Features.dropTemperature(), fahrenheit)
                .text()
                .contains(String.format(Locale.ROOT, "the middle one at %.1f °F.", middle)));
        var times = Histogram.of(Features.developmentTime(), HARBOUR).chart();
        assertEquals("development time (min:s)", times.getXAxisTitle());
        assertEquals("batches", times.getYAxisTitle());
    }

    @Test
    void sayThatAnEarlierProbeReadSomeOfThem() {
        String words = Histogram.of(Features.dropTemperature(), HARBOUR).text();
        assertTrue(
                words.contains(
                        " batches were read by an earlier probe, which may read otherwise; all are drawn as they were logged."),
                words);
        assertFalse(Histogram.of(Features.developmentTime(), HARBOUR).text().contains("earlier probe"));
        // Counted by the day of the move, which the upkeep names.
        LocalDate moved = ProbePeriods.of(HARBOUR).changes().get(0).on();
        BatchTable drops = BatchTable.of(HARBOUR, Features.dropTemperature());
        double[] read = drops.values(drops.features().get(0));
        long before = IntStream.range(0, read.length)
                .filter(i -> Double.isFinite(read[i]))
                .filter(i -> drops.batches().get(i).roastDay().orElseThrow().isBefore(moved))
                .count();
        long since = Arrays.stream(read).filter(Double::isFinite).count() - before;
        assertTrue(before > 1 && since > 1 && before != since, before + " before, " + since + " since");
        assertTrue(words.contains(" " + before + " batches were read by an earlier probe"), words);
        Logbook today = HARBOUR.only(batch -> !batch.roastDay().orElseThrow().isBefore(moved));
        assertFalse(Histogram.of(Features.dropTemperature(), today).text().contains("earlier probe"));
    }

    /** A wide and a narrow picture, on a light and on a dark ground; a client that takes one takes the first in its other forms. */
    @Test
    void areDrawnForEveryPage() throws IOException {
        for (Showable shown : List.of(
                Histogram.of(Features.greenMass(), massesOf(TEN)),
                BoxPlot.byLot(Features.greenMass(), massesOf(TEN)),
                HeatMap.of(Features.dropTemperature(), Features.developmentTime(), HARBOUR))) {
            String html = shown.html().orElseThrow();
            List<BufferedImage> pictures = PNG.matcher(html)
                    .results()
                    .map(found -> decoded(found.group(1)))
                    .toList();
            assertEquals(
                    List.of(800, 800, 1600, 1600),
                    pictures.stream().map(BufferedImage::getWidth).toList());
            assertEquals(
                    List.of(new Color(0x15181c), Color.WHITE, new Color(0x15181c), Color.WHITE),
                    pictures.stream()
                            .map(picture -> new Color(picture.getRGB(1, 1)))
                            .toList());
            for (BufferedImage picture : pictures) {
                assertTrue(colours(picture) > 20, "something is drawn");
            }
            assertTrue(html.contains("alt=\""), html.substring(0, 200));
            assertTrue(html.contains("The numbers behind it"));
            assertEquals(
                    1600,
                    decoded(Objects.requireNonNull(shown.otherForms().get("image/png")))
                            .getWidth());
        }
    }

    private static BufferedImage decoded(String base64) {
        try {
            return Objects.requireNonNull(
                    ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(base64))));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static long colours(BufferedImage picture) {
        return IntStream.range(0, picture.getHeight())
                .flatMap(y -> IntStream.range(0, picture.getWidth()).map(x -> picture.getRGB(x, y)))
                .distinct()
                .count();
    }

    /** What Java throws on a server without libfreetype, and without any font; all other faults stay faults. */
    @Test
    void saySoWhereTheMachineHasNoLetters() {
        for (Throwable thrown : List.of(
                new UnsatisfiedLinkError("libfreetype.so.6"),
                new InternalError("no font"),
                new HeadlessException("no display"),
                new RuntimeException("Fontconfig head is null, check your fonts or fonts configuration"))) {
            Drawn drawn = Drawn.of("words", look -> failing(thrown));
            assertEquals("<p>" + Drawn.WITHOUT_LETTERS + "</p>", drawn.html().orElseThrow());
            assertTrue(drawn.otherForms().isEmpty());
        }
        Drawn broken = Drawn.of("words", look -> failing(new IllegalStateException("something else")));
        assertThrows(IllegalStateException.class, broken::html);
        assertThrows(IllegalStateException.class, broken::otherForms);
    }

    private static org.knowm.xchart.XYChart failing(Throwable thrown) {
        if (thrown instanceof Error error) {
            throw error;
        }
        throw (RuntimeException) thrown;
    }

    @Test
    void drawNumbersOfTheReadersOwn() {
        assertEquals(
                "Price of 3 rows. They lie between 1.00 and 4.00 euro. 1 of 4 rows has no price and is not"
                        + " counted.",
                Histogram.of("price [euro]", List.of(1, 2.0, Double.NaN, 4L)).text());
        List<Double> withNull = new ArrayList<>(List.of(1.0, 2.0));
        withNull.add(null);
        assertTrue(Histogram.of("price", withNull).text().contains("1 of 3 rows has no price"));
        assertEquals(
                "Price of 4 rows. They lie between 1.00 and 4.00.",
                Histogram.of("price", List.of(1, 2, 3, 4)).text());
        assertEquals(
                "Price of 5 rows. Half lie between 2.00 and 4.00, the middle one at 3.00.",
                Histogram.of("price", List.of(1, 2, 3, 4, 5)).text());
        assertEquals(
                "X of 0 rows. There is nothing to draw.",
                Histogram.of("x", Collections.emptyList()).text());
    }

    /** An axis over a few units in the last place has no ticks to be found. */
    @Test
    void numbersThatDifferByNoMoreThanTheirLastPlaceAreTheSame() {
        assertTrue(Histogram.of("number", List.of(1e17, 1e17 + 16, 1e17 + 32))
                .text()
                .contains("All are the same"));
        assertTrue(Histogram.of("number", List.of(1e12, 1e12 + 2)).html().isPresent());
        assertFalse(Histogram.of("number", List.of(1e12, 1e12 + 2)).text().contains("All are the same"));
    }
}
