package parchment.align;

import java.util.List;
import parchment.logbook.Batch;
import parchment.logbook.contents.LogbookException;
import parchment.sheet.Words;

/** Finds the batch that a picture sets off. */
final class Highlight {
    private Highlight() {}

    /** Returns the name if it is one of the batches'; a picture without any says why it is empty, and nothing is to be set off. */
    static String in(List<Batch> batches, String name) {
        if (batches.isEmpty()) {
            return name;
        }
        if (batches.stream().noneMatch(batch -> batch.name().equals(name))) {
            List<String> some = batches.stream().map(Batch::name).limit(5).toList();
            throw new LogbookException("The picture has no batch '" + name + "' to set off. It has "
                    + Words.count(batches.size(), "batch", "batches") + ": " + String.join(", ", some)
                    + (batches.size() > some.size() ? ", …" : "") + ".");
        }
        return name;
    }
}
