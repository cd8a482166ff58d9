package parchment.launcher;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.trial.SetListing;
import parchment.trial.TrialFolder;
import parchment.trial.sealed.DrawnTarget;
import parchment.virtual.RoastPlan;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualRoastery;

/**
 * Carries out the trial of docs/coin-flip.md on the harbour's invented machine, as its roaster would: opens what the page has left, roasts each
 * batch at its target, has it cupped, and types into batches.csv what the page says.
 */
final class FlippedRoasts {
    private static final String LOT = "Salt Meadow";
    private static final int SETS = 12;

    /** The roastery roasts five batches a day: three of a set, and two for its shop. */
    private static final int FOR_THE_SHOP = 2;

    private static final double MASS = 2.1;

    private FlippedRoasts() {}

    static String batch(int set, int place) {
        return String.format(Locale.ROOT, "F%02d%d", set, place);
    }

    /** Does it for a trial's folder and writes a logbook. */
    static void roast(Path folder, Path to) throws IOException {
        TrialFolder trial = TrialFolder.open(folder);
        Map<String, LocalDate> days = days();
        Map<String, Double> targets = new LinkedHashMap<>();
        DrawnTarget newest = trial.again();
        for (String line : Files.readAllLines(folder.resolve("record.txt"))) {
            if (line.contains(" opened ")) {
                String[] parts = line.split("\\|");
                targets.put(
                        batch(Integer.parseInt(parts[4]), Integer.parseInt(parts[5])), Double.parseDouble(parts[7]));
            }
        }
        int place = newest.place();
        for (int set = newest.set(); set <= SETS; set++) {
            for (place++; place <= 3; place++) {
                DrawnTarget target = place > 1 ? trial.next() : trial.next(listing(set, days.get(batch(set, 1))));
                targets.put(target.batch(), target.target());
            }
            place = 0;
        }
        roasted(targets).writeTo(to);
        List<String> typed = new ArrayList<>();
        for (String row : Files.readAllLines(to.resolve("batches.csv"))) {
            String name = row.substring(0, row.indexOf(','));
            typed.add(
                    name.equals("batch")
                            ? row + ",trial,set"
                            : name.startsWith("S")
                                    ? row + ",,"
                                    : row.replace(",choice,", ",chance,") + ",flip-1,"
                                            + Integer.parseInt(name.substring(1, 3)));
        }
        Files.writeString(to.resolve("batches.csv"), String.join("\n", typed) + "\n", StandardCharsets.UTF_8);
    }

    private static SetListing listing(int set, LocalDate day) {
        SetListing listing = SetListing.of(LOT).on(day);
        for (int place = 1; place <= 3; place++) {
            listing = listing.with(batch(set, place), Mass.kilograms(MASS));
        }
        return listing;
    }

    /** The roastery's calendar says on which days its next batches fall, whatever they are dropped at. */
    private static Map<String, LocalDate> days() {
        Map<String, Double> any = new LinkedHashMap<>();
        for (int set = 1; set <= SETS; set++) {
            for (int place = 1; place <= 3; place++) {
                any.put(batch(set, place), 203.0);
            }
        }
        Map<String, LocalDate> days = new LinkedHashMap<>();
        roasted(any)
                .batches()
                .forEach(
                        batch -> days.put(batch.name(), batch.plan().roastedAt().toLocalDate()));
        return days;
    }

    private static String line(String name, double target) {
        return String.join(",", name, LOT, Double.toString(MASS), Double.toString(target), "steady") + "\n";
    }

    private static parchment.virtual.VirtualLogbook roasted(Map<String, Double> targets) {
        StringBuilder plan = new StringBuilder("batch,lot,green mass [kg],drop temperature [°C],habit\n");
        targets.forEach((name, target) -> {
            plan.append(line(name, target));
            if (name.endsWith("3")) {
                for (int i = 1; i <= FOR_THE_SHOP; i++) {
                    plan.append(line("S" + name.substring(1, 3) + i, 203));
                }
            }
        });
        return VirtualRoastery.of(Scenario.named("harbour")).roast(RoastPlan.of(plan.toString(), "plan"));
    }

    /** For the page: the days and the whole trial. */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length == 0) {
            System.out.println(VirtualRoastery.of(Scenario.named("harbour")).lotsInStore());
            System.out.println(days());
            return;
        }
        roast(Path.of(arguments[0]), Path.of(arguments[1]));
        System.out.println(Logbook.open(Path.of(arguments[1])));
    }
}
