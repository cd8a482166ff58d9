package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.display.Showable;
import parchment.logbook.Logbook;
import parchment.virtual.VirtualRoastery;

/** A logbook of one batch is told of one batch, and not of 1 batches. */
class OneOfAKindTest {
    private static final Pattern ONE_OF_MANY = Pattern.compile(
            "(?<![0-9.,:−-])1 (?:roast |single |weighed |notable |different |written )?(?:batches|rows|days|cups|lots|readings|scores|cuppings|marks|groups|numbers|columns"
                    + "|features|questions|looks|machines|problems|sessions|cuppers|charges)\\b");

    /** What is made of a lesson's own logbook and not of the one given. */
    private static final Set<String> OF_LESSONS = Set.of(
            "Lesson",
            "PlanSheet",
            "PlanTasted",
            "Reply",
            "AnswerKey",
            "Envelope",
            "ClassResults",
            "AnswerSheet",
            "Gather");

    @TempDir
    Path folder;

    @Test
    void nothingSaysOneBatches() throws Exception {
        VirtualRoastery.harbour().withBatches(1).write(folder.resolve("one"));
        Logbook one = Logbook.open(folder.resolve("one"));
        assertEquals(1, one.batches().size());
        List<ShowableExamples.Root> roots = new ArrayList<>();
        List<String> texts = new ArrayList<>();
        for (Map.Entry<String, Function<Logbook, Object>> root : ShowableExamples.ROOTS.entrySet()) {
            if (OF_LESSONS.contains(root.getKey())) {
                continue;
            }
            try {
                Object made = root.getValue().apply(one);
                (made instanceof List<?> list ? list : Collections.singletonList(made))
                        .forEach(value -> roots.add(new ShowableExamples.Root(root.getKey(), value)));
            } catch (IllegalArgumentException | IllegalStateException e) {
                texts.add(root.getKey() + ": " + e.getMessage()); // Cannot be made of one batch; that is said too.
            }
        }
        Map<Showable, String> found = ShowableExamples.reachedFrom(roots);
        assertTrue(found.size() > 60, found.size() + " results");
        found.forEach((value, way) -> texts.add(way + ": " + value + "\n" + value.text() + "\n"
                + value.html().orElse("").replaceAll("<script.*?</script>", " ").replaceAll("<[^>]*>", "")));
        TreeSet<String> wrong = new TreeSet<>();
        for (String text : texts) {
            Matcher matcher = ONE_OF_MANY.matcher(text);
            while (matcher.find()) {
                wrong.add(text.substring(0, text.indexOf(':')) + ": …"
                        + text.substring(Math.max(0, matcher.start() - 40), Math.min(text.length(), matcher.end() + 40))
                                .replace('\n', ' '));
            }
        }
        assertEquals("", String.join("\n", wrong));
    }

    @Test
    void thePatternFindsWhatItLooksFor() {
        for (String wrong : List.of("1 batches", "of 1 rows", "on 1 roast days", "(1 cups)")) {
            assertTrue(ONE_OF_MANY.matcher(wrong).find(), wrong);
        }
        for (String right : List.of("1 batch", "11 batches", "0.1 days", "2,001 rows", "1 row")) {
            assertFalse(ONE_OF_MANY.matcher(right).find(), right);
        }
    }
}
