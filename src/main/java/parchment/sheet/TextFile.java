package parchment.sheet;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CodingErrorAction;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import parchment.file.ByteOrderMark;

/** Opens bytes as text: UTF-8, or what a byte-order mark says; a byte that is no text becomes U+FFFD and never stops the reading. */
public final class TextFile {
    private TextFile() {}

    public static Reader reader(InputStream bytes) throws IOException {
        BufferedInputStream in = new BufferedInputStream(bytes, 1 << 16);
        in.mark(4);
        ByteOrderMark mark = ByteOrderMark.of(in.readNBytes(3));
        in.reset();
        in.skipNBytes(mark.bytes());
        return new InputStreamReader(
                in,
                mark.charset()
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPLACE)
                        .onUnmappableCharacter(CodingErrorAction.REPLACE));
    }

    /** Says why a file could not be read, without the name of a class. */
    public static String reason(IOException failure) {
        String message = failure.getMessage();
        if (message != null && (failure instanceof ReadableFile.Refused || failure instanceof BoundedReader.TooLong)) {
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
