package parchment.jars;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import parchment.file.FileWords;

/** What is in a jar, as far as it matters before it is loaded: whether it is one, which Java it needs, what else has its classes. */
final class JarContent {
    /** Java 1.1 wrote 45 into its classes, and each version after it one more. */
    private static final int VERSION_BEFORE_JAVA_1 = 44;

    private static final int MAGIC = 0xCAFEBABE;
    private static final String CLASS = ".class";
    private static final Pattern FILE_NAME = Pattern.compile("(.+?)-(\\d[\\w.\\-]*)\\.jar");

    /** A library as a file's name tells it. */
    record Named(String artifact, String version) {}

    private final Path jar;
    private final List<String> classes;
    private final int newestJava;

    private JarContent(Path jar, List<String> classes, int newestJava) {
        this.jar = jar;
        this.classes = classes;
        this.newestJava = newestJava;
    }

    /**
     * Looks into a jar.
     *
     * @throws IllegalArgumentException if it is no jar, cannot be read, needs a newer Java than this one, or would keep cells from being compiled
     */
    static JarContent of(Path jar) {
        JarContent content = read(jar);
        int here = Runtime.version().feature();
        if (content.newestJava > here) {
            throw new IllegalArgumentException("'" + jar.getFileName() + "' was made for Java " + content.newestJava
                    + " or later; this session runs on Java " + here
                    + ". Name an older version of it, or install a newer Java"
                    + " and then Parchment again. Nothing was loaded.");
        }
        JarReading.check(jar);
        return content;
    }

    /** Returns whether a class is in both jars; one that cannot be read any more counts as if it were. */
    static boolean shareAClass(Path one, Path other) {
        try {
            return !Collections.disjoint(Set.copyOf(read(one).classes), read(other).classes);
        } catch (IllegalArgumentException unreadable) {
            return true;
        }
    }

    private static JarContent read(Path jar) {
        List<String> classes = new ArrayList<>();
        int newest = 0;
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            Enumeration<? extends ZipEntry> entries = zip.entries();
            while (entries.hasMoreElements()) {
                ZipEntry entry = entries.nextElement();
                String name = entry.getName();
                // Those below META-INF are for newer versions of Java, which alone read them.
                if (!entry.isDirectory()
                        && name.endsWith(CLASS)
                        && !name.startsWith("META-INF/")
                        && !name.endsWith("module-info.class")) {
                    classes.add(name);
                    newest = Math.max(newest, javaOf(zip, entry));
                }
            }
        } catch (ZipException e) {
            throw new IllegalArgumentException("'" + jar
                    + "' is no jar: a jar is a zip archive of Java classes, and this file cannot be opened as one."
                    + " Was it downloaded whole?");
        } catch (IOException e) {
            throw new IllegalArgumentException(FileWords.of(e), e);
        }
        return new JarContent(jar, classes, newest);
    }

    private static int javaOf(ZipFile zip, ZipEntry entry) throws IOException {
        try (InputStream bytes = zip.getInputStream(entry);
                DataInputStream data = new DataInputStream(bytes)) {
            if (entry.getSize() < 8 || data.readInt() != MAGIC) {
                return 0; // No class, whatever its name says; nothing will load it.
            }
            data.readUnsignedShort();
            return data.readUnsignedShort() - VERSION_BEFORE_JAVA_1;
        }
    }

    /** Returns how many classes it has. */
    int size() {
        return classes.size();
    }

    /** Returns how many of its classes are there already, as the predicate says of each class file's name. */
    int present(Predicate<String> there) {
        return (int) classes.stream().filter(there).count();
    }

    /** Returns one of its classes that is there already. */
    Optional<String> firstPresent(Predicate<String> there) {
        return classes.stream().filter(there).findFirst();
    }

    /** Returns the library and version that the file's name tells, as nearly all are named. */
    Optional<Named> named() {
        return named(String.valueOf(jar.getFileName()));
    }

    static Optional<Named> named(String fileName) {
        Matcher matcher = FILE_NAME.matcher(fileName);
        return matcher.matches() ? Optional.of(new Named(matcher.group(1), matcher.group(2))) : Optional.empty();
    }
}
