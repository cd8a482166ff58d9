package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.lesson.sheet.Grade;

class CupPairTest {
    /** Four cuppers who prefer the first batch by this much on average, two by one point more and two by one point less. */
    private static CupPair preferredBy(double points) {
        Map<String, List<Double>> cups = new TreeMap<>();
        for (int cupper = 0; cupper < 4; cupper++) {
            double own = points + (cupper < 2 ? 1 : -1);
            cups.put("cupper " + cupper, List.of(6 + own, 6 + own, 6.0, 6.0));
        }
        return new CupPair("H001", "H002", cups);
    }

    /** The error of the mean is 0.57735; Student's t of 3 degrees of freedom for 90 % is 2.3534, in any table: 1.3587 points. */
    @ParameterizedTest
    @CsvSource({
        "1.357, CANNOT_TELL",
        "1.360, CAN_TELL",
        "-1.357, CANNOT_TELL",
        "-1.360, CAN_TELL",
    })
    void tellsWhichBatchIsHigherFromNineInTenOn(double points, Grade.Telling telling) {
        assertEquals(telling, preferredBy(points).telling());
    }

    @Test
    void theDifferenceIsThatOfTheMeans() {
        CupPair pair = new CupPair("H001", "H002", Map.of("Ane", List.of(7.0, 8.0, 6.0, 5.0)));
        assertEquals(7.5, pair.meanA());
        assertEquals(5.5, pair.meanB());
        assertEquals(2, pair.difference());
        assertEquals(1, pair.largestWithin());
        assertEquals(0, pair.disagreeing());
    }
}
