package parchment.gather.corpus;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.logbook.MarkKind;

/**
 * Draws what happened in a small roastery of a harbour town over a few days. Equal seeds give equal roasteries.
 *
 * <p>Courses are a plain shape of its own: beans that warm towards the drum, a probe that falls from the empty drum's reading to theirs. Times and
 * temperatures are common practice, no source. One day of each roastery is later than the 12th of its month, so that its dates can be read
 * one way only, and no lot that was cupped was roasted twice on its day, so that day and lot name the batch.
 */
final class InventedRoastery {
    /** What is scored. */
    static final List<String> ATTRIBUTES = List.of("acidity", "sweetness", "body", "overall");

    private static final List<String> LOTS = List.of(
            "Wren",
            "Kela, washed",
            "Río Velado",
            "Três Velas",
            "Grünhafen",
            "Côte Brumel",
            "Salt Meadow",
            "Harbour blend",
            "Ñirquel",
            "Lighthouse 4");
    private static final List<String> CUPPERS = List.of("Esme", "Tomás", "Odile", "Jørn", "Maren", "Inês");
    private static final List<Integer> FIRST_NUMBERS = List.of(101, 61, 1041, 101, 318);
    private static final List<String> NOTES =
            List.of("5:00 smoke", "damper stuck", "new sack", "light; stopped early", "radio on", "cool morning");
    private static final List<Double> CHARGES = List.of(2.0, 3.5, 5.5, 8.0, 11.5);

    private final Random random;

    private InventedRoastery(long seed) {
        random = new Random(seed * 7919 + 17);
    }

