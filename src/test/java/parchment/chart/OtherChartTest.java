package parchment.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.knowm.xchart.CategoryChart;
import org.knowm.xchart.CategoryChartBuilder;
import org.knowm.xchart.PieChart;
import org.knowm.xchart.PieChartBuilder;

class OtherChartTest {
    private static OtherChart histogram() {
        CategoryChart chart = new CategoryChartBuilder()
                .width(600)
                .height(300)
                .title("Drops \"<b>\"")
                .xAxisTitle("drop temperature (°C)")
                .yAxisTitle("batches")
                .build();
        chart.addSeries("batches", List.of(198, 200, 202), List.of(3, 9, 4));
        return OtherChart.of(chart);
    }

    @Test
    void drawsAHistogramOfTheReadersOwn() throws IOException {
        var picture = Objects.requireNonNull(
                ImageIO.read(new ByteArrayInputStream(histogram().png())));
        assertEquals(1200, picture.getWidth());
        assertEquals(600, picture.getHeight());
        long blank = picture.getRGB(2, 2);
        long drawn = 0;
        for (int x = 0; x < picture.getWidth(); x++) {
            drawn += picture.getRGB(x, 300) == blank ? 0 : 1;
        }
        assertTrue(drawn > 100, drawn + " dots of the middle row are drawn");
    }

    @Test
    void saysWhatItShowsAndEscapesIt() {
        assertEquals(
                "Picture: Drops \"<b>\", 1 series, drop temperature (°C) by batches",
                histogram().text());
        String html = histogram().html().orElseThrow();
        assertTrue(
                html.startsWith("<img alt=\"Picture: Drops &quot;&lt;b&gt;&quot;, 1 series"), html.substring(0, 100));
    }

    @Test
    void saysOfAChartWithoutAxesOnlyItsTitleAndSeries() {
        PieChart chart =
                new PieChartBuilder().width(300).height(300).title("Lots").build();
        chart.addSeries("first lot", 120);
        chart.addSeries("second lot", 96);
        assertEquals("Picture: Lots, 2 series", OtherChart.of(chart).text());
        assertTrue(OtherChart.of(chart).png().length > 1000);
    }
}
