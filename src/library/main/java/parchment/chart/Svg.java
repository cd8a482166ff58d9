package parchment.chart;

import parchment.display.Html;

/** Writes the few elements of SVG that a chart is made of. Text stays text; every text is escaped here. */
final class Svg {
    private final StringBuilder out = new StringBuilder(8192);

    /** Prints tenths as a decimal number without a needless zero: 15 is "1.5", 20 is "2", -5 is "-.5". */
    static String number(long tenths) {
        if (tenths % 10 == 0) {
            return Long.toString(tenths / 10);
        }
        String whole = Math.abs(tenths) < 10 ? "" : Long.toString(Math.abs(tenths) / 10);
        return (tenths < 0 ? "-" : "") + whole + "." + Math.abs(tenths % 10);
    }

    static String number(double place) {
        return number(Math.round(place * 10));
    }

    /** Opens an element; the attributes are the program's own and are not escaped. */
    Svg open(String element, String attributes) {
        out.append('<')
                .append(element)
                .append(attributes.isEmpty() ? "" : " ")
                .append(attributes)
                .append('>');
        return this;
    }

    Svg close(String element) {
        out.append("</").append(element).append(">\n");
        return this;
    }

    Svg path(String data, String attributes) {
        if (!data.isEmpty()) {
            out.append("<path d=\"").append(data).append('"').append(attributes.isEmpty() ? "" : " ");
            out.append(attributes).append("/>\n");
        }
        return this;
    }

    Svg line(double x1, double y1, double x2, double y2, String attributes) {
        return path("M" + number(x1) + " " + number(y1) + "L" + number(x2) + " " + number(y2), attributes);
    }

    Svg rectangle(double x, double y, double width, double height, String attributes) {
        out.append("<rect x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y))
                .append("\" width=\"");
        out.append(number(width))
                .append("\" height=\"")
                .append(number(height))
                .append("\" ")
                .append(attributes)
                .append("/>\n");
        return this;
    }

    Svg text(double x, double y, String words, String attributes) {
        out.append("<text x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y))
                .append('"');
        out.append(attributes.isEmpty() ? "" : " ").append(attributes).append('>');
        out.append(Html.escape(words)).append("</text>\n");
        return this;
    }

    /** Writes a title or a description, which a reader of the page hears or sees on resting the mouse. */
    Svg say(String element, String words) {
        out.append('<')
                .append(element)
                .append('>')
                .append(Html.escape(words))
                .append("</")
                .append(element)
                .append('>');
        return this;
    }

    Svg raw(String svg) {
        out.append(svg);
        return this;
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
