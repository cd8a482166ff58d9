package parchment.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Knows how wide a text will be without asking the machine for a font, so that a picture looks the same where none is installed.
 *
 * <p>The widths are those of DejaVu Sans 2.37, one of the widest of the usual plain fonts; a reader's narrower font leaves a little
 * more room than needed.
 */
final class TextWidth {
    /** Widths of the characters 32 to 126 in thousandths of the font size (DejaVu Sans 2.37, advance widths). */
    private static final int[] LATIN = {
        318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636,
                636,
        636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557,
                863,
        748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550,
                635,
        615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525,
                636,
        337, 636, 838
    };

    private static final int OTHER_ALPHABET = 840;
    private static final int IDEOGRAPH_OR_PICTURE = 1350;

    private TextWidth() {}

    /** Returns the width of a text at a font size, in the unit of the size. */
    static double of(String text, double size) {
        long thousandths = text.codePoints()
                .map(c -> c >= 32 && c < 127
                        ? LATIN[c - 32]
                        : c < 0x1100 || c >= 0x2010 && c < 0x2200 ? OTHER_ALPHABET : IDEOGRAPH_OR_PICTURE)
                .sum();
        return thousandths * size / 1000;
    }

    /** Returns the text, or its beginning and "…" if it is wider than that. */
    static String fit(String text, double size, double widest) {
        if (of(text, size) <= widest) {
            return text;
        }
        int length = text.codePointCount(0, text.length());
        while (length > 0) {
            length--;
            String shorter =
                    text.substring(0, text.offsetByCodePoints(0, length)).stripTrailing() + "…";
            if (of(shorter, size) <= widest) {
                return shorter;
            }
        }
        return "…";
    }

    /** Breaks a text into lines between words; what does not fit the last line ends in "…". */
    static List<String> wrap(String text, double size, double widest, int mostLines) {
        List<String> lines = new ArrayList<>();
        String line = "";
        String[] words = text.strip().split("\\s+");
        for (int i = 0; i < words.length; i++) {
            String longer = line.isEmpty() ? words[i] : line + " " + words[i];
            if (line.isEmpty() || of(longer, size) <= widest) {
                line = longer;
                continue;
            }
            if (lines.size() == mostLines - 1) {
                line = longer + (i < words.length - 1 ? " …" : "");
                break;
            }
            lines.add(fit(line, size, widest));
            line = words[i];
        }
        lines.add(fit(line, size, widest));
        return lines;
    }
}
