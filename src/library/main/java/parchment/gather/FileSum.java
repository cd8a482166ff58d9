package parchment.gather;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Recognises whether somebody has changed a file, by its size and the SHA-256 (FIPS 180-4) of its bytes.
 *
 * @param size in bytes
 * @param checksum 64 hexadecimal digits
 */
record FileSum(long size, String checksum) {
    private static final Pattern CHECKSUM = Pattern.compile("[0-9a-f]{64}");

    /** Returns that of a text in UTF-8. */
    static FileSum of(String text) {
        try {
            return of(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns what was written down; empty if it is no sum. */
    static Optional<FileSum> parse(String size, String checksum) {
        return size.matches("\\d{1,18}") && CHECKSUM.matcher(checksum).matches()
                ? Optional.of(new FileSum(Long.parseLong(size), checksum))
                : Optional.empty();
    }

    /** Reads a file. */
    static FileSum of(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return of(in);
        }
    }

    private static FileSum of(InputStream in) throws IOException {
        try (DigestInputStream summed = new DigestInputStream(in, MessageDigest.getInstance("SHA-256"))) {
            long size = summed.transferTo(java.io.OutputStream.nullOutputStream());
            return new FileSum(
                    size, HexFormat.of().formatHex(summed.getMessageDigest().digest()));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java has SHA-256.", e);
        }
    }
}
