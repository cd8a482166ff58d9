package parchment.feature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import parchment.feature.kind.Family;
import parchment.feature.kind.FeatureList;

/** Holds docs/features.md in step with the features; run with {@code -Dparchment.write.docs=true} to write the page anew. */
class FeaturesPageTest {
    private static final Path PAGE = Path.of("..", "docs", "features.md");

    @Test
    void thePageSaysWhatTheFeaturesSay() throws IOException {
        String page = page();
        if (Boolean.getBoolean("parchment.write.docs")) {
            Files.writeString(PAGE, page);
        }
        assertTrue(
                Files.exists(PAGE), "docs/features.md is missing; see this test's class comment for how to write it");
        assertEquals(page, Files.readString(PAGE, StandardCharsets.UTF_8));
    }

    private static String page() {
        StringBuilder page = new StringBuilder("""
                # Features

                This page is written by a test from the features themselves (`FeaturesPageTest`); do not edit it by hand.

                A feature is a named number that describes a batch's path. `BatchTable.of(logbook)` measures all of them,
                `BatchTable.of(logbook, dropTemperature(), developmentTime())` the ones you name, `Features.column("header")` any
                numeric column of `batches.csv`. A feature that cannot be measured is missing and says why; nothing is filled in.

                How marks and curves are read is told in [marks-and-phases.md](marks-and-phases.md). Every number comes with a standard
                error made of the probe's noise and of the uncertainty of the marks; features that read the same mark err together,
                and `BatchTable.covariance(batch, features)` gives by how much. A number that was written down (a mass, a room
                temperature) carries no error, because the logbook does not say one. None of the temperatures is a property of
                the beans alone: a probe reads late, and a small batch covers it less.

                A feature's role says what it is in the making of a roast. A *control* was set by hand; what belongs to the *calendar* was
                given before the roast began (place in day and season, room, green coffee); the rest *follows* from both. Where a
                control or a fact of the calendar moved as one with the feature asked about, [no answer](evidence.md#verdicts) tells the
                two apart; what follows moves along by nature and stops no answer. A feature of your own follows, unless it says
                otherwise (`role()`).

                A family's rank is how many of its features one model may hold; the rest follow by arithmetic.

                """);
        for (Family family : Family.values()) {
            FeatureList list = Features.all().of(family);
            if (list.list().isEmpty()) {
                continue;
            }
            page.append("## ")
                    .append(Character.toUpperCase(family.words().charAt(0)))
                    .append(family.words().substring(1))
                    .append("\n\n");
            OptionalInt rank = family.rank();
            if (rank.isPresent()) {
                page.append("Rank ")
                        .append(rank.getAsInt())
                        .append(": ")
                        .append(family.identity())
                        .append(".\n\n");
            } else if (!family.identity().isEmpty()) {
                page.append("What ties them together: ")
                        .append(family.identity())
                        .append(".\n\n");
            }
            page.append(
                    "| feature | unit | role | definition | needs | marks whose error it carries |\n|---|---|---|---|---|---|\n");
            for (Feature feature : list) {
                page.append("| ")
                        .append(feature.name())
                        .append(" | ")
                        .append(FeatureList.unit(feature))
                        .append(" | ")
                        .append(role(feature))
                        .append(" | ")
                        .append(feature.definition().replace("|", "\\|"))
                        .append(" | ")
                        .append(FeatureList.needs(feature))
                        .append(" | ")
                        .append(
                                feature.marksUsed().isEmpty()
                                        ? "none"
                                        : feature.marksUsed().stream()
                                                .map(kind -> kind.words())
                                                .collect(Collectors.joining(", ")))
                        .append(" |\n");
            }
            page.append('\n');
        }
        return page.toString().stripTrailing() + "\n";
    }

    private static String role(Feature feature) {
        return switch (feature.role()) {
            case CONTROL -> "control";
            case CALENDAR -> "calendar";
            case FOLLOWS -> "follows";
        };
    }
}
