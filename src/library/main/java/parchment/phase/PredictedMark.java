package parchment.phase;

import java.util.Optional;
import parchment.curve.measured.Smoothed;
import parchment.phase.found.Mark;
import parchment.phase.found.ProbeReading;
import parchment.phase.found.Source;
import parchment.quantity.Elapsed;

/** Makes a mark of a prediction, with what the probe read then. */
final class PredictedMark {
    private PredictedMark() {}

    static Mark of(MarkPrediction predicted, Phases phases) {
        Optional<Smoothed> there =
                phases.bean().map(bean -> bean.at(predicted.seconds())).filter(smoothed -> !smoothed.isMissing());
        return new Mark(
                predicted.kind(),
                Elapsed.seconds(predicted.seconds()),
                predicted.standardError(),
                predicted.basis() == MarkPrediction.Basis.HABIT ? Source.PREDICTED : Source.ASSUMED,
                there.map(ProbeReading::of),
                phases.setAside(predicted.kind())
                                .map(mark -> "written at " + mark.at() + " and set aside; ")
                                .orElse("not written; ")
                        + (predicted.basis() == MarkPrediction.Basis.HABIT
                                ? "where this roaster usually writes it"
                                : "common practice, no source"));
    }
}
