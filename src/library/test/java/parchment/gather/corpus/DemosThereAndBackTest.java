package parchment.gather.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookFiles;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.written.CupScores;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;

/** Both demo logbooks are written as strange folders, gathered, and must be what they were. */
class DemosThereAndBackTest {
    @TempDir
    Path temporary;

    private static Path datasets() {
        return Files.isDirectory(Path.of("datasets")) ? Path.of("datasets") : Path.of("../datasets");
    }

    private Path folder() throws IOException {
        return Files.createDirectories(temporary.resolve("old"));
    }

    private GatherEntry.Gathered gathered() throws IOException {
        return GatherEntry.gather(folder(), temporary.resolve("made"));
    }

    @Test
    void theHarbourDemoComesBackFromAmericanFilesAndASpreadsheet() throws IOException {
        Logbook demo = Logbook.open(datasets().resolve("harbour"));
        DemoRoastery strange = new DemoRoastery(demo);
        DemoRoastery.Words words = DemoRoastery.Words.american();
        for (Batch batch : demo.batches()) {
            if (batch.beanTemperature().isPresent()) {
                TextStyle.AMERICAN.write(
                        strange.curve(batch, words), folder().resolve("Logger/Roast " + batch.name() + ".csv"));
            }
        }
        Spreadsheets.write(folder().resolve("Roast log.xlsx"), strange.list(words), strange.cuppersAsColumns(words));
        equal(demo, gathered());
    }

    @Test
    void theHillsideDemoComesBackFromGermanText() throws IOException {
        Logbook demo = Logbook.open(datasets().resolve("hillside"));
        DemoRoastery strange = new DemoRoastery(demo);
        DemoRoastery.Words words = DemoRoastery.Words.german();
        TextStyle style = TextStyle.GERMAN.in("windows-1252");
        for (Batch batch : demo.batches()) {
            if (batch.beanTemperature().isPresent()) {
                style.write(strange.curve(batch, words), folder().resolve(batch.name() + ".csv"));
            }
        }
        style.write(strange.list(words), folder().resolve("Röstbuch.csv"));
        style.write(strange.cuppersAsColumns(words), folder().resolve("Verkostungen.csv"));
        equal(demo, gathered());
    }

    /** Compares everything and shows the first differences together. */
    private static void equal(Logbook demo, GatherEntry.Gathered gathered) {
        Logbook back = gathered.logbook().orElseThrow(() -> new AssertionError(gathered.report()));
        List<String> differences = new ArrayList<>();
        names(demo, back, differences);
        for (Batch batch : demo.batches()) {
            back.find(batch.name()).ifPresent(other -> compare(batch, other, differences));
        }
        scores(demo, back, differences);
        assertEquals(
                "",
                differences.stream().limit(20).collect(Collectors.joining("\n")),
                differences.size() + " differences");
    }

    private static void names(Logbook demo, Logbook back, List<String> differences) {
        List<String> names = demo.batches().stream().map(Batch::name).sorted().toList();
        List<String> others = back.batches().stream().map(Batch::name).sorted().toList();
        if (!names.equals(others)) {
            differences.add("batches " + others.stream().limit(10).toList() + " for "
                    + names.stream().limit(10).toList());
        }
    }

    private static void compare(Batch batch, Batch other, List<String> differences) {
        if (!batch.roastedAt()
                .map(at -> at.toLocalDateTime().toString())
                .equals(other.roastedAt().map(at -> at.toLocalDateTime().toString()))) {
            differences.add(batch.name() + " roasted at " + other.roastedAt() + " for " + batch.roastedAt());
        }
        if (!batch.lot().equals(other.lot())) {
            differences.add(batch.name() + " lot " + other.lot() + " for " + batch.lot());
        }
        double half = 0.0006;
        if (Math.abs(kilograms(batch.conditions().greenMass())
                                - kilograms(other.conditions().greenMass()))
                        > half
                || Math.abs(kilograms(batch.conditions().roastedMass())
                                - kilograms(other.conditions().roastedMass()))
                        > half) {
            differences.add(batch.name() + " masses " + other.conditions() + " for " + batch.conditions());
        }
        for (MarkKind kind : LogbookFiles.MARKS) {
            if (kind != MarkKind.SECOND_CRACK_START
                    && !batch.writtenMark(kind)
                            .map(mark -> Math.round(mark.seconds()))
                            .equals(other.writtenMark(kind).map(mark -> Math.round(mark.seconds())))) {
                differences.add(
                        batch.name() + " " + kind + " " + other.writtenMark(kind) + " for " + batch.writtenMark(kind));
            }
        }
        for (Quantity quantity : Quantity.values()) {
            Optional<Curve> curve = batch.curve(quantity);
            Optional<Curve> gathered = other.curve(quantity);
            if (batch.beanTemperature().isPresent() && !same(curve.orElse(null), gathered.orElse(null))) {
                differences.add(batch.name() + " " + quantity + " " + gathered + " for " + curve);
            }
        }
    }

    private static double kilograms(Optional<Mass> mass) {
        return mass.map(m -> m.in(MassUnit.KILOGRAM)).orElse(-1.0);
    }

    private static boolean same(@Nullable Curve one, @Nullable Curve other) {
        if (one == null || other == null) {
            return one == other;
        }
        boolean same = one.size() == other.size();
        for (int i = 0; same && i < one.size(); i++) {
            same = Math.abs(one.secondsAt(i) - other.secondsAt(i)) <= 0.06
                    && Math.abs(one.valueAt(i) - other.valueAt(i)) <= 0.02;
        }
        return same;
    }

    private static void scores(Logbook demo, Logbook back, List<String> differences) {
        List<String> cups =
                demo.cups().stream().map(DemosThereAndBackTest::cup).sorted().toList();
        List<String> others =
                back.cups().stream().map(DemosThereAndBackTest::cup).sorted().toList();
        if (!cups.equals(others)) {
            List<String> lost = new ArrayList<>(cups);
            lost.removeAll(others);
            differences.add(others.size() + " cups for " + cups.size() + "; not there: "
                    + lost.stream().limit(3).toList());
        }
    }

    private static String cup(CupScores cup) {
        return cup.tastedOn() + " " + cup.cupper() + " " + cup.batch() + " " + new TreeMap<>(cup.scores());
    }
}
