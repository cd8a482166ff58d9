package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Writes what an invented harbour-town roastery has on its laptop: 120 logger files with the batch and the date above the headings, a list of batches, and a score
 * sheet. Dates have the month first, temperatures are degrees Fahrenheit and nowhere said to be, masses are pounds.
 */
public final class HarbourFiles {
    static final int BATCHES = 120;
    private static final int BATCHES_A_DAY = 6;
    private static final List<String> LOTS = List.of("Kela washed", "Low Garden natural", "Mist Ridge washed");
    private static final List<String> CUPPERS = List.of("Ana", "Ben", "Ida");
    private static final DateTimeFormatter MONTH_FIRST = DateTimeFormatter.ofPattern("MM/dd/yyyy HH:mm", Locale.ROOT);

    private HarbourFiles() {}

    /** Writes the folder named first, so that the session of the handbook can be tried. */
    public static void main(String[] arguments) throws IOException {
        write(Path.of(arguments[0]), 1);
    }

    /** Writes the folder. */
    static void write(Path folder, long seed) throws IOException {
        Files.createDirectories(folder);
        SplittableRandom random = new SplittableRandom(seed);
        List<String> list =
                new ArrayList<>(List.of("Batch #,Date,Coffee,Green lb,Roasted lb,First crack,End,Comments"));
        List<String> scores = new ArrayList<>(List.of("Roast,Tasted,Taster,Acidity,Sweetness,Body,Overall"));
        for (int i = 0; i < BATCHES; i++) {
            int number = 101 + i;
            LocalDate day = LocalDate.of(2031, 1, 6).plusDays(i / BATCHES_A_DAY);
            LocalDateTime charged = day.atTime(8, 0).plusMinutes(22L * (i % BATCHES_A_DAY));
            int drop = 560 + random.nextInt(100);
            int crack = drop - 75 - random.nextInt(40);
            double last = 206 + random.nextInt(80) / 10.0;
            double green = 11 + random.nextInt(3) / 2.0;
            Files.writeString(
                    folder.resolve(String.format(Locale.ROOT, "roast_%s_%tH%<tM.csv", day, charged)),
                    recording(number, charged, drop, last, random));
            list.add(String.format(
                    Locale.ROOT,
                    "%d,%d/%d/%d,%s,%.1f,%.2f,%d:%02d,%d:%02d,%s",
                    number,
                    day.getMonthValue(),
                    day.getDayOfMonth(),
                    day.getYear(),
                    LOTS.get(i % LOTS.size()),
                    green,
                    green * (0.84 + random.nextInt(200) / 10_000.0),
                    crack / 60,
                    crack % 60,
                    drop / 60,
                    drop % 60,
                    i == 7 ? "\"fan loud, door open\"" : ""));
            for (String cupper : i % 2 == 0 ? CUPPERS : List.<String>of()) {
                scores.add(String.format(
                        Locale.ROOT,
                        "%d,%d/%d/%d,%s,%.2f,%.2f,%.2f,%.2f",
                        number,
                        day.plusDays(3).getMonthValue(),
                        day.plusDays(3).getDayOfMonth(),
                        2031,
                        cupper,
                        score(random, 7),
                        score(random, 7.5 - Math.abs(last - 210) / 4),
                        score(random, 6.5),
                        score(random, 7 - Math.abs(last - 210) / 5)));
            }
        }
        Files.write(folder.resolve("batches 2031.csv"), list);
        Files.write(folder.resolve("score sheet.csv"), scores);
    }

    private static double score(SplittableRandom random, double about) {
        return Math.round(4 * Math.max(0, Math.min(10, about + random.nextDouble() * 1.5 - 0.75))) / 4.0;
    }

    /** Cold beans bury a hot probe at the charge, 60 s after the logger was started. */
    private static String recording(int number, LocalDateTime charged, int drop, double last, SplittableRandom random) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "Batch %d,%s,,%nSeconds,Bean,Exhaust,Burner%n",
                number,
                charged.minusSeconds(60).format(MONTH_FIRST)));
        double probe = 196;
        for (int s = 0; s < 60 + drop + 30; s++) {
            double since = s - 60;
            double bean = since < 0
                    ? 197
                    : since < drop
                            ? 25 + (last - 17) * (1 - Math.exp(-2.3 * since / drop)) / (1 - Math.exp(-2.3))
                            : 190;
            probe += (bean - probe) / (since < 0 || since >= drop ? 40 : 20);
            if (s % 3 == 0) {
                text.append(String.format(
                        Locale.ROOT,
                        "%d,%.1f,%.1f,%d%n",
                        s,
                        1.8 * (probe + random.nextDouble() * 0.4 - 0.2) + 32,
                        1.8 * (232 + s / 40.0 + random.nextDouble()) + 32,
                        since < drop / 2.0 ? 80 : 55));
            }
        }
        return text.toString();
    }
}
