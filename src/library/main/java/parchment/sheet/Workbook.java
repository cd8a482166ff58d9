package parchment.sheet;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Opens any file of tables that a roaster has: text with commas, semicolons, tabs or vertical lines between the columns (CSV, TSV, TXT,
 * LOG, DAT), an .xlsx or .xlsm workbook, or an .ods one. What the file is, is told by its content and not by its name.
 *
 * <p>The file may come from anywhere: nothing in it is started, fetched or worked out, and it is read within bounds. What a roaster has to know of the
 * reading, such as hidden columns or an old encoding, stands in {@link #told}.
 */
public final class Workbook {
    private static final int LOOKED_AT = 1 << 12;
    private static final int OLD_WORKBOOK_LOOKED_AT = 1 << 20;

    private final Path file;
    private final List<Sheet> sheets;
    private final List<String> told;

    private Workbook(Path file, List<Sheet> sheets, List<String> told) {
        this.file = file;
        this.sheets = List.copyOf(sheets);
        this.told = List.copyOf(told);
    }

    /**
     * Reads a file; a link to a file outside its folder is not followed.
     *
     * @throws NoTableException if it is no table, is locked with a password, is damaged, or is larger than any table
     * @throws ReadableFile.Refused if it is a folder, a pipe, a device or a link out of its folder
     * @throws IOException if it cannot be read
     */
    public static Workbook read(Path file) throws IOException {
        Path absolute = file.toAbsolutePath();
        Path folder = absolute.getParent();
        return read(file, folder == null ? absolute : folder);
    }

    /**
     * Reads a file.
     *
     * @param folder the folder that a link may not lead out of
     * @throws NoTableException if it is no table, is locked with a password, is damaged, or is larger than any table
     * @throws ReadableFile.Refused if it is a folder, a pipe, a device or a link out of the folder
     * @throws IOException if it cannot be read
     */
    public static Workbook read(Path file, Path folder) throws IOException {
        try {
            return readWithin(file, folder);
        } catch (OutOfMemoryError e) {
            // The bounds are estimates; one file too many must not end the reading of all others.
            throw new NoTableException(
                    "a file with more in it than the memory has room for; save the part that matters as a file of its own",
                    e);
        }
    }

    private static Workbook readWithin(Path file, Path folder) throws IOException {
        Told told = new Told();
        try (InputStream in = new BufferedInputStream(ReadableFile.open(file, folder), OLD_WORKBOOK_LOOKED_AT)) {
            in.mark(OLD_WORKBOOK_LOOKED_AT);
            byte[] start = in.readNBytes(LOOKED_AT);
            if (startsWith(start, 0xD0, 0xCF, 0x11, 0xE0)) {
                in.reset();
                throw oldWorkbook(in.readNBytes(OLD_WORKBOOK_LOOKED_AT));
            }
            if (startsWith(start, 'P', 'K', 3, 4) || startsWith(start, 'P', 'K', 5, 6)) {
                List<Sheet> sheets = packed(file, told);
                return new Workbook(file, sheets, told.toList());
            }
            refuseOtherKinds(new String(start, StandardCharsets.ISO_8859_1));
            if (Files.size(file) > SheetBounds.LARGEST_TEXT) {
                throw new NoTableException("a text of more than " + (SheetBounds.LARGEST_TEXT >> 20)
                        + " MB; cut it into several files, one for each day");
            }
            in.reset();
            Sheet sheet = TextTable.read(file, in, told);
            return new Workbook(file, List.of(sheet), told.toList());
        }
    }

    private static List<Sheet> packed(Path file, Told told) throws IOException {
        Unpacked parts = Unpacked.of(file);
        if (parts.has("content.xml")) {
            return OdsFile.read(file, parts, told);
        }
        if (parts.has("xl/workbook.xml")) {
            return XlsxFile.read(file, parts, told);
        }
        if (parts.has("xl/workbook.bin")) {
            throw new NoTableException("a binary workbook (.xlsb); open it in a spreadsheet and save it as .xlsx");
        }
        throw new NoTableException("a packed file but no workbook; unpack it, or save it as .xlsx, .ods or CSV");
    }

    private static NoTableException oldWorkbook(byte[] start) {
        String text = new String(start, StandardCharsets.ISO_8859_1);
        if (text.contains(spaced("EncryptedPackage"))) {
            return new NoTableException(
                    "a workbook locked with a password; open it in a spreadsheet and save it without the password");
        }
        return new NoTableException("a workbook in the old form (.xls); open it in a spreadsheet and save it as .xlsx");
    }

    private static String spaced(String name) {
        return new String(name.getBytes(StandardCharsets.UTF_16LE), StandardCharsets.ISO_8859_1);
    }

    private static void refuseOtherKinds(String start) throws NoTableException {
        String plain = start.stripLeading();
        if (plain.startsWith("%PDF")) {
            throw new NoTableException("a PDF and no table; export the table as CSV or .xlsx");
        }
        if (plain.startsWith("<") || plain.startsWith("\u00EF\u00BB\u00BF<")) {
            throw new NoTableException("a page or document (HTML or XML) and no table; save it as CSV or .xlsx");
        }
        if (plain.startsWith("{\\rtf")) {
            throw new NoTableException("a letter of a word processor (RTF) and no table; save it as CSV or .xlsx");
        }
    }

    private static boolean startsWith(byte[] bytes, int... signs) {
        if (bytes.length < signs.length) {
            return false;
        }
        for (int i = 0; i < signs.length; i++) {
            if ((bytes[i] & 0xFF) != signs[i]) {
                return false;
            }
        }
        return true;
    }

    /** Returns the sheets in the order of the file's tabs; those without any cell too. A text file has one. */
    public List<Sheet> sheets() {
        return sheets;
    }

    /** Returns what a roaster has to know of how the file was read, a sentence each; empty if there is nothing. */
    public List<String> told() {
        return told;
    }

    @Override
    public String toString() {
        int rows = sheets.stream().mapToInt(sheet -> sheet.rows().size()).sum();
        return file.getFileName() + ": " + Words.count(sheets.size(), "sheet", "sheets") + ", "
                + Words.count(rows, "row", "rows");
    }
}
