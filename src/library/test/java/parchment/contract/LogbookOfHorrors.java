package parchment.contract;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Writes the first batches of the demo logbook with one thing wrong, each time another. */
final class LogbookOfHorrors {
    /** The batch that goes wrong, wherever one does. */
    static final String BAD = "H004";

    static final int BATCHES = 12;
    private static final Path DEMO = Path.of("..", "datasets", "harbour");
    private static final Set<String> LEFT_OUT = Set.of(
            "one reading",
            "two readings",
            "a probe dead after the first reading",
            "a probe that reads NaN",
            "equal times",
            "an empty file",
            "a heading alone",
            "no bean temperature",
            "binary garbage");
    private static final Set<String> SLOW = Set.of("one reading", "a sweetness of 1e300");
    private static final String HEAD = "time [s],bean temperature [°C]\n";

    /**
     * Holds what is wrong.
     *
     * @param says parts of the problem that has to name it
     */
    record Horror(String name, Change change, List<String> says) {
        /** Whether the bad batch has no curve that anything can be read off, so that pages leave it out. */
        boolean leavesOut() {
            return LEFT_OUT.contains(name);
        }

        /** Whether what takes longest is asked too. */
        boolean slow() {
            return SLOW.contains(name);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    private interface Change {
        void in(Path folder) throws IOException;
    }

    private LogbookOfHorrors() {}

    static List<Horror> all() {
        String curve = "curves/" + BAD + ".csv";
        List<Horror> all = new ArrayList<>();
        all.add(curve("one reading", HEAD + "0,200\n", curve, "1 usable reading"));
        all.add(curve("two readings", HEAD + "0,200\n400,190\n", curve, "2 usable readings"));
        all.add(curve(
                "a probe dead after the first reading", HEAD + rows(t -> t == 0 ? "200" : ""), curve, "1 usable"));
        all.add(curve("a probe that reads NaN", HEAD + rows(t -> "NaN"), curve, "of NaN"));
        all.add(curve("equal times", HEAD + "0,200\n".repeat(400), curve, "1 usable reading"));
        all.add(curve("a flat curve", HEAD + rows(t -> "180"), curve, "always the same"));
        all.add(curve("an empty file", "", curve, "an empty file"));
        all.add(curve("a heading alone", HEAD, curve, "a heading and no readings"));
        all.add(curve("no bean temperature", "time [s],gas [%]\n" + rows(t -> "50"), curve, "no bean temperature"));
        all.add(changed("a reading of 1e155", cells -> cells[1] = "1e155", curve, "1 reading of 1.0E155"));
        all.add(changed("a time of 5e300", cells -> cells[0] = "5e300", curve, "1 time like '5e300'"));
        all.add(new Horror(
                "negative times",
                folder -> lines(folder, curve, line -> line.startsWith("time") ? line : "-" + line),
                List.of(curve)));
        all.add(new Horror("binary garbage", folder -> garbage(folder.resolve(curve)), List.of(curve)));
        all.add(cell("batches.csv", "green mass [kg]", "1e300", "'1e300'", "from 10 g to 300 kg"));
        all.add(cell("batches.csv", "drop", "-5:00", "'-5:00'"));
        all.add(cell("batches.csv", "batch", "n".repeat(200_000), "a name of 200000 letters"));
        all.add(cell("cuppings.csv", "sweetness", "1e300", "'1e300'", "a number from -1,000,000 to 1,000,000"));
        all.add(cell("cuppings.csv", "sweetness", "-1e154", "'-1e154'", "a number from -1,000,000 to 1,000,000"));
        all.add(new Horror(
                "a blank heading",
                folder -> lines(folder, "batches.csv", line -> line.startsWith("batch,") ? line + "," : line + ",4.2"),
                List.of("batches.csv", "12 values under no heading")));
        return all;
    }

    private interface Reading {
        String at(int seconds);
    }

    private interface Line {
        String of(String line);
    }

    private static String rows(Reading reading) {
        StringBuilder rows = new StringBuilder();
        for (int t = 0; t < 700; t += 2) {
            rows.append(t).append(',').append(reading.at(t)).append('\n');
        }
        return rows.toString();
    }

    private static Horror curve(String name, String text, String... says) {
        return new Horror(
                name, folder -> Files.writeString(folder.resolve("curves/" + BAD + ".csv"), text), List.of(says));
    }

    private static Horror changed(String name, Consumer<String[]> change, String... says) {
        return new Horror(
                name,
                folder -> {
                    Path file = folder.resolve("curves/" + BAD + ".csv");
                    List<String> lines = new ArrayList<>(Files.readAllLines(file));
                    String[] cells = lines.get(150).split(",", -1);
                    change.accept(cells);
                    lines.set(150, String.join(",", cells));
                    Files.write(file, lines);
                },
                List.of(says));
    }

    private static Horror cell(String file, String heading, String written, String... says) {
        List<String> all = new ArrayList<>(List.of(file));
        all.addAll(List.of(says));
        String shown = written.length() > 20 ? "a very long name" : written;
        return new Horror("a " + heading + " of " + shown, folder -> cell(folder.resolve(file), heading, written), all);
    }

    private static void cell(Path file, String heading, String written) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        List<String> headings = List.of(lines.get(0).split(",", -1));
        int column = 0;
        while (!headings.get(column).startsWith(heading)) {
            column++;
        }
        int batch = headings.indexOf("batch");
        for (int i = 1; i < lines.size(); i++) {
            String[] cells = lines.get(i).split(",", -1);
            if (cells[batch].equals(BAD)) {
                cells[column] = written;
                lines.set(i, String.join(",", cells));
                break;
            }
        }
        Files.write(file, lines);
    }

    private static void lines(Path folder, String name, Line change) throws IOException {
        Path file = folder.resolve(name);
        Files.write(file, Files.readAllLines(file).stream().map(change::of).toList());
    }

    private static void garbage(Path file) throws IOException {
        byte[] bytes = new byte[20_000];
        new Random(14).nextBytes(bytes);
        Files.write(file, bytes);
    }

    /** Writes the logbook without anything wrong. */
    static Path write(Path folder) throws IOException {
        Files.createDirectories(folder.resolve("curves"));
        List<String> batches = Files.readAllLines(DEMO.resolve("batches.csv")).subList(0, BATCHES + 1);
        Set<String> names = batches.stream().map(row -> row.split(",")[0]).collect(Collectors.toSet());
        Files.write(folder.resolve("batches.csv"), batches);
        for (String table : List.of("lots.csv", "lot-checks.csv", "machines.csv", "upkeep.csv")) {
            Files.copy(DEMO.resolve(table), folder.resolve(table));
        }
        Files.writeString(
                folder.resolve("logbook.properties"), "name=Horrors\ntime.zone=UTC\nmissing.readings=999.9\n");
        List<String> cups = Files.readAllLines(DEMO.resolve("cuppings.csv"));
        List<String> headings = List.of(cups.get(0).split(",", -1));
        int batch = headings.indexOf("batch");
        Files.write(
                folder.resolve("cuppings.csv"),
                cups.stream()
                        .filter(row -> names.contains(row.split(",", -1)[batch]))
                        .toList());
        for (String name : names) {
            if (!name.equals("batch")) {
                Files.copy(DEMO.resolve("curves/" + name + ".csv"), folder.resolve("curves/" + name + ".csv"));
            }
        }
        return folder;
    }

    static Path write(Path folder, Horror horror) throws IOException {
        write(folder);
        horror.change().in(folder);
        return folder;
    }
}
