package parchment.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.curve.Curve;
import parchment.display.answer.FirstFew;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

/** Tells the readings of some batches as today's probe would show them, and says what was added. */
final class TodaysReadings {
    private final ProbePeriods periods;
    private final TemperatureUnit reader;

    private TodaysReadings(ProbePeriods periods, TemperatureUnit reader) {
        this.periods = periods;
        this.reader = reader;
    }

    static TodaysReadings of(Logbook logbook) {
        return new TodaysReadings(ProbePeriods.of(logbook), logbook.readerUnit());
    }

    /** Returns a reading of a batch as today's probe would show it, in °C; NaN if that is not known. */
    double today(Batch batch, double celsius) {
        return celsius + periods.toToday(batch, celsius).estimate();
    }

    /** Returns a batch with its bean temperature as today's probe would show it; empty if it has none, or that is not known. */
    Optional<Batch> today(Batch batch) {
        Optional<Curve> bean = batch.curve(Quantity.BEAN_TEMPERATURE);
        if (bean.isEmpty() || periods.isTodays(batch)) {
            return bean.map(curve -> batch);
        }
        double[] values = bean.get().values();
        if (values.length == 0 || Double.isNaN(periods.toToday(batch, values[0]).estimate())) {
            return Optional.empty();
        }
        for (int i = 0; i < values.length; i++) {
            values[i] = today(batch, values[i]);
        }
        Curve moved = Curve.of(bean.get().name(), bean.get().unit(), bean.get().seconds(), values);
        return Optional.of(
                batch.toBuilder().curve(Quantity.BEAN_TEMPERATURE, moved).build());
    }

    /**
     * Says what was added to which batches' readings and since when the probe reads otherwise; empty if all are as read.
     *
     * @param celsius where on the temperature scale the addition is told, °C
     * @param where the same in words, as in "at the drop"
     */
    List<String> sentences(List<Batch> batches, double celsius, String where) {
        Map<String, List<Batch>> earlier = new LinkedHashMap<>();
        batches.stream()
                .filter(batch -> !periods.isTodays(batch))
                .forEach(batch -> earlier.computeIfAbsent(periods.key(batch), key -> new ArrayList<>())
                        .add(batch));
        List<String> sentences = new ArrayList<>();
        earlier.values().forEach(of -> sentences.add(sentence(of, celsius, where)));
        sentences.addAll(periods.doubts(batches));
        return sentences;
    }

    private String sentence(List<Batch> batches, double celsius, String where) {
        Batch first = batches.get(0);
        String names = (batches.size() == 1 ? "batch " : "batches ")
                + FirstFew.of(batches.stream().map(Batch::name).toList());
        Estimate added = periods.toToday(first, celsius);
        String since = since(first);
        if (Double.isNaN(added.estimate())) {
            return "Temperatures of " + names + " are left out: what today's probe would have read is not known" + since
                    + ".";
        }
        Unit step = Unit.TEMPERATURE_STEP;
        // A whole printed step at least: an error that prints as 0 would say that nothing can be off.
        double error = Math.max(added.standardError(), 0.1 / reader.stepFromCelsius(1));
        return "Temperatures of " + names + " are told as today's probe would show them: " + where + " "
                + step.formatStep(Math.abs(added.estimate()), reader)
                + (added.estimate() < 0 ? " below" : " above") + " what was read, give or take "
                + step.formatStep(error, reader) + since + ".";
    }

    /** Says when the probe began to read otherwise after a batch, as far as is known. */
    private String since(Batch batch) {
        List<ProbeChange> changes = periods.changes(batch);
        List<ProbeChange> since =
                changes.subList(Math.min(periods.number(batch).orElse(1) - 1, changes.size()), changes.size());
        List<LocalDate> days = since.stream().map(ProbeChange::on).toList();
        boolean seen = since.stream().allMatch(change -> change.kind() != ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE);
        return days.isEmpty()
                ? ""
                : "; since "
                        + String.join(
                                " and since ",
                                days.stream().map(LocalDate::toString).toList())
                        + (seen ? " the probe reads otherwise" : " the probe may read otherwise");
    }
}
