package parchment.gather;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

/** Measures how long the joins of a large invented folder take: {@code JoinsStudy 1000 2000 5000}, the numbers of batches. */
final class JoinsStudy {
    private static final List<String> LOTS =
            List.of("Kela washed", "Low Orchard", "Mist Ridge natural", "Wren", "Salt Meadow", "Harbour blend");

    private JoinsStudy() {}

    public static void main(String[] arguments) {
        for (String argument : arguments) {
            int batches = Integer.parseInt(argument);
            Random random = new Random(batches);
            List<GatheredBatch> curves = new ArrayList<>();
            List<ListedRoast> rows = new ArrayList<>();
            for (int i = 0; i < batches; i++) {
                LocalDateTime at =
                        LocalDateTime.of(2028, 1, 3, 8, 0).plusDays(i / 6).plusMinutes(22L * (i % 6));
                int drop = 540 + random.nextInt(120);
                String lot = LOTS.get(random.nextInt(LOTS.size()));
                String name = i % 3 == 0
                        ? "Batch " + (101 + i) + " - " + lot
                        : i % 3 == 1 ? at.toLocalDate() + " roast " + (101 + i) : "LOG" + (70_001 + i);
                curves.add(curve(name, at.plusSeconds(random.nextInt(90)), drop));
                rows.add(new ListedRoast(
                        Integer.toString(101 + i),
                        List.of(new ListedBatch(
                                Integer.toString(101 + i),
                                Optional.of(at),
                                Optional.empty(),
                                Map.of("lot", lot),
                                Map.of(MarkKind.DROP, (double) drop),
                                List.of(),
                                MadeJoins.LIST,
                                i + 2))));
            }
            Collections.shuffle(rows, random);
            long began = System.nanoTime();
            JoinClocks clocks = JoinClocks.of(curves, rows, new GatherQuestions(Map.of()));
            long clock = System.nanoTime();
            List<Join> joins = Joins.of(clocks.curves(), clocks.roasts());
            long ended = System.nanoTime();
            long certain = joins.stream()
                    .filter(join -> join.sure() == Join.Sure.CERTAIN)
                    .count();
            System.out.printf(
                    "%d batches: %.1f s, of which clocks %.1f s; %d joins, %d certain%n",
                    batches, (ended - began) / 1e9, (clock - began) / 1e9, joins.size(), certain);
        }
    }

    /** A recording of ten minutes, a reading every second. */
    private static GatheredBatch curve(String name, LocalDateTime at, int drop) {
        List<List<String>> rows = IntStream.rangeClosed(0, drop + 20)
                .mapToObj(i -> List.of(Integer.toString(i), i <= drop ? Double.toString(90 + i / 5.0) : "180.0"))
                .toList();
        FoundTable table = Tables.of(name + ".csv", List.of(), List.of("time [s]", "bean temperature [°C]"), rows);
        Recording recording = Recording.of(
                table, List.of(Meaning.time("s"), Meaning.of(Quantity.BEAN_TEMPERATURE, "°C")), DateOrder.ISO_ONLY);
        return new GatheredBatch(
                name,
                0,
                Optional.of(at),
                Optional.empty(),
                Optional.of(recording),
                0,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Map.of(),
                Map.of(),
                List.of());
    }
}
