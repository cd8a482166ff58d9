package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ThumbnailsTest {
    private static Path picture(Path folder, int width, int height) throws IOException {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                // Every second line is white, the others are black.
                picture.setRGB(x, y, y % 2 == 0 ? 0xFFFFFF : 0);
            }
        }
        Path file = folder.resolve(width + "-" + height + ".png");
        ImageIO.write(picture, "png", file.toFile());
        return file;
    }

    @Test
    void aRowIsAsHighAsItsHighestPictureAndAThinLineKeepsATrace(@TempDir Path folder) throws IOException {
        List<Thumbnails.Named> pictures = List.of(
                new Thumbnails.Named("one", picture(folder, 720, 200)),
                new Thumbnails.Named("two", picture(folder, 720, 400)));
        List<Path> sheets = Thumbnails.write(pictures, folder, "few");
        assertEquals(List.of(folder.resolve("few-01.png")), sheets);
        BufferedImage sheet = ImageIO.read(sheets.get(0).toFile());
        assertEquals(12 + 5 * (360 + 12), sheet.getWidth());
        assertEquals(12 + 200 + 22 + 12, sheet.getHeight());
        assertEquals(0x7F7F7F, sheet.getRGB(12 + 5, 12 + 5) & 0xFFFFFF);
    }

    @Test
    void aLongPageShowsItsTopAndManyPicturesTakeAnotherSheet(@TempDir Path folder) throws IOException {
        Path tall = picture(folder, 400, 5000);
        List<Thumbnails.Named> pictures = new ArrayList<>();
        for (int i = 0; i < 21; i++) {
            pictures.add(new Thumbnails.Named("page " + i, tall));
        }
        List<Path> sheets = Thumbnails.write(pictures, folder, "many");
        assertEquals(2, sheets.size());
        assertEquals(
                12 + 4 * (460 + 22 + 12), ImageIO.read(sheets.get(0).toFile()).getHeight());
        assertEquals(12 + 460 + 22 + 12, ImageIO.read(sheets.get(1).toFile()).getHeight());
    }
}
