package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.lesson.sheet.HandedInPlan;
import parchment.lesson.sheet.Reply;
import parchment.lesson.sheet.StatedClaim;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.SealedTruth;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.chance.Seed;

class ClassroomTest {
    private static final Path NOTEBOOKS = Path.of("..", "notebooks", "lessons");

    @TempDir
    private Path folder;

    @Test
    void handsOutLessonsWithoutTheirTruthAndMarksWhatComesBack() throws IOException {
        Path teacher = folder.resolve("teacher");
        Path out = folder.resolve("students");
        Map<String, String> seals =
                Classroom.prepare(List.of("ann", "ben"), teacher).handOut(2, NOTEBOOKS, out);
        assertNotEquals(seals.get("ann"), seals.get("ben"));

        Lesson ann = Lesson.open(2, out.resolve("ann").resolve("lesson-2").toString());
        assertTrue(assertThrows(IllegalStateException.class, ann::openEnvelope)
                .getMessage()
                .contains("with your teacher"));
        Lesson known = Lesson.of(LessonSource.ofStudent(2, seedOf(teacher, "ann"), "ann"));
        String development = known.questions().get(0).key().replaceFirst(" s.*", "");
        assertEquals(Reply.Kind.RIGHT, ann.check("development", development).kind());
        assertEquals(Reply.Kind.NOT_YET, ann.check("development ratio", "99").kind());
        ann.cannotTell("lateness");
        ann.handIn("somebody else", folder.resolve("collected"));
        Path sheet = folder.resolve("collected").resolve("lesson-2-ann.csv");
        Files.writeString(sheet, Files.readString(sheet).replace(",no,99,", ",yes,99,"), StandardCharsets.UTF_8);

        ClassResults results = Classroom.open(teacher).collect(folder.resolve("collected"));
        assertEquals(3, results.marked().size());
        assertEquals(Reply.Kind.RIGHT, results.marked().get(0).kind());
        assertEquals(Reply.Kind.NOT_YET, results.marked().get(1).kind(), "the file's own mark counts for nothing");
        assertEquals(10, results.marked().get(2).grade().orElseThrow().points());
        assertTrue(results.text().contains("ann"));
    }

    @Test
    void aSecretThatMakesNoFitLessonStillGivesEveryStudentOneAndAlwaysTheSame() throws IOException {
        Seed unlucky = Seed.parse("secret:3d965ece33cac5ad9b8c2d9d25083103f27d52faf6ec49a74d293780f183a17c");
        LessonPlan plan = Course.lesson(3);
        String digest = Digest.of(unlucky.text() + " lesson 3");
        VirtualLogbook first = plan.roastery(Seed.parse("secret:" + digest), 0).run();
        assertThrows(NoSuchElementException.class, () -> plan.material(first.opened(), Optional.of(first)));

        Path teacher = Files.createDirectories(folder.resolve("teacher"));
        Files.writeString(teacher.resolve("seeds.properties"), "ann=" + unlucky.text() + "\n");
        Map<String, String> seals = Classroom.open(teacher).handOut(3, NOTEBOOKS, folder.resolve("students"));
        Lesson ann = Lesson.open(
                3, folder.resolve("students").resolve("ann").resolve("lesson-3").toString());
        LessonSource again = LessonSource.ofStudent(3, unlucky, "ann");
        assertEquals(
                ann.logbook().batches().get(0).name(),
                again.logbook().batches().get(0).name());
        assertEquals(
                seals.get("ann"), again.behind().orElseThrow().roasted().truth().seal());
    }

    /** Seeds 54 and 134 are the two among the first 150 whose first draw makes no lesson 3. */
    @Test
    void aNumberOfOnesOwnThatMakesNoFitLessonTakesTheNextDraw() {
        assertTrue(Lesson.open(3, 54).questions().size() > 3);
        assertEquals(AnswerKey.of(3, 134).text(), AnswerKey.of(3, 134).text());
    }

