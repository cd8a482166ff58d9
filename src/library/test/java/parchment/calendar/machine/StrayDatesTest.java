package parchment.calendar.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.WrittenFolder;

class StrayDatesTest {
    @TempDir
    Path temporary;

    private Logbook roastedOn(List<String> days) throws IOException {
        return new WrittenFolder(temporary)
                .with(
                        "batches.csv",
                        Stream.concat(
                                        Stream.of("batch,roasted at,lot"),
                                        IntStream.range(0, days.size())
                                                .mapToObj(i -> "b" + i + "," + days.get(i) + ",kela"))
                                .toArray(String[]::new))
                .open();
    }

    /** 2025-03-12 and 366 days are 2026-03-13. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2025-03-10 2025-03-11 2025-03-12 2052-03-12|b3",
                "2025-03-10 2025-03-11 2025-03-12 2026-03-13|''",
                "2025-03-10 2025-03-11 2025-03-12 2026-03-14|b3",
                "2025-03-10 2025-03-11 2025-03-12 2052-03-12 2052-03-13|b3 b4",
                "2025-03-10 2025-03-11 2025-03-12 2052-03-12 2052-03-13 2052-03-14|''",
                "2025-03-11 2025-03-12 2052-03-12|''",
                "2025-03-10 2025-03-11 2025-03-12 2027-03-12 2052-03-13|b3 b4",
                "2052-03-12 2025-03-10 2025-03-11 2025-03-12|b0"
            })
    void oneBatchOrTwoMoreThanAYearAfterThreeOthersLookLikeASlip(String days, String stray) throws IOException {
        assertEquals(
                stray,
                String.join(
                        " ",
                        StrayDates.of(roastedOn(List.of(days.split(" ")))).stream()
                                .map(Batch::name)
                                .toList()));
    }

    /** Tomorrow may have begun where the batch was roasted; the day after has not. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "2025-03-01 2025-03-03; 2025-03-02; ''",
                "2025-03-01 2025-03-03; 2025-03-01; 1 of 2 batches are dated after today, 2025-03-01, the last on 2025-03-03.",
                "2031-03-01 2031-03-03; 2025-03-01; 2 of 2 batches are dated after today, 2025-03-01, the last on 2031-03-03.",
                "2031-03-01; 2025-03-01; 1 of 1 batch is dated after today, 2025-03-01, the last on 2031-03-01."
            })
    void daysThatAreNotYetAreDoubtedInWords(String days, String today, String words) throws IOException {
        assertEquals(
                words.isEmpty()
                        ? ""
                        : words
                                + " Check the year under 'roasted at' in batches.csv, and the date of this computer; nothing is left out for it.",
                StrayDates.afterToday(roastedOn(List.of(days.split(" "))), java.time.LocalDate.parse(today))
                        .orElse(""));
    }
}
