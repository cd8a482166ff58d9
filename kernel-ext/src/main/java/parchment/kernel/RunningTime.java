package parchment.kernel;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.kernel.page.Shown;

/** How long a cell ran, as a reader wants to know it: not at all where it was short. */
final class RunningTime {
    private static final Duration WORTH_A_WORD = Duration.ofSeconds(1);

    private RunningTime() {}

    /** Returns a line for under the cell, if it ran for more than a second. */
    static Optional<Shown> shown(Duration ran) {
        if (ran.compareTo(WORTH_A_WORD) <= 0) {
            return Optional.empty();
        }
        String words = words(ran);
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(Shown.TEXT, words);
        forms.put(Shown.HTML, "<p role=\"note\" style=\"font-size:.85em;margin:.2em 0\">" + words + "</p>");
        return Optional.of(new Shown(forms));
    }

    private static String words(Duration ran) {
        long tenths = Math.round(ran.toMillis() / 100.0);
        if (tenths < 100) {
            return String.format(Locale.ROOT, "took %d.%d s", tenths / 10, tenths % 10);
        }
        long seconds = Math.round(ran.toMillis() / 1000.0);
        return seconds < 60
                ? "took " + seconds + " s"
                : "took " + seconds / 60 + " min" + (seconds % 60 == 0 ? "" : " " + seconds % 60 + " s");
    }
}
