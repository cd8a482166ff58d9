package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.page.Outcome;
import parchment.kernel.words.CellError;

/** Holds the messages that docs/troubleshooting.md quotes to those that are really shown. */
class TroubleshootingPageTest {
    private static final Path HOME = Path.of("..").toAbsolutePath().normalize();
    private static final Pattern QUOTE = Pattern.compile("(?m)^\\| ``(.+?)`` \\|");
    private static final Pattern ROW = Pattern.compile("(?m)^\\| (?!what you see|---)");

    /** Each cell must bring about a message that the page quotes; {BROKEN}, {EMPTY} and {DEMO} are folders. */
    private static final List<String> CELLS = List.of(
            "Logbook.open(\"No Such Folder\")",
            "Logbook.open(\"{EMPTY}\")",
            "var logbook = Logbook.open(\"{DEMO}\");\nlogbook.batch(\"H0001\")",
            "logbook.ofLot(\"Salt Medow\")",
            "Evidence.of(\"sweetnes\", dropTemperature(), logbook)",
            "for (var problem : Logbook.open(\"{BROKEN}\").problems()) System.out.println(problem);",
            "for (var problem : Logbook.open(\"{OTHER}\").problems()) System.out.println(problem);",
            "System.out.println(\"b\"",
            "String s = \"open",
            "var s = “quoted”",
            "int x = 5 int y = 6",
            "measures.size()",
            "Features.dropTemprature()",
            "var broken = Integer.parseInt(\"ten\");",
            "broken + 1",
            "total = 5",
            "Files.readString(Path.of(\"nowhere.csv\"))",
            "var hoard = new ArrayList<long[]>();\nwhile (true) hoard.add(new long[50_000_000])",
            "System.out.println(Evidence.of(\"sweetness\", developmentTime(), logbook));",
            "var first = logbook.only(batch -> batch.name().compareTo(\"H006\") < 0);\n"
                    + "System.out.println(Evidence.of(\"sweetness\", dropTemperature(), first));",
            "for (var feature : Features.all()) if (feature.name().equals(\"days since arrival\"))"
                    + " System.out.println(Evidence.of(\"sweetness\", feature, logbook).reasons());",
            "System.out.println(Evidence.of(\"sweetness\", developmentRate(), logbook,"
                    + " EvidenceSettings.standard().withSmallestDifference(1)));",
            "System.out.println(Evidence.of(\"bitterness\", developmentTime(), logbook).reasons());",
            "System.out.println(Evidence.of(\"sweetness\", developmentTime(), logbook).reasons());",
            "ProbeShifts.of(Logbook.open(\"{FEW}\")).toString()",
            "LotYear.of(\"Salt Meadow\", dropTemperature(), logbook).toString()",
            "Watch.of(logbook.only(batch -> batch.name().compareTo(\"H005\") < 0), dropTemperature()).toString()",
            "Twins.of(logbook.only(batch -> batch.name().compareTo(\"H003\") < 0)).toString()",
            "Lesson.open(12, 17)",
            "Lesson.open(4, 17).check(\"?\", \"?\")");

    /** The cell that only makes the next one fail. */
    private static final String MAKER = "var broken = Integer.parseInt(\"ten\");";

    private static Path folder(Path parent, String name, String... files) throws IOException {
        for (int i = 0; i < files.length; i += 2) {
            Path file = parent.resolve(name).resolve(files[i]);
            Files.createDirectories(file.getParent());
            Files.writeString(file, files[i + 1]);
        }
        return parent.resolve(name);
    }

    private static String seen(Evaluator evaluator, String cell) {
        RecordingPage page = new RecordingPage();
        Outcome outcome = evaluator.run(cell, page);
        return outcome.error().map(CellError::text).orElse("") + "\n" + page.result() + "\n" + page.out() + page.err();
    }

    @Test
    void everyMessageOnThePageIsShown(@TempDir Path folders) throws IOException {
        Path empty = folder(folders, "empty", "notes.txt", "hello");
        Path broken = folder(
                folders,
                "broken",
                "curves/A1.csv",
                "seconds,bean temperature [°C]\n0,200\n30,110\n",
                "batches.csv",
                "batch,date,lot,green mass kg,drop\nA1,2024-04-03,Dawn,10,9:10\n",
                "cuppings.csv",
                "cupping,date,cupper,batch,sweetness\nC1,2024-04-05,Maren,A1,7\n");
        Path other = folder(
                folders,
                "other",
                "curves/A1 b.csv",
                "time [s],bean temperature [°C]\n0,200\n30,110\n60,90\n",
                "batches.csv",
                "batch,roasted at,lot\nA1,2024-04-03T09:15,Dawn\n");
        String text = Files.readString(HOME.resolve("docs/troubleshooting.md"));
        List<String> quotes =
                QUOTE.matcher(text).results().map(found -> found.group(1)).toList();
        assertEquals(
                ROW.matcher(text).results().count(), quotes.size(), "every row begins with a message in backticks");

        Map<String, String> shown = new TreeMap<>();
        try (Evaluator evaluator = Evaluator.open()) {
            for (String cell : CELLS) {
                shown.put(
                        cell,
                        seen(
                                evaluator,
                                cell.replace("{EMPTY}", slashed(empty))
                                        .replace("{BROKEN}", slashed(broken))
                                        .replace("{OTHER}", slashed(other))
                                        .replace("{DEMO}", slashed(HOME.resolve("datasets/harbour")))
                                        .replace("{FEW}", slashed(HOME.resolve("datasets/hillside")))));
            }
            shown.put("interrupted", interrupted(evaluator));
            // The thread that counts progress remembers the cell that began it as long as any work goes on, and with it
            // this session's variables.
            seen(evaluator, "hoard = null");
        }
        List<String> wrong = new ArrayList<>();
        for (String quote : quotes) {
            if (shown.values().stream().noneMatch(message -> message.contains(quote))) {
                wrong.add("quoted, but not shown: " + quote);
            }
        }
        shown.forEach((cell, message) -> {
            if (!cell.equals(MAKER) && quotes.stream().noneMatch(message::contains)) {
                wrong.add("shown, but not quoted: " + cell + " gives " + message.strip());
            }
        });
        assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
        assertTrue(quotes.size() >= 30, quotes.size() + " messages found on the page");
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }

    private static String interrupted(Evaluator evaluator) {
        CompletableFuture<String> text =
                CompletableFuture.supplyAsync(() -> seen(evaluator, "while (true) Thread.sleep(20);"));
        while (!text.isDone()) {
            evaluator.interrupt();
            try {
                Thread.sleep(200);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        return text.join();
    }
}
