package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class CrowdOfLinesTest {
    private static final String SHADING =
            "Grey shading is many thin lines close together: the stronger the grey, the more of them.";

    private static Line thin(String name, double from, double to, double height) {
        double[] xs = {from, (from + to) / 2, to};
        double[] ys = {height, height + 1, height + 2};
        return Line.of("one each", xs, ys).withWeight(Weight.FAINT).withName(name);
    }

    private static Plot times(List<Line> lines) {
        return Plot.of("Times", Axis.clock("time"), Axis.number("reading", "")).with(lines);
    }

    private static List<Line> alike(int count) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            lines.add(thin("line " + i, 0, 600, i));
        }
        return lines;
    }

    @ParameterizedTest
    @CsvSource({"level, 0.5, 20", "level, 1, 10", "upright, 1, 10", "level, 2, 5"})
    void densityIsHowManyLinesPassThroughTenUnits(String direction, double apart, double expected) {
        Density density = new Density(0, 0, 300, 300);
        for (double place = apart / 2; place < 300; place += apart) {
            if (direction.equals("level")) {
                density.add(0, place, 300, place);
            } else {
                density.add(place, 0, place, 300);
            }
        }
        assertEquals(expected, density.at(density.field(), 150, 150), 0.05 * expected);
        assertEquals(0, density.at(density.field(), 450, 150));
    }

    @Test
    void contoursEncloseTheAreaOfADiscAndLeaveOutAHole() {
        int size = 81;
        double[] ring = new double[size * size];
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                double radius = Math.hypot(column - 40, row - 40);
                ring[row * size + column] = Math.min(30 - radius, radius - 10);
            }
        }
        List<List<Contours.Place>> rings = Contours.of(new Density.Field(ring, size, size), 0);
        assertEquals(2, rings.size());
        double area =
                Math.abs(rings.stream().mapToDouble(CrowdOfLinesTest::area).sum());
        assertEquals(Math.PI * (30 * 30 - 10 * 10), area, 15);
    }

    /** Area inside a ring with the sign of its direction (the surveyor's formula). */
    private static double area(List<Contours.Place> ring) {
        double twice = 0;
        for (int i = 0; i < ring.size(); i++) {
            Contours.Place here = ring.get(i);
            Contours.Place next = ring.get((i + 1) % ring.size());
            twice += here.column() * next.row() - next.column() * here.row();
        }
        return twice / 2;
    }

    @ParameterizedTest
    @CsvSource({"40, false", "41, true"})
    void aboveFortyLinesThoseThatLieCloseAreShadedAndThePictureSaysWhatItMeans(int count, boolean shaded) {
        Plot plot = times(alike(count));
        String svg = plot.svg().orElseThrow();
        assertEquals(shaded, svg.contains(">" + SHADING + "</text>"), svg);
        assertEquals(shaded, plot.chart().text().contains(SHADING));
        assertEquals(shaded, svg.contains(">one each, shaded where many run</text>"));
        assertEquals(!shaded, svg.contains(">one each</text>"));
    }

    @Test
    void sevenHundredTwentyCurvesAreShadingOfABoundedSizeUnderLinesWithARim() {
        Plot plot = Gallery.crowd(720);
        String svg = plot.svg().orElseThrow();
        assertTrue(svg.length() < 60_000, svg.length() + " characters");
        int shading = svg.lastIndexOf("fill-rule=\"evenodd\"");
        int rim = svg.indexOf("stroke=\"#fff\"");
        int median = svg.indexOf("stroke-width=\"2.8\"");
        assertTrue(shading > 0 && shading < rim && rim < median, shading + ", " + rim + ", " + median);
        assertTrue(plot.html().orElseThrow().contains("stroke:var(--jp-layout-color0,"));
    }

    @ParameterizedTest
    @CsvSource({"10, false", "11, true"})
    void overMoreThanTenThinLinesAnotherHasARim(int count, boolean rim) {
        Line median = Line.of("median", new double[] {0, 600}, new double[] {3, 4});
        String svg = times(alike(count)).with(median).svg().orElseThrow();
        assertEquals(rim, svg.contains("stroke=\"#fff\""), svg);
    }

    @Test
    void shadingGetsDarkerInStepsButNeverHidesALineOverIt() {
        List<Double> steps = CrowdPainter.steps(CrowdPainter.MOST_STEPS);
        assertEquals(steps.stream().sorted().toList(), steps);
        double[] greys = {0.16, 0.228, 0.296, 0.364, 0.432, 0.5};
        for (int i = 0; i < greys.length; i++) {
            assertEquals(greys[i], steps.get(i), 1e-9);
        }
        String svg = Gallery.crowd(720).svg().orElseThrow();
        double through = 1;
        for (String part : svg.split("fill-rule=\"evenodd\" stroke=\"none\" fill-opacity=\"")) {
            through *= part.startsWith("<svg") ? 1 : 1 - Double.parseDouble(part.substring(0, part.indexOf('"')));
        }
        assertEquals(0.5, through, 0.005);
    }

    @Test
    void anOddLineAmongManyIsStillDrawnAsALine() {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            lines.add(thin("", 0, 600, i / 400.0));
        }
        assertFalse(times(lines).svg().orElseThrow().contains("stroke-opacity=\".4\""));
        lines.add(thin("", 0, 600, 6.5));
        assertTrue(times(lines).svg().orElseThrow().contains("stroke-opacity=\".4\""));
    }

    @ParameterizedTest
    @CsvSource({"10, 751, true", "10, 749, false", "9, 751, false", "10, 1200, true"})
    void oneLineFarBeyondAtLeastNineOthersRunsPastTheEdgeAndIsNamed(int count, double end, boolean cut) {
        List<Line> lines = alike(count - 1);
        lines.add(thin("the long one", 0, end, 5));
        Frame frame = Frame.of(times(lines).chart().panels());
        assertEquals(cut ? 630 : end, frame.across().high(), 1e-9);
        assertEquals(
                cut ? List.of("1 of the thin lines runs past 10:30, the picture's edge: the long one.") : List.of(),
                frame.notes());
    }

    @Test
    void twoInAHundredMayRunPastEachEdgeAndAllAreCounted() {
        List<Line> lines = alike(392);
        for (int i = 0; i < 8; i++) {
            lines.add(thin("long " + i, 0, 1000 + i, 5));
        }
        String eight = "8 of the thin lines run past 10:30, the picture's edge:"
                + " long 0, long 1, long 2, long 3, long 4, long 5 and 2 more.";
        assertEquals(
                List.of(SHADING, eight), Frame.of(times(lines).chart().panels()).notes());
        lines.add(thin("long 8", 0, 1008, 5));
        Frame nine = Frame.of(times(lines).chart().panels());
        assertEquals(1008, nine.across().high(), "the ninth of 401 is no odd one out");
        assertEquals(List.of(SHADING), nine.notes());
    }

    @Test
    void aLineThatIsSetOffIsAlwaysWhole() {
        List<Line> lines = alike(20);
        lines.add(thin("long", 0, 1200, 5));
        Line setOff = Line.of("set off", new double[] {0, 1100}, new double[] {3, 4});
        Plot plot = times(lines).with(setOff);
        Frame frame = Frame.of(plot.chart().panels());
        assertEquals(1100, frame.across().high());
        assertEquals(List.of("1 of the thin lines runs past 18:20, the picture's edge: long."), frame.notes());
    }

    @Test
    void edgesBelowAboveAndBeforeAreSaidInTheReadersUnit() {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            lines.add(rise("line " + i, -300, 100));
        }
        lines.add(rise("early", -600, 100));
        lines.add(rise("hot", -300, 300));
        lines.set(0, rise("cold", -300, -200));
        Plot plot = Plot.of("", Axis.clock("time"), Axis.of("reading", Unit.TEMPERATURE, TemperatureUnit.FAHRENHEIT))
                .with(lines);
        assertEquals(
                List.of(
                        "1 of the thin lines runs before -5:15, the picture's edge: early.",
                        "1 of the thin lines runs below 0.0 °F, the picture's edge: cold.",
                        "1 of the thin lines runs above 250.0 °F, the picture's edge: hot."),
                Frame.of(plot.chart().panels()).notes());
    }

    private static Line rise(String name, double from, double degrees) {
        return Line.of("one each", new double[] {from, 0}, new double[] {0, degrees})
                .withWeight(Weight.FAINT)
                .withName(name);
    }

    @Test
    void fixedLimitsStand() {
        List<Line> lines = alike(20);
        lines.add(thin("long", 0, 1200, 5));
        Plot plot = Plot.of("", Axis.clock("time").withLimits(0, 300), Axis.number("reading", ""))
                .with(lines);
        Frame frame = Frame.of(plot.chart().panels());
        assertEquals(300, frame.across().high());
        assertEquals(List.of(), frame.notes());
    }
}
