package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Writes what lies about in every folder and tells nothing of a roast. */
final class Leftovers {
    private Leftovers() {}

    /** Writes a list of orders under the given heads (customer, what, how many, paid). */
    static void orders(Path file, char separator, Random random, String... heads) throws IOException {
        List<String> lines = new ArrayList<>(List.of(Pen.line(separator, (Object[]) heads)));
        int count = 4 + random.nextInt(6);
        for (int i = 0; i < count; i++) {
            String customer = String.valueOf((char) ('A' + random.nextInt(26))) + (char) ('A' + random.nextInt(26));
            lines.add(
                    Pen.line(separator, customer, Pen.pick(random, "250", "500", "1000"), 1 + random.nextInt(12), "x"));
        }
        Pen.save(file, Pen.UTF_8, Pen.LF, lines);
    }

    /** Writes the start of a picture. */
    static void picture(Path file, Random random) throws IOException {
        byte[] bytes = new byte[300 + random.nextInt(300)];
        random.nextBytes(bytes);
        byte[] start = {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xE0, 0, 16, 'J', 'F', 'I', 'F', 0};
        System.arraycopy(start, 0, bytes, 0, start.length);
        Files.write(file, bytes);
    }

    /** Writes the little file that an office program leaves while a sheet is open. */
    static void temporary(Path file, Random random) throws IOException {
        byte[] bytes = new byte[165];
        bytes[0] = 4;
        for (int i = 1; i < 5; i++) {
            bytes[i] = (byte) ('a' + random.nextInt(26));
        }
        Files.write(file, bytes);
    }

    /** Writes a workbook nobody has typed anything into. */
    static void emptyWorkbook(Path file) throws IOException {
        Pen.workbook(file, book -> book.newWorksheet("Sheet1"));
    }

    static void words(Path file, String... lines) throws IOException {
        Pen.save(file, Pen.UTF_8, Pen.LF, List.of(lines));
    }
}
