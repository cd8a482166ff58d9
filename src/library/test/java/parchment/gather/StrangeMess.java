package parchment.gather;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Makes a folder of sixty files in several strange styles, and keeps the truth that made them.
 *
 * <p>Every roast is made up: a probe that lags the beans, a drum that is hot and empty before. To write the mess to a folder, run this
 * class with the folder and, if wanted, a seed.
 */
public final class StrangeMess {
    /** Holds what one made-up batch really was; times in seconds since charge, temperatures in degrees Celsius. */
    record Truth(
            String name, LocalDateTime chargedAt, double crack, double drop, double greenKilograms, double[] beans) {}

    private static final int BEFORE = 90;
    private static final int AFTER = 60;
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    private final Path folder;
    private final SplittableRandom random;
    private final Map<String, Truth> truths = new LinkedHashMap<>();
    private final List<String> sheet = new ArrayList<>();

    private StrangeMess(Path folder, long seed) {
        this.folder = folder;
        this.random = new SplittableRandom(seed);
    }

    /** Writes the mess and returns the truth, by the name that each batch should get. */
    static Map<String, Truth> write(Path folder, long seed) throws IOException {
        StrangeMess mess = new StrangeMess(folder, seed);
        Files.createDirectories(folder);
        mess.write();
        return mess.truths;
    }

    /** Writes the mess to the folder named first, with the seed named second. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        Map<String, Truth> truths = write(folder, arguments.length > 1 ? Long.parseLong(arguments[1]) : 1);
        truths.values()
                .forEach(t -> System.out.printf(
                        Locale.ROOT,
                        "%s charged %s, crack %.0f s, drop %.0f s%n",
                        t.name(),
                        t.chargedAt(),
                        t.crack(),
                        t.drop()));
    }

    private void write() throws IOException {
        for (int i = 1; i <= 12; i++) {
            semicolons(i);
        }
        for (int i = 1; i <= 12; i++) {
            tabs(i);
        }
        for (int i = 1; i <= 12; i++) {
            typedMarks(i);
        }
        for (int i = 1; i <= 10; i++) {
            dates(i);
        }
        for (int i = 1; i <= 2; i++) {
            wholeDay(i);
        }
        for (int i = 1; i <= 8; i++) {
            noHeadings(i);
        }
        sheet();
        text("empty.csv", List.of());
        text("readme.txt", List.of("Recordings of the winter.", "Ask Ida before throwing them away."));
        text("cut.csv", List.of("Clock;Beans"));
    }

    private Truth truth(String name, LocalDateTime chargedAt) {
        double drop = 540 + random.nextInt(120);
        double crack = drop - 70 - random.nextInt(50);
        double green = 4 + random.nextInt(20) / 10.0;
        int seconds = BEFORE + (int) drop + AFTER;
        double[] beans = new double[seconds];
        double rate = 2.2 + random.nextDouble() * 0.4;
        double probe = 195 + random.nextInt(15);
        for (int i = 0; i < seconds; i++) {
            double since = i - BEFORE;
            // Cold beans bury the probe at charge; the empty drum is hot before and after.
            double bean = since < 0
                    ? probe + 0.02
                    : since < drop ? 25 + 182 * (1 - Math.exp(-rate * since / drop)) / (1 - Math.exp(-rate)) : 190;
            double lag = since < 0 || since >= drop ? 40 : 20;
            probe += (bean - probe) / lag;
            beans[i] = probe;
        }
        Truth truth = new Truth(name, chargedAt, crack, drop, green, beans);
        truths.put(name, truth);
        return truth;
    }

    private double noisy(double celsius) {
        return celsius + (random.nextDouble() - 0.5) * 0.6;
    }

    private static double fahrenheit(double celsius) {
        return celsius * 1.8 + 32;
    }

    private static String format(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }

    private static LocalDateTime day(int month, int day, int hour) {
        return LocalDateTime.of(LocalDate.of(2025, month, day), java.time.LocalTime.of(hour, 5, 30));
    }

    /** Decimal commas, minutes and seconds since the logger was started, three lines before the headings, degrees not said. */
    private void semicolons(int i) throws IOException {
        Truth truth = truth(Integer.toString(i), day(1, i, 9));
        sheet.add(sheetRow(i, truth));
        LocalDateTime start = truth.chargedAt().minusSeconds(BEFORE);
        List<String> lines = new ArrayList<>(List.of(
                "Roast recorder",
                "started " + start.toLocalDate() + " " + start.format(CLOCK),
                "",
                "Time;Bean;Air;Gas"));
        for (int s = 0; s < truth.beans().length; s += 2) {
            lines.add(format(
                            "%d:%02d;%.1f;%.1f;%d",
                            s / 60, s % 60, noisy(truth.beans()[s]), noisy(230 + s / 20.0), s > 400 ? 40 : 80)
                    .replace('.', ','));
        }
        text(format("batch %03d.csv", i), lines);
    }

