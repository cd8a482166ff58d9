package parchment.display.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ChosenNamesTest {
    @Test
    void theOwnerSaysHowACellGetsWhatIsChosen() {
        ChosenNames names = ChosenNames.among("batch", List.of("a", "b", "c"), List.of("a"), "by name");
        assertEquals(
                "What is chosen below does not come back by itself here. Copy the line of code under the pictures.",
                names.sentence());
        names.take(List.of("b", "a"));
        assertEquals("2 batches are chosen below: the next cell has them by name.", names.sentence());
        names.take(List.of("c"));
        assertEquals("1 batch is chosen below: the next cell has it by name.", names.sentence());
        names.take(List.of());
        assertEquals("No batch is chosen below.", names.sentence());
    }
}
