package parchment.jars;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session that never asks for a library pays nothing for the resolver: in a Java of its own, none of its classes is loaded. */
class ResolverLoadedTest {
    /** Opens a session, runs a cell, and on request asks for a library. */
    static final class Probe {
        private Probe() {}

        public static void main(String[] arguments) {
            try (parchment.kernel.cell.Evaluator evaluator = parchment.kernel.cell.Evaluator.open()) {
                for (String cell : arguments) {
                    evaluator.run(cell, new parchment.kernel.page.CellPage() {
                        @Override
                        public void print(Stream stream, String text) {}

                        @Override
                        public void show(parchment.kernel.page.Shown shown) {}

                        @Override
                        public void result(parchment.kernel.page.Shown shown) {}
                    });
                }
            }
            System.exit(0);
        }
    }

    private static List<String> loaded(Path folder, String... cells) throws IOException, InterruptedException {
        Path log = folder.resolve("classes.log");
        List<String> command = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load:file=" + log,
                "-Dmaven.repo.local=" + folder,
                "-cp",
                withoutTheWayOverHttp(),
                Probe.class.getName()));
        command.addAll(List.of(cells));
        new ProcessBuilder(command).inheritIO().start().waitFor();
        return Files.readAllLines(log);
    }

    /** The program leaves these jars out; they may still lie on the class path of whoever runs this test. */
    private static String withoutTheWayOverHttp() {
        return java.util.Arrays.stream(System.getProperty("java.class.path").split(java.io.File.pathSeparator))
                .filter(place -> !place.matches(".*(httpclient|httpcore|jcl-over-slf4j)-[^/]*\\.jar"))
                .collect(java.util.stream.Collectors.joining(java.io.File.pathSeparator));
    }

    @Test
    void theProgramLeavesOutTheWayOverHttpThatItNeverTakes() throws IOException {
        String notices = Files.readString(Path.of("src", "main", "assembly", "THIRD-PARTY.md"));
        String pom = Files.readString(Path.of("..", "pom.xml"));
        for (String jar : List.of("| httpclient |", "| httpcore |", "| jcl-over-slf4j |")) {
            assertTrue(!notices.contains(jar), jar);
        }
        assertTrue(pom.contains("<groupId>org.apache.httpcomponents</groupId>"), "left out by name");
    }

    private static long ofResolver(List<String> loaded) {
        return loaded.stream()
                .filter(line -> line.contains(" org.eclipse.aether.")
                        || line.contains(" org.apache.maven.")
                        || line.contains(" org.apache.http.")
                        || line.contains(" parchment.jars.Resolver "))
                .count();
    }

    @Test
    void noneOfItIsLoadedBeforeALibraryIsAskedFor(@TempDir Path folder) throws IOException, InterruptedException {
        List<String> plain = loaded(folder, "1 + 1", "Jars.all()", "%classpath");
        assertTrue(plain.stream().anyMatch(line -> line.contains(" parchment.jars.Jars ")), "the cells ran");
        assertEquals(0, ofResolver(plain));
        assertTrue(ofResolver(loaded(folder, "Jars.add(\"harbour:none:1.0\")")) > 100, "and then it is");
    }
}
