package parchment.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.display.answer.ShownAs;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.sheet.Words;

/**
 * Finds batches that were meant alike, and says how far such twins lie apart: what a batch differs from another by nobody's doing.
 *
 * <pre>{@code
 * Twins.of(logbook).repeatability(browningTime())
 * }</pre>
 *
 * <p>Twins are of one lot, machine, recipe and operator, with green masses within 3 %, planned drop temperatures within 1 °C, and charge
 * temperatures within 2 °C where these were written (common practice, no source). They may be of different days. A batch whose planned drop
 * was not written has no twins: whether it was meant like another cannot be told from where it ended.
 */
public final class Twins implements ShownAs {
    private static final double MASS_SHARE = 0.03;
    private static final double CHARGE_STEP = 2;
    private static final double PLAN_STEP = 1;
    private static final String TOLD_FIRST = "drop temperature";

    private final Logbook logbook;
    private final List<Group> groups;
    private final int withoutPlan;

    /**
     * Holds batches that were meant alike.
     *
     * @param words what they have in common
     * @param batches two or more, in order of time
     */
    public record Group(String words, List<Batch> batches) implements Showable {
        /** Copies the list. */
        public Group {
            batches = List.copyOf(batches);
        }

        @Override
        public String toString() {
            return batches.size() + " twins, " + words;
        }
    }

    private Twins(Logbook logbook, List<Group> groups, int withoutPlan) {
        this.logbook = logbook;
        this.groups = List.copyOf(groups);
        this.withoutPlan = withoutPlan;
    }

    /** Finds the twins of a logbook; batches without a date come last. */
    public static Twins of(Logbook logbook) {
        List<Batch> batches = new ArrayList<>(logbook.batches());
        batches.sort(Comparator.comparing(
                b -> b.roastedAt().map(at -> at.toInstant()).orElse(java.time.Instant.MAX)));
        Map<String, List<List<Batch>>> byRecipe = new LinkedHashMap<>();
        int withoutPlan = 0;
        for (Batch batch : batches) {
            if (batch.plan().dropTemperature().isEmpty()) {
                withoutPlan++;
                continue;
            }
            if (batch.lot().isEmpty() || batch.conditions().greenMass().isEmpty()) {
                continue;
            }
            List<List<Batch>> open = byRecipe.computeIfAbsent(lot(batch) + others(batch), k -> new ArrayList<>());
            open.stream()
                    .filter(group -> alike(group.get(0), batch))
                    .findFirst()
                    .ifPresentOrElse(group -> group.add(batch), () -> open.add(new ArrayList<>(List.of(batch))));
        }
        List<Group> groups = new ArrayList<>();
        byRecipe.values().forEach(open -> {
            List<List<Batch>> twins =
                    open.stream().filter(group -> group.size() > 1).toList();
            for (List<Batch> group : twins) {
                Batch first = group.get(0);
                groups.add(new Group(lot(first) + meant(first, twins, logbook) + others(first), group));
            }
        });
        groups.sort(Comparator.comparingInt(g -> -g.batches().size()));
        return new Twins(logbook, groups, withoutPlan);
    }

    private static String lot(Batch batch) {
        return "lot " + batch.lot().orElse("");
    }

    private static String others(Batch batch) {
        StringBuilder words = new StringBuilder();
        batch.label(Batch.Label.RECIPE).ifPresent(r -> words.append(", ").append(r));
        batch.operator().ifPresent(o -> words.append(", roasted by ").append(o));
        batch.machine().ifPresent(m -> words.append(", ").append(m));
        return words.toString();
    }

    /** Says what the first batch of a group was meant like: its drop, and mass and charge where another group has the same drop. */
    private static String meant(Batch first, List<List<Batch>> groups, Logbook logbook) {
        TemperatureUnit reader = logbook.readerUnit();
        boolean alone = groups.stream()
                        .filter(g -> within(
                                PLAN_STEP,
                                first.plan().dropTemperature(),
                                g.get(0).plan().dropTemperature()))
                        .count()
                == 1;
        String drop = first.plan()
                .dropTemperature()
                .map(t -> ", planned drop " + Unit.TEMPERATURE.format(t.celsius(), reader))
                .orElse("");
        return alone
                ? drop
                : drop
                        + first.conditions()
                                .greenMass()
                                .map(m -> ", " + m.words(logbook.massUnit()))
                                .orElse("")
                        + first.conditions()
                                .chargeTemperature()
                                .map(t -> ", charge " + Unit.TEMPERATURE.format(t.celsius(), reader))
                                .orElse("");
    }

    private static boolean alike(Batch a, Batch b) {
        double first = a.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
        double second = b.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
        return Math.abs(first - second) <= MASS_SHARE * first
                && within(
                        CHARGE_STEP,
                        a.conditions().chargeTemperature(),
                        b.conditions().chargeTemperature())
                && within(PLAN_STEP, a.plan().dropTemperature(), b.plan().dropTemperature());
    }

    private static boolean within(double step, java.util.Optional<Temperature> a, java.util.Optional<Temperature> b) {
        return a.isPresent() == b.isPresent()
                && (a.isEmpty() || Math.abs(a.get().celsius() - b.get().celsius()) <= step);
    }

