package parchment.virtual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MakeDatasetsTest {
    private static final Path COMMITTED =
            Files.isDirectory(Path.of("datasets")) ? Path.of("datasets") : Path.of("../datasets");

    @Test
    void theCommittedDatasetsAreWhatTheCommandMakes() throws IOException {
        for (Map.Entry<String, VirtualRoastery> dataset : MakeDatasets.all().entrySet()) {
            VirtualLogbook logbook = dataset.getValue().run();
            Map<String, String> made = logbook.files();
            Map<String, String> committed = read(COMMITTED.resolve(dataset.getKey()));
            assertEquals(new TreeSet<>(made.keySet()), new TreeSet<>(committed.keySet()), dataset.getKey());
            for (String path : made.keySet()) {
                assertEquals(made.get(path), committed.get(path), dataset.getKey() + "/" + path);
            }
            assertEquals(
                    logbook.truth().sealedText(),
                    Files.readString(COMMITTED.resolve(dataset.getKey() + "-truth.json"), StandardCharsets.UTF_8));
        }
    }

    @Test
    void writesWhatItSaysAndReplacesOnlyItsOwn(@TempDir Path folder) throws IOException {
        PrintStream quiet = new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
        Map<String, VirtualRoastery> hillside = Map.of("hillside", VirtualRoastery.hillside());
        MakeDatasets.write(hillside, folder, quiet);
        MakeDatasets.write(hillside, folder, quiet);
        assertEquals(read(COMMITTED.resolve("hillside")), read(folder.resolve("hillside")));

        Path mine = folder.resolve("hillside/logbook.properties");
        Files.writeString(mine, "name=My own roastery\n");
        IOException refused = assertThrows(IOException.class, () -> MakeDatasets.write(hillside, folder, quiet));
        assertTrue(refused.getMessage().contains("left alone"), refused.getMessage());
        assertEquals("name=My own roastery\n", Files.readString(mine));
    }

    @Test
    void aLogbookIsNeverWrittenIntoAFolderThatHoldsSomething(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("notes.txt"), "mine");
        IOException refused = assertThrows(
                IOException.class,
                () -> VirtualRoastery.harbour().withBatches(2).run().writeTo(folder));
        assertTrue(refused.getMessage().contains("empty folder only"), refused.getMessage());
    }

    /** Frictionless Data Package, version 1: each resource has a name of its own, a path that exists, fields in the file's order. */
    @Test
    void theDataPackageDescribesEveryTable() throws IOException {
        for (String dataset : MakeDatasets.all().keySet()) {
            Path folder = COMMITTED.resolve(dataset);
            JsonObject whole = JsonParser.parseString(Files.readString(folder.resolve("datapackage.json")))
                    .getAsJsonObject();
            assertEquals("tabular-data-package", whole.get("profile").getAsString());
            TreeSet<String> names = new TreeSet<>();
            TreeSet<String> paths = new TreeSet<>();
            for (JsonElement element : whole.getAsJsonArray("resources")) {
                JsonObject resource = element.getAsJsonObject();
                String name = resource.get("name").getAsString();
                assertTrue(name.matches("[-a-z0-9._/]+") && names.add(name), name);
                paths.add(resource.get("path").getAsString());
                JsonElement schema = resource.get("schema");
                JsonObject fields = schema.isJsonObject()
                        ? schema.getAsJsonObject()
                        : JsonParser.parseString(Files.readString(folder.resolve(schema.getAsString())))
                                .getAsJsonObject();
                StringBuilder header = new StringBuilder();
                for (JsonElement field : fields.getAsJsonArray("fields")) {
                    header.append(header.length() == 0 ? "" : ",")
                            .append(field.getAsJsonObject().get("name").getAsString());
                }
                String text =
                        Files.readString(folder.resolve(resource.get("path").getAsString()));
                assertEquals(text.substring(0, text.indexOf('\n')), header.toString(), name);
            }
            TreeSet<String> tables = new TreeSet<>(read(folder).keySet());
            tables.removeIf(path -> !path.endsWith(".csv"));
            assertEquals(tables, paths);
        }
    }

    @Test
    void everythingAPlanCouldBeReadFromSaysInventedMachine() throws IOException {
        for (String dataset : MakeDatasets.all().keySet()) {
            Map<String, String> files = read(COMMITTED.resolve(dataset));
            for (String path : new String[] {"README.md", "logbook.properties", "datapackage.json"}) {
                assertTrue(files.get(path).contains("Invented machine: do not roast"), dataset + "/" + path);
            }
        }
        assertTrue(Files.readString(COMMITTED.resolve("README.md")).contains("do not roast"));
    }

    private static Map<String, String> read(Path folder) throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path path : (Iterable<Path>) walk.filter(Files::isRegularFile)::iterator) {
                files.put(
                        folder.relativize(path).toString().replace('\\', '/'),
                        Files.readString(path, StandardCharsets.UTF_8));
            }
        }
        return files;
    }
}
