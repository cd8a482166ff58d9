package parchment.sheet;

import java.io.InputStream;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Checks whether what a cell of an .xlsx file points to is there: texts and formats stand in lists of their own, and a cell has a place in
 * them.
 *
 * @param texts how many texts the file holds
 * @param formats how many formats
 */
record XlsxReferences(int texts, int formats) {
    private static final Set<String> TRUTHS = Set.of("0", "1", "true", "false");
    /** An exponent of more digits is beyond every number of 64 bits, and would be worked out digit by digit. */
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");

    private static final int LONGEST_NUMBER = 400;

    /** Counts the elements of a name that stand right below another. */
    static int count(InputStream part, String parent, String element) throws XMLStreamException {
        XMLStreamReader in = PlainXml.open(part);
        int count = 0;
        int depth = 0;
        int inside = -1;
        while (in.hasNext()) {
            int event = in.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
                count += inside == depth - 1 && in.getLocalName().equals(element) ? 1 : 0;
                inside = in.getLocalName().equals(parent) ? depth : inside;
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                inside = inside == depth ? -1 : inside;
                depth--;
            }
        }
        return count;
    }

    boolean hasText(String place) {
        return isPlace(place, texts);
    }

    boolean hasFormat(String place) {
        return isPlace(place, formats);
    }

    private static boolean isPlace(String place, int size) {
        return place.strip().matches("\\d{1,9}") && Integer.parseInt(place.strip()) < size;
    }

    /** Returns whether a cell's value is none of its type and can only be read as the text that it is. */
    static boolean isOnlyText(String type, String value) {
        return switch (type) {
            case "n" -> !isNumber(value.strip());
            case "b" -> !TRUTHS.contains(value.strip());
            case "s", "str", "inlineStr", "e", "d" -> false;
            default -> true;
        };
    }

    private static boolean isNumber(String value) {
        return value.isEmpty()
                || value.length() <= LONGEST_NUMBER
                        && NUMBER.matcher(value).matches()
                        && Double.isFinite(Double.parseDouble(value));
    }
}
