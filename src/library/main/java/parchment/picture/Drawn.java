package parchment.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.HeadlessException;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javax.imageio.ImageIO;
import org.knowm.xchart.internal.chartpart.AxesChart;
import org.knowm.xchart.style.AxesChartStyler;
import parchment.display.Html;
import parchment.display.Showable;

/** A picture by XChart for every page: drawn for the width and the ground that the page turns out to have. */
final class Drawn implements Showable {
    private static final int SHARPNESS = 2;

    static final String WITHOUT_LETTERS =
            "The picture cannot be drawn, since Java finds no letters on this machine. Install a font with libfreetype and libharfbuzz, as"
                    + " any desktop has, and run the cell again. The numbers behind it are below.";

    private final String words;
    private final Function<Look, AxesChart<?, ?>> chart;

    private Drawn(String words, Function<Look, AxesChart<?, ?>> chart) {
        this.words = words;
        this.chart = chart;
    }

    /**
     * Makes a picture.
     *
     * @param words what it shows, for those who do not see it
     */
    static Drawn of(String words, Function<Look, AxesChart<?, ?>> chart) {
        return new Drawn(words, chart);
    }

    /** Gives a chart the ground, the ink and the letters of a look, and the words of its axes. */
    static <C extends AxesChart<?, ?>> C styled(C chart, Look look, String across, String up) {
        chart.setXAxisTitle(across);
        chart.setYAxisTitle(up);
        AxesChartStyler styler = chart.getStyler();
        styler.setChartBackgroundColor(look.ground())
                .setPlotBackgroundColor(look.ground())
                .setChartFontColor(look.ink())
                .setPlotBorderVisible(false)
                .setChartTitleVisible(false)
                .setLegendVisible(false)
                .setChartPadding(8)
                .setBaseFont(look.font());
        styler.setAxisTitleFont(look.font())
                .setAxisTickLabelsFont(look.font())
                .setAxisTickLabelsColor(look.ink())
                .setAxisTickMarksColor(look.ink())
                .setPlotGridVerticalLinesVisible(false)
                .setPlotGridLinesColor(look.grid())
                .setPlotGridLinesStroke(new BasicStroke(1))
                .setAxisTicksLineVisible(true);
        return chart;
    }

    /** Returns how times are written along an axis: as a roast clock shows them, and only so many that none stands over another. */
    static Function<Double, String> clock(DrawnNumbers measure, double length, Look look) {
        double step = Bins.round(measure, length / (look.isNarrow() ? 4 : 9));
        return minutes -> {
            double steps = minutes / step;
            return Math.abs(steps - Math.rint(steps)) < 1e-6 ? measure.print(minutes) : "";
        };
    }

    private String png(Look look) {
        AxesChart<?, ?> painted = chart.apply(look);
        BufferedImage picture = new BufferedImage(
                SHARPNESS * painted.getWidth(), SHARPNESS * painted.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = picture.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.scale(SHARPNESS, SHARPNESS);
        painted.paint(graphics, painted.getWidth(), painted.getHeight());
        graphics.dispose();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "png", png);
        } catch (IOException failure) {
            throw new UncheckedIOException("The picture could not be written as PNG.", failure);
        }
        return Base64.getEncoder().encodeToString(png.toByteArray());
    }

    @Override
    public String text() {
        return words;
    }

    /** Java draws letters by libraries and fonts of the machine, which a bare server lacks. */
    private static boolean isForWantOfLetters(Throwable thrown) {
        return thrown instanceof LinkageError
                || thrown instanceof InternalError
                || thrown instanceof HeadlessException
                || String.valueOf(thrown.getMessage()).contains("ontconfig");
    }

    @Override
    public Optional<String> html() {
        try {
            return Optional.of(forEveryPage());
        } catch (LinkageError | InternalError | RuntimeException thrown) {
            if (isForWantOfLetters(thrown)) {
                return Optional.of("<p>" + Html.escape(WITHOUT_LETTERS) + "</p>");
            }
            throw thrown;
        }
    }

    private String forEveryPage() {
        return "<picture>" + source(Look.NARROW_DARK, "(max-width:560px) and (prefers-color-scheme:dark)")
                + source(Look.NARROW, "(max-width:560px)") + source(Look.WIDE_DARK, "(prefers-color-scheme:dark)")
                + "<img alt=\"" + Html.escape(words) + "\" style=\"max-width:100%;height:auto;width:"
                + Look.WIDE.width()
                + "px\" src=\"data:image/png;base64," + png(Look.WIDE) + "\"></picture>";
    }

    private String source(Look look, String media) {
        return "<source media=\"" + media + "\" srcset=\"data:image/png;base64," + png(look) + "\"/>";
    }

    @Override
    public Map<String, String> otherForms() {
        try {
            return Map.of("image/png", png(Look.WIDE));
        } catch (LinkageError | InternalError | RuntimeException thrown) {
            if (isForWantOfLetters(thrown)) {
                return Map.of();
            }
            throw thrown;
        }
    }

    @Override
    public String toString() {
        return words;
    }
}
