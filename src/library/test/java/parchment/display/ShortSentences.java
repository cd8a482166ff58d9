package parchment.display;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import parchment.display.answer.InShort;

/** Says what the first sentences of every answer keep to: at most 25 words and two clauses, and no word that only a statistician knows. */
public final class ShortSentences {
    private static final List<String> JOINTS =
            List.of("; ", ": ", ", but ", ", so ", ", which ", ", and ", " because ");

    private static final List<String> HARD = List.of(
            "slope",
            "interval",
            "Fieller",
            "inflation",
            "variance",
            "shrunken",
            "covariance",
            "degrees of freedom",
            "one-sided",
            "correlation",
            "regress",
            "deviation",
            "p-value",
            "residual",
            "covariate",
            "bootstrap",
            "permut",
            "jackknife",
            "confiden",
            "significan",
            "confound",
            "correlat",
            "likelihood",
            "median",
            "quantile",
            "quartile",
            "percentile",
            "standard error",
            "conformal",
            "calibrat",
            "outlier",
            "hypothes",
            "parameter",
            "estimate",
            "-0 ",
            "NaN",
            "null",
            "Exception",
            "90 %",
            ".of(");

    private ShortSentences() {}

    /** Fails if one of the three sentences does not keep to it. */
    public static InShort keptBy(InShort words) {
        Stream.of(words.found(), words.howSure(), words.next()).forEach(ShortSentences::keptBy);
        return words;
    }

    /** Fails if a sentence does not keep to it. */
    public static void keptBy(String sentence) {
        int words = sentence.split("\\s+").length;
        assertTrue(words <= 25, words + " words: " + sentence);
        List<String> joints = JOINTS.stream().filter(sentence::contains).toList();
        assertTrue(joints.size() <= 1, joints + " in: " + sentence);
        assertEquals(List.of(), HARD.stream().filter(sentence::contains).toList(), sentence);
        assertTrue(sentence.endsWith(".") && !sentence.endsWith(".."), sentence);
        assertTrue(!Character.isLowerCase(sentence.charAt(0)), sentence);
    }
}
