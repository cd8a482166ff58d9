package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.chart.Line;
import parchment.chart.Plot;
import parchment.chart.Weight;

/** The approved text stands in the resources; to approve a new one, look at the picture first and run with -Dparchment.write.docs=true. */
class TrialPicturesTest {
    private static Map<String, Plot> pictures() {
        TrialAnswer open = TrialAnswer.of(TrialTables.terms(0.5, 1), TrialTables.example(), TrialTables.SEAL);
        return Map.of(
                "sets", TrialPictures.sets(open),
                "shuffles", TrialPictures.shuffles(open, open.assigned().orElseThrow()),
                "achieved", TrialPictures.achieved(open, open.achieved().orElseThrow()));
    }

    @Tag("still-prints")
    @ParameterizedTest
    @ValueSource(strings = {"sets", "shuffles", "achieved"})
    void stillPaintsTheApprovedPicture(String name) throws IOException {
        String found = Objects.requireNonNull(pictures().get(name)).svg().orElseThrow();
        if (Boolean.getBoolean("parchment.write.docs")) {
            Path file = Path.of("library", "test", "resources", "approved", "trial", name + ".svg");
            Files.createDirectories(Objects.requireNonNull(file.getParent()));
            Files.writeString(file, found + "\n");
        }
        try (var approved = TrialPicturesTest.class.getResourceAsStream("/approved/trial/" + name + ".svg")) {
            String expected = new String(Objects.requireNonNull(approved, name).readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(expected.strip(), found.strip());
        }
    }

    @Test
    void theLineIsDoubtedWhereTheTrialCannotTell() {
        Plot open =
                TrialPictures.sets(TrialAnswer.of(TrialTables.terms(0.5, 1), TrialTables.example(), TrialTables.SEAL));
        Plot did = TrialPictures.sets(
                TrialAnswer.of(TrialTables.terms(0.5, 1), TrialTables.sets(8, 0.25, 0.1), TrialTables.SEAL));
        assertEquals(Weight.TENTATIVE, last(open).weight());
        assertEquals("average line, in doubt", last(open).label());
        assertEquals(Weight.STRONG, last(did).weight());
        assertEquals("average line", last(did).label());
    }

    private static Line last(Plot plot) {
        List<?> layers = plot.layers();
        return (Line) layers.get(layers.size() - 1);
    }

    @Test
    void nothingToDrawIsSaid() {
        Plot none = TrialPictures.sets(
                TrialAnswer.of(TrialTables.terms(0.5, 1), List.of(TrialTables.place(1, 1, 0)), TrialTables.SEAL));
        assertEquals(
                "There is nothing to draw: no set has two batches with different targets and a blind score.",
                none.emptySentence());
    }
}
