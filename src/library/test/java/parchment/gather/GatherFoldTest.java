package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Holds that a screen shows five of what is alike, and no line of another kind less. */
class GatherFoldTest {
    private static List<String> lines(int count) {
        return IntStream.range(1, count + 1)
                .mapToObj(i -> "'a.csv', line " + i + ": the cup '" + i + "' joins no batch.")
                .toList();
    }

    @Test
    void showsFiveLinesOfOneKindAndCountsTheSixth() {
        assertEquals(lines(5), GatherFold.of(lines(5)));
        List<String> six = GatherFold.of(lines(6));
        assertEquals(lines(5), six.subList(0, 5));
        assertEquals(List.of("So 1 more; each is in gathered.txt of the new logbook."), six.subList(5, six.size()));
    }

    @Test
    void cutsAListOfSixNamesAndNotOneOfFive() {
        String five = "Left out: 'a', 'b', 'c', 'd', 'e'. Give them another name.";
        assertEquals(List.of(five), GatherFold.lists(List.of(five)));
        assertEquals(
                List.of("Left out: 'a', 'b', 'c', 'd', 'e' and 2 more. Give them another name."),
                GatherFold.of(List.of("Left out: 'a', 'b', 'c', 'd', 'e', 'f', 'g'. Give them another name.")));
    }

    @Test
    void keepsLinesOfOtherKindsInTheirOrder() {
        assertEquals(
                List.of("'a.csv' is a copy.", "Nobody said how the dates are written."),
                GatherFold.of(List.of("'a.csv' is a copy.", "Nobody said how the dates are written.")));
    }
}
