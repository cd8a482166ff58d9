package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.logbook.MarkKind;
import parchment.sheet.DateOrder;

class BatchListTest {
    private static BatchList list(DateOrder order, String... lines) {
        return BatchList.of(ListColumns.of(Sheets.table(lines), Clues.NONE), order);
    }

    private static List<String> names(BatchList list) {
        return list.batches().stream().map(ListedBatch::name).toList();
    }

    @Test
    void valuesStandUnderTheLogbooksHeadingsAndExtrasUnderTheirOwn() {
        BatchList list = list(
                DateOrder.DAY_MONTH_YEAR,
                "Batch #|Date|Start|Coffee|Green (lb)|Charge temp (°F)|1st crack|Drop|Drop temp|Weather|Notes",
                "101|3/6/2031|8:15 AM|Huila|11,0|400|8:55|11:05|410|rain|fine",
                "102|3/6/2031|1:05 PM|Guji|11,0|401|8:50|11:00|411|sun|",
                "103|4/6/2031|8:05 AM|Guji|11|402|8:52|11:01|409|sun|");
        ListedBatch first = list.batches().get(0);
        assertEquals("101", first.name());
        assertEquals(Optional.of(LocalDateTime.of(2031, 6, 3, 8, 15)), first.roastedAt());
        assertEquals(
                Optional.of(LocalDateTime.of(2031, 6, 3, 13, 5)),
                list.batches().get(1).roastedAt());
        assertEquals(
                Map.of(
                        "lot",
                        "Huila",
                        "green mass [lb]",
                        "11",
                        "charge temperature [°F]",
                        "400",
                        "Drop temp",
                        "410",
                        "Weather",
                        "rain",
                        "note",
                        "fine"),
                first.written());
        assertEquals(Map.of(MarkKind.FIRST_CRACK_START, 535.0, MarkKind.DROP, 665.0), first.marks());
        assertEquals(2, first.line());
        assertEquals(List.of(), list.told());
    }

    @Test
    void aBatchWithoutANameIsNamedAfterItsDay() {
        assertEquals(
                List.of("2031-06-01-a", "2031-06-01-b", "2031-06-02-a"),
                names(list(
                        DateOrder.ISO_ONLY,
                        "Date|Green kg|Drop",
                        "2031-06-01|5|11:00",
                        "2031-06-01|5|11:10",
                        "2031-06-02|5|11:20")));
        assertEquals(
                List.of("2031-06-01-1", "2031-06-01-2", "2031-06-02-1"),
                names(list(
                        DateOrder.ISO_ONLY,
                        "Nr.|Datum|Ende",
                        "1|2031-06-01|11:00",
                        "2|2031-06-01|11:10",
                        "1|2031-06-02|11:20")));
    }

    @Test
    void aDayThatIsWrittenOnceCountsForTheRowsBelow() {
        BatchList list =
                list(DateOrder.ISO_ONLY, "Batch|Date|Drop", "1|2031-06-01|11:00", "2||11:10", "3|2031-06-02|11:20");
        assertEquals(
                Optional.of(LocalDate.of(2031, 6, 1)), list.batches().get(1).day());
        assertEquals(List.of("1 row has no date of its own and got the one above."), list.told());
    }

    @Test
    void aTimeWithoutADayIsKeptInWords() {
        BatchList list = list(DateOrder.ISO_ONLY, "Batch|Start|Green kg", "1|8:10|5", "2|11:30|5", "3|13:50|5");
        assertEquals(
                List.of("time of charge 08:10, day not written"),
                list.batches().get(0).notes());
        assertEquals("Line 2 has the time 08:10 and no day.", list.told().get(0));
    }

    @Test
    void whatCannotBeReadIsNamedByItsLine() {
        BatchList list = list(
                DateOrder.ISO_ONLY,
                "Batch|Date|Drop",
                "1|3/4/2031|11:00",
                "2|2031-06-01|11:10",
                "3|2031-06-02|late",
                "4|2031-06-02|11:20",
                "5|2031-06-02|11:20",
                "6|2031-06-02|11:20",
                "7|2031-06-02|11:20");
        assertEquals(
                List.of(
                        "Line 2: '3/4/2031' under 'Date' is no date that can be read; it is kept in the note.",
                        "Line 4: 'late' under 'Drop' is no time for the drop; it is kept in the note."),
                list.told());
        assertEquals(List.of("Date: 3/4/2031"), list.batches().get(0).notes());
        assertEquals(List.of("Drop: late"), list.batches().get(2).notes());
        assertEquals(7, list.batches().size());
    }

