package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;

/** Batches of one day and probe, with whole curves and with a gap of two minutes. */
class NotHeldTest {
    private static Batch whole(String name, int minute) {
        return InventedRoasts.roast(name, 480, 300, 60 + minute)
                .lot("A")
                .roastedAt(InventedRoasts.at(0, minute))
                .build();
    }

    private static Batch torn(String name, int minute) {
        Batch batch = whole(name, minute);
        Curve bean = batch.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
        List<Double> seconds = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < bean.size(); i++) {
            if (bean.seconds()[i] < 250 || bean.seconds()[i] > 370) {
                seconds.add(bean.seconds()[i]);
                values.add(bean.values()[i]);
            }
        }
        return batch.toBuilder()
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of(
                                bean.name(),
                                bean.unit(),
                                seconds.stream().mapToDouble(s -> s).toArray(),
                                values.stream().mapToDouble(v -> v).toArray()))
                .build();
    }

    private static Nearest first(Batch... batches) {
        Logbook logbook = InventedRoasts.logbook(List.of(batches));
        return Nearest.to(logbook.batch("a"), logbook);
    }

    @Test
    void saysWhoseCurveIsNotWholeAndThatNobodyElseWasReadOnlyWhereThatIsSo() {
        assertEquals(
                "Its curve has a gap or begins too late, so it cannot be held against the 2 others that its probe read.",
                first(torn("a", 1), whole("b", 2), whole("c", 3)).whyNone());
        assertEquals(
                "Its curve has a gap or begins too late, so it cannot be held against the one other that its probe read.",
                first(torn("a", 1), whole("b", 2)).whyNone());
        assertEquals(
                "Each curve of the 2 others that its probe read has a gap or begins too late, so none can be held against it.",
                first(whole("a", 1), torn("b", 2), torn("c", 3)).whyNone());
        assertEquals(
                "No other batch with a bean temperature was read by the same probe.",
                first(whole("a", 1)).whyNone());
        Nearest torn = first(torn("a", 1), whole("b", 2));
        assertEquals(
                new InShort(
                        "Which roast was most like batch a cannot be told.",
                        "Its curve has a gap or begins too late, so it cannot be held against the one other that its probe read.",
                        "Ask about a batch whose curve is whole from the turning point to the drop."),
                ShortSentences.keptBy(torn.inShort()));
        assertEquals(torn.whyNone(), torn + ".");
    }
}
