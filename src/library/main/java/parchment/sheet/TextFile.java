package parchment.sheet;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Arrays;
import parchment.file.ByteOrderMark;

/** Opens bytes as text: UTF-8, or what a byte-order mark says, or the old encoding that the bytes are in; never a replacement character. */
public final class TextFile {
    private static final int LOOKED_AT = 1 << 15;

    private TextFile() {}

    /** Opens bytes as text; the reader tells, once it has read, whether they were something else than UTF-8. */
    public static TextReader reader(InputStream bytes) throws IOException {
        BufferedInputStream in = new BufferedInputStream(bytes, LOOKED_AT);
        in.mark(LOOKED_AT);
        byte[] start = new byte[LOOKED_AT];
        int length = in.readNBytes(start, 0, start.length);
        in.reset();
        ByteOrderMark mark = ByteOrderMark.of(Arrays.copyOf(start, Math.min(length, 3)));
        in.skipNBytes(mark.bytes());
        return new TextReader(in, TextEncoding.of(start, length, mark));
    }

    /** Says why a file could not be read, without the name of a class. */
    public static String reason(IOException failure) {
        String message = failure.getMessage();
        if (message != null
                && (failure instanceof ReadableFile.Refused
                        || failure instanceof BoundedReader.TooLong
                        || failure instanceof NoTableException)) {
            return message;
        }
        if (failure instanceof NoSuchFileException) {
            return "no file (a link that leads nowhere?)";
        }
        if (failure instanceof FileSystemException f && f.getReason() == null) {
            return "a file that may not be read";
        }
        return "a file that cannot be read" + (message == null ? "" : " (" + message + ")");
    }
}