    /** Returns the roastery of a seed. */
    static Roastery of(long seed) {
        InventedRoastery invented = new InventedRoastery(seed);
        int first = FIRST_NUMBERS.get((int) Math.floorMod(seed, FIRST_NUMBERS.size()));
        List<Roast> roasts = invented.roasts(first);
        return new Roastery(List.copyOf(roasts), List.copyOf(invented.tastings(roasts)));
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private List<Roast> roasts(int first) {
        int wanted = 12 + random.nextInt(9);
        int days = 3 + random.nextInt(Math.min(4, wanted / 3 - 2));
        List<LocalDate> calendar = calendar(days);
        List<String> lots = new ArrayList<>(LOTS);
        Collections.shuffle(lots, random);
        lots = lots.subList(0, 7);
        List<Roast> roasts = new ArrayList<>();
        for (int day = 0; day < days; day++) {
            int today = (wanted - roasts.size()) / (days - day);
            Collections.shuffle(lots, random);
            LocalDateTime at = calendar.get(day).atTime(7 + random.nextInt(3), random.nextInt(60), random.nextInt(60));
            for (int i = 0; i < today; i++) {
                // One in some days is roasted twice.
                String lot = lots.get(i == 3 && random.nextInt(3) == 0 ? 0 : i % lots.size());
                Roast roast = roast(first + roasts.size(), at, lot);
                roasts.add(roast);
                at = at.plusSeconds((long) (roast.marks().get(MarkKind.DROP) + between(170, 400)));
            }
        }
        return roasts;
    }

    private List<LocalDate> calendar(int days) {
        List<LocalDate> calendar = new ArrayList<>();
        do {
            calendar.clear();
            LocalDate day = LocalDate.of(2031, 1 + random.nextInt(11), 1 + random.nextInt(28));
            for (int i = 0; i < days; i++) {
                calendar.add(day);
                day = day.plusDays(1 + random.nextInt(4));
            }
        } while (calendar.stream().noneMatch(day -> day.getDayOfMonth() > 12));
        return calendar;
    }

    private Roast roast(int number, LocalDateTime at, String lot) {
        double charged = between(172, 206);
        double ambient = between(248, 268);
        double pace = between(430, 560);
        double fall = between(14, 22);
        double cold = between(38, 52);
        double yellow = secondsTo(between(148, 155), cold, ambient, pace);
        double crack = secondsTo(between(193.5, 198), cold, ambient, pace);
        double drop = crack + Math.round(between(65, 140));
        Map<MarkKind, Double> marks = new EnumMap<>(MarkKind.class);
        marks.put(MarkKind.YELLOWING, yellow);
        marks.put(MarkKind.FIRST_CRACK_START, crack);
        marks.put(MarkKind.DROP, drop);

        int before = 40 + random.nextInt(51);
        int after = 30 + random.nextInt(31);
        double soak = random.nextBoolean() ? 0 : between(20, 60);
        double[] cuts = {yellow + between(-60, 60), crack - between(40, 90), crack + between(5, 40)};
        int gas = 70 + 5 * random.nextInt(6);
        List<Reading> readings = new ArrayList<>();
        double wander = 0;
        for (int t = -before; t <= drop + after; t++) {
            wander = 0.7 * wander + 0.08 * random.nextGaussian();
            double beans = ambient - (ambient - cold) * Math.exp(-Math.max(0, Math.min(t, drop)) / pace);
            double bean = t < 0 ? charged + 0.02 * t : beans + (charged - cold) * Math.exp(-t / fall);
            double air = t < 0 ? charged + 18 + 0.01 * t : beans + 24 + (charged - 6 - cold) * Math.exp(-t / 95.0);
            if (t > drop) {
                bean -= 32 * (1 - Math.exp(-(t - drop) / 20));
                air -= 9 * (1 - Math.exp(-(t - drop) / 30));
            }
            int level = gas;
            for (double cut : cuts) {
                level -= t >= cut ? 15 : 0;
            }
            level = t < soak ? 30 : t > drop ? 20 : level;
            readings.add(new Reading(t, tenth(bean + wander), tenth(air + 1.5 * wander), level));
        }
        double green = Math.round((CHARGES.get(random.nextInt(CHARGES.size())) + between(-0.3, 0.3)) * 100) / 100.0;
        double roasted = Math.round(green * (1 - between(0.12, 0.17)) * 1000) / 1000.0;
        String note = random.nextInt(4) == 0 ? NOTES.get(random.nextInt(NOTES.size())) : "";
        return new Roast(
                number, at, lot, green, roasted, Collections.unmodifiableMap(marks), List.copyOf(readings), note);
    }

    private static double tenth(double celsius) {
        return Math.round(celsius * 10) / 10.0;
    }

    private static double secondsTo(double celsius, double cold, double ambient, double pace) {
        return Math.round(pace * Math.log((ambient - cold) / (ambient - celsius)));
    }

    private List<Tasting> tastings(List<Roast> roasts) {
        List<String> cuppers = new ArrayList<>(CUPPERS);
        Collections.shuffle(cuppers, random);
        cuppers = cuppers.subList(0, 3 + random.nextInt(2));
        List<Roast> tellable = new ArrayList<>(roasts.stream()
                .filter(roast -> roasts.stream()
                        .noneMatch(other -> other != roast
                                && other.lot().equals(roast.lot())
                                && other.chargedAt()
                                        .toLocalDate()
                                        .equals(roast.chargedAt().toLocalDate())))
                .toList());
        Set<Integer> codes = new HashSet<>();
        roasts.forEach(roast -> codes.add(roast.number()));
        List<Tasting> tastings = new ArrayList<>();
        int cuppings = 2 + random.nextInt(3);
        int from = 0;
        for (int cupping = 1; cupping <= cuppings; cupping++) {
            int to = tellable.size() * cupping / cuppings;
            List<Roast> table = new ArrayList<>(tellable.subList(from, to));
            from = to;
            LocalDate day =
                    table.get(table.size() - 1).chargedAt().toLocalDate().plusDays(2 + random.nextInt(3));
            Collections.shuffle(table, random);
            table = table.subList(0, Math.min(table.size(), 6));
            Map<Integer, String> code = new LinkedHashMap<>();
            for (Roast roast : table) {
                int drawn = 200 + random.nextInt(800);
                while (!codes.add(drawn)) {
                    drawn = 200 + random.nextInt(800);
                }
                code.put(roast.number(), String.valueOf(drawn));
            }
            for (String cupper : cuppers) {
                for (Roast roast : table) {
                    Map<String, Double> scores = new LinkedHashMap<>();
                    ATTRIBUTES.forEach(attribute -> scores.put(attribute, Math.round(4 * between(4.5, 8.5)) / 4.0));
                    tastings.add(new Tasting(
                            cupping,
                            day,
                            cupper,
                            roast.number(),
                            code.get(roast.number()),
                            Collections.unmodifiableMap(scores)));
                }
            }
        }
        return tastings;
    }
}
