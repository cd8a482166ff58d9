package parchment.rendering;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;

/** Shows a chart of the XChart library, of whatever version made it. */
final class ForeignChart {
    private static final int SHARPNESS = 2;

    private static final Class<?>[] PAINT = {Graphics2D.class, int.class, int.class};

    private ForeignChart() {}

    static Showable of(Object chart) {
        Reflected asked = Reflected.of(chart);
        int width = asked.number("getWidth");
        int height = asked.number("getHeight");
        BufferedImage dots = new BufferedImage(SHARPNESS * width, SHARPNESS * height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = dots.createGraphics();
        graphics.scale(SHARPNESS, SHARPNESS);
        asked.call("paint", PAINT, graphics, width, height);
        graphics.dispose();
        return new Png(words(asked), Pictures.encoded(dots), width, "");
    }

    private static String words(Reflected chart) {
        int series =
                size(chart.has("getSeriesCollection") ? chart.get("getSeriesCollection") : chart.get("getSeriesMap"));
        String title = chart.text("getTitle");
        String across = chart.has("getXAxisTitle")
                ? chart.text("getXAxisTitle")
                : ""; // From version 4 on only charts with axes have it.
        String up = chart.has("getYAxisTitle") ? chart.text("getYAxisTitle") : "";
        return String.format(
                Locale.ROOT,
                "Picture: %s, %d series%s",
                title.isBlank() ? "untitled" : title,
                series,
                across.isBlank() && up.isBlank()
                        ? ""
                        : ", " + (across.isBlank() ? "an unnamed axis" : across) + " by "
                                + (up.isBlank() ? "an unnamed axis" : up));
    }

    private static int size(@Nullable Object series) {
        return series instanceof Map<?, ?> map ? map.size() : series instanceof Collection<?> all ? all.size() : 0;
    }
}
