package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.display.Showable;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;

/** One thing wrong in a logbook is one thing wrong: it is named, and every page of every class that a notebook begins with still shows. */
class HorrorsContractTest {
    /** What is made of nothing in the logbook that is opened here. */
    private static final Set<String> OF_NO_LOGBOOK = Set.of(
            "Lesson",
            "PlanSheet",
            "PlanTasted",
            "Reply",
            "AnswerKey",
            "Envelope",
            "ClassResults",
            "AnswerSheet",
            "RoastPlan",
            "VirtualLogbook",
            "Gather");

    /** What is asked of the batch that may be bad itself: it may be refused, in words that name the batch or its curve. */
    private static final Set<String> OF_THE_BATCH = Set.of(
            "Phases",
            "BatchChart",
            "Nearest",
            "WhereTimeWent",
            "Usual",
            "BatchCard",
            "MarkPrediction",
            "CleanCurve",
            "RateOfRise",
            "ControlSteps");

    /** What takes longest is asked of some horrors only: of the first, which is all there is to a curve, and of each that is no curve. */
    private static final Set<String> SLOW = Set.of(
            "Explorer",
            "Evidence",
            "VarianceShares",
            "Week",
            "LotCard",
            "DestinationOrPath",
            "TradeOff",
            "Watch",
            "LotYear");

    /** Pages that show batch beside batch name the one that they leave out. */
    private static final Set<String> NAMES_IT =
            Set.of("PhaseTable", "OverlayChart", "PaceChart", "OneClock", "Shapes", "BatchTable", "Explorer");

    /** The name of a Java class or a value that is no word. */
    private static final String NO_WORDS =
            "(?s).*(\\w+Exception\\b|\\bjava\\.|\\bparchment\\.[a-z]+\\.[A-Z]|\\b(NaN|null)\\b).*";

    @TempDir
    Path temp;

    static Stream<LogbookOfHorrors.Horror> oneAtATime() {
        return LogbookOfHorrors.all().stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("oneAtATime")
    @Timeout(60)
    void oneThingWrongIsNamedAndStopsNoPage(LogbookOfHorrors.Horror horror) throws IOException {
        Logbook logbook = Logbook.open(LogbookOfHorrors.write(temp.resolve("horror"), horror));
        assertTrue(
                logbook.problems().list().stream()
                        .map(String::valueOf)
                        .anyMatch(line -> horror.says().stream().allMatch(line::contains)),
                () -> "no problem says " + horror.says() + " in\n"
                        + logbook.problems().text());
        Map<String, Function<Logbook, Object>> numerics = new HashMap<>();
        NumericExamples.addTo(numerics);
        List<Executable> pages = new ArrayList<>();
        ShowableExamples.ROOTS.forEach((name, make) -> {
            if (!OF_NO_LOGBOOK.contains(name)
                    && !numerics.containsKey(name)
                    && (horror.slow() || !SLOW.contains(name))) {
                pages.add(() -> shows(name, make, logbook, horror));
            }
        });
        assertTrue(pages.size() > 25, pages.size() + " pages");
        assertAll(pages);
    }

    private static void shows(
            String name, Function<Logbook, Object> make, Logbook logbook, LogbookOfHorrors.Horror horror) {
        try {
            Object made = make.apply(logbook);
            for (Object one : made instanceof List<?> list ? list : List.of(made)) {
                if (one instanceof Showable showable) {
                    assertFalse(showable.text().isBlank(), name);
                    assertFalse(showable.toString().matches(NO_WORDS), name + ": " + showable);
                    String page = showable.text()
                            + showable.html().orElse("")
                            + showable.svg().orElse("");
                    assertTrue(
                            !horror.leavesOut() || !NAMES_IT.contains(name) || page.contains(LogbookOfHorrors.BAD),
                            name + " does not name the batch that it leaves out: " + showable.text());
                }
            }
        } catch (LogbookException | IllegalArgumentException refused) {
            assertTrue(OF_THE_BATCH.contains(name), name + " is refused: " + refused.getMessage());
            assertFalse(String.valueOf(refused.getMessage()).matches(NO_WORDS), name + ": " + refused.getMessage());
        } catch (NoSuchElementException noCurve) {
            assertTrue(
                    OF_THE_BATCH.contains(name)
                            && logbook.batches().get(3).beanTemperature().isEmpty(),
                    name);
        }
    }
}