    /** Returns the groups, the largest first. */
    public List<Group> groups() {
        return groups;
    }

    /** Returns the twins of a batch, itself left out; none if it has none. */
    public List<Batch> of(Batch batch) {
        return groups.stream()
                .filter(g -> g.batches().stream().anyMatch(b -> b.name().equals(batch.name())))
                .findFirst()
                .map(g -> g.batches().stream()
                        .filter(b -> !b.name().equals(batch.name()))
                        .toList())
                .orElse(List.of());
    }

    /** Says how far twins lie apart in a feature; temperatures of the bean probe are put on one scale first. */
    public Repeatability repeatability(Feature feature) {
        BatchTable table = BatchTable.of(logbook, feature);
        double[] values = table.onTodaysProbe().values(feature);
        Map<String, Double> byName = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i++) {
            byName.put(table.batches().get(i).name(), values[i]);
        }
        double squares = 0;
        int degrees = 0;
        int used = 0;
        int usedGroups = 0;
        for (Group group : groups) {
            double[] own = group.batches().stream()
                    .mapToDouble(b -> byName.getOrDefault(b.name(), Double.NaN))
                    .filter(Double::isFinite)
                    .toArray();
            if (own.length > 1) {
                double mean = java.util.Arrays.stream(own).average().orElse(Double.NaN);
                for (double value : own) {
                    squares += (value - mean) * (value - mean);
                }
                degrees += own.length - 1;
                used += own.length;
                usedGroups++;
            }
        }
        return new Repeatability(
                feature,
                degrees == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(squares / degrees)),
                degrees,
                used,
                usedGroups,
                logbook.readerUnit());
    }

    /** Returns the answer in three sentences: how far twins lie apart in the drop, what that rests on, what to do next. */
    public InShort inShort() {
        return TwinsInShort.of(
                logbook.batches().size(),
                batchesWithTwins(),
                withoutPlan,
                known().stream()
                        .min(Comparator.comparingInt(row -> row.feature().name().equals(TOLD_FIRST) ? 0 : 1)));
    }

    /** Returns how far twins lie apart in what is looked at, as far as it is known of them. */
    private List<Repeatability> known() {
        return Features.all().list().stream()
                .filter(f -> List.of("drying time", "browning time", "development time", "mass loss", TOLD_FIRST)
                        .contains(f.name()))
                .map(this::repeatability)
                .filter(r -> r.standardDeviation().isPresent())
                .toList();
    }

    private int batchesWithTwins() {
        return groups.stream().mapToInt(g -> g.batches().size()).sum();
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("Twins in " + logbook.name()).add(inShort());
        Report folded = Report.titled("How this was worked out").say(Sentence.of(toString()) + ".");
        if (!groups.isEmpty()) {
            List<Repeatability> rows = known();
            folded = folded.add(Table.titled("How far twins lie apart")
                    .withText("feature", rows, r -> r.feature().name())
                    .withText("standard deviation", rows, Repeatability::shownDeviation)
                    .withText("90 % interval", rows, Repeatability::shownInterval)
                    .withNumber("batches", "", 0, rows, Repeatability::batches)
                    .withNumber("groups", "", 0, rows, Repeatability::groups));
            page = page.add(Table.titled("Groups of twins")
                    .withText("meant alike", groups, Group::words)
                    .withNumber("batches", "", 0, groups, g -> g.batches().size())
                    .withText(
                            "which",
                            groups,
                            g -> String.join(
                                    ", ", g.batches().stream().map(Batch::name).toList()))
                    .withRowsShown(8));
        }
        return page.fold(folded.say(
                "Alike as written: one lot, machine, recipe and operator, green mass within 3 %, charge temperature"
                        + " within " + step(CHARGE_STEP) + ", planned drop within " + step(PLAN_STEP)
                        + ". What was not written may differ." + withoutWords()));
    }

    private String step(double celsius) {
        TemperatureUnit reader = logbook.readerUnit();
        return Unit.TEMPERATURE_STEP
                .withDigits(reader == TemperatureUnit.CELSIUS ? 0 : 1)
                .formatStep(celsius, reader);
    }

    private String withoutWords() {
        return withoutPlan == 0
                ? ""
                : " " + withoutPlan + " of "
                        + Words.count(logbook.batches().size(), "batch", "batches")
                        + (withoutPlan == 1 ? " has" : " have") + " no planned drop temperature written and "
                        + (withoutPlan == 1 ? "is" : "are") + " left out.";
    }

    @Override
    public String toString() {
        int batches = batchesWithTwins();
        if (withoutPlan == logbook.batches().size() && withoutPlan > 0) {
            return "Cannot tell which batches of " + logbook.name()
                    + " were meant alike: no planned drop temperature is written. Write it before charge, in the column 'planned drop"
                    + " temperature' of batches.csv";
        }
        return groups.isEmpty()
                ? "No two batches of " + logbook.name() + " were meant alike as far as was written"
                : String.format(
                        Locale.ROOT,
                        "%d of %s have twins, in %d %s",
                        batches,
                        Words.count(logbook.batches().size(), "batch", "batches"),
                        groups.size(),
                        groups.size() == 1 ? "group" : "groups");
    }
}
