package parchment.chart;

/**
 * Names the colours of the set by Okabe and Ito that colour-blind readers tell apart.
 *
 * <p>Their yellow is left out, since it cannot be seen on a white page, and their black is the page's own ink, so that it shows on a
 * dark page too. A line is never told by its colour alone: it has a label and a dash as well.
 *
 * @see <a href="https://jfly.uni-koeln.de/color/">M. Okabe, K. Ito: Color Universal Design, 2008</a>
 */
public enum Colour {
    /** Blue. */
    BLUE("#0072b2"),
    /** Vermillion. */
    VERMILLION("#d55e00"),
    /** Bluish green. */
    GREEN("#009e73"),
    /** Reddish purple. */
    PURPLE("#cc79a7"),
    /** Orange. */
    ORANGE("#e69f00"),
    /** Sky blue. */
    SKY("#56b4e9"),
    /** The colour of the page's own text. */
    INK("currentColor");

    private final String svg;

    Colour(String svg) {
        this.svg = svg;
    }

    /** Returns the colour as SVG writes it: a number sign and six hexadecimal digits, or the word for the ink of the page. */
    public String svg() {
        return svg;
    }

    /** Returns the colour of the n-th series, counted from 0. */
    static Colour ofSeries(int n) {
        return values()[n % values().length];
    }
}
