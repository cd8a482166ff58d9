package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * Holds the reference of scenario files in docs/virtual-roastery.md in step with the code; run with
 * {@code -Dparchment.write.docs=true} to write it anew.
 */
class ScenarioPageTest {
    private static final Path PAGE = Path.of("..", "docs", "virtual-roastery.md");
    private static final String BEGIN =
            "<!-- from here on written by ScenarioPageTest from the code; do not edit by hand -->\n";
    private static final String END = "<!-- to here -->\n";

    @Test
    void thePageSaysWhatAScenarioMayHold() throws IOException {
        String page = Files.readString(PAGE, StandardCharsets.UTF_8);
        int begin = page.indexOf(BEGIN);
        int end = page.indexOf(END);
        assertTrue(begin > 0 && end > begin, "the page has lost the marks between which the reference stands");
        String expected = page.substring(0, begin) + BEGIN + reference() + page.substring(end);
        if (Boolean.getBoolean("parchment.write.docs")) {
            Files.writeString(PAGE, expected, StandardCharsets.UTF_8);
        }
        assertEquals(expected, Files.readString(PAGE, StandardCharsets.UTF_8));
    }

    /** The example on the page is a whole scenario, and the one in the javadoc is the same. */
    @Test
    void theExampleOnThePageIsAScenario() throws IOException {
        String page = Files.readString(PAGE, StandardCharsets.UTF_8);
        int from = page.indexOf("```ini\n") + 7;
        String example = page.substring(from, page.indexOf("```", from));
        VirtualLogbook logbook = VirtualRoastery.of(Scenario.of(example, "corner.scenario"))
                .withBatches(6)
                .run();
        assertEquals(6, logbook.batches().size());
    }

    private static String reference() {
        StringBuilder text = new StringBuilder("\nScenarios that come with the library:\n\n");
        for (String name : Scenario.builtIn()) {
            text.append("- `")
                    .append(name)
                    .append("`: ")
                    .append(Scenario.named(name).description())
                    .append('\n');
        }
        for (SectionKind kind : SectionKind.values()) {
            text.append("\n### `").append(kind.heading()).append("`\n\n").append(kind.meaning());
            text.append(kind.isRepeated() ? " May stand more than once.\n\n" : "\n\n");
            text.append("| key | value | if left out | meaning |\n|---|---|---|---|\n");
            for (Setting setting : kind.settings()) {
                text.append("| `")
                        .append(setting.written())
                        .append("` | ")
                        .append(setting.expected())
                        .append(" | ")
                        .append(setting.fallback().replaceAll("^\\((.*)\\)$", "$1"))
                        .append(" | ")
                        .append(setting.meaning())
                        .append(" |\n");
            }
        }
        return text.append('\n').toString();
    }
}
