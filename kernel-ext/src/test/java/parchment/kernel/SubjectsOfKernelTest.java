package parchment.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import org.junit.jupiter.api.Test;

/** Holds the packages around the library to their order on the maintainer's page. */
class SubjectsOfKernelTest {
    private static final Pattern USE = Pattern.compile("(?m)^ +(parchment[\\w.]*) +-> (parchment[\\w.]*) ");
    private static final Pattern ROW = Pattern.compile("(?m)^\\| `([\\w.]+)` \\|");

    private static List<String> order() throws Exception {
        String page = Files.readString(Path.of("..", "docs", "architecture.md"));
        String table = page.substring(page.indexOf("## The tool by subject"));
        return ROW.matcher(table.substring(0, table.indexOf("\n## ")))
                .results()
                .map(row -> "parchment." + row.group(1))
                .toList();
    }

    /** Returns which package uses which, as the compiled classes do. */
    private static List<MatchResult> uses() throws URISyntaxException {
        Path classes = Path.of(KernelMain.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        StringWriter told = new StringWriter();
        ToolProvider.findFirst("jdeps")
                .orElseThrow()
                .run(
                        new PrintWriter(told),
                        new PrintWriter(Writer.nullWriter()),
                        "-verbose:package",
                        "-filter:none",
                        classes.toString());
        return USE.matcher(told.toString()).results().toList();
    }

    @Test
    void aPackageUsesOnlyThoseAboveIt() throws Exception {
        List<String> order = order();
        TreeSet<String> packages = new TreeSet<>();
        List<String> upsideDown = new ArrayList<>();
        for (MatchResult use : uses()) {
            packages.add(use.group(1));
            if (order.indexOf(use.group(1)) < order.indexOf(use.group(2))) {
                upsideDown.add(use.group(1) + " uses " + use.group(2));
            }
        }
        assertTrue(packages.contains("parchment.kernel.cell"), packages.toString());
        assertEquals(packages, new TreeSet<>(order));
        assertEquals(List.of(), upsideDown);
    }
}
