package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class ReleaseZipTest {
    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "links as Linux and macOS know them")
    void aFolderBehindALinkIsPackedWithWhatIsInIt(@TempDir Path folder) throws IOException {
        Path plain = folder.resolve("parchment-0.1.0.zip");
        try (ZipArchiveOutputStream zip = new ZipArchiveOutputStream(plain.toFile())) {
            zip.putArchiveEntry(new ZipArchiveEntry("parchment-0.1.0/parchment"));
            zip.closeArchiveEntry();
        }
        Path java = Files.createDirectories(folder.resolve("java"));
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        Files.writeString(elsewhere.resolve("modules"), "all of them");
        Files.createSymbolicLink(java.resolve("lib"), elsewhere);
        Path file = new ReleaseZip(plain).with(java, folder.resolve("with-java.zip"));
        try (ZipFile zip = ZipFile.builder().setPath(file).get()) {
            ZipArchiveEntry entry = zip.getEntry("parchment-0.1.0/java/lib/modules");
            assertEquals("all of them", new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8));
        }
    }
}
