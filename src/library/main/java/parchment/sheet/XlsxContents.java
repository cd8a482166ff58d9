package parchment.sheet;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;

/**
 * Writes the list of an .xlsx file's parts anew from what is there. A workbook needs no formats (ECMA-376 part 1, 18.8, from memory: they are optional), and
 * its own list may leave parts out; the library that reads it asks the list for all of them.
 */
final class XlsxContents {
    private static final String LIST = "[Content_Types].xml";
    static final String FORMATS = "xl/styles.xml";
    private static final String SHEETS = "xl/worksheets/";
    private static final String KIND = "application/vnd.openxmlformats-officedocument.spreadsheetml.%s+xml";
    private static final Map<String, String> KINDS =
            Map.of("xl/workbook.xml", "sheet.main", FORMATS, "styles", "xl/sharedStrings.xml", "sharedStrings");

    private XlsxContents() {}

    static void writeAnew(Unpacked parts) {
        if (!parts.has(FORMATS)) {
            parts.replace(
                    FORMATS,
                    bytes("<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
                            + "<cellXfs count=\"1\"><xf numFmtId=\"0\"/></cellXfs></styleSheet>"));
        }
        StringBuilder list =
                new StringBuilder("<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                        + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                        + "<Default Extension=\"xml\" ContentType=\"application/xml\"/>");
        for (String name : parts.names()) {
            String kind = name.startsWith(SHEETS) ? "worksheet" : KINDS.get(name);
            if (kind != null && name.endsWith(".xml")) {
                list.append("<Override PartName=\"/")
                        .append(name.replace("&", "&amp;")
                                .replace("\"", "&quot;")
                                .replace("<", "&lt;"))
                        .append("\" ContentType=\"")
                        .append(String.format(Locale.ROOT, KIND, kind))
                        .append("\"/>");
            }
        }
        parts.replace(LIST, bytes(list.append("</Types>").toString()));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
