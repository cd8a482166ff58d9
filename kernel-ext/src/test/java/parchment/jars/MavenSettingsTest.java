package parchment.jars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.jars.MavenSettings.Mirror;
import parchment.jars.MavenSettings.Proxy;

class MavenSettingsTest {
    @TempDir
    private Path folder;

    @Test
    void readsFolderMirrorsAndProxies() throws IOException {
        Files.writeString(folder.resolve("settings.xml"), """
                <?xml version="1.0" encoding="UTF-8"?>
                <settings xmlns="http://maven.apache.org/SETTINGS/1.2.0">
                  <localRepository>${user.home}/libraries</localRepository>
                  <offline>true</offline>
                  <mirrors>
                    <mirror><id>house</id><url>https://maven.example.org/all</url><mirrorOf>*</mirrorOf></mirror>
                    <mirror><id>stop</id><url>http://0.0.0.0/</url><mirrorOf>external:http:*</mirrorOf><blocked>true</blocked></mirror>
                  </mirrors>
                  <proxies>
                    <proxy><protocol>https</protocol><host>gate.example.org</host><port>3128</port>
                      <nonProxyHosts>*.example.org</nonProxyHosts></proxy>
                    <proxy><active>false</active><host>old.example.org</host></proxy>
                  </proxies>
                </settings>
                """);
        assertEquals(
                new MavenSettings(
                        Path.of(System.getProperty("user.home"), "libraries"),
                        List.of(
                                Mirror.asked("house", "https://maven.example.org/all", "*"),
                                new Mirror("stop", "http://0.0.0.0/", "external:http:*", MavenSettings.Use.BLOCKED)),
                        List.of(new Proxy("https", "gate.example.org", 3128, "*.example.org")),
                        Network.NEVER),
                MavenSettings.in(folder));
    }

    @Test
    void takesMavensOwnFolderWithoutAFile() {
        assertEquals(
                new MavenSettings(folder.resolve("repository"), List.of(), List.of(), Network.WHEN_ASKED),
                MavenSettings.in(folder));
    }

    @Test
    void saysThatTheFileCannotBeRead() throws IOException {
        Files.writeString(folder.resolve("settings.xml"), "<settings><mirrors></settings>");
        String words = assertThrows(IllegalArgumentException.class, () -> MavenSettings.in(folder))
                .getMessage();
        assertTrue(
                words.startsWith("The settings of Maven in '" + folder.resolve("settings.xml") + "' cannot be read"),
                words);
    }

    @Test
    void fetchesNothingThatTheFileNames() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret"), "secret");
        Files.writeString(
                folder.resolve("settings.xml"),
                "<!DOCTYPE settings [<!ENTITY own SYSTEM \"" + secret.toUri()
                        + "\">]><settings><localRepository>&own;</localRepository></settings>");
        assertThrows(IllegalArgumentException.class, () -> MavenSettings.in(folder));
    }
}
