package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Compares the order of a day's recordings with the order of the day's rows, where a day has as many of the one as of the other. */
final class DayOrder {
    private static final Pattern NUMBER = Pattern.compile("\\d+");

    private final List<JoinEvidence.Curve> curves;
    private final List<JoinRow> roasts;

    DayOrder(List<JoinEvidence.Curve> curves, List<JoinRow> roasts) {
        this.curves = curves;
        this.roasts = roasts;
    }

    /** Adds a clue to each pair that has one place in the order of its day: by the charge's time, and by the name where no time is known. */
    void addTo(List<Map<Integer, List<Clue>>> clues) {
        Map<LocalDate, List<Integer>> byDay =
                byDay(curves.size(), c -> curves.get(c).day());
        Map<LocalDate, List<Integer>> rows =
                byDay(roasts.size(), r -> roasts.get(r).day());
        byDay.forEach((day, ofDay) -> {
            List<Integer> ofList = rows.getOrDefault(day, List.of());
            if (ofDay.size() < 2 || ofDay.size() != ofList.size()) {
                return;
            }
            List<Integer> inOrder = new ArrayList<>(ofDay);
            inOrder.sort(Comparator.comparing(c -> orderOf(curves.get(c))));
            List<Integer> listed = new ArrayList<>(ofList);
            listed.sort(Comparator.comparing(
                    r -> roasts.get(r).roastedAt().map(Object::toString).orElse("~")));
            boolean drops = IntStream.range(0, inOrder.size())
                    .allMatch(i -> JoinEvidence.dropsApart(curves.get(inOrder.get(i)), roasts.get(listed.get(i)))
                            <= JoinEvidence.SAME_LENGTH_SECONDS);
            for (int i = 0; i < inOrder.size(); i++) {
                int place = i + 1;
                clues.get(inOrder.get(i))
                        .computeIfAbsent(listed.get(i), r -> new ArrayList<>())
                        .add(new Clue(
                                drops ? Clue.Kind.ORDER_WITH_DROPS : Clue.Kind.ORDER,
                                JoinEvidence.SAME_PLACE,
                                "it is number " + place + " of " + listed.size() + " on " + day + " in both"
                                        + (drops ? ", and every drop of that day fits so" : "")));
            }
        });
    }

    private static Map<LocalDate, List<Integer>> byDay(int count, IntFunction<Optional<LocalDate>> dayOf) {
        Map<LocalDate, List<Integer>> byDay = new LinkedHashMap<>();
        IntStream.range(0, count)
                .forEach(i -> dayOf.apply(i)
                        .ifPresent(day -> byDay.computeIfAbsent(day, d -> new ArrayList<>())
                                .add(i)));
        return byDay;
    }

    /** Returns what sorts the recordings of a day: the charge's time where it is known, then the numbers in the name as numbers. */
    private static String orderOf(JoinEvidence.Curve curve) {
        StringBuilder key = new StringBuilder(
                curve.batch().roastedAt().map(at -> at.toLocalTime().toString()).orElse("~"));
        return key.append(NUMBER.matcher(curve.batch().name())
                        .replaceAll(match ->
                                "0".repeat(Math.max(0, 12 - match.group().length())) + match.group()))
                .toString();
    }
}
