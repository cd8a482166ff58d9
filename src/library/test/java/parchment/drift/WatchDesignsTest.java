package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.feature.Features;
import parchment.logbook.Logbook;

class WatchDesignsTest {
    private static RowsInTime rows(int rows, int stretch, double gap) {
        return new RowsInTime(
                IntStream.range(0, rows).toArray(),
                IntStream.range(0, rows).mapToDouble(i -> gap * i).toArray(),
                stretch);
    }

    private static List<double[]> level(int rows, double of) {
        double[] level = new double[rows];
        Arrays.fill(level, of);
        return List.of(level);
    }

    @Test
    void rowsOfTheSameDaysComparedAtLikeShareADesignAndOthersDoNot() {
        WatchDesigns designs = new WatchDesigns();
        WatchDesign first = designs.of(level(14, 1), rows(14, 10, 1));
        assertSame(first, designs.of(level(14, 1), rows(14, 10, 1)));
        assertNotSame(first, designs.of(level(15, 1), rows(15, 10, 1)));
        assertNotSame(first, designs.of(level(14, 1), rows(14, 11, 1)));
        assertNotSame(first, designs.of(level(14, 1), rows(14, 10, 2)));
        assertNotSame(first, designs.of(level(14, 2), rows(14, 10, 1)));
    }

    @Test
    void aSharedDesignAnswersAsOneOfItsOwn() {
        Logbook lot = BuiltBatch.logbook(IntStream.range(0, 24)
                .mapToObj(i -> BuiltBatch.losing((i < 20 ? 0.14 : 0.16) + 0.001 * (i * 7 % 10))
                        .withGreen(2 + 0.001 * (i * 3 % 7)))
                .toList());
        WatchDesigns designs = new WatchDesigns();
        Watch.of(lot, Features.greenMass(), designs);
        Watch shared = Watch.of(lot, Features.massLoss(), designs);
        Watch own = Watch.of(lot, Features.massLoss());
        assertEquals(own.signals(), shared.signals());
        assertEquals(own.rateWords(), shared.rateWords());
        assertEquals(
                own.signals().stream()
                        .filter(signal -> signal.kind() != Watch.Kind.SINGLE_BATCH)
                        .toList(),
                shared.shifts());
        assertFalse(own.shifts().isEmpty());
    }
}
