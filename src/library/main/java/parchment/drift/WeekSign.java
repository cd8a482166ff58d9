package parchment.drift;

import java.time.LocalDate;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.path.OnProbe;

/** One number of one batch that lies outside of what is usual for its lot. */
record WeekSign(Usual usual, Usual.Compared compared) {

    static List<WeekSign> of(Usual usual) {
        return usual.compared().stream()
                .filter(Usual.Compared::unlike)
                .map(one -> new WeekSign(usual, one))
                .toList();
    }

    Feature feature() {
        return compared.feature();
    }

    int side() {
        return compared.value() > compared.usual() ? 1 : -1;
    }

    String machine() {
        return usual.batch().machine().orElse("");
    }

    LocalDate day() {
        return usual.batch().roastDay().orElseThrow();
    }

    boolean isReading() {
        return isReading(feature());
    }

    /** Tells whether another place of the bean probe would show in a number: a reading of it, or what hangs on one. */
    static boolean isReading(Feature feature) {
        return feature.onProbe() != OnProbe.FREE_OF_IT;
    }

    /** Tells whether the beans and not the roaster decide what is read there, as far as they are roasted alike. */
    static boolean isOfTheBeans(Feature feature) {
        return feature.name().equals(Features.firstCrackTemperature().name())
                || feature.name().equals(Features.turningPointTemperature().name());
    }

    /** Returns how far single batches of the lot lie apart, like a standard deviation, in the unit of the feature. */
    static double spread(Usual.Compared compared) {
        return compared.range().width()
                / 2
                / new TDistribution(Math.max(1, compared.others() - 1))
                        .inverseCumulativeProbability((1 + compared.range().level()) / 2);
    }

    /** Returns the number and what is usual, as in "batch H240: drop temperature 199.0 °C, where 200.1 °C to 204.0 °C is usual". */
    String words() {
        return "batch " + usual.batch().name() + ": "
                + WeekOddBatch.words(compared, usual.batch().readerUnit());
    }
}
