package parchment.lesson;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Works out SHA-256 (FIPS 180-4), which every Java has. */
final class Digest {
    private Digest() {}

    /** Returns the digest of a text in UTF-8 as 64 hexadecimal digits. */
    static String of(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java has no SHA-256, which every Java should have.", e);
        }
    }
}
