package parchment.feature;

import java.util.LinkedHashSet;
import java.util.Set;
import parchment.display.answer.Spelling;
import parchment.feature.kind.Need;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;

/** Refuses a column that no batch has, before a whole table of missing numbers is made of a slip of the pen. */
final class KnownColumns {
    private KnownColumns() {}

    static void check(Logbook logbook, Feature feature) {
        boolean isColumn = feature.needs().contains(Need.COLUMN)
                && Features.all().names().stream().noneMatch(feature.name()::equals);
        if (!isColumn) {
            return;
        }
        Set<String> headers = new LinkedHashSet<>();
        for (Batch batch : logbook.batches()) {
            for (String header : batch.extras().keySet()) {
                if (ConditionFeatures.sameHeader(header, feature.name())) {
                    return;
                }
                headers.add(header);
            }
        }
        Set<String> possible = new LinkedHashSet<>(headers);
        possible.addAll(Features.all().names());
        throw new LogbookException("The logbook '" + logbook.name() + "' has no column '" + feature.name()
                + "' in batches.csv."
                + Spelling.question(feature.name(), possible)
                + (headers.isEmpty()
                        ? " It has no columns beyond the known ones."
                        : " Columns beyond the known ones: " + String.join(", ", headers) + "."));
    }
}
