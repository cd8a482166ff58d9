package parchment.kernel.widget;

import java.util.List;
import parchment.display.live.Live;

/** What is said when controls give way to newer ones. */
final class AliveWords {
    private AliveWords() {}

    static String past(List<Live> gone) {
        String first = gone.get(0).toString().replaceFirst("\\.$", "");
        String which = gone.size() == 1
                ? "the oldest no longer answers (" + first + "). Run its cell again to bring it back.\n"
                : "the oldest " + gone.size() + " no longer answer (" + first + ", and " + (gone.size() - 1)
                        + " more). Run their cells again to bring them back.\n";
        return "More than " + AliveControls.MOST + " controls are alive on these pages, so " + which;
    }
}
