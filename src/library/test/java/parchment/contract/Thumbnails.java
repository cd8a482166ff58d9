package parchment.contract;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;

/** Puts many pictures on few sheets: each small, its top if it is long, with its name below. */
final class Thumbnails {
    private static final int ACROSS = 5;
    private static final int DOWN = 4;
    private static final int WIDTH = 360;
    private static final int HEIGHT = 460;
    private static final int GAP = 12;
    private static final int WORDS = 22;
    private static final Color GROUND = new Color(0x80, 0x80, 0x80);

    /** A picture and what stands below it. */
    record Named(String name, Path picture) {}

    private Thumbnails() {}

    /** Writes as many sheets as are needed, called by the name and a number, and returns them. */
    static List<Path> write(List<Named> pictures, Path folder, String name) throws IOException {
        List<Path> sheets = new ArrayList<>();
        Files.createDirectories(folder);
        int perSheet = ACROSS * DOWN;
        for (int from = 0; from < pictures.size(); from += perSheet) {
            List<Named> some = pictures.subList(from, Math.min(pictures.size(), from + perSheet));
            Path sheet = folder.resolve(String.format(Locale.ROOT, "%s-%02d.png", name, sheets.size() + 1));
            ImageIO.write(sheet(some), "png", sheet.toFile());
            sheets.add(sheet);
        }
        return sheets;
    }

    private static BufferedImage sheet(List<Named> pictures) throws IOException {
        List<BufferedImage> small = new ArrayList<>();
        for (Named picture : pictures) {
            small.add(small(ImageIO.read(picture.picture().toFile())));
        }
        int[] tops = tops(small);
        BufferedImage sheet =
                new BufferedImage(GAP + ACROSS * (WIDTH + GAP), tops[tops.length - 1], BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = sheet.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        pen.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 13));
        pen.setColor(GROUND);
        pen.fillRect(0, 0, sheet.getWidth(), sheet.getHeight());
        pen.setColor(Color.WHITE);
        for (int i = 0; i < small.size(); i++) {
            int x = GAP + i % ACROSS * (WIDTH + GAP);
            int y = tops[i / ACROSS];
            pen.drawImage(small.get(i), x, y, null);
            pen.drawString(pictures.get(i).name(), x, y + small.get(i).getHeight() + WORDS - 6);
        }
        pen.dispose();
        return sheet;
    }

    /** Returns where each row begins, and where the sheet ends: a row is as high as its highest picture. */
    private static int[] tops(List<BufferedImage> pictures) {
        int rows = (pictures.size() + ACROSS - 1) / ACROSS;
        int[] tops = new int[rows + 1];
        tops[0] = GAP;
        for (int row = 0; row < rows; row++) {
            tops[row + 1] = tops[row]
                    + WORDS
                    + GAP
                    + pictures.subList(row * ACROSS, Math.min(pictures.size(), (row + 1) * ACROSS)).stream()
                            .mapToInt(BufferedImage::getHeight)
                            .max()
                            .orElse(0);
        }
        return tops;
    }

    /** Averages down: a thin line keeps a trace, where a picked pixel would lose it. */
    private static BufferedImage small(BufferedImage whole) {
        double scale = (double) whole.getWidth() / WIDTH;
        int height = (int) Math.min(HEIGHT, whole.getHeight() / scale);
        BufferedImage small = new BufferedImage(WIDTH, Math.max(1, height), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < small.getHeight(); y++) {
            for (int x = 0; x < WIDTH; x++) {
                small.setRGB(x, y, mean(whole, x * scale, y * scale, Math.max(1, scale)));
            }
        }
        return small;
    }

    private static int mean(BufferedImage whole, double left, double top, double size) {
        long red = 0;
        long green = 0;
        long blue = 0;
        int count = 0;
        for (int y = (int) top; y < Math.min(whole.getHeight(), Math.max((int) top + 1, (int) (top + size))); y++) {
            for (int x = (int) left;
                    x < Math.min(whole.getWidth(), Math.max((int) left + 1, (int) (left + size)));
                    x++) {
                int colour = whole.getRGB(x, y);
                red += colour >> 16 & 0xFF;
                green += colour >> 8 & 0xFF;
                blue += colour & 0xFF;
                count++;
            }
        }
        return count == 0 ? 0 : (int) (red / count) << 16 | (int) (green / count) << 8 | (int) (blue / count);
    }
}
