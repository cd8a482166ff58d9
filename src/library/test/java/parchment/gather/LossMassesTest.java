package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pins when a roasted mass follows from a green mass and a loss. */
class LossMassesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "green mass [g]  | 5000 | calo (%)         | 12.5   | roasted mass [g]  | 4375",
                "green mass [kg] | 5.00 | weight loss %    | 15     | roasted mass [kg] | 4.25",
                "green mass [lb] | 10   | Verlust [%]      | 12,5 % | roasted mass [lb] | 8.75",
                "green mass [kg] | 10   | loss in percent  | 5      | roasted mass [kg] | 9.5",
                "green mass [kg] | 10   | loss in percent  | 30     | roasted mass [kg] | 7",
            })
    void theRoastedMassFollowsFromALossInPercent(
            String greenHeading, String green, String lossHeading, String loss, String heading, double mass) {
        Map.Entry<String, String> roasted = LossMasses.roasted(Map.of(greenHeading, green, lossHeading, loss))
                .orElseThrow();
        assertEquals(heading, roasted.getKey());
        assertEquals(mass, Double.parseDouble(roasted.getValue()), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "green mass [kg] | 5 | loss        | 15",
                "green mass [kg] | 5 | loss [kg]   | 15",
                "green mass [kg] | 5 | humidity %  | 15",
                "green mass [kg] | 5 | loss %      | 4.9",
                "green mass [kg] | 5 | loss %      | 30.1",
                "green mass [kg] | 5 | loss %      | 0.15",
                "green mass [kg] | 5 | loss %      | about",
                "green mass [kg] | ? | loss %      | 15",
                "green mass      | 5 | loss %      | 15",
            })
    void anythingElseIsLeft(String greenHeading, String green, String lossHeading, String loss) {
        assertEquals(Optional.empty(), LossMasses.roasted(Map.of(greenHeading, green, lossHeading, loss)));
    }

    @Test
    void aWeighedMassStands() {
        assertEquals(
                Optional.empty(),
                LossMasses.roasted(Map.of("green mass [kg]", "5", "loss %", "15", "roasted mass [kg]", "4.2")));
    }

    @Test
    void itIsToldAndCanBeAnsweredNo() {
        GatheredBatch batch =
                GatheredBatch.of("61").withWritten("green mass [kg]", "5").withWritten("loss %", "15");
        GatherQuestions told = new GatherQuestions(Map.of());
        assertEquals(
                "4.25", LossMasses.added(List.of(batch), told).get(0).written().get("roasted mass [kg]"));
        assertTrue(told.answered().containsKey("roasted-mass.from-loss"));
        GatherQuestions no = new GatherQuestions(Map.of("roasted-mass.from-loss", "no"));
        assertEquals(List.of(batch), LossMasses.added(List.of(batch), no));
    }
}
