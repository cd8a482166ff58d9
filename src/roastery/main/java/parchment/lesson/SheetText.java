package parchment.lesson;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import parchment.file.ByteOrderMark;
import parchment.virtual.written.SavedTable;

/** Reads the text of a file that was handed in, and no more of it than a sheet can hold. */
final class SheetText {
    /** Bytes that a sheet has at most; a whole lesson's takes one or two thousand. */
    static final int LARGEST_BYTES = 1 << 20;

    private static final int HEAD_BYTES = 4096;
    private static final Pattern NAMED_AS_SHEET =
            Pattern.compile("lesson-[0-9]+-.*\\.csv", Pattern.CASE_INSENSITIVE | Pattern.DOTALL);
    /** What no other table has side by side in its heading. */
    private static final List<String> TELLING = List.of("lesson", "student", "question", "tries");

    private SheetText() {}

    /**
     * Tells whether a file is meant as a sheet of answers: by its heading whatever its name, or by a name as handing in gives it.
     *
     * @throws IOException if the file cannot be read
     */
    static boolean isMeantAsSheet(Path file) throws IOException {
        if (NAMED_AS_SHEET.matcher(file.getFileName().toString()).matches()) {
            return true;
        }
        String heading = SavedTable.of(text(bytes(file, HEAD_BYTES)))
                .text()
                .lines()
                .findFirst()
                .orElse("");
        List<String> columns = List.of(heading.split("[,;\t]", -1)).stream()
                .map(column -> column.replace("\"", "").strip().toLowerCase(Locale.ROOT))
                .toList();
        return columns.containsAll(TELLING);
    }

    /**
     * Reads a file.
     *
     * @throws IOException if it cannot be read or is larger than a sheet can be
     */
    static String read(Path file) throws IOException {
        byte[] bytes = bytes(file, LARGEST_BYTES + 1);
        if (bytes.length > LARGEST_BYTES) {
            throw new IOException(file + " is larger than " + (LARGEST_BYTES >> 20)
                    + " MB, which no sheet of answers and no plan is: ask for it again.");
        }
        return text(bytes);
    }

    private static byte[] bytes(Path file, int most) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(most);
        }
    }

    /**
     * A spreadsheet saves "Unicode text" as UTF-16 with a mark before it, and on Windows the rest in that system's own encoding, in which
     * any bytes are text.
     */
    private static String text(byte[] bytes) {
        ByteOrderMark mark = ByteOrderMark.of(bytes);
        if (!mark.charset().equals(StandardCharsets.UTF_8)) {
            return new String(bytes, mark.bytes(), bytes.length - mark.bytes(), mark.charset());
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            return new String(bytes, Charset.forName("windows-1252"));
        }
    }
}
