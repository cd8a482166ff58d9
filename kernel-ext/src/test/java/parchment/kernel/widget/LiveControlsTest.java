package parchment.kernel.widget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.dflib.jjava.jupyter.messages.comm.CommMsgCommand;
import org.dflib.jjava.jupyter.messages.comm.CommOpenCommand;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.control.CheckBox;
import parchment.control.ControlBox;
import parchment.control.CountSlider;
import parchment.control.OutputArea;
import parchment.display.Display;
import parchment.display.Showable;
import parchment.display.live.Live;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;
import parchment.kernel.protocol.Comms;
import parchment.kernel.protocol.Connection;
import parchment.kernel.protocol.MadeConnection;
import parchment.kernel.stop.CellStop;
import parchment.kernel.stop.MadeLeftBehind;

/** The controls of a session over sockets at whose other end nobody is. */
class LiveControlsTest {
    @TempDir
    private Path folder;

    private static Evaluator evaluator;

    private final RecordingPage page = new RecordingPage();
    private Connection connection;
    private Comms comms;
    private LiveControls controls;

    @BeforeAll
    static void begin() {
        evaluator = Evaluator.open();
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    @BeforeEach
    void bind() throws Exception {
        connection = MadeConnection.in(folder);
        comms = new Comms(connection);
        controls = new LiveControls(
                comms, (shown, work) -> evaluator.act(shown, work, () -> false), value -> evaluator.shown(value));
    }

    @AfterEach
    void end() {
        connection.close();
    }

    private String open(Live live) {
        Map<String, String> forms = controls.open(live, page);
        return JsonParser.parseString(forms.get("application/vnd.jupyter.widget-view+json"))
                .getAsJsonObject()
                .get("model_id")
                .getAsString();
    }

    private boolean isAlive(String view) {
        return controls.states().has(view);
    }

    private JsonObject state(String model) {
        return controls.states().getAsJsonObject(model).getAsJsonObject("state");
    }

    private List<String> members(String view) {
        List<String> members = new ArrayList<>();
        state(view)
                .getAsJsonArray("children")
                .forEach(child -> members.add(child.getAsString().substring("IPY_MODEL_".length())));
        return members;
    }

    private JsonArray outputs(String view) {
        return state(members(view).get(1)).getAsJsonArray("outputs");
    }

    private static String plain(JsonArray outputs, int place) {
        return outputs.get(place)
                .getAsJsonObject()
                .getAsJsonObject("data")
                .get("text/plain")
                .getAsString();
    }

    private void move(String view, int to) {
        JsonObject state = new JsonObject();
        state.addProperty("value", to);
        comms.said(new CommMsgCommand(members(view).get(0), Comms.state("update", state)), Comms.Haste.NEWEST);
    }

    @Test
    void aPictureThatNeverEndsHoldsUpNoOtherControl() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch ends = new CountDownLatch(1);
        String other = open(CountSlider.of("other", 1, 9).showing(n -> n));
        CountSlider slow = CountSlider.of("slow", 1, 9).showing(n -> {
            begun.countDown();
            while (ends.getCount() > 0) {
                Thread.onSpinWait();
            }
            return n;
        });
        Thread left = new Thread(() -> {
            try {
                open(slow);
            } catch (CellStop stop) {
                return; // As asked.
            }
        });
        left.start();
        begun.await();
        try {
            assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
                int models = controls.states().size();
                move(other, 4);
                assertEquals("4", plain(outputs(other), 0));
                comms.closed(other);
                assertFalse(isAlive(other));
                MadeLeftBehind.add(left);
                ends.countDown();
                left.join();
                assertEquals(0, controls.states().size(), "what was left behind opens nothing any more, of " + models);
            });
        } finally {
            ends.countDown();
            MadeLeftBehind.sweep();
        }
    }

    @Test
    void ofMoreThanAHundredLinesOfClientsTheOldestIsClosed() {
        String target = "jupyter.widget.control";
        for (int i = 0; i < 100; i++) {
            comms.opened(new CommOpenCommand("line " + i, target, new JsonObject()));
        }
        assertEquals(100, comms.info(target).getAsJsonObject("comms").size());
        assertTrue(comms.info(target).getAsJsonObject("comms").has("line 0"));
        comms.opened(new CommOpenCommand("line 100", target, new JsonObject()));
        JsonObject open = comms.info(target).getAsJsonObject("comms");
        assertEquals(100, open.size());
        assertTrue(!open.has("line 0") && open.has("line 1") && open.has("line 100"));
    }

    @Test
    void aPictureIsDrawnOnceForThePageAndForTheWordsBesideIt() {
        AtomicInteger drawn = new AtomicInteger();
        record Drawn(AtomicInteger count) implements Showable {
            @Override
            public java.util.Optional<String> html() {
                count.incrementAndGet();
                return java.util.Optional.of("<b>drawn</b>");
            }
        }
        CountSlider slider = CountSlider.of("n", 1, 9).showing(n -> new Drawn(drawn));
        assertTrue(slider.html().orElseThrow().contains("<b>drawn</b>"));
        open(slider);
        assertEquals(1, drawn.get());
    }

    @Test
    void whatAControlShowsIsShownAsTheSessionShowsIt() {
        String cell = "record Cup(int n) {}\nDisplay.register(Cup.class, cup -> \"cup no. \" + cup.n());\n"
                + "import parchment.control.*;\nvar area = OutputArea.empty();\narea.show(new Cup(3));\n"
                + "var slider = CountSlider.of(\"n\", 1, 9).showing(n -> new Cup(n));\n"
                + "var dots = CountSlider.of(\"n\", 1, 9).showing(n -> new int[] {n, n + 1});\n";
        assertTrue(evaluator.run(cell, page).fine());
        String shown = "ControlBox.column(area, slider, dots)";
        assertTrue(evaluator.run(shown, page).fine());
        Shown box = page.results.get(page.results.size() - 1);
        assertEquals(
                "cup no. 3\nN is 1, on a slider from 1 to 9.\ncup no. 1\nN is 1, on a slider from 1 to 9.\n[1, 2]",
                box.text());
        String html = String.valueOf(box.forms().get(Shown.HTML));
        assertTrue(html.contains("cup no. 3") && html.contains("cup no. 1") && !html.contains("Cup["), html);
        assertTrue(evaluator.run("slider.set(2);\nslider", page).fine());
        assertTrue(page.result().endsWith("cup no. 2"));
    }

    @Test
    void whatWasPutIntoAnAreaIsShownOnItsPageAsTheSessionShowsIt() {
        OutputArea area = OutputArea.empty();
        area.show(new int[] {1, 2});
        String view = open(area);
        assertEquals("[1, 2]", plain(state(view).getAsJsonArray("outputs"), 0));
        area.add(new int[] {3});
        assertEquals("[3]", plain(state(view).getAsJsonArray("outputs"), 1));
        AtomicReference<String> opened = new AtomicReference<>();
        CountSlider made = CountSlider.of("n", 1, 9).showing(n -> new int[] {n});
        assertTrue(
                evaluator.act(page, () -> opened.set(open(made)), () -> false).fine());
        String slider = opened.get();
        String first = plain(outputs(slider), 0);
        move(slider, 1);
        assertEquals(first, plain(outputs(slider), 0));
        assertEquals("[1]", first);
    }

    @Test
    void anUpdateFromACallbackChangesThePlaceAndAddsNothing() {
        assertTrue(evaluator.run("Display.show(\"place\", \"first\");", page).fine());
        CountSlider first = CountSlider.of("first", 1, 9).onChange(n -> {
            if (n == 2) {
                Display.show("place", "shown " + n);
            } else {
                Display.update("place", "updated " + n);
            }
        });
        CountSlider second = CountSlider.of("second", 1, 9).onChange(n -> Display.update("place", "from outside"));
        String one = open(first);
        String two = open(second);
        move(one, 2);
        assertEquals("shown 2", plain(outputs(one), 0));
        move(one, 3);
        assertEquals("updated 3", plain(outputs(one), 0));
        assertEquals(1, outputs(one).size());
        move(two, 2);
        assertEquals("from outside", plain(outputs(one), 0));
        assertEquals(0, outputs(two).size());
        controls.update("place", Shown.of("from a cell"));
        assertEquals("from a cell", plain(outputs(one), 0));
        controls.update("another", Shown.of("nowhere"));
        assertEquals("from a cell", plain(outputs(one), 0));
    }

    @Test
    void ofManyOutputsOfACallbackTheLastAreKeptAndPrintedTextStaysWhole() {
        String view = open(CountSlider.of("n", 1, 9).onChange(n -> {
            for (int i = 0; i < (n == 2 ? 200 : 201); i++) {
                Display.show("no. " + i);
            }
        }));
        move(view, 2);
        assertEquals(200, outputs(view).size());
        assertEquals("no. 0", plain(outputs(view), 0));
        move(view, 3);
        assertEquals(200, outputs(view).size());
        assertEquals("no. 1", plain(outputs(view), 0));
        String printing = open(CountSlider.of("n", 1, 9).onChange(n -> {
            for (int i = 0; i < 20_001; i++) {
                System.out.println(i);
            }
            System.err.println("beside");
            System.out.println("after");
        }));
        move(printing, 2);
        JsonArray printed = outputs(printing);
        assertEquals(
                List.of("stdout", "stderr", "stdout"),
                Stream.of(0, 1, 2)
                        .map(i -> printed.get(i).getAsJsonObject().get("name").getAsString())
                        .toList());
        String text = printed.get(0).getAsJsonObject().get("text").getAsString();
        assertTrue(text.startsWith("0\n1\n2\n") && text.endsWith("19998\n19999\n"), "the first 20,000 lines");
        assertEquals(
                "... and 12 more characters in 2 lines, not shown\n",
                printed.get(2).getAsJsonObject().get("text").getAsString());
    }

    @Test
    void aCallbackThatAsksForALineIsToldWhatToUse() {
        String view = open(CountSlider.of("n", 1, 9).onChange(n -> new java.util.Scanner(System.in).nextLine()));
        move(view, 2);
        assertEquals(
                "What a control sets off cannot ask for a line of input. Put a TextField beside the control, and read its"
                        + " value().",
                outputs(view).get(0).getAsJsonObject().get("evalue").getAsString());
    }

    @Test
    void aFunctionThatFailsIsNamedAsWhatFailed() {
        Outcome outcome = evaluator.run(
                "import parchment.control.*;\nCountSlider.of(\"n\", 1, 9).showing(n -> 1 / (n - 1))", page);
        assertEquals(
                "The CountSlider was made, but what it shows of its value could not be worked out: what showing(...) was"
                        + " given failed.",
                outcome.error().orElseThrow().lines().get(0));
    }

    @Test
    void aBoxStaysWholeHoweverManyControlsFollowUntilItsTurnComes() {
        CheckBox first = CheckBox.of("first");
        ControlBox box = ControlBox.column(first, CheckBox.of("second"));
        String view = open(box);
        List<String> members = members(view);
        for (int i = 0; i < 197; i++) {
            open(CheckBox.of("more"));
        }
        assertEquals("", page.err());
        assertTrue(isAlive(view) && members.stream().allMatch(this::isAlive), "200 are alive");
        open(CheckBox.of("last"));
        assertFalse(isAlive(view) || members.stream().anyMatch(this::isAlive), "the box goes with all that is in it");
        assertEquals(
                "More than 200 controls are alive on these pages, so the oldest 3 no longer answer (A column of 2 controls, and"
                        + " 2 more). Run their cells again to bring them back.\n",
                page.err());
        String again = open(box);
        assertTrue(isAlive(again) && members(again).stream().allMatch(this::isAlive));
    }

    @Test
    void aMemberThatWasShownByItselfOutlivesItsBoxUntilItsOwnTurn() {
        CheckBox first = CheckBox.of("first");
        String own = open(first);
        String view = open(ControlBox.column(first, CheckBox.of("second")));
        for (int i = 0; i < 198; i++) {
            open(CheckBox.of("more"));
        }
        assertFalse(isAlive(view));
        assertTrue(isAlive(own));
    }

    @Test
    void aBoxOfMoreThanTheMostIsOpenedWhole() {
        Live[] many = Stream.generate(() -> CheckBox.of("one")).limit(201).toArray(Live[]::new);
        String view = open(ControlBox.column(many));
        assertEquals(201, members(view).size());
        assertTrue(members(view).stream().allMatch(this::isAlive));
    }

    @Test
    void aBoxOneOfWhoseMembersAClientClosedComesBackWhole() {
        ControlBox inner = ControlBox.row(CheckBox.of("first"), CheckBox.of("second"));
        ControlBox box = ControlBox.column(inner);
        String view = open(box);
        assertEquals(view, open(box), "as long as it is whole");
        comms.closed(members(members(view).get(0)).get(0));
        String again = open(box);
        assertFalse(view.equals(again) || isAlive(view));
        assertTrue(members(members(again).get(0)).stream().allMatch(this::isAlive));
        comms.closed(again);
        assertFalse(isAlive(again));
        assertTrue(isAlive(open(box)));
    }
}
