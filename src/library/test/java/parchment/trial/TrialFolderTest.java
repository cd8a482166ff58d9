package parchment.trial;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.file.FolderLock;
import parchment.file.WholeFolder;
import parchment.quantity.Mass;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.DrawnTarget;
import parchment.trial.sealed.Seal;
import parchment.trial.sealed.SealCheck;
import parchment.trial.sealed.SetDraw;

class TrialFolderTest {
    @TempDir
    Path temporary;

    private Path folder() {
        return temporary.resolve("flip-1");
    }

    private String file(String name) throws IOException {
        return Files.readString(folder().resolve(name));
    }

    private static String says(Runnable work) {
        return assertThrows(RuntimeException.class, work::run).getMessage();
    }

    private static void openAll(TrialFolder trial) {
        for (int set = 1; set <= 3; set++) {
            trial.next(SealedTrial.set(set));
            trial.next();
            trial.next();
        }
    }

    @Test
    void opensEveryLineOnceInTheOrderOfTheDraw() {
        TrialFolder trial = SealedTrial.in(folder());
        List<DrawnLine> drawn = SealedTrial.lines();
        for (int i = 0; i < drawn.size(); i++) {
            DrawnTarget target = i % 3 == 0 ? trial.next(SealedTrial.set(i / 3 + 1)) : trial.next();
            assertEquals(drawn.get(i).value(), target.target());
            assertEquals(i / 3 + 1, target.set());
            assertEquals(i % 3 + 1, target.place());
            assertEquals("B" + (i / 3 + 1) + "0" + (i % 3 + 1), target.batch());
        }
        assertEquals(
                "All 9 lines of the trial '" + folder()
                        + "' are open. A trial has no more batches than were sealed; look at its answer.",
                says(trial::next));
        assertEquals(says(trial::next), says(() -> trial.next(SealedTrial.set(4))));
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(trial.seal()).outcome());
        assertEquals(
                "Trial flip-1 asks what drop temperature does to sweetness: 9 of 9 lines are open, in 3 sets of 3.",
                trial.toString());
    }

    @Test
    void tellsTheRoasterWhatToAimAtAndWhatToWrite() {
        TrialFolder trial = SealedTrial.in(folder());
        DrawnTarget target = trial.next(SealedTrial.set(1));
        String number = DrawnLine.target(target.target());
        List<String> lines = target.text().lines().toList();
        assertEquals(
                "Set 1 of 3, batch 1 of 3: B101, Stone Bridge, 2.500 kg. Chance drew a drop temperature of " + number
                        + " °C.",
                lines.get(0));
        assertEquals(
                "Write into batches.csv for B101: planned drop temperature [°C] " + number
                        + ", planned by chance, trial flip-1, set 1.",
                lines.get(1));
        assertEquals(DrawnTarget.ABORT, lines.get(2));
        assertEquals(parchment.logbook.contents.Cautions.BESIDE_A_READING, lines.get(3));
        assertEquals(
                "The record's digits are now " + trial.recordDigits()
                        + ". Give them away at the end of the set, as you gave the seal.",
                lines.get(4));
    }

    @Test
    void theRecordTellsWhatWasListedBeforeWhatWasOpened() throws IOException {
        TrialFolder trial = SealedTrial.in(folder());
        trial.next(SealedTrial.set(1));
        List<String> lines = file("record.txt").lines().toList();
        assertEquals("parchment-record-1", lines.get(0));
        assertEquals("2026-11-29T10:00:00Z sealed " + trial.seal().replace(" ", ""), lines.get(1));
        assertEquals(
                "2026-12-01T12:00:00Z listed 1|2026-12-01|Stone Bridge|B101;2.500 kg|B102;2.500 kg|B103;2.500 kg|seen by Ada",
                lines.get(3));
        assertEquals("2026-12-01T12:00:00Z opened " + SealedTrial.lines().get(0).text(), lines.get(5));
        assertEquals("= " + Seal.sha256(lines.get(2).substring(2) + "\n" + lines.get(3)), lines.get(4));
        assertEquals("= " + Seal.sha256(lines.get(4).substring(2) + "\n" + lines.get(5)), lines.get(6));
    }

    @Test
    void refusesWhatWouldChangeASetAfterItsListing() {
        TrialFolder trial = SealedTrial.in(folder());
        assertEquals("No line of the trial '" + folder() + "' is open yet.", says(trial::again));
        assertEquals(
                "Set 1 is not listed yet. List its 3 batches first, of one lot and for one day, each weighed: no target is opened before.",
                says(trial::next));
        assertEquals(
                "A set of this trial has 3 batches, but 2 were listed. List all of the set, weighed, before its first target is opened.",
                says(() -> trial.next(SetListing.of("Stone Bridge")
                        .with("a", Mass.kilograms(1))
                        .with("b", Mass.kilograms(1)))));
        trial.next(SealedTrial.set(1));
        assertEquals(
                "Set 1 is listed and not at its end: it was 3 batches of Stone Bridge on 2026-12-01, and 'B102' is next."
                        + " Open that without a listing: nothing joins a set that is listed, or leaves it.",
                says(() -> trial.next(SealedTrial.set(2))));
        trial.next();
        trial.next();
        assertEquals(
                "The batch 'B101' is in set 1 already. A batch is in one set, in the place where it was listed.",
                says(() -> trial.next(SealedTrial.set(1))));
        SetListing earlier = SealedTrial.set(2).on(SealedTrial.DAY.minusDays(1));
        assertEquals(
                "Set 1 was listed for 2026-12-01, and this one is for 2026-11-30. Sets are listed in the order of their days.",
                says(() -> trial.next(earlier)));
        assertEquals(2, trial.next(SealedTrial.set(2)).set());
    }

    @Test
    void aListingNeedsNamesAndMasses() {
        SetListing listing = SetListing.of("Stone Bridge").with("B1", Mass.kilograms(0.001));
        assertEquals(
                "The batch 'B1' is in the set already. Give each batch a name of its own.",
                says(() -> listing.with("B1", Mass.kilograms(1))));
        assertEquals(
                "The batch 'B2' weighs nothing. Weigh its green coffee before you list it: no target is opened before that.",
                says(() -> listing.with("B2", Mass.kilograms(0.0009))));
        assertEquals(
                "The batch 'a|b' cannot be kept in the trial's record: a name there has 1 to 200 letters, no bar and no semicolon.",
                says(() -> listing.with("a|b", Mass.kilograms(1))));
        assertEquals(
                "The lot ' ' cannot be kept in the trial's record: a name there has 1 to 200 letters, no bar and no semicolon.",
                says(() -> SetListing.of(" ")));
        assertEquals(
                "The person 'a;b' cannot be kept in the trial's record: a name there has 1 to 200 letters, no bar and no semicolon.",
                says(() -> listing.seenBy("a;b")));
    }

    @Test
    void aFolderThatIsNoTrialIsToldWhatItLacks() throws IOException {
        Files.createDirectories(folder());
        for (String name : List.of("plan.txt", "seal.txt", "record.txt")) {
            assertEquals(
                    "'" + folder() + "' is no whole trial: it has no file " + name
                            + ". Name the folder that was made when the trial was sealed.",
                    says(() -> TrialFolder.open(folder())));
            Files.createFile(folder().resolve(name));
        }
    }

    /** Every fifth byte of every file is changed in turn, on a trial of which a part is open: each change is found, and nothing is opened on it. */
    @ParameterizedTest
    @ValueSource(strings = {"plan.txt", "seal.txt", "record.txt", "draw.closed"})
    void aChangedByteIsFound(String name) throws IOException {
        TrialFolder trial = SealedTrial.in(folder());
        trial.next(SealedTrial.set(1));
        trial.next();
        String seal = trial.seal();
        Path file = folder().resolve(name);
        byte[] whole = Files.readAllBytes(file);
        int step = 5; // Coprime to the length of every line, so that each place is met in some line.
        for (int i = 0; i < whole.length; i += step) {
            byte[] changed = whole.clone();
            changed[i] ^= 1;
            Files.write(file, changed);
            SealCheck check = trial.verify(seal);
            assertEquals(SealCheck.Outcome.BROKEN, check.outcome(), name + ", byte " + i);
            assertTrue(String.join(" ", check.findings()).contains(name), check.findings() + " at byte " + i);
            int at = i;
            if (i % 100 > 0) {
                continue;
            }
            assertTrue(
                    says(trial::next)
                            .startsWith("The trial '" + folder()
                                    + "' is not as it was sealed, and nothing was done with it. "),
                    () -> "byte " + at);
        }
        Files.write(file, whole);
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(seal).outcome());
    }

    private String finding(TrialFolder trial, String seal, String name, String from, String to) throws IOException {
        String before = file(name);
        assertTrue(before.contains(from), before);
        Files.writeString(folder().resolve(name), before.replace(from, to));
        List<String> findings = trial.verify(seal).findings();
        Files.writeString(folder().resolve(name), before);
        return findings.get(0);
    }

    @Test
    void saysWhichOfThemWasChanged() throws IOException {
        TrialFolder trial = SealedTrial.in(folder());
        trial.next(SealedTrial.set(1));
        trial.next();
        String seal = trial.seal();
        String plan = Seal.sha256(file("plan.txt").replace("0.50", "0.05"));
        assertEquals(
                "plan.txt was changed, or line 2 of seal.txt: its SHA-256 is " + plan + ", but "
                        + Seal.sha256(file("plan.txt")) + " was sealed.",
                finding(trial, seal, "plan.txt", "0.50", "0.05"));
        String second = Seal.sha256(SealedTrial.lines().get(1).text());
        String other = "0" + second.substring(1);
        assertEquals(
                "seal.txt was changed: its SHA-256 is "
                        + Seal.sha256(file("seal.txt").replace(second, other)) + ", but record.txt tells that "
                        + seal.replace(" ", "") + " was sealed.",
                finding(trial, seal, "seal.txt", second, other));
        assertEquals(
                "record.txt was changed: the entry in lines 8 and 9 is not as it was written, or one before it was changed, taken out or put in.",
                finding(
                        trial,
                        seal,
                        "record.txt",
                        "|1|2||" + SealedTrial.lines().get(1).target(),
                        "|1|2||999.9"));
        String row = file("draw.closed").lines().skip(5).findFirst().orElseThrow();
        assertEquals(
                "The closed line of set 2, place 2 is not the one that was sealed: line 6 of draw.closed was changed, or line 7 of seal.txt.",
                finding(
                        trial,
                        seal,
                        "draw.closed",
                        row,
                        row.replace(row.charAt(40), row.charAt(40) == 'A' ? 'B' : 'A')));
        assertEquals(
                "draw.closed was changed: it holds 8 lines, but 9 were sealed.",
                finding(trial, seal, "draw.closed", row + "\n", ""));
    }

    /** Who writes the whole record anew, chain and all, is found by the sealed lines. */
    @Test
    void anOpenedLineThatIsWrittenAnewWithItsChainIsFound() throws IOException {
        TrialFolder trial = SealedTrial.in(folder());
        trial.next(SealedTrial.set(1));
        trial.next();
        TrialRecord record = TrialRecord.read(file("record.txt"));
        List<DrawnLine> lines = SealedTrial.lines();
        TrialRecord swapped = TrialRecord.begin(record.seal(), "2026-11-29T10:00:00Z")
                .with(
                        "2026-12-01T12:00:00Z",
                        TrialRecord.Kind.LISTED,
                        SealedTrial.set(1).text(1))
                .with(
                        "2026-12-01T12:00:00Z",
                        TrialRecord.Kind.OPENED,
                        lines.get(1).text())
                .with(
                        "2026-12-01T12:00:00Z",
                        TrialRecord.Kind.OPENED,
                        lines.get(0).text());
        Files.writeString(folder().resolve("record.txt"), swapped.text());
        assertEquals(
                List.of(
                        "The opened line of set 1, place 1 in record.txt is not the one that was sealed: it was changed, or it changed places with another.",
                        "The opened line of set 1, place 2 in record.txt is not the one that was sealed: it was changed, or it changed places with another."),
                trial.verify(record.seal()).findings());
        TrialRecord late = TrialRecord.begin(record.seal(), "2026-11-29T10:00:00Z")
                .with(
                        "2026-12-01T12:00:00Z",
                        TrialRecord.Kind.OPENED,
                        lines.get(0).text());
        Files.writeString(folder().resolve("record.txt"), late.text());
        assertEquals(
                List.of("The line of set 1, place 1 was opened before its set was listed: record.txt was changed."),
                trial.verify(record.seal()).findings());
    }

    /** Batches that change places in the listing, the chain written anew: only digits that were given away meanwhile show it. */
    @Test
    void swappedPlacesAreFoundByDigitsThatWereGivenAway() throws IOException {
        TrialFolder trial = SealedTrial.in(folder());
        trial.next(SealedTrial.set(1));
        String given = trial.recordDigits();
        trial.next();
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(trial.seal(), given).outcome());
        TrialRecord forged = TrialRecord.begin(trial.seal().replace(" ", ""), "2026-11-29T10:00:00Z");
        for (TrialRecord.Entry entry :
                TrialRecord.read(file("record.txt")).entries().subList(1, 4)) {
            TrialRecord.Kind kind =
                    entry.is(TrialRecord.Kind.LISTED) ? TrialRecord.Kind.LISTED : TrialRecord.Kind.OPENED;
            forged = forged.with(
                    entry.at(),
                    kind,
                    entry.rest().replace("B101", "x").replace("B102", "B101").replace("x;", "B102;"));
        }
        Files.writeString(folder().resolve("record.txt"), forged.text());
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(trial.seal()).outcome());
        assertEquals(
                List.of("The record does not go through " + given
                        + ": what was done by then was written anew since, or they are another record's."),
                trial.verify(trial.seal(), given).findings());
    }

    @Test
    void aTrialThatWasDrawnAgainHasAnotherSeal() throws IOException {
        String given = SealedTrial.in(folder()).seal();
        WholeFolder.delete(folder());
        List<DrawnLine> anew =
                SetDraw.draw("flip-1", 3, 3, SetDraw.Targets.ENDS_AND_MIDDLE, 203, 1.5, new java.util.Random(6));
        TrialFolder again = TrialFolder.seal(folder(), SealedTrial.plan(), anew);
        assertEquals(
                List.of("The digits that you gave are of another seal: this folder's is " + again.seal()
                        + ". It is another trial, or it was changed or drawn again since."),
                again.verify(given).findings());
    }

    @Test
    void aDrawThatDoesNotFollowItsPlanIsFoundThoughItIsSealed() throws IOException {
        List<DrawnLine> lines = new ArrayList<>(SealedTrial.lines());
        DrawnLine line = lines.get(4);
        lines.set(
                4,
                new DrawnLine(
                        "flip-1", "", "", 2, 2, "", line.target().equals("203.0") ? "204.5" : "203.0", line.salt()));
        TrialFolder trial = TrialFolder.seal(folder(), SealedTrial.plan(), lines);
        assertEquals(
                List.of("The targets of set 2 are not those of a set of the plan."),
                trial.verify(trial.seal()).findings());
    }

    @Test
    void aDrawThatSomebodyElseKeepsIsAskedFor() throws IOException {
        TrialFolder trial = SealedTrial.in(folder());
        Path kept = temporary.resolve("with the cuppers");
        Files.move(folder().resolve("draw.closed"), kept);
        assertEquals(
                "The covered lines of the trial are not at '" + folder().resolve("draw.closed")
                        + "'. Whoever keeps the file draw.closed brings it back, or you name where it is.",
                says(() -> trial.next(SealedTrial.set(1))));
        assertEquals(says(() -> trial.next(SealedTrial.set(1))), says(trial::slips));
        SealCheck check = trial.verify(trial.seal());
        assertEquals(SealCheck.Outcome.WHOLE, check.outcome());
        assertTrue(
                check.text()
                        .contains("The covered lines are not at '" + folder().resolve("draw.closed")
                                + "', so those that are not open were not held against the seal."),
                check.text());
        assertEquals("B101", trial.withDraw(kept).next(SealedTrial.set(1)).batch());
    }

    /** Stopped before each step of a write, and between writing and telling: opened once or not at all, and nothing is lost. */
    @ParameterizedTest
    @ValueSource(strings = {"lock", "write", "show"})
    void stoppedAtAnyMomentNothingIsOpenedTwiceOrLost(String at) {
        List<String> done = new ArrayList<>();
        boolean[] armed = {false};
        TrialFolder trial = SealedTrial.in(folder(), step -> {
            done.add(step);
            if (armed[0] && step.equals(at)) {
                throw new IllegalStateException("stopped");
            }
        });
        trial.next(SealedTrial.set(1));
        String before = trial.recordDigits();
        armed[0] = true;
        assertEquals("stopped", says(trial::next));
        armed[0] = false;
        boolean written = at.equals("show");
        assertEquals(written, !trial.recordDigits().equals(before));
        assertEquals(written ? 2 : 1, trial.again().place());
        assertEquals(written ? 3 : 2, trial.next().place());
        assertEquals(List.of("lock", "write", "show"), done.subList(0, 3));
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(trial.seal()).outcome());
    }

    @ParameterizedTest
    @ValueSource(strings = {"lock", "write", "show"})
    void aListingThatWasStoppedIsThereWithItsFirstLineOrNotAtAll(String at) {
        boolean[] armed = {true};
        TrialFolder trial = SealedTrial.in(folder(), step -> {
            if (armed[0] && step.equals(at)) {
                throw new IllegalStateException("stopped");
            }
        });
        assertEquals("stopped", says(() -> trial.next(SealedTrial.set(1))));
        armed[0] = false;
        if (at.equals("show")) {
            assertEquals("B101", trial.again().batch());
            assertEquals("B102", trial.next().batch());
        } else {
            assertEquals("B101", trial.next(SealedTrial.set(1)).batch());
        }
    }

    @Test
    void twoCommandsNeverOpenAtOnce() throws IOException {
        TrialFolder trial = SealedTrial.in(folder());
        trial.next(SealedTrial.set(1));
        String before = file("record.txt");
        try (FolderLock other = FolderLock.of(folder()).orElseThrow()) {
            assertEquals(
                    "Another command is at work in the trial '" + folder()
                            + "'. Wait until it has ended, and run this again; nothing was opened.",
                    says(trial::next));
        }
        assertEquals(before, file("record.txt"));
        assertEquals("B102", trial.next().batch());
    }

    /** Opens all lines of a trial, in a process of its own; another does the same. */
    public static void main(String[] arguments) {
        TrialFolder trial = TrialFolder.open(Path.of(arguments[0]));
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (System.nanoTime() < end) {
            try {
                System.out.println("opened " + trial.next().batch());
            } catch (IllegalStateException e) {
                if (e.getMessage().startsWith("All ")) {
                    return;
                }
                if (e.getMessage().contains("is not listed yet")) {
                    int set = Integer.parseInt(e.getMessage().replaceAll("^Set (\\d+) .*", "$1"));
                    try {
                        System.out.println(
                                "opened " + trial.next(SealedTrial.set(set)).batch());
                    } catch (IllegalStateException | IllegalArgumentException beaten) {
                        continue;
                    }
                }
            }
        }
    }

    @Test
    void twoProcessesOpenEveryLineOnceBetweenThem() throws Exception {
        TrialFolder trial = SealedTrial.in(folder());
        List<Process> both = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            both.add(new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            System.getProperty("java.class.path"),
                            TrialFolderTest.class.getName(),
                            folder().toString())
                    .redirectErrorStream(true)
                    .start());
        }
        List<String> opened = new ArrayList<>();
        for (Process each : both) {
            new String(each.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .forEach(opened::add);
            assertTrue(each.waitFor(30, TimeUnit.SECONDS));
        }
        List<String> all = new ArrayList<>();
        for (int set = 1; set <= 3; set++) {
            for (int place = 1; place <= 3; place++) {
                all.add("opened B" + set + "0" + place);
            }
        }
        assertEquals(all, opened.stream().sorted().toList());
        assertEquals(SealCheck.Outcome.WHOLE, trial.verify(trial.seal()).outcome());
    }

    @Test
    void theSlipsHoldEveryLineAndThatTheyWereMadeIsWrittenDown() {
        TrialFolder trial = SealedTrial.in(folder());
        String slips = trial.slips().text();
        SealedTrial.lines().forEach(line -> assertTrue(slips.contains(line.text()), line.text()));
        assertTrue(slips.contains("Trial flip-1, set 3 of 3, place 2 of 3. Open at charge, not before."), slips);
        assertTrue(slips.contains(DrawnTarget.ABORT), slips);
        parchment.logbook.contents.Cautions.forAPage().forEach(caution -> assertTrue(slips.contains(caution), caution));
        assertTrue(
                trial.verify(trial.seal())
                        .text()
                        .contains(
                                "Slips with every target were made on 2026-12-01T12:00:00Z: whoever made them could read them all."));
    }

    @Test
    void theSheetsShowTheTargetsThatAreOpenAndNoOther() {
        TrialFolder trial = SealedTrial.in(folder());
        DrawnTarget first = trial.next(SealedTrial.set(1));
        String sheets = trial.sheets().text();
        assertEquals(
                "Trial flip-1: 3 batch sheets of 1 listed set, 1 with an open target.",
                trial.sheets().toString());
        assertTrue(
                sheets.contains("planned drop temperature [°C]: " + DrawnLine.target(first.target()) + " °C"), sheets);
        assertEquals(2, sheets.split("planned drop temperature \\[°C\\]: ______", -1).length - 1);
        assertEquals(3, sheets.split(DrawnTarget.ABORT, -1).length - 1);
        parchment.logbook.contents.Cautions.forAPage()
                .forEach(caution -> assertTrue(sheets.contains(caution), caution));
        assertFalse(sheets.contains(SealedTrial.lines().get(1).salt()));
    }

    @Test
    void theCheckTellsHowToDoItByHand() {
        TrialFolder trial = SealedTrial.in(folder());
        openAll(trial);
        List<String> lines = trial.verify(trial.seal()).text().lines().toList();
        assertEquals(
                "The seal is whole: plan, 9 of 9 lines opened and the record are as they were sealed and written.",
                lines.get(0));
        assertEquals("Seal: " + trial.seal(), lines.get(1));
        assertTrue(
                lines.get(2).startsWith("By hand, in the folder: 'sha256sum seal.txt' prints the seal;"), lines.get(2));
    }
}
