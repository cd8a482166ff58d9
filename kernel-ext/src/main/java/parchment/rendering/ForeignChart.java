package parchment.rendering;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Locale;
import java.util.Map;
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
        int series = chart.get("getSeriesMap") instanceof Map<?, ?> map ? map.size() : 0;
        String title = chart.text("getTitle");
        String across = chart.text("getXAxisTitle");
        String up = chart.text("getYAxisTitle");
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
}
