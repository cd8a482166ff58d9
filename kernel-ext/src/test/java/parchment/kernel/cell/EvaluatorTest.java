package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.kernel.help.Completions;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.source.Readiness;
import parchment.kernel.words.CellError;
import parchment.logbook.contents.Cautions;

class EvaluatorTest {
    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private final RecordingPage page = new RecordingPage();

    private String shownBy(String code) {
        Outcome outcome = evaluator.run(code, page);
        assertTrue(outcome.fine(), () -> outcome.error().orElseThrow().text());
        return page.result();
    }

    private CellError errorOf(String code) {
        Outcome outcome = evaluator.run(code, page);
        assertFalse(outcome.fine(), "the cell should fail");
        return outcome.error().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "1 + 1|2",
                "1 + 1;|2",
                "var a1 = 5\\na1 * 2|10",
                "int b1 = 1\\nint b2 = 2;\\nb1 + b2|3",
                "int c1 = 1 // one\\nint c2 = 2 // two\\n// nothing\\nc1 + c2|3",
                "var l1 = List.of(3, 1,\\n    2)\\nl1.stream()\\n    .sorted()\\n    .toList()|[1, 2, 3]",
                "int d1 = 0\\nfor (int i = 0; i < 4; i++)\\n    d1 += i\\nd1|6",
                "int e1 = 7\\nif (e1 > 5) {\\n    e1 = 5\\n;}\\nelse {\\n e1 = 0; }\\ne1|5",
                "int f1(int x) {\\n    return x\\n        + 1;\\n}\\nf1(1)|2",
                "int g1;\\ng1 = 8|8",
                "String h1 = null;\\nh1|null",
                "var t1 = \"\"\"\\n  two\\n  lines\"\"\"\\nt1.lines().count()|2",
                "new int[] {1, 2}|[1, 2]",
                "record P(int x, int y) { }\\nnew P(1, 2)|P[x=1, y=2]",
                "int k1 = 3;  k1 + 1|4",
                "LocalDate.of(2024, 2, 28).plusDays(1)|2024-02-29",
            })
    void showsTheLastValueWithOrWithoutSemicolons(String code, String shown) {
        assertEquals(shown, shownBy(code.replace("\\n", "\n")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "var quiet = 3;",
                "// only a comment",
                "",
                "System.out.print(1);",
                "import java.net.*;",
                "void q() { }"
            })
    void showsNothingWhereThereIsNoValue(String code) {
        assertEquals("(nothing shown)", shownBy(code));
    }

    @Test
    void letsAVariableBeDefinedAnew() {
        shownBy("var again = 1;");
        shownBy("var again = \"text\";");
        assertEquals("text", shownBy("again"));
    }

    @Test
    void showsAnAssignment() {
        assertEquals("9", shownBy("int assigned = 1;\nassigned = 9"));
    }

    @Test
    void sendsWhatACellPrintsToItsPageOnly() {
        var before = System.out;
        shownBy("System.out.println(\"caf\u00e9 \u2615\");\nSystem.err.print(\"aside\")");
        assertEquals("caf\u00e9 \u2615\n", page.out());
        assertEquals("aside", page.err());
        assertEquals(before, System.out);
    }

    @Test
    void readsALineFromThePage() {
        page.answering("Santos");
        assertEquals("Santos", shownBy("new Scanner(System.in).nextLine()"));
    }

    @Test
    void showsAPictureAsPictureHtmlAndText() {
        shownBy("""
                record Dot(int r) implements parchment.display.Showable {
                    public Optional<String> svg() { return Optional.of("<svg/>"); }
                    public String text() { return "a dot"; }
                }
                new Dot(1)""");
        Shown shown = page.results.get(0);
        assertEquals("a dot", shown.text());
        assertEquals("<svg/>", shown.forms().get(Shown.SVG));
        assertTrue(shown.forms().get(Shown.HTML).contains("<svg/>"));
    }

    @Test
    void showsSeveralThingsInOneCell() {
        shownBy("for (int i = 1; i <= 3; i++) Display.show(\"no. \" + i)");
        assertEquals(
                List.of("no. 1", "no. 2", "no. 3"),
                page.shown.stream().map(Shown::text).toList());
    }

    @Test
    void escapesTextBesidePictures() {
        shownBy("""
                record Named(String name) implements Showable { public String text() { return name; } }
                List.of(new Named("<script>alert(1)</script>"))""");
        String html = page.results.get(0).forms().get(Shown.HTML);
        assertFalse(html.contains("<script>"), html);
        assertTrue(html.contains("&lt;script&gt;"), html);
    }

    @Test
    void tellsHowFarLongWorkIsInOnePlace() {
        shownBy("for (int i : Progress.over(List.of(1, 2, 3, 4, 5), \"counting slowly\")) Thread.sleep(600);");
        assertEquals(1, page.places.size());
        List<Shown> told = page.places.values().iterator().next();
        assertTrue(told.get(0).forms().get(Shown.HTML).contains("<progress"), told.toString());
        assertEquals(
                "counting slowly: all 5 in 3 seconds", told.get(told.size() - 1).text());
    }

    @Test
    void aStopAskedForBeforeTheCellCouldBeginIsKept() {
        Outcome outcome = evaluator.run(1, "int never = 1;", page, () -> true);
        assertEquals("Interrupted", outcome.error().orElseThrow().name());
        assertFalse(evaluator.run("never", page).fine());
        assertTrue(evaluator.run("1 + 1", page).fine());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "System.exit(3)",
                "Runtime.getRuntime().halt(3)",
                "Runtime.getRuntime().exit(3);",
                "try { System.exit(1); } catch (Throwable t) { System.out.println(\"swallowed\"); }",
                "IntStream.of(1).forEach(System::exit)",
                "IntConsumer out = Runtime.getRuntime()::halt;\nout.accept(1)",
            })
    void endsOnlyTheCellThatAsksToExit(String code) {
        shownBy("var kept = 41;");
        assertEquals("Exit refused", errorOf(code).name());
        assertEquals("", page.out());
        assertEquals("42", shownBy("kept + 1"));
    }

    @Test
    void survivesAnEndlessRecursion() {
        CellError error = errorOf("int down(int x) { return down(x + 1); }\ndown(0)");
        assertTrue(error.message().contains("calls itself without end"), error.text());
        assertTrue(error.lines().size() < 12, error.text());
        assertEquals("2", shownBy("1 + 1"));
    }

    @Test
    void survivesLackOfMemory() {
        CellError error = errorOf("var hoard = new ArrayList<long[]>();\nwhile (true) hoard.add(new long[50_000_000])");
        assertTrue(error.message().startsWith("The cell needed more memory"), error.text());
        assertTrue(
                error.text()
                        .endsWith("\nWhat the cell has put into `hoard` is still there and takes up memory."
                                + " To let go of it, run: `hoard = null;`"),
                error.text());
        shownBy("hoard = null;");
    }

    @Test
    void cutsWhatIsPrintedPastWhatAPageHoldsAndGoesOn() {
        assertEquals(
                "7", shownBy("for (int i = 0; i < 100_000; i++) System.out.println(\"a line no. \" + (i % 10));\n7"));
        // 20,000 of 100,000 lines of 13 characters each are shown.
        assertTrue(
                page.out().endsWith("a line no. 9\n... and 1,040,000 more characters in 80,000 lines, not shown\n"),
                page.out().substring(page.out().length() - 100));
        assertEquals(20_001, page.out().lines().count());
    }

    @Test
    void tellsWhatIsCutBeforeTheValue() {
        StringBuilder all = new StringBuilder();
        CellPage ordered = new CellPage() {
            @Override
            public void print(Stream stream, String text) {
                all.append(text);
            }

            @Override
            public void show(Shown value) {
                all.append(value.text());
            }

            @Override
            public void result(Shown value) {
                all.append("value ").append(value.text());
            }
        };
        String cell = "for (int i = 0; i < 100_000; i++) System.out.println(\"a line no. \" + (i % 10));\n7";
        assertTrue(evaluator.run(cell, ordered).fine());
        assertEquals(
                "... and 1,040,000 more characters in 80,000 lines, not shown\nvalue 7",
                all.substring(all.indexOf("...")));
    }

    @Test
    void cutsOneLongLineInItsMiddleAndNeverInsideASign() {
        CellError error = errorOf("System.out.print(\"x\" + \"\\uD83D\\uDE00\".repeat(600_000) + \"!\");\n"
                + "System.err.print(\"aside\");\nInteger.parseInt(\"ten\")");
        assertTrue(
                page.out().endsWith("\uD83D\uDE00\n... and 200,003 more characters in 1 line, not shown\n"),
                page.out().substring(page.out().length() - 100));
        assertEquals(CellStreams.MOST_CHARACTERS - 1, page.out().indexOf('\n'));
        assertEquals("aside", page.err());
        assertTrue(error.text().contains("For input string: \"ten\""), error.text());
    }

    @Test
    void saysNothingOfACutWhereAPageIsJustFull() {
        shownBy("System.out.print(\"1234567\\n\".repeat(19_999) + \"x\".repeat(1_000_000 - 8 * 19_999));");
        assertEquals(CellStreams.MOST_CHARACTERS, page.out().length());
        shownBy("System.out.print(\"!\\n\".repeat(20_000));");
        assertTrue(
                page.out().endsWith("!\n!\n"), page.out().substring(page.out().length() - 100));
    }

    @Test
    void pointsAtTheLineThatDoesNotCompile() {
        CellError error = errorOf("int fine = 1;\n\n  double wrong = \"text\";\n");
        assertEquals("Line 3:    double wrong = \"text\";", error.lines().get(0));
        assertEquals(error.lines().get(0).indexOf('"'), error.lines().get(1).indexOf('^'));
        assertEquals(
                "This is of type String, but double is needed here.",
                error.lines().get(2));
    }

    @Test
    void runsNothingOfACellThatIsNotWholeJava() {
        shownBy("int counted = 0;");
        errorOf("counted = 1;\nString x = \"open");
        errorOf("counted = 1;\nint x = = 3;\ncounted = 2;");
        assertEquals("0", shownBy("counted"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "Temprature.of(1, TemperatureUnit.CELSIUS)|`Temperature`",
                "TemperatureUnit.CELCIUS|`CELSIUS`",
                "List.of(1).strem()|`stream`",
                "var batches1 = List.of(1);\\nbatchs1.size()|`batches1`",
                "String s1 = Sting.valueOf(1)|`String`",
            })
    void offersTheClosestName(String code, String offered) {
        CellError error = errorOf(code.replace("\\n", "\n"));
        assertTrue(error.text().contains("Did you mean") && error.text().contains(offered), error.text());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "int f( {|block { opened here is never closed",
                "if (true) {\\n  foo();|block { opened here is never closed",
                "/* never|comment opened here is never closed",
                "String s = \"open|no closing quote",
                "int y = 'word';|double quotes",
                "Math.max(1)|`max` was given (int), but takes (int, int), or (long, long)",
                "\"a\".charAt()|`charAt` takes (int), but was given nothing",
            })
    void saysInPlainWordsWhatIsWrong(String code, String words) {
        CellError error = errorOf(code.replace("\\n", "\n"));
        assertTrue(error.text().contains(words), error.text());
        assertFalse(error.text().contains("REPL"), error.text());
    }

    @Test
    void showsOnlyTheUsersOwnLinesOfAnException() {
        shownBy("int number(String text) {\n    return Integer.parseInt(text);\n}");
        CellError error = errorOf("// first\nvar n = 1;\nnumber(\"ten\")");
        assertEquals("NumberFormatException", error.name());
        assertTrue(error.text().contains("NumberFormatException: For input string: \"ten\""), error.text());
        assertTrue(error.lines().get(0).contains("return Integer.parseInt(text);"), error.text());
        assertTrue(error.text().contains("called from Line 3:  number(\"ten\")"), error.text());
        assertFalse(error.text().contains("java.base"), error.text());
    }

    @Test
    void showsTheCauses() {
        CellError error = errorOf("throw new RuntimeException(\"outer\", new IOException(\"inner\"));");
        assertTrue(error.text().contains("RuntimeException: outer"), error.text());
        assertTrue(error.text().contains("Cause: IOException: inner"), error.text());
    }

    @Test
    void saysInWordsWhatTheDiskSays() {
        CellError none = errorOf("Files.readString(Path.of(\"no such file\"))");
        assertTrue(none.text().contains("There is no file or folder no such file."), none.text());
        assertFalse(none.text().contains("Exception"), none.text());
        if (Files.isWritable(Path.of("/dev/full"))) { // What is written to it fails as on a full disk.
            for (String cell : List.of(
                    "Files.writeString(Path.of(\"/dev/full\"), \"x\")",
                    "parchment.file.WholeFile.at(Path.of(\"/dev/full\")).write(\"x\")")) {
                CellError full = errorOf(cell);
                assertTrue(full.text().contains("the disk is full"), full.text());
                assertFalse(full.text().contains("Exception"), full.text());
            }
        }
    }

    @Test
    void showsTheLibrarysOwnRefusalsAsPlainSentences() {
        CellError error = errorOf("Mass.of(-1, MassUnit.KILOGRAM)");
        assertFalse(error.text().contains("IllegalArgumentException"), error.text());
    }

    @Test
    void hidesTheShellsNamesInNullMessages() {
        CellError error = errorOf("String nothing = null;\nnothing.length()");
        assertTrue(error.text().contains("\"nothing\" is null"), error.text());
        assertFalse(error.text().contains("REPL"), error.text());
    }

    @Test
    void saysWhatAMethodStillNeeds() {
        shownBy("int later(int x) { return helpful(x); }");
        assertEquals("`later` is noted, but cannot be used yet: nothing here is named `helpful(int)`.\n", page.out());
        assertEquals("", page.err(), "it is no error");
        assertTrue(errorOf("later(1)").message().contains("`helpful(int)`"));
        shownBy("int helpful(int x) { return x; }");
        assertEquals("1", shownBy("later(1)"));
    }

    @Test
    void saysOnceAtTheEndOfACellWhatSeveralMethodsNeed() {
        shownBy("int one() { return nowhere(1); }\nint two() { return nowhere(1); }\nint three() { return one(); }\n"
                + "System.out.println(\"ran\");");
        assertEquals(
                "ran\n`one` and `two` are noted, but cannot be used yet: nothing here is named `nowhere(int)`.\n",
                page.out());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "int first() { return second(); }\nint second() { return 4; }\nfirst()",
                "boolean even(int n) { return n == 0 || odd(n - 1); }\nboolean odd(int n) { return n != 0 && even(n - 1); }\n"
                        + "even(8) ? 4 : 0",
                "sealed interface Shape permits Disc, Sheet { }\nrecord Disc(double r) implements Shape { }\n"
                        + "record Sheet(double a, double b) implements Shape { }\nShape shape = new Sheet(1, 4);\n"
                        + "shape instanceof Sheet sheet ? (int) sheet.b() : 0",
                "class Node { Edge edge = new Edge(this); }\nclass Edge { Node from; Edge(Node from) { this.from = from; } }\n"
                        + "new Node().edge.from instanceof Node ? 4 : 0",
                "int atLast() { return LATE; }\nint LATE = 4;\natLast()",
            })
    void isSilentOnWhatTheSameCellDefinesFurtherDown(String code) {
        assertEquals("4", shownBy(code.replace("\\n", "\n")));
        assertEquals("", page.err());
    }

    @Test
    void looksAtAssertions() {
        CellError error = errorOf("int kept = 3;\nassert kept > 5 : \"kept is \" + kept;");
        assertTrue(error.text().contains("kept is 3"), error.text());
        assertEquals("AssertionError", error.name());
        shownBy("void check(int x) { assert x > 5; }");
        errorOf("check(1)");
        shownBy("check(6)");
    }

    @Test
    void completesMembersAfterOtherStatements() {
        Completions found = evaluator.complete("var s2 = \"x\";\ns2.toUpp", 22);
        assertEquals(
                List.of("toUpperCase("), found.matches().stream().distinct().toList());
        assertEquals(17, found.start());
    }

    @Test
    void saysWhatANameIs() {
        Shown shown = evaluator.inspect("Math.max", 8);
        assertTrue(shown != null && shown.text().contains("max(int a, int b)"), String.valueOf(shown));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 + 1|COMPLETE",
                "for (;;) {|INCOMPLETE",
                "int x = \"open|INVALID",
                "int x = = 3;|INVALID",
                "int f() { return 1; }|COMPLETE",
                "import java.net.*|COMPLETE",
                "var y = 1|COMPLETE",
                "foo(|INCOMPLETE",
                "foo(1,|INCOMPLETE",
                "int|INCOMPLETE",
                "int x =|INCOMPLETE",
                "x +|INCOMPLETE",
                "x.|INCOMPLETE",
                "if (x) {|INCOMPLETE",
                "for (int i = 0;|INCOMPLETE",
                "class A {|INCOMPLETE",
                "class A { int a() { return 1; }|INCOMPLETE",
                "record A(int a,|INCOMPLETE",
                "new Thread(() -> {|INCOMPLETE",
                "switch (1) { case 1 ->|INCOMPLETE",
                "/* a comment|INCOMPLETE",
                "var t = \"\"\" text|INCOMPLETE",
                "List<String>|INCOMPLETE",
                "try {|INCOMPLETE",
                "do { }|INCOMPLETE",
                "int int|INVALID",
                "class class|INVALID",
                "foo(1 2|INVALID",
                "int f( {|INVALID",
                "!ls|INVALID",
                "!ls -l|INVALID",
            })
    void tellsWhetherACellIsReady(String code, Readiness.ReadyState state) {
        assertEquals(state, evaluator.readiness(code).state());
    }

    @Test
    void keepsWhatWasMadeFromAVariableThatIsDefinedAnew() {
        shownBy("var base = List.of(1, 2);\nvar made = base.size();");
        shownBy("var base = List.of(1, 2, 3);");
        assertEquals("2", shownBy("made"));
    }

    @Test
    void saysWhichVariableNoLongerFits() {
        shownBy("record Kind(int a) { }\nvar one = new Kind(1);");
        shownBy("record Kind(int a, int b) { }");
        assertTrue(page.err().contains("`one` is empty now"), page.err());
    }

    @Test
    void letsACellDefineATypeNamedAsOneOfOurs() {
        assertEquals("Clock[hours=3]", shownBy("record Clock(int hours) { }\nnew Clock(3)"));
        evaluator.complete("Clo", 3); // Makes all imports.
        assertEquals("Clock[hours=4]", shownBy("new Clock(4)"));
    }

    @Test
    void reachesLibrariesThatTheFirstCompilationsLeaveOut() {
        shownBy("import com.google.gson.JsonPrimitive;");
        assertEquals("\"x\"", shownBy("new JsonPrimitive(\"x\")"));
    }

    @Test
    void letsGoOfValuesThatAreDefinedAnew() throws Exception {
        shownBy("var big = new byte[1];\nvar watch = new java.lang.ref.WeakReference<>(big);");
        shownBy("var big = new byte[2];");
        shownBy("new byte[3]");
        System.gc();
        assertEquals("true", shownBy("watch.get() == null"));
    }

    /** In a notebook cells are run again one at a time, so each that opens the logbook says it. */
    @Test
    void everyCellThatOpensAnInventedLogbookSaysSoUnderIt() {
        String demo = Path.of("..", "datasets", "hillside").toString().replace("\\", "/");
        try (Evaluator own = Evaluator.open()) {
            for (int round = 0; round < 2; round++) {
                RecordingPage opening = new RecordingPage();
                assertTrue(own.run("var demo = Logbook.open(\"" + demo + "\");", opening)
                        .fine());
                assertEquals(
                        List.of(Cautions.INVENTED_PAGE),
                        opening.pageNotes.stream().map(Shown::text).toList());
                RecordingPage using = new RecordingPage();
                assertTrue(own.run("demo.batches().get(0)", using).fine());
                assertEquals(List.of(), using.pageNotes);
            }
        }
    }
}
