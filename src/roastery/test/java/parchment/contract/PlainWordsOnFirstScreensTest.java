package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import parchment.logbook.Logbook;

/** Says which words of statistics a page shows before anything is unfolded: next to none, and those that are left are counted here. */
class PlainWordsOnFirstScreensTest {
    private static final Pattern HARD =
            Pattern.compile("(?i)\\b(p-value|regress\\w*|residual\\w*|covariate\\w*|bootstrap\\w*"
                    + "|degrees of freedom|permut\\w*|likelihood|standard errors?|standard deviations?|confidence|quantiles?|quartiles?"
                    + "|variance\\w*|covariance|correlat\\w*|shrunken|conformal|calibrated|confound\\w*|significan\\w*|collinear\\w*"
                    + "|percentiles?|outliers?|medians?|inflation|intervals?|jackknife|slope|cumulated sum)\\b");

    /** Columns and charts that explain their word right beside it, and the pages of the teacher. */
    private static final Map<String, String> LEFT = Map.of(
            "ClassResults", "interval, intervals",
            "Envelope", "interval",
            "FeatureList", "median, slope",
            "Gather", "median",
            "Nearest", "shrunken",
            "PlanTasted", "interval, standard error",
            "Screen", "slope",
            "Watch", "cumulated sum");

    @Test
    void noOtherPageShowsThemBeforeItIsUnfolded() throws IOException {
        Map<String, String> found = new TreeMap<>();
        PicturePages.contents(Logbook.open(Path.of("..", "datasets", "hillside")))
                .forEach((name, page) -> {
                    TreeSet<String> words = new TreeSet<>();
                    Matcher hard = HARD.matcher(firstScreen(page));
                    while (hard.find()) {
                        words.add(hard.group().toLowerCase(Locale.ROOT));
                    }
                    if (!words.isEmpty()) {
                        found.put(name, String.join(", ", words));
                    }
                });
        assertEquals(new TreeMap<>(LEFT), found);
    }

    /** Takes away scripts, what is folded, and what only a reader aloud hears. */
    private static String firstScreen(String page) {
        String shown = page.replaceAll("(?s)<(script|style|desc)\\b.*?</\\1>", "");
        for (String before = ""; !before.equals(shown); ) {
            before = shown;
            shown = shown.replaceAll("(?s)<details(?:(?!<details).)*?</details>", "");
        }
        return shown.replaceAll("<[^>]*>", " ");
    }
}
