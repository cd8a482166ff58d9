package parchment.sheet;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Packs workbooks by hand for tests, as ECMA-376 part 1 and OpenDocument 1.3 part 3 have them (from memory). */
final class PackedFiles {
    private static final String MAIN = "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
    static final String HEAD = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>";

    private PackedFiles() {}

    static Path zip(Path file, Map<String, String> parts) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        return file;
    }

    /** Returns the parts of a workbook with one sheet; formats 1 to 4 are date, [h]:mm:ss, 0.00 % and mm:ss. */
    static Map<String, String> xlsx(String sheetXml) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put(
                "[Content_Types].xml",
                HEAD + "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                        + type("/xl/workbook.xml", "sheet.main") + type("/xl/styles.xml", "styles")
                        + type("/xl/sharedStrings.xml", "sharedStrings")
                        + type("/xl/worksheets/sheet1.xml", "worksheet") + "</Types>");
        parts.put(
                "_rels/.rels",
                HEAD + "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                        + link("rId1", "officeDocument", "xl/workbook.xml") + "</Relationships>");
        parts.put(
                "xl/_rels/workbook.xml.rels",
                HEAD + "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                        + link("rId1", "worksheet", "worksheets/sheet1.xml") + link("rId2", "styles", "styles.xml")
                        + link("rId3", "sharedStrings", "sharedStrings.xml") + "</Relationships>");
        parts.put(
                "xl/workbook.xml",
                HEAD + "<workbook " + MAIN
                        + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><workbookPr/><sheets>"
                        + "<sheet name=\"Batches\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>");
        parts.put(
                "xl/styles.xml",
                HEAD + "<styleSheet " + MAIN
                        + "><numFmts count=\"3\"><numFmt numFmtId=\"164\" formatCode=\"dd/mm/yyyy\"/>"
                        + "<numFmt numFmtId=\"165\" formatCode=\"[h]:mm:ss\"/><numFmt numFmtId=\"166\" formatCode=\"mm:ss\"/></numFmts>"
                        + "<cellXfs count=\"5\"><xf numFmtId=\"0\"/><xf numFmtId=\"164\"/><xf numFmtId=\"165\"/><xf numFmtId=\"10\"/><xf numFmtId=\"166\"/></cellXfs></styleSheet>");
        parts.put(
                "xl/sharedStrings.xml",
                HEAD + "<sst " + MAIN + "><si><r><t>Low</t></r><r><t> Orchard</t></r><rPh><t>x</t></rPh></si></sst>");
        parts.put("xl/worksheets/sheet1.xml", HEAD + "<worksheet " + MAIN + ">" + sheetXml + "</worksheet>");
        return parts;
    }

    private static String type(String part, String type) {
        return "<Override PartName=\"" + part
                + "\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml." + type + "+xml\"/>";
    }

    private static String link(String id, String type, String target) {
        return "<Relationship Id=\"" + id
                + "\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/" + type
                + "\" Target=\"" + target + "\"/>";
    }

    /** Returns the parts of an .ods workbook with one table. */
    static Map<String, String> ods(String tableXml) {
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("mimetype", "application/vnd.oasis.opendocument.spreadsheet");
        parts.put(
                "content.xml",
                HEAD + "<office:document-content xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
                        + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\" xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\""
                        + " xmlns:calcext=\"urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0\">"
                        + "<office:body><office:spreadsheet><table:table table:name=\"Batches\">" + tableXml
                        + "</table:table></office:spreadsheet></office:body></office:document-content>");
        return parts;
    }
}