    /** Tabs, times of day, degrees Fahrenheit that nobody names, probes by number, a date in the file's name. */
    private void tabs(int i) throws IOException {
        Truth truth = truth(Integer.toString(100 + i), day(2, i, 23).withMinute(55));
        LocalDateTime start = truth.chargedAt().minusSeconds(BEFORE);
        List<String> lines = new ArrayList<>(List.of("Clock\tProbe 1\tProbe 2\tFan"));
        for (int s = 0; s < truth.beans().length; s++) {
            double air = s % 97 == 0 ? 9999 : fahrenheit(noisy(240 + s / 25.0));
            lines.add(format(
                    "%s\t%.1f\t%.1f\t%d",
                    start.plusSeconds(s).format(CLOCK), air, fahrenheit(noisy(truth.beans()[s])), s / 200));
        }
        text("tabs/" + format("2025-02-%02d roast %d", i, 100 + i) + ".txt", lines);
    }

    /** Commas, seconds, marks typed into a column of notes, -1 where there is no reading. */
    private void typedMarks(int i) throws IOException {
        Truth truth = truth(format("log_%02d", i), day(3, i, 14));
        List<String> lines = new ArrayList<>(List.of("elapsed,bean temp (C),exhaust temp (C),what happened"));
        for (int s = 0; s < truth.beans().length; s++) {
            int since = s - BEFORE;
            String words = since == 0
                    ? "charge"
                    : since == (int) truth.crack()
                            ? "\"1st crack, loud\""
                            : since == (int) truth.drop() ? "DROP" : since == 300 ? "smoke" : "";
            String bean = s % 150 == 7 ? "-1" : format("%.2f", noisy(truth.beans()[s]));
            lines.add(format("%.1f,%s,%.2f,%s", s * 1.0, bean, noisy(235), words));
        }
        text(truth.name() + ".csv", lines);
    }

    /** Dates and times in the order day/month/year, which no file shows; quoted; the unit on a line of its own. */
    private void dates(int i) throws IOException {
        Truth truth = truth("r" + i, day(4, i, 10));
        LocalDateTime start = truth.chargedAt().minusSeconds(BEFORE);
        DateTimeFormatter form = DateTimeFormatter.ofPattern("d/M/yyyy HH:mm:ss", Locale.ROOT);
        List<String> lines =
                new ArrayList<>(List.of("\"Date\",\"Beans\",\"Drum\",\"Burner\"", "\"\",\"°F\",\"°F\",\"mbar\""));
        for (int s = 0; s < truth.beans().length; s += 3) {
            lines.add(format(
                    "\"%s\",\"%.0f\",\"%.0f\",\"%d\"",
                    start.plusSeconds(s).format(form),
                    fahrenheit(noisy(truth.beans()[s])),
                    fahrenheit(noisy(250)),
                    s > 300 ? 12 : 25));
        }
        text("from the laptop/" + truth.name() + ".csv", lines);
    }

