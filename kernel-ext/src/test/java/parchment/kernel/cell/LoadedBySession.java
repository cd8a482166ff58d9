package parchment.kernel.cell;

import java.util.List;

/** Shows one value of every kind that Java itself has, for a list of the classes that are loaded for it. */
public final class LoadedBySession {
    private static final List<String> CELLS = List.of(
            "1 + 1",
            "new double[][] {{1, 2}, {3, 4}}",
            "record Cup(String lot, double score) { }\nList.of(new Cup(\"North\", 84.25))",
            "Map.of(\"a\", 1)",
            "Stream.iterate(1, i -> i + 1)",
            "Optional.of(List.of(1))",
            "new IllegalStateException(\"a value\")",
            "Display.as(\"text/html\", \"<b>x</b>\")",
            "Display.register(\"com.example.Cup\", cup -> \"cup\");\n\"text\"");

    private LoadedBySession() {}

    public static void main(String[] arguments) {
        try (Evaluator evaluator = Evaluator.open()) {
            RecordingPage page = new RecordingPage();
            CELLS.forEach(cell -> evaluator.run(cell, page));
            System.out.println("shown: " + page.results.size());
        }
    }
}
