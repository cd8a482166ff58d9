package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

/** What the lists' times of charge and drop say of the falls in a recording of a day: one row on each side of each edge. */
class ListedTimesTest {
    private static final LocalDateTime EIGHT = LocalDateTime.of(2031, 6, 1, 8, 0);
    private static final double ZERO = 28_800;

    /** From 7:50 to 9:00, with a reading each ten seconds that never falls. */
    private static Recording day() {
        List<List<String>> rows = IntStream.rangeClosed(-60, 360)
                .mapToObj(i -> List.of(EIGHT.plusSeconds(10L * i).toLocalTime() + (i % 6 == 0 ? ":00" : ""), "150"))
                .toList();
        return Recording.of(
                Tables.of("day.csv", List.of(List.of("2031-06-01")), List.of("clock", "beans"), rows),
                List.of(Meaning.time(Meaning.TIME_OF_DAY), Meaning.of(Quantity.BEAN_TEMPERATURE, "°C")),
                DateOrder.ISO_ONLY);
    }

    private static ListedTimes.Row row(String name, int second, double drop) {
        return new ListedTimes.Row(name, EIGHT.plusSeconds(second), drop);
    }

    private static List<Double> falls(GatherQuestions told, List<ListedTimes.Row> rows, double... seen) {
        List<Double> shifted =
                java.util.Arrays.stream(seen).mapToObj(at -> ZERO + at).toList();
        return new ListedTimes(rows)
                .falls(day(), shifted, told).stream().map(at -> at - ZERO).toList();
    }

    private static final List<ListedTimes.Row> TWO = List.of(row("A", 0, 600), row("B", 1200, 600));

    @Test
    void fallsThatAreChargesOfTheListStay() {
        GatherQuestions told = new GatherQuestions(Map.of());
        assertEquals(List.of(20.0, 1250.0), falls(told, TWO, 20, 1250));
        assertEquals(List.of(), told.leftOut());
    }

    @ParameterizedTest
    @CsvSource({"79, 3", "81, 2", "300, 2", "619, 2", "621, 3"})
    void aFallWhileTheListHasABatchInTheDrumIsNoCharge(double fall, int left) {
        GatherQuestions told = new GatherQuestions(Map.of());
        assertEquals(left, falls(told, TWO, 20, fall, 1250).size());
        assertEquals(left == 2 ? 1 : 0, told.leftOut().size());
    }

    @Test
    void itIsToldWhyAFallMakesNoBatch() {
        GatherQuestions told = new GatherQuestions(Map.of());
        falls(told, TWO, 20, 400, 1250);
        assertEquals(
                List.of(
                        "'day.csv': the bean temperature falls at 08:06:40 as at a charge, but the list has 'A' in the drum then:"
                                + " no batch is made of it."),
                told.leftOut());
    }

    @Test
    void aRowWithoutAFallIsNamed() {
        GatherQuestions told = new GatherQuestions(Map.of());
        assertEquals(List.of(20.0), falls(told, TWO, 20));
        assertEquals(
                List.of(
                        "'day.csv': the list has 'B' charged at 08:20, where the bean temperature does not fall as at a charge."),
                told.leftOut());
    }

    /** A fall is struck out only where two rows have a fall within five minutes, and none is added where fewer than half have. */
    @ParameterizedTest
    @CsvSource({"299, 2", "301, 3"})
    void aClockThatAgreesWithLessThanHalfOfTheFallsIsNotBelieved(double second, int left) {
        GatherQuestions told = new GatherQuestions(Map.of());
        List<ListedTimes.Row> rows = List.of(row("A", 0, 2000), row("B", 2400, 600), row("C", 3000, 300));
        assertEquals(
                left, falls(told, rows.subList(0, 2), -299, 500, 2400 + second).size());
        GatherQuestions none = new GatherQuestions(Map.of());
        assertEquals(List.of(-299.0, 1500.0), falls(none, rows, -299, 1500));
        assertEquals(List.of(), none.leftOut());
    }

    @Test
    void oneRowOrARecordingWithoutADateSaysNothing() {
        GatherQuestions told = new GatherQuestions(Map.of());
        assertEquals(List.of(20.0, 400.0), falls(told, TWO.subList(0, 1), 20, 400));
        assertEquals(List.of(), told.leftOut());
    }

    @Test
    void theDropOfTheNearestRowIsTheBatchsOwn() {
        ListedTimes times = new ListedTimes(TWO);
        assertEquals(ZERO + 620, times.drop(day(), ZERO + 20));
        assertEquals(ZERO + 1850, times.drop(day(), ZERO + 1250));
        assertEquals(Double.NaN, times.drop(day(), ZERO + 700));
    }
}
