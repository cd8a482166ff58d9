package parchment.evidence;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import parchment.logbook.Logbook;

/**
 * Writes published tables of scored food as logbook folders and opens them: real scores through the whole of the library.
 *
 * <p>What each column becomes is said at each table; what a table lacks (dates, the order in the day) is laid out so that it does not move
 * with the feature. Sources of the tables: {@code src/library/test/resources/reference/lme4/README.md} and {@code ordinal/README.md}.
 */
final class FoodLogbooks {
    private static final LocalDate FIRST_DAY = LocalDate.of(2024, 1, 1);

    /** In what order the cakes of one batter were baked. */
    enum Order {
        /** It turns from day to day, so that it does not move with the oven's temperature. */
        TURNING,
        /** From the coolest oven to the hottest, every day alike: it cannot be told from the temperature. */
        BY_TEMPERATURE
    }

    private final Path folder;
    private final String attribute;
    private final String feature;
    private final Map<String, String> batches = new LinkedHashMap<>();
    private final List<String> cups = new ArrayList<>();

    private FoodLogbooks(Path folder, String attribute, String feature) {
        this.folder = folder;
        this.attribute = attribute;
        this.feature = feature;
    }

    /** Cake (Cochran and Cox 1957): a batch is a cake, a lot a recipe, a roast day one batter; the angle of breaking is the one score. */
    static Logbook cake(Path folder, Order order) throws IOException {
        FoodLogbooks logbook = new FoodLogbooks(folder, "angle", "oven");
        for (Map<String, String> row : table("lme4/cake.csv")) {
            int recipe = "ABC".indexOf(text(row, "recipe"));
            int temperature = number(row, "temperature");
            int day = 3 * (number(row, "replicate") - 1) + recipe;
            int step = (temperature - 175) / 10;
            int place = order == Order.TURNING ? (step + day) % 6 : step;
            String batch = text(row, "recipe") + number(row, "replicate") + "-" + temperature;
            logbook.batch(batch, day, place, "recipe " + text(row, "recipe"), Integer.toString(temperature));
            logbook.cup(day, "the gauge", batch, text(row, "angle"));
        }
        return logbook.opened();
    }

    /** Carrots (lmerTest): a batch is a product, two of them a roast day; a cupper is a consumer; the feature is the second sensory axis. */
    static Logbook carrots(Path folder) throws IOException {
        FoodLogbooks logbook = new FoodLogbooks(folder, "preference", "second sensory axis");
        List<Map<String, String>> rows = table("lme4/carrots.csv");
        List<String> products = new ArrayList<>(
                new TreeSet<>(rows.stream().map(row -> text(row, "Product")).toList()));
        for (Map<String, String> row : rows) {
            int product = products.indexOf(text(row, "Product"));
            logbook.batch(text(row, "Product"), product / 2, product % 2, "carrots", text(row, "sens2"));
            logbook.cup(product / 2, text(row, "Consumer"), text(row, "Product"), text(row, "Preference"));
        }
        return logbook.opened();
    }

    /** Ham (lmerTest): a batch is a product with or without information, a lot and a roast day a product; a cupper is a consumer. */
    static Logbook ham(Path folder) throws IOException {
        FoodLogbooks logbook = new FoodLogbooks(folder, "liking", "information");
        for (Map<String, String> row : table("lme4/ham.csv")) {
            int product = number(row, "Product");
            int information = number(row, "Information");
            String batch = product + "-" + information;
            logbook.batch(batch, product - 1, (product + information) % 2, "ham " + product, "" + information);
            logbook.cup(product - 1, "consumer " + text(row, "Consumer"), batch, text(row, "Informed.liking"));
        }
        return logbook.opened();
    }

    /**
     * Wine (Randall 1989): a batch is a bottle, a lot is contact or none, a roast day holds a cold and a warm bottle; a cupper is a judge.
     */
    static Logbook wine(Path folder) throws IOException {
        FoodLogbooks logbook = new FoodLogbooks(folder, "bitterness", "warm");
        for (Map<String, String> row : table("ordinal/wine.csv")) {
            int warm = text(row, "temp").equals("warm") ? 1 : 0;
            int pair = (number(row, "bottle") - 1) % 4 + 1;
            String batch = "bottle " + text(row, "bottle");
            logbook.batch(batch, pair - 1, (warm + pair + 1) % 2, "contact " + text(row, "contact"), "" + warm);
            logbook.cup(pair - 1, "judge " + text(row, "judge"), batch, text(row, "rating"));
        }
        return logbook.opened();
    }

    private void batch(String name, int day, int place, String lot, String value) {
        LocalTime at = LocalTime.of(9, 0).plusMinutes(20L * place);
        batches.put(name, name + "," + FIRST_DAY.plusDays(7L * day) + "T" + at + "," + lot + "," + value);
    }

    /** Every cup is scored the day after its batch was made. */
    private void cup(int day, String cupper, String batch, String score) {
        cups.add("day " + (day + 1) + "," + FIRST_DAY.plusDays(7L * day + 1) + "," + cupper + "," + batch + ","
                + (score.equals("NA") ? "" : score));
    }

    private Logbook opened() throws IOException {
        Files.createDirectories(folder.resolve("curves"));
        Files.writeString(folder.resolve("logbook.properties"), "name=" + attribute + "\ntime.zone=UTC\n");
        Files.writeString(
                folder.resolve("batches.csv"),
                "batch,roasted at,lot," + feature + "\n" + String.join("\n", batches.values()) + "\n");
        Files.writeString(
                folder.resolve("cuppings.csv"),
                "cupping,tasted on,cupper,batch," + attribute + "\n" + String.join("\n", cups) + "\n");
        return Logbook.open(folder);
    }

    private static String text(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    private static int number(Map<String, String> row, String column) {
        return Integer.parseInt(text(row, column));
    }

    private static List<Map<String, String>> table(String name) throws IOException {
        List<Map<String, String>> rows = new ArrayList<>();
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(FoodLogbooks.class.getResourceAsStream("/reference/" + name), name),
                StandardCharsets.UTF_8))) {
            String[] header = in.readLine().split(",");
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String[] cells = line.split(",");
                Map<String, String> row = new HashMap<>();
                for (int k = 0; k < header.length; k++) {
                    row.put(header[k], cells[k]);
                }
                rows.add(row);
            }
        }
        return rows;
    }

    /** Returns the committed numbers of {@code src/library/test/r/food-logbooks.R}, by case and quantity. */
    static double reference(String wanted, String quantity) throws IOException {
        return table("fits/food-logbooks.csv").stream()
                .filter(row -> text(row, "case").equals(wanted)
                        && text(row, "quantity").equals(quantity))
                .mapToDouble(row -> Double.parseDouble(text(row, "value")))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        String.format(Locale.ROOT, "no %s of %s in food-logbooks.csv", quantity, wanted)));
    }
}
