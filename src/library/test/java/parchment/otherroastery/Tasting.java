package parchment.otherroastery;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Lets the panel taste all batches. */
final class Tasting {
    private static final List<String> NAMES =
            List.of("Maren", "Tolle", "Quint", "Sanne", "Odo", "Vesna", "Ruar", "Pelle", "Hedda", "Joris");

    private final TastingPanel panel;
    private final OtherRoastery scenario;

    /** One cupper's row of scores. */
    record Row(
            String cupping,
            LocalDate day,
            String cupper,
            String batch,
            int cup,
            int position,
            Map<String, Double> scores) {}

    /** A cupper's own way, the same all along. */
    private record Way(double middle, double stretch) {}

    Tasting(OtherRoastery scenario) {
        this.scenario = scenario;
        this.panel = scenario.panel();
    }

    List<Row> rows(List<RoastedBatch> batches) {
        List<Way> ways = ways();
        Map<Integer, List<RoastedBatch>> tables = new LinkedHashMap<>();
        for (RoastedBatch batch : batches) {
            tables.computeIfAbsent(batch.day() / panel.daysEach(), t -> new ArrayList<>())
                    .add(batch);
        }
        List<Row> rows = new ArrayList<>();
        tables.forEach((table, there) -> {
            if (table < panel.cuppings()) {
                rows.addAll(table(table, there, ways));
            }
        });
        return rows;
    }

    private List<Way> ways() {
        Draws draws = scenario.draws("cuppers");
        double[] stretch = new double[panel.cuppers()];
        double sum = 0;
        for (int i = 0; i < stretch.length; i++) {
            stretch[i] = Math.max(0.4, 1 + draws.normal(panel.scaleSpread()));
            sum += stretch[i];
        }
        List<Way> ways = new ArrayList<>();
        for (double own : stretch) {
            ways.add(new Way(draws.normal(panel.levelSpread()), own * stretch.length / sum));
        }
        return ways;
    }

    private List<Row> table(int table, List<RoastedBatch> there, List<Way> ways) {
        String cupping = "table " + (table + 1);
        Draws draws = scenario.draws(cupping);
        LocalDate day = there.get(there.size() - 1).roastedAt().toLocalDate().plusDays(2 + draws.below(3));
        List<Row> rows = new ArrayList<>();
        for (int cupper = 0; cupper < ways.size(); cupper++) {
            Way way = ways.get(cupper);
            List<Integer> order = draws.shuffled(there.size() * panel.cups());
            double drift = draws.normal(panel.sessionDrift());
            for (int position = 0; position < order.size(); position++) {
                RoastedBatch batch = there.get(order.get(position) / panel.cups());
                double along = order.size() < 2 ? 0 : (double) position / (order.size() - 1) - 0.5;
                double whole = draws.normal(panel.impression()) + drift * along;
                Map<String, Double> scores = new LinkedHashMap<>();
                batch.points().forEach((attribute, points) -> {
                    boolean noiseOnly = batch.lot().courses().get(attribute).kind() == TrueCourse.Kind.NOISE_ONLY;
                    double score = 6
                            + way.middle()
                            + way.stretch() * (points - 6)
                            + whole
                            + draws.normal(panel.noise())
                            + (noiseOnly ? draws.normal(TrueCourse.NOISE) : 0);
                    scores.put(attribute, Math.max(0, Math.min(10, Math.rint(score / panel.step()) * panel.step())));
                });
                rows.add(new Row(
                        cupping,
                        day,
                        NAMES.get(cupper % NAMES.size()) + (cupper < NAMES.size() ? "" : " " + cupper),
                        batch.name(),
                        order.get(position) % panel.cups() + 1,
                        position + 1,
                        scores));
            }
        }
        return rows;
    }
}