    @Test
    void aDateThatCannotBeReadIsNotTheOneAbove() {
        BatchList list = list(
                DateOrder.ISO_ONLY,
                "Batch|Date|Drop",
                "1|2031-06-01|11:00",
                "2||11:10",
                "3|a fine day|11:20",
                "4||11:30",
                "5|2031-06-02|11:40",
                "6||11:50",
                "7|2031-06-03|11:40",
                "8|2031-06-04|11:40",
                "9|2031-06-05|11:40",
                "10|2031-06-06|11:40");
        assertEquals(
                List.of("2031-06-01", "2031-06-01", "", "", "2031-06-02", "2031-06-02"),
                list.batches().subList(0, 6).stream()
                        .map(row -> row.day().map(Object::toString).orElse(""))
                        .toList());
        assertEquals(
                List.of(
                        "Line 4: 'a fine day' under 'Date' is no date that can be read, so the row stays without one; it is kept in the note.",
                        "2 rows have no date of their own and got the one above."),
                list.told());
    }

    @Test
    void twoRowsOfOneBatchStayTwoAndAreCompared() {
        BatchList list = list(
                DateOrder.ISO_ONLY,
                "Batch|Date|Green kg|Drop",
                "1|2031-06-01|5|11:00",
                "2|2031-06-01|5|11:10",
                "1|2031-06-01|6|11:30",
                "3|2031-06-02|5|11:20",
                "2|2031-06-01|5|11:10",
                "4|2031-06-02|5|11:20",
                "5|2031-06-02|5|11:20");
        assertEquals(7, list.batches().size());
        assertEquals(
                List.of(
                        "Batch '1' stands on lines 2 and 4; they differ in green mass [kg] '5' and '6', the drop.",
                        "Batch '2' stands on lines 3 and 6, without a difference."),
                list.told());
    }

    @Test
    void theDevelopmentTimeGivesTheMarkThatIsMissing() {
        BatchList list = list(
                DateOrder.ISO_ONLY,
                "Batch|Date|Drop|Development",
                "1|2031-06-01|11:00|2:00",
                "2|2031-06-01|11:10|2:10",
                "3|2031-06-02|11:20|2:05");
        assertEquals(540.0, list.batches().get(0).marks().get(MarkKind.FIRST_CRACK_START));
        assertEquals(
                "The first crack of 3 rows is the drop less the development time.",
                list.told().get(0));
    }

    @Test
    void spreadsheetsNumbersBecomeDaysTimesAndMinutes() {
        // 45809 is 1 June 2025 in a spreadsheet's count of days from 30 December 1899 (from memory, checked by
        // counting).
        BatchList list = list(
                DateOrder.ISO_ONLY,
                "Batch|Date|Start|Drop",
                "1|45809|0.3333|0.4618",
                "2|45809|0.4375|0.4576",
                "3|45810|0.6472|0.4597");
        assertEquals(
                Optional.of(LocalDateTime.of(2025, 6, 1, 8, 0)),
                list.batches().get(0).roastedAt());
        assertEquals(665.0, list.batches().get(0).marks().get(MarkKind.DROP));
    }

    @Test
    void daysThatStandAloneHeadTheRowsBelowThem() {
        BatchList list = list(
                DateOrder.ISO_ONLY,
                "Batch|Coffee|Green|Out|End",
                "Monday 2 June 2031||||",
                "1|Huila|5 kg|4.2 kg|11:00",
                "2|Guji|5 kg|4.3 kg|11:10",
                "Tuesday 3 June 2031||||",
                "3|Huila|5 kg|4.2 kg|11:00");
        assertEquals(
                List.of(LocalDate.of(2031, 6, 2), LocalDate.of(2031, 6, 2), LocalDate.of(2031, 6, 3)),
                list.batches().stream().map(batch -> batch.day().orElseThrow()).toList());
        assertEquals(
                List.of("Days stand alone on rows: each row got the day above it, as a column 'Date'."), list.told());
    }
}
