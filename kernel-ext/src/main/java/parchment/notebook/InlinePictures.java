package parchment.notebook;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The SVG pictures inside a fragment of HTML, taken out of it, so that each can stand in a file of its own.
 *
 * @param html the fragment with an element {@code <picture number="0"/>} in the place of each
 * @param pictures the pictures in order, as they stand in a page
 */
record InlinePictures(String html, List<String> pictures) {
    private static final Pattern EDGE = Pattern.compile("<svg\\b|</svg>");
    private static final Pattern ROOT = Pattern.compile("^<svg\\b[^>]*>");

    /** The same picture for narrow pages, which stands beside the wide one and is hidden there. */
    private static final Pattern NARROW = Pattern.compile("^<svg\\b[^>]* class=\"narrow\"");

    private static final Pattern DESCRIPTION = Pattern.compile("(?s)<desc>(.*?)</desc>");
    private static final Pattern LABEL = Pattern.compile("aria-label=\"([^\"]*)\"");

    /** A sentence or a part of one ends here: words follow, not a number. */
    private static final Pattern SENTENCE_END = Pattern.compile("[.;] (?=\\p{L})");

    private static final int LONGEST_WORDS = 240;

    InlinePictures {
        pictures = List.copyOf(pictures);
    }

    static InlinePictures in(String fragment) {
        List<String> pictures = new ArrayList<>();
        StringBuilder rest = new StringBuilder();
        Matcher edge = EDGE.matcher(fragment);
        int depth = 0;
        int from = 0;
        while (edge.find()) {
            boolean opens = edge.group().startsWith("<svg");
            if (opens && depth++ == 0) {
                rest.append(fragment, from, edge.start());
                from = edge.start();
            } else if (!opens && --depth == 0) {
                String picture = fragment.substring(from, edge.end());
                if (!NARROW.matcher(picture).find()) {
                    rest.append("<picture number=\"").append(pictures.size()).append("\"/>");
                    pictures.add(picture);
                }
                from = edge.end();
            }
        }
        return new InlinePictures(rest.append(fragment.substring(from)).toString(), pictures);
    }

    /** Returns a picture as a file holds it: dark on white, whatever is around it. */
    static String alone(String svg) {
        Matcher root = ROOT.matcher(svg);
        if (!root.find()) {
            return svg;
        }
        String head = root.group().replace("color:inherit;background:none", "color:#1a1a1a;background:#fff");
        if (!head.contains("xmlns=")) {
            head = head.replaceFirst("<svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"");
        }
        return head + "<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>" + svg.substring(root.end()) + "\n";
    }

    /** Returns what a picture shows, for those who do not see it: the beginning of its own description. */
    static String words(String svg) {
        Matcher description = DESCRIPTION.matcher(svg);
        Matcher label = LABEL.matcher(svg);
        String all =
                unescaped(description.find() ? description.group(1) : label.find() ? label.group(1) : "A picture.");
        int end = 0;
        for (Matcher next = SENTENCE_END.matcher(all); next.find() && (end == 0 || next.start() < LONGEST_WORDS); ) {
            end = next.start();
        }
        return end == 0 || all.length() <= LONGEST_WORDS ? all : all.substring(0, end) + ".";
    }

    private static String unescaped(String text) {
        return text.replace("&#39;", "'")
                .replace("&quot;", "\"")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&");
    }
}
