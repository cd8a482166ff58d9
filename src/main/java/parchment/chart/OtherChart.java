package parchment.chart;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import parchment.display.Html;
import parchment.display.Showable;

/**
 * Shows a kind of chart that {@link Plot} does not draw, made by the reader with the XChart library: a histogram, a box plot, a heat map.
 *
 * <pre>{@code
 * var chart = new org.knowm.xchart.CategoryChartBuilder().title("Batches by lot").yAxisTitle("batches").build();
 * chart.addSeries("batches", List.of("first lot", "second lot"), List.of(120, 96));
 * OtherChart.of(chart)
 * }</pre>
 *
 * <p>The picture is one of dots on a white ground, at twice its size so that it prints well. Its text cannot be searched, and it needs
 * a font on the machine; the library's own charts do not.
 */
public final class OtherChart implements Showable {
    private static final int SHARPNESS = 2;

    private final org.knowm.xchart.internal.chartpart.Chart<?, ?> chart;

    private OtherChart(org.knowm.xchart.internal.chartpart.Chart<?, ?> chart) {
        this.chart = chart;
    }

    /** Returns a chart of XChart as something that a notebook can show. */
    public static OtherChart of(org.knowm.xchart.internal.chartpart.Chart<?, ?> chart) {
        return new OtherChart(chart);
    }

    /**
     * Returns the picture as a PNG file's content.
     *
     * @throws UncheckedIOException if it cannot be encoded
     */
    public byte[] png() {
        BufferedImage picture = new BufferedImage(
                SHARPNESS * chart.getWidth(), SHARPNESS * chart.getHeight(), BufferedImage.TYPE_INT_RGB);
        var graphics = picture.createGraphics();
        graphics.scale(SHARPNESS, SHARPNESS);
        chart.paint(graphics, chart.getWidth(), chart.getHeight());
        graphics.dispose();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "png", png);
        } catch (IOException failure) {
            throw new UncheckedIOException("The picture could not be written as PNG.", failure);
        }
        return png.toByteArray();
    }

    @Override
    public Map<String, String> otherForms() {
        return Map.of("image/png", Base64.getEncoder().encodeToString(png()));
    }

    @Override
    public Optional<String> html() {
        return Optional.of("<img alt=\"" + Html.escape(toString()) + "\" width=\"" + chart.getWidth()
                + "\" style=\"max-width:100%;height:auto\" src=\"data:image/png;base64,"
                + Base64.getEncoder().encodeToString(png()) + "\">");
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "Picture: %s, %d series%s",
                chart.getTitle().isBlank() ? "untitled" : chart.getTitle(),
                chart.getSeriesCollection().size(),
                chart instanceof org.knowm.xchart.internal.chartpart.AxesChart<?, ?> withAxes
                        ? ", " + named(withAxes.getXAxisTitle()) + " by " + named(withAxes.getYAxisTitle())
                        : "");
    }

    private static String named(String axis) {
        return axis.isBlank() ? "an unnamed axis" : axis;
    }
}
