package parchment.kernel;

import java.lang.ref.WeakReference;
import java.util.Optional;
import parchment.display.Live;

/** Says that controls no longer answer because there are too many: once for a cell, and again when there are ten times as many. */
final class ControlsClosed {
    private WeakReference<CellPage> page = new WeakReference<>(null);
    private int count;
    private int next;

    /** Counts one more that was closed while a cell ran; returns what its reader is to be told now. */
    Optional<String> one(CellPage now, Live oldest) {
        if (page.get() != now) {
            page = new WeakReference<>(now);
            count = 0;
            next = 1;
        }
        count++;
        if (count < next) {
            return Optional.empty();
        }
        next *= 10;
        return Optional.of(
                count == 1
                        ? "More than " + LiveControls.MOST
                                + " controls are alive on these pages, so the oldest no longer answers ("
                                + oldest.toString().replaceFirst("\\.$", "")
                                + "). Run its cell again to bring it back.\n"
                        : "By now " + count + " of the oldest controls no longer answer.\n");
    }
}
