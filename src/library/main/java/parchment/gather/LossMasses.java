package parchment.gather;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/**
 * Works out the roasted mass of a batch whose list has its green mass and its loss, but not what was weighed after the roast. The heading has to say that the
 * loss is in percent; a mass that was weighed stands.
 */
final class LossMasses {
    private static final String GREEN = ListMeaning.GREEN_MASS.words() + " [";
    private static final String ROASTED = ListMeaning.ROASTED_MASS.words();

    private static final Pattern PERCENT = Pattern.compile(
            "(?iu).*(%|percent|per cent|prozent|por ciento|porcentaje|por cento|pour ?cent|per ?cento|percentuale).*");

    /** What roasts lose, in percent of the green mass, with room (common practice, no source). */
    private static final double SMALLEST = 5;

    private static final double LARGEST = 30;

    /** A loss is written with three or four figures, and the mass is known no better. */
    private static final MathContext FIGURES = new MathContext(4);

    private LossMasses() {}

    /** Returns the batches with the masses that follow from their losses. */
    static List<GatheredBatch> added(List<GatheredBatch> batches, GatherQuestions questions) {
        List<GatheredBatch> all = new ArrayList<>();
        int worked = 0;
        for (GatheredBatch batch : batches) {
            Optional<Map.Entry<String, String>> roasted =
                    roasted(batch.written()).filter(entry -> fits(entry.getKey(), batches));
            worked += roasted.isPresent() ? 1 : 0;
            all.add(roasted.map(entry -> batch.withWritten(entry.getKey(), entry.getValue()))
                    .orElse(batch));
        }
        boolean takes = worked > 0
                && questions.tellYes(
                        "roasted-mass.from-loss",
                        "The roasted mass of " + Words.count(worked, "batch", "batches")
                                + " is written nowhere, but the green mass and the loss in percent are: it is worked out of"
                                + " them",
                        "yes");
        return takes ? all : batches;
    }

    /** One table of batches has one unit: beside roasted masses in another one none is worked out. */
    private static boolean fits(String heading, List<GatheredBatch> batches) {
        return batches.stream()
                .flatMap(batch -> batch.written().keySet().stream())
                .noneMatch(other -> other.startsWith(ROASTED) && !other.equals(heading));
    }

    /** Returns the heading and the value of a roasted mass that the written green mass and loss tell. */
    static Optional<Map.Entry<String, String>> roasted(Map<String, String> written) {
        List<String> greens = written.keySet().stream()
                .filter(heading -> heading.startsWith(GREEN))
                .toList();
        List<String> losses =
                written.keySet().stream().filter(LossMasses::isLoss).toList();
        boolean weighed = written.keySet().stream().anyMatch(heading -> heading.startsWith(ROASTED));
        if (weighed || greens.size() != 1 || losses.size() != 1) {
            return Optional.empty();
        }
        double green = Numbers.parse(Objects.requireNonNull(written.get(greens.get(0))), Numbers.Decimal.POINT);
        double loss = Numbers.parse(
                Objects.requireNonNull(written.get(losses.get(0)))
                        .replace("%", "")
                        .strip(),
                Numbers.Decimal.EITHER);
        // Also where one of them is no number.
        if (!(green > 0 && loss >= SMALLEST && loss <= LARGEST)) {
            return Optional.empty();
        }
        String heading = ROASTED + greens.get(0).substring(GREEN.length() - 2);
        String mass =
                BigDecimal.valueOf(green * (1 - loss / 100)).round(FIGURES).toPlainString();
        return Optional.of(Map.entry(heading, mass));
    }

    private static boolean isLoss(String heading) {
        return PERCENT.matcher(heading).matches() && TradeWords.of(heading).strength(ListMeaning.MASS_LOSS) > 0;
    }
}
