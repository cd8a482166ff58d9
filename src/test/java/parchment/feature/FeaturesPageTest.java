package parchment.feature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import org.junit.jupiter.api.Test;

/** Holds docs/features.md in step with the features; run with {@code -Dparchment.write.docs=true} to write the page anew. */
class FeaturesPageTest {
    private static final Path PAGE = Path.of("..", "docs", "features.md");

    @Test
    void thePageSaysWhatTheFeaturesSay() throws IOException {
        String page = page();
        if (Boolean.getBoolean("parchment.write.docs")) {
            Files.writeString(PAGE, page);
        }
        assertEquals(page, Files.readString(PAGE), "docs/features.md is out of step; see the comment on this test");
    }

    @Test
    void everyFeatureHasANameOfItsOwnADefinitionAndAtLeastThirtyThereAre() {
        assertTrue(Features.all().list().size() >= 30);
        HashSet<String> names = new HashSet<>();
        for (Feature feature : Features.all()) {
            assertTrue(names.add(feature.name()), "twice: " + feature.name());
            assertFalse(feature.definition().isBlank(), feature.name());
            assertEquals(feature.name(), Features.named(feature.name()).name());
        }
    }

    private static String page() {
        StringBuilder page = new StringBuilder("""
                # Features

                Named numbers with units that describe a batch. Each knows what it needs and stays missing where that is not there. In a
                notebook, `Features.all()` shows this list, `BatchTable.of(logbook)` the numbers of every batch, and any other numeric
                column of `batches.csv` serves as `Features.column("its header")`.

                | feature | unit | definition | needs |
                | --- | --- | --- | --- |
                """);
        for (Feature feature : Features.all()) {
            page.append("| ")
                    .append(feature.name())
                    .append(" | ")
                    .append(FeatureList.unit(feature))
                    .append(" | ")
                    .append(feature.definition().replace("|", "\\|"))
                    .append(" | ")
                    .append(FeatureList.needs(feature))
                    .append(" |\n");
        }
        return page.toString();
    }
}
