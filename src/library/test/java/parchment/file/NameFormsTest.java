package parchment.file;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NameFormsTest {
    private static final String COMPOSED = "N\u00FA\u00F1ez";
    private static final String TAKEN_APART = "Nu\u0301n\u0303ez";
    private static final String MIXED = "N\u00FAn\u0303ez";

    @Test
    void aNameInAnotherFormIsTheOnlyOneThatLooksTheSame() {
        assertEquals(
                Optional.of(TAKEN_APART),
                NameForms.of(List.of(TAKEN_APART, "Nunez")).meant(COMPOSED));
        assertEquals(Optional.of(COMPOSED), NameForms.of(List.of(COMPOSED)).meant(MIXED));
        assertEquals(Optional.empty(), NameForms.of(List.of("Nunez")).meant(COMPOSED));
    }

    @Test
    void ofTwoThatLookTheSameOnlyTheVeryNameIsMeant() {
        NameForms two = NameForms.of(List.of(COMPOSED, TAKEN_APART));
        assertEquals(Optional.of(COMPOSED), two.meant(COMPOSED));
        assertEquals(Optional.of(TAKEN_APART), two.meant(TAKEN_APART));
        assertEquals(Optional.empty(), two.meant(MIXED));
        assertEquals(List.of(COMPOSED, TAKEN_APART), two.alike(MIXED));
    }

    @Test
    void aNameThatStandsTwiceCountsTwice() {
        assertEquals(
                2, NameForms.of(List.of(COMPOSED, COMPOSED)).alike(TAKEN_APART).size());
    }
}
