package parchment.gather;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds rows whose year is a slip: a list goes on by days, and one row is a year or more away from those around it or from the year of its tab.
 *
 * <p>Distances are common practice, no source: a list has a gap of half a year seldom, and with the right year a row is within two months of its
 * neighbours.
 */
final class YearSlips {
    private static final int FAR = 180;
    private static final int NEAR = 60;
    private static final Pattern TAB = Pattern.compile("(?<!\\d)((?:19|20)\\d{2})(?!\\d)");

    private YearSlips() {}

    /** Returns the rows by their place, with the year that their neighbours or their tab have. */
    static Map<Integer, Integer> of(List<Optional<LocalDate>> days, String tab) {
        List<Integer> dated = new ArrayList<>();
        for (int i = 0; i < days.size(); i++) {
            if (days.get(i).isPresent()) {
                dated.add(i);
            }
        }
        Optional<Integer> year = year(tab);
        List<LocalDate> ofTab = dated.stream()
                .map(i -> days.get(i).orElseThrow())
                .filter(day -> year.isPresent() && day.getYear() == year.get())
                .toList();
        boolean named = 2 * ofTab.size() > dated.size();
        Map<Integer, Integer> slips = new LinkedHashMap<>();
        for (int at = 0; at < dated.size(); at++) {
            LocalDate day = days.get(dated.get(at)).orElseThrow();
            List<LocalDate> around = named ? ofTab : around(dated, at, days);
            Optional<LocalDate> like = around.stream()
                    .filter(other -> other.getYear() != day.getYear() && isNear(other, day))
                    .findFirst();
            boolean ofTheTab = year.filter(y -> y == day.getYear()).isPresent();
            if (!ofTheTab
                    && around.size() > 1
                    && around.stream().allMatch(other -> distance(other, day) > FAR)
                    && distance(around.get(0), around.get(1)) <= (named ? Integer.MAX_VALUE : FAR)
                    && like.isPresent()) {
                slips.put(dated.get(at), like.get().getYear());
            }
        }
        return slips;
    }

    /** Returns the rows before and behind, or the two nearest to a row at an end. */
    private static List<LocalDate> around(List<Integer> dated, int at, List<Optional<LocalDate>> days) {
        int before = at == 0 ? 1 : at - 1;
        int behind = at == 0 ? 2 : at == dated.size() - 1 ? at - 2 : at + 1;
        if (dated.size() < 3) {
            return List.of();
        }
        return List.of(
                days.get(dated.get(before)).orElseThrow(),
                days.get(dated.get(behind)).orElseThrow());
    }

    /** Returns whether a day would be near another one in another year. */
    private static boolean isNear(LocalDate other, LocalDate day) {
        for (int more = -1; more <= 1; more++) {
            if (distance(other, day.withYear(other.getYear() + more)) <= NEAR) {
                return true;
            }
        }
        return false;
    }

    private static long distance(LocalDate one, LocalDate other) {
        return Math.abs(ChronoUnit.DAYS.between(one, other));
    }

    private static Optional<Integer> year(String tab) {
        Matcher matcher = TAB.matcher(tab);
        return matcher.find() && WrittenDay.find(tab).isEmpty()
                ? Optional.of(Integer.valueOf(matcher.group(1)))
                : Optional.empty();
    }
}
