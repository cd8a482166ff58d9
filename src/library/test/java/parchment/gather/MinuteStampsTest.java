package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A time of the charge that a name shows to the minute, against one that a list shows: the one that is known better is written. */
class MinuteStampsTest {
    @TempDir
    Path temporary;

    /** The beans fall 80 s after the recording's start; the list's other row shows whether it knows seconds. */
    @ParameterizedTest
    @CsvSource({
        // A stamp of a minute gives way to a time with seconds, and to one in its own minute.
        "2031-06-01_0800, 2031-06-01 08:00:17, 2031-06-02 09:00:01, 2031-06-01T08:00:17",
        "2031-06-01_0800, 2031-06-01 08:00:00, 2031-06-02 09:00:01, 2031-06-01T08:00",
        "2031-06-01_0800, 2031-06-01 08:00, 2031-06-02 09:00, 2031-06-01T08:00",
        // Two clocks that show minutes: the logger's start and the fall of the beans.
        "2031-06-01_0800, 2031-06-01 08:03, 2031-06-02 09:00, 2031-06-01T08:01:20",
        // A stamp with seconds stays.
        "2031-06-01_080009, 2031-06-01 08:00:17, 2031-06-02 09:00:01, 2031-06-01T08:01:29",
        // Within five minutes it is the same charge, beyond them it is said that there is another time.
        "2031-06-01_0800, 2031-06-01 08:06:20, 2031-06-02 09:00:01, 2031-06-01T08:06:20",
        "2031-06-01_0800, 2031-06-01 08:06:21, 2031-06-02 09:00:01, 2031-06-01T08:01:20"
    })
    void theTimeThatIsKnownBetterIsWritten(String name, String listed, String other, LocalDateTime written)
            throws IOException {
        StringBuilder text = new StringBuilder("time [s],bean temperature [°C]\n");
        for (int i = 0; i <= 70; i++) {
            double degrees = i < 8 ? 190 : i < 16 ? 190 - 12 * (i - 8) : 94 + 2.05 * (i - 16);
            text.append(String.format(Locale.ROOT, "%d,%.2f%n", 10 * i, degrees));
        }
        Files.writeString(temporary.resolve(name + ".csv"), text);
        Files.writeString(
                temporary.resolve("list.csv"),
                "batch,roasted at,green mass [kg],lot\n1," + listed + ",5,kela\n2," + other + ",6,kela\n");
        Gathering gathering = Gather.of(temporary)
                .answer("join." + name.toLowerCase(Locale.ROOT).replaceAll("[-_]+", "-"), "1")
                .gathering();
        GatheredBatch batch = gathering.batches().get(0);
        double charge = batch.zero();
        assertTrue(charge >= 70 && charge <= 80, "the beans fall from 80 s on: " + charge);
        assertEquals(
                written,
                batch.roastedAt().orElseThrow().plusSeconds(isListed(listed, batch) ? 0 : Math.round(80 - charge)));
        assertEquals(
                isListed(listed, batch),
                gathering.questions().taken().stream()
                        .anyMatch(
                                line -> line.equals(
                                        "  The time in the name or first lines of 1 recording shows minutes"
                                                + " and no seconds: the charge is taken to be when the list says, 'list.csv'.")),
                List.copyOf(gathering.questions().taken()).toString());
    }

    private static boolean isListed(String listed, GatheredBatch batch) {
        return batch.roastedAt().orElseThrow().equals(LocalDateTime.parse(listed.replace(' ', 'T')));
    }
}
