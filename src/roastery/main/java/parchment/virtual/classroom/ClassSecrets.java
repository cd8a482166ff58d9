package parchment.virtual.classroom;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import parchment.virtual.SealedTruth;

/**
 * Finds what gives the truths of a class away in a folder that is to be packed or handed out: secret seeds, and truths that were
 * drawn from one, whatever the files are named. The truths of the demo logbooks come from plain seeds and are no secret.
 *
 * <p>Files are read as they lie: what is packed into an archive is not looked into, nor is what is no text, nor what of a file lies
 * beyond its first 64 MB. What this account may not read it can neither pack nor hand out, so it is passed over.
 */
public final class ClassSecrets {
    private static final Set<String> SEED_FILES = Set.of("seeds.properties", "seeds.csv");
    private static final String SECRET = "secret:";
    /** A seed at the end of its line, as the teacher's folder and an opened truth hold it; not the literal of a program. */
    private static final Pattern SEED = Pattern.compile("(?m)secret:[0-9a-f]{64}\"?,?[ \t\r]*$");

    private static final int LARGEST_BYTES = 64 << 20;
    /** A picture, a film, an archive or a program shows so early that it is no text. */
    private static final int HEAD_BYTES = 8 << 10;

    private ClassSecrets() {}

    /**
     * Returns the first file with a secret in a folder or anywhere below it, the targets of linked files included.
     *
     * @throws IOException if the folder itself cannot be read
     */
    public static Optional<Path> below(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return Optional.empty();
        }
        Path start = folder.toRealPath();
        Search search = new Search(start);
        Files.walkFileTree(start, search);
        return Optional.ofNullable(search.found);
    }

    /** Stops at the first secret, and nowhere before. */
    static final class Search extends SimpleFileVisitor<Path> {
        private final Path start;
        private @Nullable Path found;

        Search(Path start) {
            this.start = start;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
            if (Files.isRegularFile(file) && isSecret(file)) {
                found = file;
                return FileVisitResult.TERMINATE;
            }
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
            if (file.equals(start)) {
                throw e;
            }
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException e) {
            return FileVisitResult.CONTINUE;
        }
    }

    /**
     * Refuses a folder that holds a secret.
     *
     * @param use what is meant to be done with the folder, as in "handed out"
     * @throws IllegalArgumentException if a secret is found; the message names its file and what to do
     */
    public static void refuseIn(Path folder, String use) throws IOException {
        Optional<Path> found = below(folder);
        if (found.isPresent()) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The folder %s is to be %s, but %s holds a secret of a class: whoever gets it knows every truth."
                            + " Keep the teacher's folder somewhere else, and run this again.",
                    folder,
                    use,
                    found.get()));
        }
    }

    private static boolean isSecret(Path file) throws IOException {
        if (SEED_FILES.contains(file.getFileName().toString().toLowerCase(Locale.ROOT))) {
            return true;
        }
        String text;
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(HEAD_BYTES);
            if (!isText(head)) {
                return false;
            }
            text = new String(head, StandardCharsets.ISO_8859_1)
                    + new String(in.readNBytes(LARGEST_BYTES - HEAD_BYTES), StandardCharsets.ISO_8859_1);
        } catch (AccessDeniedException e) {
            return false;
        }
        return text.contains(SECRET) && SEED.matcher(text).find()
                || text.contains(SealedTruth.WHAT) && holdsSecretTruth(file);
    }

    private static boolean isText(byte[] head) {
        for (byte each : head) {
            if (each == 0) {
                return false;
            }
        }
        return true;
    }

    private static boolean holdsSecretTruth(Path file) {
        try {
            return SealedTruth.open(file).seed().isSecret();
        } catch (IOException | RuntimeException e) {
            return false; // A text that speaks of truths, such as a program, and holds none.
        }
    }
}
