package parchment.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ControlsTest {
    private static String said(Executable wrong) {
        return assertThrows(IllegalArgumentException.class, wrong).getMessage();
    }

    @Test
    void saysInWordsWhatItIsAndWhereItStands() {
        assertEquals(
                "drop temperature is 204.0 °C, on a slider from 196.0 to 212.0 °C.",
                Slider.of("drop temperature", 196, 212).withUnit("°C").toString());
        assertEquals(
                "drop temperature, °C",
                Slider.of("drop temperature", 196, 212).withUnit("°C").label());
        assertEquals(
                "batches is 3, on a slider from 1 to 9.",
                CountSlider.of("batches", 1, 9).startingAt(3).toString());
        assertEquals(
                "green mass goes from 2.0 to 12.0 kg, on a slider from 2.0 to 12.0 kg.",
                RangeSlider.of("green mass", 2, 12).withUnit("kg").toString());
        assertEquals("lot is x, chosen from x, y.", Choice.of("lot", "x", "y").toString());
        assertEquals(
                "lot is a, chosen from a, b, c, d, e and 2 more.",
                Choice.of("lot", "a", "b", "c", "d", "e", "f", "g").toString());
        assertEquals(
                "lots: none chosen from x, y.", Choices.of("lots", "x", "y").toString());
        assertEquals(
                "lots: y chosen from x, y.",
                Choices.of("lots", "x", "y").startingAt(List.of("y")).toString());
        assertEquals("cupped only is not ticked.", CheckBox.of("cupped only").toString());
        assertEquals(
                "cupped only is ticked.", CheckBox.of("cupped only").ticked().toString());
        assertEquals(
                "the button 'Draw' has not been pressed yet.", Button.of("Draw").toString());
        assertEquals("batch is an empty line.", TextField.of("batch").toString());
        assertEquals(
                "batch is 'H012'.", TextField.of("batch").startingAt("H012").toString());
        assertEquals("a < b", HtmlNote.ofText("a < b").toString());
        assertEquals(
                "A row of 2 controls.",
                ControlBox.row(CheckBox.of("a"), CheckBox.of("b")).toString());
        assertEquals("An area with nothing shown in it.", OutputArea.empty().toString());
    }

    @Test
    void aCheckBoxGivesTrueOrFalse() {
        List<String> told = new ArrayList<>();
        CheckBox box = CheckBox.of("cupped only")
                .onChange(ticked -> told.add(ticked ? "ticked" : "clear"))
                .showing(ticked -> ticked ? "shows ticked" : "shows clear");
        assertFalse(box.value());
        assertTrue(box.text().endsWith("\nshows clear"));
        box.wire().take(true);
        box.wire().tell();
        assertTrue(box.value());
        box.clear();
        assertFalse(box.value());
        box.tick();
        assertTrue(box.value());
        assertTrue(box.ticked().value());
        assertEquals(List.of("ticked"), told);
    }

    @ParameterizedTest
    @CsvSource({
        "0,2,1,0.7,0.7", // 1 lies between 0.7 and 1.4, nearer to the first.
        "0,2,1.1,0.7,1.4",
        "0,2,2,0.7,1.4", // The last step before the upper end.
        "0,2,1,0.5,1",
        "0.3,1.3,0.6,0.1,0.6", // On a step, though not to the last digit of Java's numbers.
        "196,212,204.5,0.2,204.4"
    })
    void anotherStepBringsTheValueToTheNearestStep(double low, double high, double start, double step, double then) {
        Slider slider = Slider.of("n", low, high).startingAt(start).withStep(step);
        assertEquals(then, slider.value());
        assertEquals(start, slider.startingAt(start).value());
    }

    @Test
    void onAStillPageItShowsWhatItWouldShowOfItsValue() {
        CountSlider slider = CountSlider.of("n", 1, 9).showing(n -> "<" + n * n + ">");
        assertEquals("N is 1, on a slider from 1 to 9.\n<1>", slider.text());
        assertEquals(
                "<div class=\"parchment-control\"><p>N is 1, on a slider from 1 to 9. It cannot be changed on this page.</p>"
                        + "<pre>&lt;1&gt;</pre></div>",
                slider.html().orElseThrow());
        slider.set(3);
        assertTrue(slider.text().endsWith("\n<9>"));
    }

    @ParameterizedTest
    @CsvSource({
        "0,100,1,0",
        "196,212,0.2,1",
        "0,1,0.01,2",
        "2,12,0.1,1",
        "0,125,1,0",
        "0,126,2,0",
        "0,250,2,0",
        "0,251,5,0",
        "0,626,10,0"
    })
    void stepsAreRoundNumbersOfWhichAboutAHundredGoIntoTheRange(double low, double high, double step, int digits) {
        Slider slider = Slider.of("a", low, high);
        assertEquals(step, slider.step(), 1e-12);
        assertEquals(digits, slider.digits());
        double steps = (high - low) / slider.step();
        assertTrue(steps >= 50 && steps <= 125 + 1e-9, steps + " steps");
    }

    @Test
    void whatJavaSetsCallsNobodyAndReachesThePage() {
        List<Object> heard = new ArrayList<>();
        List<Object> page = new ArrayList<>();
        Slider slider = Slider.of("a", 0, 10).onChange(heard::add);
        slider.wire().connect(page::add);
        slider.set(3);
        assertEquals(List.of(), heard);
        assertEquals(List.of(3.0), page);
        slider.wire().take(4.0);
        slider.wire().tell();
        assertEquals(List.of(4.0), heard);
        assertEquals(List.of(3.0), page);
        slider.wire().disconnect();
        slider.set(5);
        assertEquals(List.of(3.0), page);
        assertEquals(5, slider.value());
    }

    @Test
    void callbacksAreKeptWhenAControlIsDescribedFurther() {
        List<Object> heard = new ArrayList<>();
        Slider slider = Slider.of("a", 0, 10)
                .onChange(heard::add)
                .withUnit("kg")
                .withStep(0.5)
                .startingAt(2);
        slider.wire().tell();
        assertEquals(List.of(2.0), heard);
        assertEquals(0.5, slider.step());
    }

    @Test
    void ofManyThingsInAnAreaTheFirstGo() {
        OutputArea area = OutputArea.empty();
        for (int i = 0; i <= 100; i++) {
            area.add(i);
        }
        assertEquals(100, area.shown().size());
        assertEquals(1, area.shown().get(0));
        area.show("one");
        assertEquals(List.of("one"), area.shown());
        assertEquals("An area with one thing shown in it.", area.toString());
        area.clear();
        assertEquals(List.of(), area.shown());
    }

    @Test
    void saysWhatCannotBe() {
        assertEquals(
                "'a' needs a lower end below its upper end; it was given 2.0 and 2.0.",
                said(() -> Slider.of("a", 2, 2)));
        assertEquals(
                "'a' goes from 0.0 to 1.0; it was given 1.5.",
                said(() -> Slider.of("a", 0, 1).set(1.5)));
        assertEquals(
                "The step of 'a' has to be above 0; it was given 0.0.",
                said(() -> Slider.of("a", 0, 1).withStep(0)));
        assertEquals(
                "'a' cannot be 'z'. It is chosen from: x, y.",
                said(() -> Choice.of("a", "x", "y").set("z")));
        assertEquals("'a' needs something to choose from; its list is empty.", said(() -> Choice.of("a", List.of())));
        assertEquals(
                "What 'a' is chosen from has to differ; more than once in its list: 'x'.",
                said(() -> Choices.of("a", "x", "y", "x")));
        assertEquals(
                "'a' goes from 3.0 to 10.0; it was given 2.0.",
                said(() -> RangeSlider.of("a", 0, 10).set(3, 2)));
        assertFalse(new RangeSlider.Between(1, 2).holds(Double.NaN));
        assertTrue(new RangeSlider.Between(1, 2).holds(2));
    }
}
