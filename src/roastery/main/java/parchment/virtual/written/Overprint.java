package parchment.virtual.written;

import java.util.Optional;
import parchment.display.Showable;
import parchment.virtual.VirtualLogbook;

/** Prints across a sheet that its machine is invented, so that it is seen on every copy and cutting of it. */
public final class Overprint {
    private Overprint() {}

    /** A sheet with the words across it. */
    private record Sheet(Showable below) implements Showable {
        @Override
        public String text() {
            return VirtualLogbook.WARNING + "\n\n" + below.text();
        }

        @Override
        public Optional<String> html() {
            return below.html().map(Overprint::over);
        }

        @Override
        public String toString() {
            return below + " " + VirtualLogbook.WARNING;
        }
    }

    /** Returns the sheet, in text under the warning and in HTML with it printed across; a picture alone is not given. */
    public static Showable across(Showable sheet) {
        return new Sheet(sheet);
    }

    /** Returns the sheet under a heading that says so, with the words printed across it every few centimetres. */
    public static String over(String sheet) {
        String words = VirtualLogbook.WARNING.replace(".", "");
        return "<div style=\"position:relative\"><p><strong>" + VirtualLogbook.WARNING + "</strong></p>" + sheet
                + "<svg aria-hidden=\"true\" style=\"position:absolute;inset:0;width:100%;height:100%;pointer-events:none\">"
                + "<defs><pattern id=\"invented-machine\" width=\"330\" height=\"90\" patternUnits=\"userSpaceOnUse\""
                + " patternTransform=\"rotate(-18)\"><text x=\"0\" y=\"40\" font-size=\"17\" font-family=\"sans-serif\""
                + " fill=\"#888888\" fill-opacity=\"0.12\">" + words + "</text></pattern></defs>"
                + "<rect width=\"100%\" height=\"100%\" fill=\"url(#invented-machine)\"/></svg></div>";
    }
}
