package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds every line of docs/measurements/agreement.md to the digits it must reach; {@link AgreementPage} writes the page. */
@Tag("agrees-with")
class AgreementTest {

    static Stream<AgreementRow> rows() {
        return AgreementPage.sections().stream()
                .map(AgreementPage.Section::rows)
                .flatMap(List::stream);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void reachesItsDigits(AgreementRow row) {
        assertTrue(
                row.digits() >= row.least(),
                row.what() + ": " + row.ours() + " against " + row.theirs() + ", " + row.digits() + " digits of "
                        + row.least() + " wanted");
    }
}
