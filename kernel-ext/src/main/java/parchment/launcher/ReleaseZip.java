package parchment.launcher;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Enumeration;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import parchment.file.WholeFile;

/**
 * The release with a Java of its own: what the build packed, unchanged, and the Java in the folder {@code java} beside it. Each entry says
 * whether its file may run, as unpackers on Linux and macOS read it; links become what they point to, for many unpackers know none.
 *
 * @param plain the release as the build makes it, for machines that have a JDK
 */
record ReleaseZip(Path plain) {
    private static final int RUNS = 0100755;
    private static final int READ = 0100644;
    private static final int FOLDER = 040755;

    /** Returns the name of the file for this system, such as {@code parchment-0.1.0-linux-amd64.zip}. */
    String nameHere() {
        return String.valueOf(plain.getFileName()).replaceFirst("\\.zip$", "") + "-" + ThisSystem.name() + ".zip";
    }

    /** Packs the release with that Java into a file, and returns the file. */
    Path with(Path java, Path file) throws IOException {
        return WholeFile.at(file).make(aside -> {
            try (ZipFile release = ZipFile.builder().setPath(plain).get();
                    ZipArchiveOutputStream zip = new ZipArchiveOutputStream(aside.toFile())) {
                ZipArchiveEntry launcher = launcher(release);
                for (Enumeration<ZipArchiveEntry> all = release.getEntriesInPhysicalOrder(); all.hasMoreElements(); ) {
                    ZipArchiveEntry entry = all.nextElement();
                    zip.addRawArchiveEntry(entry, release.getRawInputStream(entry));
                }
                String folder = launcher.getName().replaceFirst("[^/]+$", "") + Places.JAVA;
                for (Path each : below(java)) {
                    String place = java.relativize(each).toString().replace('\\', '/');
                    add(zip, each, place.isEmpty() ? folder : folder + "/" + place, launcher.getTime());
                }
            }
        });
    }

    /** Finds the program that starts everything; the folder it lies in is that of the release. */
    private ZipArchiveEntry launcher(ZipFile release) throws IOException {
        for (Enumeration<ZipArchiveEntry> all = release.getEntries(); all.hasMoreElements(); ) {
            ZipArchiveEntry entry = all.nextElement();
            if (entry.getName().matches("[^/]+/parchment")) {
                return entry;
            }
        }
        throw new IOException("'" + plain + "' is no release: the program 'parchment' is not in it. Build it anew.");
    }

    /** The same files in the same order on every machine. */
    private static List<Path> below(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder, FileVisitOption.FOLLOW_LINKS)) {
            return walk.filter(Files::exists).sorted().toList();
        }
    }

    private static void add(ZipArchiveOutputStream zip, Path file, String name, long time) throws IOException {
        boolean folder = Files.isDirectory(file);
        ZipArchiveEntry entry = new ZipArchiveEntry(folder ? name + "/" : name);
        entry.setTime(time);
        entry.setUnixMode(folder ? FOLDER : Files.isExecutable(file) ? RUNS : READ);
        zip.putArchiveEntry(entry);
        if (!folder) {
            try (InputStream in = Files.newInputStream(file)) {
                in.transferTo(zip);
            }
        }
        zip.closeArchiveEntry();
    }

    /** Writes the file's SHA-256 beside it, as {@code sha256sum --check} reads it, and returns where. */
    static Path writeSum(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        return WholeFile.at(file.resolveSibling(name + ".sha256")).write(sum(file) + "  " + name + "\n");
    }

    private static String sum(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            DigestInputStream digested = new DigestInputStream(in, MessageDigest.getInstance("SHA-256"));
            digested.transferTo(java.io.OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(digested.getMessageDigest().digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("This Java lacks SHA-256, which every Java has.", e);
        }
    }
}