    /** One day's recording with five batches. */
    private void wholeDay(int number) throws IOException {
        LocalDate date = LocalDate.of(2025, 5, number);
        LocalDateTime start = date.atTime(8, 0);
        List<Double> beans = new ArrayList<>();
        for (int k = 0; k < 300; k++) {
            beans.add(150 + k * 0.15);
        }
        List<Truth> ofTheDay = new ArrayList<>();
        for (int k = 1; k <= 5; k++) {
            Truth truth = truth(
                    "day " + date.toString().replace("-", "") + "-" + k, start.plusSeconds(beans.size() + BEFORE));
            double level = beans.get(beans.size() - 1);
            for (int s = 0; s < 240; s++) {
                beans.add(level + (truth.beans()[0] - level) * s / 240);
            }
            truth = new Truth(
                    truth.name(),
                    start.plusSeconds(beans.size() + BEFORE),
                    truth.crack(),
                    truth.drop(),
                    truth.greenKilograms(),
                    truth.beans());
            truths.put(truth.name(), truth);
            for (double bean : truth.beans()) {
                beans.add(bean);
            }
            ofTheDay.add(truth);
        }
        List<String> lines = new ArrayList<>(List.of("time of day;bean [°C];drum air [°C];remark"));
        for (int s = 0; s < beans.size(); s++) {
            LocalDateTime at = start.plusSeconds(s);
            String words = ofTheDay.stream()
                            .anyMatch(t ->
                                    t.chargedAt().plusSeconds((long) t.drop()).equals(at))
                    ? "beans out"
                    : "";
            lines.add(format("%s;%.1f;%.1f;%s", at.format(CLOCK), noisy(beans.get(s)), noisy(240), words)
                    .replace('.', ','));
        }
        text("day " + date.toString().replace("-", "") + ".csv", lines);
    }

    /** No headings at all, minutes with decimals. */
    private void noHeadings(int i) throws IOException {
        Truth truth = truth("x" + i, day(6, i, 11));
        List<String> lines = new ArrayList<>();
        for (int s = 0; s < truth.beans().length; s++) {
            lines.add(format(
                    "%.4f,%.1f,%.1f,%d", s / 60.0, noisy(260 + s / 60.0), noisy(truth.beans()[s]), s > 350 ? 30 : 70));
        }
        text("bare/" + truth.name() + ".dat", lines);
    }

    /** A list of batches after a spreadsheet had it: no zeros, 9:19:00 for 9:19, dates in an order that one of them gives away. */
    private static String sheetRow(int i, Truth truth) {
        int crack = (int) truth.crack();
        int drop = (int) truth.drop();
        return format(
                        "%d,%d/%d/25,%s,%.1f,%.2f,%d:%02d:00,%d:%02d:00,%s",
                        i,
                        truth.chargedAt().getMonthValue(),
                        truth.chargedAt().getDayOfMonth(),
                        i % 2 == 0 ? "Kela, washed" : "Harbour blend",
                        truth.greenKilograms(),
                        truth.greenKilograms() * 0.85,
                        crack / 60,
                        crack % 60,
                        drop / 60,
                        drop % 60,
                        i == 3 ? "fan squeaked" : "")
                .replace("Kela, washed", "\"Kela, washed\"");
    }

    private void sheet() throws IOException {
        List<String> lines = new ArrayList<>(List.of("No,Date,Coffee,In,Out,First crack,End,Remarks"));
        lines.addAll(sheet);
        lines.add("13,1/28/25,Kela,5.0,4.3,8:30:00,10:10:00,recorder was off");
        text("Roasts this winter.csv", lines);
    }

    private void text(String file, List<String> lines) throws IOException {
        Path path = folder.resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, String.join("\n", lines) + (lines.isEmpty() ? "" : "\n"), StandardCharsets.UTF_8);
    }
}
