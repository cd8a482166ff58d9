package parchment.gather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

/** Makes recordings and rows of lists for tests of joins, and says what was joined in lines. */
final class MadeJoins {
    static final LocalDateTime EIGHT = LocalDateTime.of(2031, 6, 1, 8, 0);
    static final FoundTable LIST = Tables.of("list.csv", List.of(), List.of("batch"), List.of(List.of("1")));

    private MadeJoins() {}

    /** Returns a recording whose beans are hottest 600 s after the charge, and that ends 20 s later. */
    static GatheredBatch curve(
            String name, List<List<String>> above, Optional<LocalDateTime> at, Optional<LocalDate> day) {
        List<List<String>> rows = IntStream.rangeClosed(0, 62)
                .mapToObj(i -> List.of(Integer.toString(10 * i), i <= 60 ? Integer.toString(90 + 2 * i) : "205"))
                .toList();
        FoundTable table = Tables.of(name + ".csv", above, List.of("time [s]", "bean temperature [°C]"), rows);
        Recording recording = Recording.of(
                table, List.of(Meaning.time("s"), Meaning.of(Quantity.BEAN_TEMPERATURE, "°C")), DateOrder.ISO_ONLY);
        return new GatheredBatch(
                name,
                0,
                at,
                day,
                Optional.of(recording),
                0,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Map.of(),
                Map.of(),
                List.of());
    }

    static GatheredBatch curve(String name) {
        return curve(name, List.of(), Optional.empty(), Optional.empty());
    }

    static GatheredBatch curveAt(String name, LocalDateTime at) {
        return curve(name, List.of(), Optional.of(at), Optional.empty());
    }

    static GatheredBatch titled(String name, String... cells) {
        return curve(name, List.of(List.of(cells)), Optional.empty(), Optional.empty());
    }

    static ListedRoast row(
            String name, Optional<LocalDateTime> at, Optional<LocalDate> day, Map<MarkKind, Double> marks) {
        return new ListedRoast(name, List.of(new ListedBatch(name, at, day, Map.of(), marks, List.of(), LIST, 2)));
    }

    static ListedRoast row(String name) {
        return row(name, Optional.empty(), Optional.empty(), Map.of());
    }

    static ListedRoast rowAt(String name, LocalDateTime at) {
        return row(name, Optional.of(at), Optional.empty(), Map.of());
    }

    static ListedRoast rowOn(String name, LocalDate day) {
        return row(name, Optional.empty(), Optional.of(day), Map.of());
    }

    static String said(Join join) {
        return join.curve().name() + " = " + join.roast().name() + ", " + join.sure() + ": " + join.because()
                + (join.but().isEmpty() ? "" : "; but " + join.but());
    }

    static List<String> said(List<GatheredBatch> curves, List<ListedRoast> rows) {
        return Joins.of(curves, rows).stream().map(MadeJoins::said).toList();
    }

    static List<String> said(GatheredBatch curve, ListedRoast... rows) {
        return said(List.of(curve), List.of(rows));
    }
}
