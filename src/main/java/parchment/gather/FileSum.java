package parchment.gather;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Holds a file's size and the SHA-256 (FIPS 180-4) of its bytes, by which it is known whether somebody has changed it.
 *
 * @param size in bytes
 * @param checksum 64 hexadecimal digits
 */
record FileSum(long size, String checksum) {
    /** Reads a file. */
    static FileSum of(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file);
                DigestInputStream summed = new DigestInputStream(in, MessageDigest.getInstance("SHA-256"))) {
            long size = summed.transferTo(java.io.OutputStream.nullOutputStream());
            return new FileSum(
                    size, HexFormat.of().formatHex(summed.getMessageDigest().digest()));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java has SHA-256.", e);
        }
    }
}
