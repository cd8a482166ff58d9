package parchment.kernel.widget;

import java.lang.ref.WeakReference;
import java.util.List;
import java.util.Optional;
import parchment.display.live.Live;
import parchment.kernel.page.CellPage;

/**
 * Tells the reader that controls no longer answer because there are too many: once for a cell, and again when there are ten times as many.
 */
final class ControlsClosed {
    private WeakReference<CellPage> page = new WeakReference<>(null);
    private int count;
    private int next;

    /** Counts those that were closed while a cell ran; returns what its reader is to be told now. */
    synchronized Optional<String> told(CellPage now, List<Live> gone) {
        if (page.get() != now) {
            page = new WeakReference<>(now);
            count = 0;
            next = 1;
        }
        boolean first = count == 0;
        count += gone.size();
        if (count < next) {
            return Optional.empty();
        }
        while (next <= count) {
            next *= 10;
        }
        return Optional.of(
                first ? AliveWords.past(gone) : "By now " + count + " of the oldest controls no longer answer.\n");
    }
}
