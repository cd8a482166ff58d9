package parchment.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import parchment.display.Table;

/**
 * Lists the best batches with their scores drawn towards the fitted course.
 *
 * <p>The best of many cups is partly luck: cupped again it would fall back towards the mean. The shrunken score is the best linear
 * unbiased prediction of the mixed model.
 */
final class BatchScores {
    private static final int LISTED = 5;

    private final Measure measure;
    private final String attribute;
    private final List<Row> rows;
    private final int batches;

    private record Row(TastedBatch batch, double measured, double plain, double shrunken, int cups) {}

    private BatchScores(Measure measure, String attribute, List<Row> rows, int batches) {
        this.measure = measure;
        this.attribute = attribute;
        this.rows = rows;
        this.batches = batches;
    }

    static BatchScores of(Analysis analysis, Measure measure, String attribute) {
        FittedScores fitted = analysis.drawn();
        double[] plain = fitted.adjustedBatchScores();
        double[] own = fitted.design().centered();
        int[] cups = fitted.scoresPerBatch();
        Map<String, Double> effects = fitted.effects("batch");
        FittedCurve curve = FittedCurve.of(fitted, analysis.range(), 0.9);
        List<Row> rows = new ArrayList<>();
        for (TastedBatch batch : analysis.todays().batches()) {
            int i = batch.position();
            double course = curve.at(analysis.range().center() + own[i]);
            rows.add(new Row(
                    batch, batch.measure(), plain[i], course + effects.getOrDefault(batch.name(), 0.0), cups[i]));
        }
        List<Row> best = rows.stream()
                .sorted(Comparator.comparingDouble(row -> -row.shrunken()))
                .limit(LISTED)
                .toList();
        return new BatchScores(measure, attribute, best, rows.size());
    }

    Table table() {
        return Table.titled("Batches with the highest " + attribute)
                .withText("batch", rows, row -> row.batch().name())
                .withText("lot", rows, row -> row.batch().lot())
                .withNumber(measure.name(), measure.unit(), measure.reader(), rows, Row::measured)
                .withNumber("mean of its cups, other effects out", "points", 2, rows, Row::plain)
                .withNumber("shrunken", "points", 2, rows, Row::shrunken)
                .withNumber("scores", "", 0, rows, Row::cups)
                .withNote(
                        "The best " + rows.size() + " of " + batches
                                + ". The best of many is partly luck: the shrunken score is what to expect when it is cupped again.");
    }
}
