package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Whether Ctrl-C reaches this process at all: whatever a shell starts in the background is deaf to it, and so is all that it starts. */
final class Deafness {
    private static final long INTERRUPT = 1L << 1;

    private Deafness() {}

    static boolean isDeafToControlC() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.exists(status)) {
            return false;
        }
        try (Stream<String> lines = Files.lines(status)) {
            return lines.filter(line -> line.startsWith("SigIgn:"))
                    .anyMatch(line -> (Long.parseUnsignedLong(
                                            line.substring(line.indexOf(':') + 1)
                                                    .strip(),
                                            16)
                                    & INTERRUPT)
                            != 0);
        }
    }
}
