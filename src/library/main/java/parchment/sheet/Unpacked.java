package parchment.sheet;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Unpacks the parts of a packed workbook that tables are read from, within the bounds and counted while they are. Pictures, programs and
 * whatever else lies in it are never unpacked, and no name in it becomes a file.
 */
final class Unpacked {
    private static final int LONGEST_END = 22 + 65_535;

    private final Map<String, byte[]> parts = new HashMap<>();
    private final Set<String> others = new HashSet<>();

    private Unpacked() {}

    static Unpacked of(Path file) throws IOException {
        if (Files.size(file) > SheetBounds.LARGEST_WORKBOOK) {
            throw new NoTableException("a workbook of more than " + (SheetBounds.LARGEST_WORKBOOK >> 20)
                    + " MB; save the sheets that matter as a workbook of their own");
        }
        if (statedParts(file) > SheetBounds.MOST_PARTS) {
            throw tooManyParts();
        }
        Unpacked unpacked = new Unpacked();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            unpacked.read(zip);
        } catch (ZipException | IllegalArgumentException | java.io.EOFException e) {
            throw cut(e);
        }
        return unpacked;
    }

    private static NoTableException cut(Exception cause) {
        return new NoTableException(
                "a workbook that was cut off or damaged; copy it again, or open it and save it anew", cause);
    }

    private static NoTableException tooManyParts() {
        return new NoTableException(
                "a packed file with more than " + SheetBounds.MOST_PARTS + " files in it, which is no workbook");
    }

    /** Returns the number of files that the end of a packed file states, before their list is read into the memory. */
    private static int statedParts(Path file) throws IOException {
        long size = Files.size(file);
        int length = (int) Math.min(size, LONGEST_END);
        try (InputStream in = Files.newInputStream(file)) {
            in.skipNBytes(size - length);
            byte[] end = in.readNBytes(length);
            if (end.length < length) {
                throw cut(new ZipException("no end of the list of parts"));
            }
            for (int i = length - 22; i >= 0; i--) {
                if (end[i] == 'P' && end[i + 1] == 'K' && end[i + 2] == 5 && end[i + 3] == 6) {
                    return (end[i + 10] & 0xFF) | (end[i + 11] & 0xFF) << 8;
                }
            }
        }
        throw cut(new ZipException("no end of the list of parts"));
    }

    private void read(ZipFile zip) throws IOException {
        long total = 0;
        long most = SheetBounds.largestUnpacked(SheetBounds.memory());
        int count = 0;
        for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
            ZipEntry entry = all.nextElement();
            if (++count > SheetBounds.MOST_PARTS) {
                throw tooManyParts();
            }
            String name = entry.getName();
            if (name.contains("..")) {
                throw new NoTableException("a packed file with a name that leads out of it, " + Words.quote(name)
                        + ", which no spreadsheet writes; it is not opened");
            }
            if (!isWanted(name)) {
                others.add(name);
            } else {
                byte[] part = unpack(zip, entry, most - total);
                total += part.length;
                // The content of an .ods file that is locked is no XML; it is looked at after the list that says so.
                if (!name.equals("mimetype") && !name.equals("content.xml")) {
                    PlainXml.check(new ByteArrayInputStream(part), name);
                }
                if (parts.put(name.startsWith("/") ? name.substring(1) : name, part) != null) {
                    throw new NoTableException(
                            "a packed file that holds " + Words.quote(name) + " twice, which is no workbook");
                }
            }
        }
    }

    private static boolean isWanted(String name) {
        String plain = name.toLowerCase(Locale.ROOT);
        return plain.equals("mimetype")
                || plain.equals("content.xml")
                || plain.equals("meta-inf/manifest.xml")
                || plain.equals("[content_types].xml")
                || plain.startsWith("_rels/")
                || plain.startsWith("xl/")
                        && plain.endsWith(".xml")
                        && !plain.substring(3).contains("/")
                || plain.startsWith("xl/_rels/")
                || plain.startsWith("xl/worksheets/") && plain.endsWith(".xml");
    }

    private static boolean holdsCells(String name) {
        return name.equals("content.xml") || name.equals("xl/sharedStrings.xml") || name.startsWith("xl/worksheets/");
    }

    private static byte[] unpack(ZipFile zip, ZipEntry entry, long left) throws IOException {
        long most = holdsCells(entry.getName()) ? left : Math.min(SheetBounds.LARGEST_OTHER_PART, left);
        if (entry.getSize() > most) {
            throw entry.getSize() / Math.max(1, entry.getCompressedSize()) > SheetBounds.LARGEST_GROWTH
                    ? tooLarge(entry.getName())
                    : noRoom();
        }
        long packed = Math.max(1, entry.getCompressedSize());
        ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
        byte[] buffer = new byte[1 << 16];
        try (InputStream in = zip.getInputStream(entry)) {
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                out.write(buffer, 0, read);
                if (out.size() > SheetBounds.SMALL_PART && out.size() / packed > SheetBounds.LARGEST_GROWTH
                        || out.size() > SheetBounds.LARGEST_OTHER_PART && !holdsCells(entry.getName())) {
                    throw tooLarge(entry.getName());
                }
                if (out.size() > most) {
                    throw noRoom();
                }
            }
        }
        return out.toByteArray();
    }

    private static NoTableException noRoom() {
        return new NoTableException("a workbook that unpacks to more than "
                + (SheetBounds.largestUnpacked(SheetBounds.memory()) >> 20)
                + " MB, for which there is no room in the memory; save the sheets that matter as CSV, each as a file");
    }

    private static NoTableException tooLarge(String name) {
        return new NoTableException("a packed file whose part " + Words.quote(name)
                + " is blown up beyond any table; it is not opened. If it is yours, save its sheets as CSV");
    }

    /** Looks for words that a part defines of its own. */
    void check(String name) throws NoTableException {
        PlainXml.check(part(name), name);
    }

    /** Returns whether there is a part of that name, be it unpacked or not. */
    boolean has(String part) {
        return parts.containsKey(part) || others.contains(part);
    }

    /** Returns a part; an empty one if there is none. */
    InputStream part(String name) {
        return new ByteArrayInputStream(parts.getOrDefault(name, new byte[0]));
    }

    /** Returns the names of the parts. */
    Set<String> names() {
        return Set.copyOf(parts.keySet());
    }

    /** Puts what was made of a part in its place. */
    void replace(String name, byte[] part) {
        parts.put(name, part);
    }

    /** Packs what was counted and checked anew, so that a library sees nothing else. */
    InputStream packedAnew() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setLevel(1);
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
                zip.closeEntry();
            }
        }
        return new ByteArrayInputStream(out.toByteArray());
    }
}
