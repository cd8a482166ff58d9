package parchment.pipeline;

import java.util.List;
import java.util.Optional;
import parchment.drift.LotYear;
import parchment.drift.found.YearPart;
import parchment.evidence.Evidence;
import parchment.evidence.Halo;
import parchment.evidence.LotBest;
import parchment.evidence.Peak;
import parchment.evidence.TradeOff;
import parchment.evidence.finding.Verdict;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.stats.Fieller;
import parchment.stats.Interval;

/** Reads numbers out of the library's answers: the one place to change when an answer gets another form. */
final class Answers {
    private Answers() {}

    /** A set of values that may be the best: one interval, or nothing that ends on both sides. */
    record Best(boolean told, boolean bounded, double lower, double upper, Optional<Fieller> set) {
        boolean holds(double truth) {
            return set.map(found -> found.contains(truth)).orElse(true);
        }
    }

    record Line(Verdict verdict, Interval interval) {
        boolean finding() {
            return verdict == Verdict.STRONG || verdict == Verdict.SUGGESTIVE;
        }
    }

    record Ageing(boolean told, boolean own, Interval interval) {}

    static Evidence ask(String attribute, Logbook logbook) {
        return Evidence.of(attribute, Features.dropTemperature(), logbook);
    }

    /** Returns the set for the best drop of a lot, as a reading on today's probe, °C. */
    static Best best(Evidence evidence, String lot) {
        Optional<Peak> peak = evidence.bests()
                .flatMap(bests -> bests.lots().stream()
                        .filter(one -> one.lot().equals(lot))
                        .findFirst())
                .map(LotBest::best);
        Optional<Fieller> set = peak.flatMap(Peak::set);
        boolean bounded = set.filter(found -> found.form() == Fieller.Form.BETWEEN
                        && Double.isFinite(found.lower())
                        && Double.isFinite(found.upper()))
                .isPresent();
        return new Best(
                !Double.isNaN(peak.map(Peak::best).orElse(Double.NaN)),
                bounded,
                set.map(Fieller::lower).orElse(Double.NaN),
                set.map(Fieller::upper).orElse(Double.NaN),
                set);
    }

    /** Returns verdict and slope per °C of the drop temperature. */
    static Line line(Evidence evidence) {
        return new Line(evidence.verdict(), evidence.association().interval());
    }

    /** Returns the change of a lot's mass loss in 100 days, as a share. */
    static Ageing ageing(String lot, Logbook logbook) {
        Optional<YearPart> part = LotYear.of(lot, Features.massLoss(), logbook).ageing();
        boolean told =
                part.filter(p -> p.verdict() != YearPart.Verdict.CANNOT_TELL).isPresent();
        return new Ageing(
                told,
                part.filter(p -> p.verdict() == YearPart.Verdict.TOLD).isPresent(),
                told ? part.get().estimate().interval(0.90) : new Interval(Double.NaN, Double.NaN, 0.90));
    }

    /** Returns the interval of the mean correlation beyond what the cuppers agree on; NaN where it cannot be told. */
    static Interval halo(Logbook logbook) {
        return Halo.of(logbook).interval();
    }

    /** Returns the interval of the drop at which both are welcome together, with the usual aims. */
    static Line compromise(String first, String second, Logbook logbook) {
        TradeOff found = TradeOff.of(List.of(first, second), Features.dropTemperature(), logbook);
        return new Line(found.verdict(), found.compromise());
    }
}
