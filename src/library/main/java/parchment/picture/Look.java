package parchment.picture;

import java.awt.Color;
import java.awt.Font;
import parchment.chart.Colour;

/** For which page a picture is drawn: as wide as the page or as a telephone, with a light ground or a dark one. */
enum Look {
    WIDE(800, 420, 15, "#ffffff", "#1f2328", "#d8dee4"),
    NARROW(400, 360, 13, "#ffffff", "#1f2328", "#d8dee4"),
    WIDE_DARK(800, 420, 15, "#15181c", "#e3e7ea", "#343b43"),
    NARROW_DARK(400, 360, 13, "#15181c", "#e3e7ea", "#343b43");

    private final int width;
    private final int height;
    private final int letters;
    private final Color ground;
    private final Color ink;
    private final Color grid;

    Look(int width, int height, int letters, String ground, String ink, String grid) {
        this.width = width;
        this.height = height;
        this.letters = letters;
        this.ground = Color.decode(ground);
        this.ink = Color.decode(ink);
        this.grid = Color.decode(grid);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    Color ground() {
        return ground;
    }

    Color ink() {
        return ink;
    }

    Color grid() {
        return grid;
    }

    boolean isNarrow() {
        return this == NARROW || this == NARROW_DARK;
    }

    Font font() {
        return new Font(Font.SANS_SERIF, Font.PLAIN, letters);
    }

    static Color of(Colour colour) {
        return Color.decode(colour.svg());
    }
}
