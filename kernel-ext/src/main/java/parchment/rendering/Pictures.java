package parchment.rendering;

import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import javax.swing.ImageIcon;
import parchment.display.Showable;

/** Shows pictures made of dots, as PNG. */
final class Pictures {
    /** A picture of more dots along a side is shown smaller: a page could not hold it. */
    static final int LONGEST_SIDE = 2_400;

    private Pictures() {}

    static Showable of(Object value) {
        Image image = (Image) value;
        int width = new ImageIcon(image).getIconWidth(); // Waits until a picture that is read elsewhere is there.
        int height = image.getHeight(null);
        if (width < 1 || height < 1) {
            return new Renderers.Words("A picture that could not be read.");
        }
        double scale = Math.min(1, (double) LONGEST_SIDE / Math.max(width, height));
        String words = String.format(Locale.ROOT, "A picture of %,d by %,d dots", width, height);
        if (scale == 1 && image instanceof BufferedImage dots) {
            return new Png(words, encoded(dots), width, "");
        }
        int step = (int) Math.ceil(1 / scale) / 2;
        if (step > 1 && image instanceof BufferedImage dots) {
            // Otherwise the whole picture would be copied, in four bytes a dot, before it becomes smaller.
            image = everyFew(dots, step);
        }
        BufferedImage drawn = new BufferedImage(
                Math.max(1, (int) (width * scale)), Math.max(1, (int) (height * scale)), BufferedImage.TYPE_INT_ARGB);
        Graphics2D graphics = drawn.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.drawImage(image, 0, 0, drawn.getWidth(), drawn.getHeight(), null);
        graphics.dispose();
        String smaller = String.format(Locale.ROOT, ", shown at %,d by %,d", drawn.getWidth(), drawn.getHeight());
        return new Png(scale < 1 ? words + smaller : words, encoded(drawn), drawn.getWidth(), "");
    }

    /** Returns one dot of each square of so many along its sides. */
    private static BufferedImage everyFew(BufferedImage dots, int step) {
        BufferedImage few = new BufferedImage(
                Math.max(1, dots.getWidth() / step), Math.max(1, dots.getHeight() / step), BufferedImage.TYPE_INT_ARGB);
        for (int y = 0; y < few.getHeight(); y++) {
            for (int x = 0; x < few.getWidth(); x++) {
                few.setRGB(x, y, dots.getRGB(x * step, y * step));
            }
        }
        return few;
    }

    /** Returns a PNG file's content in Base64. */
    static String encoded(BufferedImage dots) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            if (!ImageIO.write(dots, "png", out)) { // Dots of a kind of somebody's own.
                BufferedImage known = new BufferedImage(dots.getWidth(), dots.getHeight(), BufferedImage.TYPE_INT_ARGB);
                Graphics2D graphics = known.createGraphics();
                graphics.drawImage(dots, 0, 0, null);
                graphics.dispose();
                ImageIO.write(known, "png", out);
            }
        } catch (IOException failure) {
            throw new UncheckedIOException("The picture could not be written as PNG.", failure);
        }
        return Base64.getEncoder().encodeToString(bytes.toByteArray());
    }
}
