package parchment.trial.sealed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.security.SecureRandom;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SetDrawTest {
    private static final List<Double> ENDS = List.of(201.5, 204.5);

    private static List<String> targets(List<DrawnLine> lines, int set) {
        return lines.stream()
                .filter(line -> line.set() == set)
                .map(DrawnLine::target)
                .sorted()
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "2, ENDS_AND_MIDDLE, 201.5 204.5",
        "2, ENDS, 201.5 204.5",
        "3, ENDS_AND_MIDDLE, 201.5 203.0 204.5",
        "4, ENDS, 201.5 201.5 204.5 204.5",
    })
    void everySetHasTheTargetsOfItsSize(int size, SetDraw.Targets which, String wanted) {
        List<DrawnLine> lines = SetDraw.draw("t", 5, size, which, 203, 1.5, new Random(1));
        assertEquals(5 * size, lines.size());
        for (int set = 1; set <= 5; set++) {
            assertEquals(wanted, String.join(" ", targets(lines, set)));
        }
    }

    @ParameterizedTest
    @CsvSource({"12, 6, 6", "13, 6, 7"})
    void ofSetsOfFourHalfHaveTheLowerEndTwice(int sets, int least, int most) {
        for (int seed = 0; seed < 20; seed++) {
            List<DrawnLine> lines =
                    SetDraw.draw("t", sets, 4, SetDraw.Targets.ENDS_AND_MIDDLE, 203, 1.5, new Random(seed));
            int low = 0;
            for (int set = 1; set <= sets; set++) {
                String drawn = String.join(" ", targets(lines, set));
                assertTrue(drawn.equals("201.5 201.5 203.0 204.5") || drawn.equals("201.5 203.0 204.5 204.5"), drawn);
                low += drawn.startsWith("201.5 201.5") ? 1 : 0;
            }
            assertTrue(low >= least && low <= most, low + " of " + sets);
        }
    }

    /** Each of the six orders of a set of three comes one time in six: 6,000 sets, five standard errors (144) to either side of 1,000. */
    @Test
    void everyOrderOfASetIsAsLikelyAsEveryOther() {
        Map<String, Integer> orders = new TreeMap<>();
        Random chance = new Random(3);
        for (int i = 0; i < 6; i++) {
            SetDraw.draw("t", 999, 3, SetDraw.Targets.ENDS_AND_MIDDLE, 203, 1.5, chance).stream()
                    .collect(Collectors.groupingBy(
                            DrawnLine::set, Collectors.mapping(DrawnLine::target, Collectors.joining(" "))))
                    .values()
                    .forEach(order -> orders.merge(order, 1, Integer::sum));
        }
        assertEquals(6, orders.size());
        orders.forEach((order, count) -> assertEquals(999, count, 144, order));
    }

    @Test
    void aSeedDrawsTheSameAgainAndSecureChanceDoesNot() {
        assertEquals(draw(new Random(7)), draw(new Random(7)));
        assertNotEquals(draw(new Random(7)), draw(new Random(8)));
        assertNotEquals(draw(new SecureRandom()), draw(new SecureRandom()));
    }

    @Test
    void noTwoLinesHaveOneSalt() {
        List<DrawnLine> lines = draw(new SecureRandom());
        Set<String> salts = new HashSet<>();
        lines.forEach(line -> salts.add(line.salt()));
        assertEquals(lines.size(), salts.size());
        assertTrue(salts.stream().allMatch(salt -> salt.matches("[0-9a-f]{32}")), salts.toString());
    }

    private static List<DrawnLine> draw(Random chance) {
        return SetDraw.draw("t", 13, 3, SetDraw.Targets.ENDS_AND_MIDDLE, 203, 1.5, chance);
    }

    @Test
    void tellsASetThatFollowsTheRuleFromOneThatDoesNot() {
        SetDraw.Targets middle = SetDraw.Targets.ENDS_AND_MIDDLE;
        List<Double> three = List.of(201.5, 203.0, 204.5);
        assertTrue(SetDraw.follows(List.of("204.5", "201.5", "203.0"), 3, middle, three));
        assertFalse(SetDraw.follows(List.of("204.5", "201.5", "204.5"), 3, middle, three));
        assertTrue(SetDraw.follows(List.of("204.5", "201.5", "203.0", "204.5"), 4, middle, three));
        assertTrue(SetDraw.follows(List.of("201.5", "201.5", "203.0", "204.5"), 4, middle, three));
        assertFalse(SetDraw.follows(List.of("203.0", "201.5", "203.0", "204.5"), 4, middle, three));
        assertTrue(SetDraw.follows(List.of("204.5", "201.5"), 2, SetDraw.Targets.ENDS, ENDS));
        assertFalse(SetDraw.follows(List.of("204.5", "204.5"), 2, SetDraw.Targets.ENDS, ENDS));
        assertFalse(SetDraw.follows(List.of("204.5", "201.5", "204.5", "204.5"), 4, SetDraw.Targets.ENDS, ENDS));
    }

    @Test
    void closedLinesTellNothingAtAGlance() {
        List<DrawnLine> lines = draw(new Random(7));
        String file = ClosedDraw.cover(lines);
        List<String> rows = file.lines().skip(1).toList();
        assertEquals(lines.stream().map(DrawnLine::text).toList(), ClosedDraw.uncover(file));
        assertEquals(1, rows.stream().map(String::length).distinct().count());
        assertFalse(file.contains("201.5") || file.contains("flip"));
        // Each place of the covered texts holds many signs, whatever the lines have in common there.
        for (int column = 0; column < rows.get(0).length() - 4; column++) {
            int place = column;
            long signs = IntStream.range(0, rows.size())
                    .mapToObj(i -> rows.get(i).charAt(place))
                    .distinct()
                    .count();
            assertTrue(signs > 12, "column " + column + ": " + signs);
        }
    }

    /** Three targets, and all that else stands in a line, are known: without the salt none of the guesses has the line's seal. */
    @Test
    void aSealCannotBeGuessedWithoutTheSalt() {
        DrawnLine line = draw(new SecureRandom()).get(0);
        String seal = Seal.sha256(line.text());
        for (String target : List.of("201.5", "203.0", "204.5")) {
            String known = "parchment-draw-1|t|||1|1||" + target;
            for (String guess : List.of(known, known + "|", known + "|" + "0".repeat(32))) {
                assertNotEquals(seal, Seal.sha256(guess));
            }
        }
        assertEquals(seal, Seal.sha256("parchment-draw-1|t|||1|1||" + line.target() + "|" + line.salt()));
    }
}
