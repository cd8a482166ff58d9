package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.gather.TableKind.What;

class TableKindTest {
    private static TableKind kind(String... lines) {
        return TableKind.of(Sheets.table(lines), Clues.NONE);
    }

    @Test
    void tellsListsApart() {
        assertEquals(
                What.BATCHES,
                kind("Batch|Date|Green|Drop", "1|2031-06-01|5|11:00", "2|2031-06-01|5|11:10")
                        .what());
        assertEquals(
                What.BATCHES,
                kind("Date|Coffee|Green kg|Drop", "2031-06-01|Huila|5|11:00", "2031-06-01|Guji|5|11:10")
                        .what());
        assertEquals(
                What.LOTS,
                kind(
                                "Lot|Origin|Process|Moisture %|Arrived",
                                "Huila|Colombia|washed|11.2|2031-01-05", "Guji|Ethiopia|natural|10.8|2031-02-05")
                        .what());
        assertEquals(
                What.LOTS,
                kind(
                                "Partie|Herkunft|Aufbereitung|Eingang",
                                "Huila|Kolumbien|gewaschen|05.01.2031",
                                "Guji|Äthiopien|natur|05.02.2031")
                        .what());
        assertEquals(
                What.UPKEEP,
                kind(
                                "Date|Machine|What was done",
                                "2031-01-05|Drum|bean probe moved 1 cm",
                                "2031-03-05|Drum|fan cleaned")
                        .what());
        assertEquals(
                What.UPKEEP,
                kind("Datum|Wartung", "05.01.2031|Fühler versetzt", "05.03.2031|Lüfter gereinigt")
                        .what());
        assertEquals(What.NOTHING, kind("Name|Phone", "Ana|555", "Ben|556").what());
    }

    @Test
    void aRecordingHasTimesThatGoOnBesideASmoothLine() {
        String[] lines = new String[31];
        lines[0] = "Time|Bean|Gas";
        for (int i = 1; i < lines.length; i++) {
            lines[i] = 10 * i + "|" + (90 + 4 * i) + "|80";
        }
        assertEquals(What.RECORDING, kind(lines).what());
        for (int i = 1; i < lines.length; i++) {
            lines[i] = 10 * i + "|" + (90 + 97 * i % 120) + "|80";
        }
        assertEquals(What.NOTHING, kind(lines).what());
    }

    @ParameterizedTest
    @CsvSource({"9,NOTHING", "10,RECORDING"})
    void aRecordingHasTenRows(int rows, What what) {
        String[] lines = new String[rows + 1];
        lines[0] = "Time|Bean|Gas";
        for (int i = 1; i < lines.length; i++) {
            lines[i] = 30 * i + "|" + (90 + 10 * i) + "|80";
        }
        assertEquals(what, kind(lines).what());
    }

    @ParameterizedTest
    @CsvSource({"0.39,NOTHING", "0.4,SCORES"})
    void theHighestClaimWinsFromALeastOneOn(double score, What what) {
        FoundTable table = Sheets.table("Name|Phone", "Ana|555", "Ben|556");
        assertEquals(
                what,
                TableKind.of(table, Clues.NONE, List.of(new TableKind(What.SCORES, score, "has scores")))
                        .what());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '!',
            value = {
                "brand|datum|brrp|grrp!1|2031-06-01|7.5|8!2|2031-06-01|10|8!3|2031-06-02|6.5|7!NOTHING",
                "Batch|datum|brrp|grrp!1|2031-06-01|7.5|8!2|2031-06-01|11|8!3|2031-06-02|6.5|7!BATCHES",
                "Batch|datum|brrp|Green kg!1|2031-06-01|7.5|8!2|2031-06-01|10|8!3|2031-06-02|6.5|7!BATCHES",
                "Batch|datum|brrp|grrp!1|2031-06-01|7.5|a!2|2031-06-01|10|b!3|2031-06-02|6.5|c!BATCHES"
            })
    void numbersOfOneScaleBesideNamesAndDatesAreNoListOfBatches(
            String head, String one, String two, String three, What what) {
        assertEquals(what, kind(head, one, two, three).what());
    }
}
