package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.quantity.TemperatureUnit;

class PlotTest {
    @Test
    void saysInWordsWhatItShows() {
        assertEquals(
                "Batch 112. Across: time since charge (min:s), 0:00 to 9:39. Upwards: temperature (°F), 259.7 °F to 434.7 °F."
                        + " Drying from 0:00 to 4:45; browning from 4:45 to 8:10; development from 8:10 to 9:39;"
                        + " line bean temperature; line air temperature; charge 0:00; turning point 1:18 ± 3 s;"
                        + " yellowing 4:45 ± 10 s; first crack start 8:10 ± 5 s; first crack end 9:20 ± 15 s; drop 9:39 ± 2 s."
                        + " Upwards: setting (%), 30.00 % to 100.00 %. Line gas; line airflow. Marks as heard by the roaster;"
                        + " the narrow bands are their uncertainty. The air probe was silent from 3:20 to 3:50.",
                Gallery.panels(TemperatureUnit.FAHRENHEIT).text());
    }

    @Test
    void countsThePointsThatAreLeftOut() {
        assertTrue(Gallery.scatter()
                .text()
                .contains("39 points (one cupping of one batch), 1 left out because a value is missing"));
    }

    @Test
    void leavesTheFirstPlotAsItWas() {
        Plot plot = Gallery.empty();
        int layers = plot.layers().size();
        plot.with(Boundary.at("charge", 0)).withNote("More.").withHeight(100);
        assertEquals(layers, plot.layers().size());
        assertEquals(1, plot.notes().size());
    }

    @Test
    void doesNotFollowChangesOfTheArraysItWasGiven() {
        double[] values = {1, 2};
        Line line = Line.of("a", new double[] {0, 1}, values);
        values[0] = 99;
        assertEquals(1, line.y(0));
    }

    @Test
    void isEmptyIfEveryNumberIsMissingEvenWithAMark() {
        assertTrue(Gallery.empty().with(Boundary.at("charge", 0)).isEmpty());
        assertFalse(Gallery.scatter().isEmpty());
    }

    @Test
    void saysWhichLineHasTooFewValues() {
        var failure = assertThrows(
                IllegalArgumentException.class, () -> Line.of("bean temperature", new double[3], new double[2]));
        assertEquals(
                "The line 'bean temperature' needs as many values as positions along x; it was given 2 and 3."
                        + " Leave a missing one as NaN.",
                failure.getMessage());
    }

    @Test
    void refusesABoundaryWithoutAPosition() {
        var failure = assertThrows(IllegalArgumentException.class, () -> Boundary.at("yellowing", Double.NaN));
        assertEquals(
                "The boundary 'yellowing' needs a finite position; it was given NaN. Leave it out where it is missing.",
                failure.getMessage());
    }

    @Test
    void standingInTwoPanelsABoundaryIsNamedOnceAndAStretchShadedOnceInEach() {
        Boundary moved = Boundary.at(
                        "probe: found and written in the book",
                        LocalDate.of(2024, 10, 7).toEpochDay())
                .withUncertainty(4);
        double[] days = {moved.x() - 60, moved.x() + 60};
        Plot plot = Plot.of("", Axis.dates("roast day"), Axis.number("reading", ""))
                .with(Line.of("level", days, new double[] {1, 2}))
                .with(moved)
                .with(new Span("summer", days[0] + 5, days[0] + 30));
        String one = Panels.stacked("one", List.of(plot)).svg().orElseThrow();
        String two = Panels.stacked("two", List.of(plot, plot)).svg().orElseThrow();
        assertEquals(1, count(one, "2024-10-07 ± 4 days</text>"), one);
        assertEquals(1, count(two, "2024-10-07 ± 4 days</text>"), two);
        for (String shade : List.of("fill-opacity=\".09\"", "fill-opacity=\".04\"", "fill-opacity=\".16\"")) {
            assertEquals(2 * count(one, shade), count(two, shade), shade);
        }
    }

    @Test
    void writesTheLongestNamesOfFeaturesInFull() {
        List<String> names = List.of("air temperature at first crack", "airflow opened after first crack");
        String svg = Plot.of("rows", Axis.number("slope", ""), Axis.rows("feature", names))
                .with(Points.of("look", new double[] {1, 2}, new double[] {1, 2}))
                .svg()
                .orElseThrow();
        names.forEach(name -> assertTrue(svg.contains(">" + name + "</text>"), name));
    }

    private static int count(String text, String part) {
        return text.split(java.util.regex.Pattern.quote(part), -1).length - 1;
    }

    @Test
    void refusesAPictureWithoutPlots() {
        assertThrows(IllegalArgumentException.class, () -> Panels.stacked("none", List.of()));
    }
}
