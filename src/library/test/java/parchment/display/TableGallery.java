package parchment.display;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Writes a light and a dark page of long, short and wide tables, for looking and for {@code src/library/test/browser/tables.cjs}. The numbers
 * are drawn at random with a fixed seed and mean nothing.
 */
final class TableGallery {
    private record Row(String batch, String lot, String day, double drop, double speed) {}

    private TableGallery() {}

    /** Takes the folder to write {@code light.html} and {@code dark.html} into. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        Files.writeString(folder.resolve("light.html"), page("background:#fff;color:#111"));
        Files.writeString(folder.resolve("dark.html"), page("background:#15181c;color:#e3e7ea;color-scheme:dark"));
    }

    private static String page(String colours) {
        List<Row> rows = rows();
        Table season = Table.titled("Batches of the season")
                .withText("batch", rows, Row::batch)
                .withText("lot", rows, Row::lot)
                .withText("day", rows, Row::day)
                .withNumber("drop temperature", "°C", 1, rows, Row::drop)
                .withNumber("speed", "°C/min", 2, rows, Row::speed);
        List<Row> few = rows.subList(0, 12);
        Table wide = Table.titled("Wide").withText("batch", few, Row::batch);
        for (int i = 1; i <= 20; i++) {
            int times = i;
            wide = wide.withNumber("measure number " + i, "s", 1, few, row -> row.speed() * times);
        }
        String same = season.html().orElseThrow();
        return "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Tables</title></head>"
                + "<body style=\"font-family:sans-serif;" + colours + "\">" + same
                + wide.html().orElseThrow() + same + "</body></html>";
    }

    private static List<Row> rows() {
        Random random = new Random(1);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < 240; i++) {
            rows.add(new Row(
                    String.format(Locale.ROOT, "H%d", i + 1),
                    i % 5 == 0
                            ? ""
                            : List.of("Quayside", "<b>Upland</b>", "Terrace").get(i % 3),
                    LocalDate.of(2025, 3, 1).plusDays(i * 37 % 240).toString(),
                    i % 7 == 0 ? Double.NaN : 200 + random.nextDouble() * 20,
                    random.nextGaussian() * 12));
        }
        return rows;
    }
}