    @Test
    void nothingHandedOutHoldsTheSeedOrTheTruth() throws IOException {
        Path teacher = folder.resolve("teacher");
        Path out = folder.resolve("students");
        Map<String, String> seals = Classroom.prepare(List.of("ann"), teacher).handOut(2, NOTEBOOKS, out);
        String secret = seedOf(teacher, "ann").text().replace("secret:", "");
        try (Stream<Path> files = Files.walk(out)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String text = Files.readString(file, StandardCharsets.UTF_8);
                assertFalse(text.contains(secret), file::toString);
                assertFalse(text.contains("\"sealed\""), file::toString);
            }
        }
        Path truth = teacher.resolve("ann-lesson-2-truth.json");
        assertEquals(seals.get("ann"), SealedTruth.open(truth).seal());
        String notebook = Files.readString(out.resolve("ann").resolve("2-phases-and-marks.ipynb"));
        assertTrue(notebook.contains("Lesson.open(2, \\\"lesson-2\\\");"), "opens the folder beside it");
    }

    @Test
    void roastsWhatAStudentHasPlanned() throws IOException {
        Path teacher = folder.resolve("teacher");
        Classroom classroom = Classroom.prepare(List.of("ann"), teacher);
        PlanSheet plan = Lesson.open(9, 1).plan("Cinder Ridge", "204", "198", "210");
        Path file = Files.writeString(folder.resolve("plan-ann.csv"), plan.csv());
        VirtualLogbook roasted = classroom.roastPlan("ann", file, folder.resolve("roasted"));
        assertEquals(
                roasted.truth().seal(),
                SealedTruth.open(teacher.resolve("ann-plan-truth.json")).seal());
        PlanTasted tasted = Lesson.open(9, 1).tasted(folder.resolve("roasted").toString());
        assertEquals(3, tasted.logbook().batches().size());
        assertTrue(tasted.slope().isPresent());
        assertTrue(tasted.text().startsWith("Invented machine: do not roast."), tasted::text);
        assertTrue(tasted.html().orElseThrow().contains("url(#invented-machine)"), "printed across");
    }

    @Test
    void aPlanIsWrittenAndShownOnTheReadersScale() {
        PlanSheet plan =
                Lesson.open(9, 1).in(TemperatureUnit.FAHRENHEIT).plan("Cinder Ridge", "399.2", "388 °F", "210 °C");
        assertTrue(plan.text().contains("°F") && !plan.text().contains("°C"), plan::text);
        assertTrue(plan.html().orElseThrow().contains("°F"));
        assertEquals(204, plan.plan().lines().get(0).dropReading(), 0.01);
        assertEquals(210, plan.plan().lines().get(2).dropReading(), 0.01);
        assertEquals(
                "203",
                String.format(
                        "%.0f",
                        AnswerText.temperature("397.4 °F", TemperatureUnit.CELSIUS)
                                .orElseThrow()));
    }

    @Test
    void marksStudentsWithNumbersOfTheirOwn() throws IOException {
        Lesson lesson = Lesson.open(1, 7).in(TemperatureUnit.FAHRENHEIT);
        NumberQuestion drop = (NumberQuestion) lesson.questions().get(3);
        lesson.check("drop temperature", drop.unit().shown(drop.expected().value(), TemperatureUnit.FAHRENHEIT));
        lesson.claim("true temperature", "-5", "5");
        lesson.handIn("Zoë, third row", folder);
        ClassResults results = ClassResults.read(folder);
        assertEquals(Reply.Kind.RIGHT, results.marked().get(0).kind());
        assertEquals("Zoë, third row", results.marked().get(0).answer().student());
        assertTrue(results.marked().get(1).grade().isPresent());
        assertEquals(List.of(), results.unread());
    }

    @Test
    void namesTheFilesThatCannotBeRead() throws IOException {
        Files.writeString(folder.resolve("lesson-1-x.csv"), "a,b\n1,2\n");
        ClassResults results = ClassResults.read(folder);
        assertTrue(results.unread().get(0).contains("is not a sheet of answers"), results::text);
    }

    @Test
    void findsSheetsUnderAnyNameAndCountsASheetHandedInTwiceOnce() throws IOException {
        Lesson lesson = Lesson.open(1, 7);
        lesson.check("drop temperature", "1");
        lesson.handIn("Zoë", folder.resolve("first"));
        lesson.check("drop temperature", "2");
        lesson.handIn("Zoë", folder.resolve("second"));
        try (Stream<Path> files = Files.list(folder.resolve("second"))) {
            Files.move(files.findFirst().orElseThrow(), folder.resolve("second").resolve("Zoë's answers (1).csv"));
        }
        ClassResults results = ClassResults.read(folder);
        assertEquals(1, results.marked().size());
        assertEquals("2", results.marked().get(0).answer().answer(), "the sheet with more tries is the later one");
        assertEquals(1, results.unread().size());
        assertTrue(results.unread().get(0).contains("the same student and lesson as"), results::text);
    }

    @Test
    void readsASheetThatASpreadsheetHasSavedWithSemicolonsAndDecimalCommas() throws IOException {
        Lesson lesson = Lesson.open(1, 7);
        lesson.claim("true temperature", "-5.5", "4.5");
        lesson.handIn("Zoë", folder);
        Path sheet = folder.resolve("saved.csv");
        try (Stream<Path> files = Files.list(folder)) {
            Path handedIn = files.findFirst().orElseThrow();
            String text = Files.readString(handedIn).replace(',', ';').replace('.', ',');
            Files.writeString(sheet, "\uFEFF" + text, StandardCharsets.UTF_8);
            Files.delete(handedIn);
        }
        StatedClaim claim = AnswerSheet.read(sheet).answers().get(0).claim().orElseThrow();
        assertEquals(-5.5, claim.lower());
        assertEquals(4.5, claim.upper());
    }

    @Test
    void goesOnAfterABrokenFileAndAnEmptyOne() throws IOException {
        Lesson lesson = Lesson.open(1, 7);
        lesson.check("drop temperature", "1");
        lesson.handIn("Zoë", folder);
        String header = lesson.answers().csv().lines().findFirst().orElseThrow();
        Files.writeString(folder.resolve("broken.csv"), header + "\n1,\"Yann,7,celsius\n");
        Files.writeString(folder.resolve("empty.csv"), header + "\n");
        Files.write(folder.resolve("foreign.csv"), new byte[] {(byte) 0xC3, (byte) 0x28, '\n'});
        ClassResults results = ClassResults.read(folder);
        assertEquals(1, results.marked().size());
        String unread = String.join("\n", results.unread());
        assertTrue(unread.contains("broken.csv breaks off"), unread);
        assertTrue(unread.contains("empty.csv: it holds no answer"), unread);
        assertFalse(unread.contains("foreign.csv"), unread);
        assertEquals(1, results.passedOver(), "no sheet by its heading and its name");
    }

    @Test
    void namesWhoHandedInNothingAndHowTheClassFaredWithEachQuestion() throws IOException {
        Path teacher = folder.resolve("teacher");
        Classroom classroom = Classroom.prepare(List.of("ann", "ben"), teacher);
        classroom.handOut(2, NOTEBOOKS, folder.resolve("students"));
        Lesson ann = Lesson.open(
                2, folder.resolve("students").resolve("ann").resolve("lesson-2").toString());
        ann.check("development ratio", "99");
        ann.cannotTell("lateness");
        ann.handIn("ann", folder.resolve("collected"));
        ClassResults results = classroom.collect(folder.resolve("collected"));
        assertEquals(List.of("ben"), results.missing());
        assertTrue(results.text().contains("Nothing handed in: ben."), results::text);
        assertTrue(results.text().contains("By question"), results::text);
        assertTrue(results.text().contains("development ratio"), results::text);
    }

    @Test
    void aNameThatASpreadsheetWouldChangeIsRefusedBeforeAnythingIsWritten() throws IOException {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> Classroom.prepare(List.of("ann", "007"), folder.resolve("t")))
                .getMessage();
        assertTrue(message.startsWith("A spreadsheet would take the name '007' for a number"), message);
        assertFalse(Files.exists(folder.resolve("t")));
        // A class that has such a name already goes on with it.
        Path teacher = Files.createDirectories(folder.resolve("teacher"));
        Files.writeString(
                teacher.resolve("seeds.properties"), "007=" + Seed.secret().text() + "\n");
        assertEquals(List.of("007"), Classroom.open(teacher).students());
    }

    @Test
    void saysWhichNamesAreNotAllowed() {
        assertTrue(assertThrows(
                        IllegalArgumentException.class, () -> Classroom.prepare(List.of("../x"), folder.resolve("t")))
                .getMessage()
                .contains("letters, digits, blanks, dashes, apostrophes and full stops"));
    }

    private static parchment.virtual.chance.Seed seedOf(Path teacher, String student) throws IOException {
        return Files.readAllLines(teacher.resolve("seeds.properties")).stream()
                .filter(line -> line.startsWith(student + "="))
                .map(line -> parchment.virtual.chance.Seed.parse(line.substring(student.length() + 1)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatIsSecretCanBeReadByTheTeachersAccountOnly(@TempDir Path folder) throws IOException {
        assumeTrue(
                Files.getFileStore(folder).supportsFileAttributeView("posix"), "this system knows no rights of files");
        Path teacher = folder.resolve("class").resolve("teacher");
        Path out = folder.resolve("students");
        Classroom.prepare(List.of("ann"), teacher).handOut(2, NOTEBOOKS, out);
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(teacher)));
        try (Stream<Path> secrets = Files.list(teacher)) {
            for (Path secret : secrets.toList()) {
                assertEquals(
                        "rw-------",
                        PosixFilePermissions.toString(Files.getPosixFilePermissions(secret)),
                        secret.toString());
            }
        }
        assertTrue(Files.exists(teacher.resolve("ann-lesson-2-truth.json")));
    }

    /** Hands lesson 2 out to Ann and Ben, who each state a claim and hand it in. */
    private Classroom annAndBen() throws IOException {
        Classroom classroom = Classroom.prepare(List.of("ann", "ben"), folder.resolve("teacher"));
        classroom.handOut(2, NOTEBOOKS, folder.resolve("students"));
        for (String student : classroom.students()) {
            Lesson lesson = Lesson.open(
                    2,
                    folder.resolve("students")
                            .resolve(student)
                            .resolve("lesson-2")
                            .toString());
            if (student.equals("ann")) {
                lesson.cannotTell("lateness");
            } else {
                lesson.claim("lateness", "-90", "-80");
            }
            lesson.handIn(student, folder.resolve("collected"));
        }
        return classroom;
    }

    private Path sheetOf(String student) {
        return folder.resolve("collected").resolve("lesson-2-" + student + ".csv");
    }

    private static double points(ClassResults results, String student) {
        return results.marked().stream()
                .filter(one -> one.answer().student().equals(student))
                .mapToDouble(one -> one.grade().orElseThrow().points())
                .sum();
    }

    @Test
    void aSheetForgedForSomebodyElseDoesNotTakeThePlaceOfTheirs() throws IOException {
        Classroom classroom = annAndBen();
        String ofBen = Files.readString(sheetOf("ben"));
        // Ben writes sheets in Ann's name, with his code, without one, and with many tries, so that they would be the
        // later ones.
        for (String code : List.of(codeOn("ben"), "", "0".repeat(20))) {
            Files.writeString(
                    folder.resolve("collected").resolve("lesson-2-ann (" + code.length() + code + ").csv"),
                    ofBen.replace(codeOn("ben"), code)
                            .replace(",ben,", ",ann,")
                            .replace("lateness,1,", "lateness,9999,"));
        }
        ClassResults results = classroom.collect(folder.resolve("collected"));
        assertEquals(10, points(results, "ann"));
        assertEquals(0, points(results, "ben"));
        assertEquals(2, results.envelopes().size());
        assertEquals(3, results.unread().size(), results::text);
        assertEquals(
                "lesson-2-ann (0).csv: it says that it is that of 'ann', lesson 2, but bears no code of the folder that was handed to"
                        + " that student. Ask for the sheet as lesson.handIn(...) writes it in that folder.",
                results.unread().get(0));
        assertTrue(
                results.unread()
                        .get(1)
                        .contains("but its code is not that of the folder that was handed to that student"),
                results.unread().get(1));
    }

    private String codeOn(String student) throws IOException {
        return AnswerSheet.read(sheetOf(student)).answers().get(0).code();
    }

    @Test
    void aRowForSomebodyElseOnASealedSheetCountsForNobodyWhereverItStands() throws IOException {
        Classroom classroom = annAndBen();
        List<String> lines = Files.readAllLines(sheetOf("ben"));
        String forAnn = lines.get(1).replace(",ben,", ",ann,");
        for (List<String> forged :
                List.of(List.of(lines.get(0), lines.get(1), forAnn), List.of(lines.get(0), forAnn, lines.get(1)))) {
            Files.write(sheetOf("ben"), forged);
            ClassResults results = classroom.collect(folder.resolve("collected"));
            assertEquals(List.of(), results.unread());
            assertEquals(1, results.notCounted().size());
            assertTrue(
                    results.notCounted()
                            .get(0)
                            .contains("it speaks for 'ann', lesson 2, and the sheet is that of 'ben', lesson 2."),
                    results.notCounted().get(0));
            assertEquals(10, points(results, "ann"));
            assertEquals(
                    List.of("ann", "ben"),
                    results.envelopes().stream()
                            .map(ClassResults.Returned::student)
                            .sorted()
                            .toList());
        }
    }

    @Test
    void aCodeIsThatOfOneStudentAndOneLessonAndTellsNothingOfTheSeed() throws IOException {
        Classroom classroom = annAndBen();
        classroom.handOut(1, NOTEBOOKS, folder.resolve("students"));
        String of1 = Files.readString(
                folder.resolve("students").resolve("ann").resolve("lesson-1").resolve("lesson.properties"));
        assertTrue(codeOn("ann").matches("[a-p]{20}"), "no spreadsheet takes letters for a number: " + codeOn("ann"));
        assertNotEquals(codeOn("ann"), codeOn("ben"));
        assertFalse(of1.contains(codeOn("ann")), of1);
        assertFalse(seedOf(folder.resolve("teacher"), "ann").text().contains(codeOn("ann")));
        // A sheet of lesson 2 that says it is one of lesson 1 bears the wrong code.
        Files.writeString(sheetOf("ann"), Files.readString(sheetOf("ann")).replace("2,ann,", "1,ann,"));
        ClassResults results = classroom.collect(folder.resolve("collected"));
        assertEquals(List.of("ann"), results.missing());
        assertTrue(results.unread().get(0).contains("'ann', lesson 1, but its code is not that"), results::text);
    }

    @Test
    void aHandOutThatWasStoppedHalfWayIsFinishedByDoingItAgain() throws IOException {
        Path teacher = folder.resolve("teacher");
        Path out = folder.resolve("students");
        Classroom classroom = Classroom.prepare(List.of("ann", "ben", "cid"), teacher);
        Map<String, String> seals = classroom.handOut(2, NOTEBOOKS, out);
        Map<String, String> whole = texts(out);
        // Ann's is whole and she has written into her notebook; Ben's was stopped in a file, as by an older version;
        // Cid's before its last file.
        Path annsNotebook = out.resolve("ann").resolve("2-phases-and-marks.ipynb");
        Files.writeString(annsNotebook, Files.readString(annsNotebook).replace("## ", "## Mine: "));
        Path bens = out.resolve("ben").resolve("lesson-2");
        Files.delete(bens.resolve("lesson.properties"));
        Path torn = bens.resolve("logbook").resolve("cuppings.csv");
        Files.writeString(torn, Files.readString(torn).substring(0, 100));
        Files.delete(bens.resolve("logbook").resolve("lots.csv"));
        Files.delete(out.resolve("ben").resolve("2-phases-and-marks.ipynb"));
        Files.delete(out.resolve("cid").resolve("lesson-2").resolve("lesson.properties"));
        Files.delete(out.resolve("cid").resolve("2-phases-and-marks.ipynb"));
        Files.delete(out.resolve("seals-lesson-2.csv"));
        Files.writeString(teacher.resolve("cid-lesson-2-truth.json"), "{");

        assertEquals(1, classroom.handedOut(2, out));
        assertEquals(seals, classroom.handOut(2, NOTEBOOKS, out));
        assertEquals(3, classroom.handedOut(2, out));
        Map<String, String> again = texts(out);
        String annsAgain = again.get("ann/2-phases-and-marks.ipynb");
        assertTrue(annsAgain.contains("## Mine: "), "what a student wrote stays");
        again.put("ann/2-phases-and-marks.ipynb", annsAgain.replace("## Mine: ", "## "));
        assertEquals(whole, again);
        assertEquals(
                seals.get("cid"),
                SealedTruth.open(teacher.resolve("cid-lesson-2-truth.json")).seal());
    }

    private static Map<String, String> texts(Path folder) throws IOException {
        Map<String, String> texts = new java.util.TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                texts.put(folder.relativize(file).toString(), Files.readString(file));
            }
        }
        return texts;
    }

    @Test
    void aFolderOfAnotherClassOrWithSomethingOfSomebodysOwnIsNeverWrittenOver() throws IOException {
        Path out = folder.resolve("students");
        Classroom.prepare(List.of("ann"), folder.resolve("teacher")).handOut(2, NOTEBOOKS, out);
        Map<String, String> before = texts(out);
        Classroom other = Classroom.prepare(List.of("ann"), folder.resolve("other"));
        String message = assertThrows(IOException.class, () -> other.handOut(2, NOTEBOOKS, out))
                .getMessage();
        assertTrue(message.contains("is there already, and it is not what this class hands out"), message);
        assertEquals(before, texts(out));

        Path logbook = Files.createDirectories(
                folder.resolve("mine").resolve("ann").resolve("lesson-2").resolve("logbook"));
        Files.writeString(logbook.resolve("batches.csv"), "my own\n");
        message = assertThrows(IOException.class, () -> other.handOut(2, NOTEBOOKS, folder.resolve("mine")))
                .getMessage();
        assertTrue(message.contains("is there already and holds something else"), message);
        assertEquals("my own\n", Files.readString(logbook.resolve("batches.csv")));
    }

    @Test
    void aTruthThatWasSealedIsNeverWrittenOver() throws IOException {
        Path teacher = folder.resolve("teacher");
        Path out = folder.resolve("students");
        Classroom classroom = Classroom.prepare(List.of("ann"), teacher);
        Path truth = teacher.resolve("ann-lesson-2-truth.json");

        // The folder is refused: nothing was sealed either.
        Path facts = out.resolve("ann").resolve("lesson-2").resolve("lesson.properties");
        Files.createDirectories(facts.getParent());
        Files.writeString(facts, "lesson=2\nstudent=ann\nseal=0\ncode=0\n");
        String message = assertThrows(IOException.class, () -> classroom.handOut(2, NOTEBOOKS, out))
                .getMessage();
        assertTrue(message.contains("or an older version. Take it away"), message);
        assertFalse(Files.exists(truth), "sealed although nothing was handed out");

        // What an older version has sealed stays, and nothing that it does not fit is handed out.
        String older = LessonSource.ofStudent(1, seedOf(teacher, "ann"), "ann")
                .behind()
                .orElseThrow()
                .roasted()
                .truth()
                .sealedText();
        Files.writeString(truth, older);
        Path elsewhere = folder.resolve("elsewhere");
        message = assertThrows(IOException.class, () -> classroom.handOut(2, NOTEBOOKS, elsewhere))
                .getMessage();
        assertTrue(message.startsWith(truth + " is there already and holds the truth of another logbook"), message);
        assertEquals(older, Files.readString(truth));
        assertFalse(Files.exists(elsewhere.resolve("ann")));
    }

    @Test
    void twoHandOutsAtOnceMakeOneWholeFolder() throws Exception {
        Path out = folder.resolve("students");
        Classroom classroom = Classroom.prepare(List.of("ann"), folder.resolve("teacher"));
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<Map<String, String>>> done = new ArrayList<>();
            for (int i = 0; i < 2; i++) {
                done.add(two.submit(() -> classroom.handOut(2, NOTEBOOKS, out)));
            }
            assertEquals(done.get(0).get(), done.get(1).get());
        } finally {
            two.shutdownNow();
        }
        Path other = folder.resolve("again");
        classroom.handOut(2, NOTEBOOKS, other);
        assertEquals(texts(other), texts(out), "whole, with nothing left beside it");
    }

    /** A folder that another hand-out at the same moment has just moved into its place, or is still filling. */
    @Test
    void aHandOutTouchesNothingThatAnotherHasAside() throws IOException {
        Path out = folder.resolve("students");
        Classroom classroom = Classroom.prepare(List.of("ann"), folder.resolve("teacher"));
        Path theirs = Files.createDirectories(
                out.resolve("ann").resolve(".lesson-2-not-finished").resolve("logbook"));
        Files.writeString(theirs.resolve("batches.csv"), "the other's work\n");
        classroom.handOut(2, NOTEBOOKS, out);
        assertEquals("the other's work\n", Files.readString(theirs.resolve("batches.csv")));
    }

    @Test
    void refusesToHandOutAFolderInWhichTheTeachersLies() throws IOException {
        Path teacher = folder.resolve("class").resolve("teacher");
        Classroom classroom = Classroom.prepare(List.of("ann"), teacher);
        for (Path out : List.of(folder.resolve("class"), teacher)) {
            String message = assertThrows(IllegalArgumentException.class, () -> classroom.handOut(2, NOTEBOOKS, out))
                    .getMessage();
            assertEquals(
                    "The teacher's folder " + teacher + " lies inside " + out
                            + ", which is to be handed out: whoever gets it knows every truth. Name another folder for the students.",
                    message);
            assertFalse(Files.exists(out.resolve("ann")));
        }
    }

    @Test
    void namesAsPeopleBearThemGoFromTheHandOutToTheResults() throws IOException {
        Path teacher = folder.resolve("teacher");
        Path out = folder.resolve("students");
        Classroom.prepare(List.of("Ana Nu\u0301n\u0303ez", "O'Neil"), teacher);
        Classroom classroom = Classroom.open(teacher);
        assertEquals(List.of("Ana Núñez", "O'Neil"), classroom.students());
        classroom.handOut(2, NOTEBOOKS, out);
        for (String student : classroom.students()) {
            Lesson lesson =
                    Lesson.open(2, out.resolve(student).resolve("lesson-2").toString());
            lesson.cannotTell("lateness");
            lesson.handIn("?!", folder.resolve("collected"));
        }
        assertTrue(Files.exists(sheetOf("Ana-Núñez")) && Files.exists(sheetOf("O-Neil")));
        ClassResults results = classroom.collect(folder.resolve("collected"));
        assertEquals(List.of(), results.missing());
        assertEquals(List.of(), results.unread());
        assertEquals("Ana Núñez", classroom.known("Ana-Núñez"));
        Path plan = Files.writeString(
                folder.resolve(HandedInPlan.fileName("Ana Núñez")),
                "lot;drop temperature [°C]\nCinder Ridge;204,5\n",
                java.nio.charset.Charset.forName("windows-1252"));
        assertEquals("plan-Ana-Núñez.csv", plan.getFileName().toString());
        HandedInPlan handedIn = HandedInPlans.in(folder).plans().get(0);
        assertEquals(
                1,
                classroom
                        .roastPlan(handedIn.student(), handedIn.file(), folder.resolve("back"))
                        .batches()
                        .size());
        assertTrue(Files.exists(teacher.resolve("Ana Núñez-plan-truth.json")));
    }

    @Test
    void aNameInTheSeedsFileThatLeadsElsewhereIsRefused() throws IOException {
        Path teacher = Files.createDirectories(folder.resolve("teacher"));
        Files.writeString(
                teacher.resolve("seeds.properties"), "../../x=" + Seed.secret().text() + "\n");
        String message =
                assertThrows(IOException.class, () -> Classroom.open(teacher)).getMessage();
        assertTrue(message.contains("seeds.properties cannot be used: A student's name has letters"), message);
    }

    @Test
    void aStudentOfAnotherLessonIsNamedWhereHalfOfTheClassHandedThisOneIn() throws IOException {
        Classroom classroom = annAndBen();
        classroom.handOut(1, NOTEBOOKS, folder.resolve("students"));
        Lesson wrong = Lesson.open(
                1, folder.resolve("students").resolve("ben").resolve("lesson-1").toString());
        wrong.cannotTell("true temperature");
        Files.delete(sheetOf("ben"));
        wrong.handIn("ben", folder.resolve("collected"));
        String text = classroom.collect(folder.resolve("collected")).text();
        assertTrue(text.contains("No sheet of lesson 2 from: ben (handed in: lesson 1)."), text);
        assertTrue(text.contains("No sheet of lesson 1 from: ann (handed in: lesson 2)."), text);
        assertFalse(text.contains("Nothing handed in") || text.contains("No sheet marked"), text);
    }

    @Test
    void aNameInSmallLettersWithTheRightCodeIsTheStudents() throws IOException {
        Classroom classroom = Classroom.prepare(List.of("Rosa", "Emil", "Fritz"), folder.resolve("teacher"));
        classroom.handOut(2, NOTEBOOKS, folder.resolve("students"));
        Lesson rosa = Lesson.open(
                2,
                folder.resolve("students").resolve("Rosa").resolve("lesson-2").toString());
        rosa.cannotTell("lateness");
        rosa.handIn("Rosa", folder.resolve("collected"));
        Path sheet = sheetOf("Rosa");
        String text = Files.readString(sheet);
        Files.writeString(sheet, text.replace(",Rosa,", ",rosa,"));
        ClassResults results = classroom.collect(folder.resolve("collected"));
        assertEquals(List.of(), results.unread());
        assertEquals("Rosa", results.marked().get(0).answer().student());
        assertEquals(List.of("Emil", "Fritz"), results.missing());

        Files.writeString(sheet, text.replace(",Rosa,", ",Rossa,"));
        assertEquals(
                List.of("lesson-2-Rosa.csv: The class has no student 'Rossa'. Did you mean 'Rosa'?"),
                classroom.collect(folder.resolve("collected")).unread());
        Files.writeString(sheet, text.replace(",Rosa,", ",emil,"));
        assertEquals(
                List.of(
                        "lesson-2-Rosa.csv: it says that it is that of 'emil', lesson 2, but its code is not that of the folder"
                                + " that was handed to that student. Ask for the sheet as lesson.handIn(...) writes it in that folder."),
                classroom.collect(folder.resolve("collected")).unread());
        Files.writeString(sheet, text.replace(",Rosa,", ",Wilhelmina,"));
        assertEquals(
                List.of(
                        "lesson-2-Rosa.csv: The class has no student 'Wilhelmina'. Nor has it a name like that; its names are those"
                                + " it was prepared with."),
                classroom.collect(folder.resolve("collected")).unread());
    }

    @Test
    void nothingIsHandedInWhereNothingIsAnswered() throws IOException {
        Reply reply = Lesson.open(2, 1).handIn("ann", folder.resolve("collected"));
        assertEquals(Reply.Kind.NOTHING_YET, reply.kind());
        assertFalse(Files.exists(folder.resolve("collected")));
    }

    @Test
    void whatASecretSeedMadeIsToldInWords() throws IOException {
        Classroom classroom = Classroom.prepare(List.of("ann"), folder.resolve("teacher"));
        Path plan = Files.writeString(folder.resolve("plan-ann.csv"), "lot,drop temperature [°C]\nCinder Ridge,204\n");
        VirtualLogbook roasted = classroom.roastPlan("ann", plan, folder.resolve("back"));
        assertTrue(roasted.toString().contains(", from a secret seed: 1 batch, "), roasted.toString());
        String readme = Files.readString(folder.resolve("back").resolve("README.md"));
        assertTrue(readme.contains("was made up by a simulator with a secret seed.\n"), readme);
        String summary = Lesson.open(9, 1)
                .tasted(folder.resolve("back").toString())
                .logbook()
                .text();
        assertTrue(summary.contains("(time zone UTC)"), summary);
        assertTrue(Lesson.open(2, 1).logbook().text().contains("(time zone UTC)"));
    }
}
