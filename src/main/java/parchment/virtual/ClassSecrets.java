package parchment.virtual;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Finds what gives the truths of a class away in a folder that is to be packed or handed out: secret seeds, and truths that were
 * drawn from one, whatever the files are named. The truths of the demo logbooks come from plain seeds and are no secret.
 *
 * <p>Files are read as they lie: what is packed into an archive, or is larger than 64 MB, is not looked into.
 */
public final class ClassSecrets {
    private static final Set<String> SEED_FILES = Set.of("seeds.properties", "seeds.csv");
    private static final String SECRET = "secret:";
    /** A seed at the end of its line, as the teacher's folder and an opened truth hold it; not the literal of a program. */
    private static final Pattern SEED = Pattern.compile("(?m)secret:[0-9a-f]{64}\"?,?[ \t\r]*$");

    private static final int LARGEST_BYTES = 64 << 20;

    private ClassSecrets() {}

    /**
     * Returns the first file with a secret in a folder or anywhere below it, the targets of linked files included.
     *
     * @throws IOException if the folder cannot be read
     */
    public static Optional<Path> below(Path folder) throws IOException {
        Path[] found = new Path[1];
        if (!Files.exists(folder)) {
            return Optional.empty();
        }
        Files.walkFileTree(folder.toRealPath(), new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                if (Files.isRegularFile(file) && isSecret(file)) {
                    found[0] = file;
                    return FileVisitResult.TERMINATE;
                }
                return FileVisitResult.CONTINUE;
            }
        });
        return Optional.ofNullable(found[0]);
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
            text = new String(in.readNBytes(LARGEST_BYTES), StandardCharsets.ISO_8859_1);
        }
        return text.contains(SECRET) && SEED.matcher(text).find()
                || text.contains(SealedTruth.WHAT) && holdsSecretTruth(file);
    }

    private static boolean holdsSecretTruth(Path file) {
        try {
            return SealedTruth.open(file).seed().isSecret();
        } catch (IOException | RuntimeException e) {
            return false; // A text that speaks of truths, such as a program, and holds none.
        }
    }
}
