package parchment.gather.corpus;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.gather.corpus.Kind.Part;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;

/** What goes wrong in real folders, and what else lies in them. */
final class KindsOfFaults {
    private static final byte[] PICTURE = {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xE0, 0, 16, 'J', 'F', 0, 1};

    private static final Set<Fact> CURVES = EnumSet.of(Fact.BEAN_CURVES, Fact.AIR_CURVES, Fact.GAS);

    private static final Set<Fact> ROW = EnumSet.of(
            Fact.DAYS,
            Fact.TIMES,
            Fact.LOTS,
            Fact.GREEN_MASSES,
            Fact.ROASTED_MASSES,
            Fact.YELLOWING,
            Fact.FIRST_CRACK,
            Fact.DROP);

    private KindsOfFaults() {}

    private static Kind plain(String name, Part... more) {
        Kind kind = Kind.of(
                "faults: " + name,
                CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv")),
                CorpusKinds.LISTED.text(TextStyle.PLAIN, "list.csv"));
        for (Part part : more) {
            kind = kind.and(part);
        }
        return kind;
    }

    /** Returns a part that does something to each file of readings. */
    private static Part spoilt(UnaryOperator<String> text) {
        return Part.silent((roastery, folder, random) -> {
            for (Path file : curves(folder)) {
                Files.writeString(file, text.apply(Files.readString(file)));
            }
        });
    }

    private static List<Path> curves(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().matches("[0-9]+\\.csv"))
                    .sorted()
                    .toList();
        }
    }

    private static String sentinels(String text) {
        String[] lines = text.split("\r\n");
        for (int i = 20; i < lines.length; i += 97) {
            String[] cells = lines[i].split(",");
            cells[1] = i % 2 == 0 ? "-1" : "999.9";
            lines[i] = String.join(",", cells);
        }
        return String.join("\r\n", lines) + "\r\n";
    }

    private static String twice(String text) {
        String[] lines = text.split("\r\n");
        List<String> more = new ArrayList<>();
        for (int i = 0; i < lines.length; i++) {
            more.add(lines[i]);
            if (i > 5 && i % 60 == 0) {
                more.add(lines[i]);
            }
        }
        return String.join("\r\n", more) + "\r\n";
    }

    static List<Kind> all() {
        ListParts listed = CorpusKinds.LISTED;
        return List.of(
                plain("the last line cut", spoilt(text -> text.substring(0, text.length() - 9))),
                plain("readings of -1 and 999.9", spoilt(KindsOfFaults::sentinels)),
                plain("some readings twice", spoilt(KindsOfFaults::twice)),
                plain("headings again in the middle", spoilt(text -> {
                    int half = text.indexOf("\r\n", text.length() / 2) + 2;
                    return text.substring(0, half) + text.substring(0, text.indexOf("\r\n") + 2) + text.substring(half);
                })),
                plain(
                        "old line ends and blank lines",
                        spoilt(text -> text.replace("\r\n", "\n").replace("\n", "\n\n"))),
                plain("a sheet of orders", Part.silent((roastery, folder, random) -> {
                    Grid orders = new Grid("orders").row("Customer", "Coffee", "kg", "Deliver on");
                    for (Roast roast : roastery.batches()) {
                        orders.row(
                                "Shop " + (1 + random.nextInt(9)),
                                roast.lot(),
                                1 + random.nextInt(5),
                                roast.chargedAt().toLocalDate().plusDays(2));
                    }
                    TextStyle.PLAIN.write(orders, folder.resolve("orders.csv"));
                })),
                plain("photos, a letter and an empty file beside", Part.silent((roastery, folder, random) -> {
                    Files.write(folder.resolve("drum.jpg"), PICTURE);
                    Files.writeString(folder.resolve("invoice.pdf"), "%PDF-1.4\n%âãÏÓ\n1 0 obj\n");
                    Files.write(folder.resolve("empty.csv"), new byte[0]);
                    Files.writeString(
                            folder.resolve("read me.txt"),
                            "The probe was cleaned in May.\nAsk Jørn about the fan.\n",
                            StandardCharsets.UTF_8);
                })),
                Kind.of(
                        "faults: a stray note under the list",
                        CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv")),
                        listed.text(
                                TextStyle.PLAIN,
                                "list.csv",
                                grid -> grid.row("").row("weights from the small scale, which reads high"))),
                Kind.of(
                        "faults: lots with slashes and blanks at their ends",
                        CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("Batch %d.csv")),
                        ListParts.of(
                                        ListColumn.number("Batch", "Batch %d"),
                                        ListColumn.at("Roasted"),
                                        new ListColumn("Lot", Set.of(Fact.LOTS), roast -> "  " + roast.lot() + " "),
                                        ListColumn.green("Green kg", ListColumn.KILOGRAM))
                                .text(TextStyle.PLAIN, "list.csv")),
                plain(
                                "a missing curve",
                                Part.silent((roastery, folder, random) ->
                                        Files.delete(curves(folder).get(3))))
                        .lacking(3, CURVES),
                withoutRow(),
                Kind.of(
                        "faults: one batch in two rows",
                        CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv")),
                        listed.text(
                                TextStyle.PLAIN,
                                "list.csv",
                                grid -> grid.row(List.copyOf(grid.rows().get(4))))),
                plain("an old copy of the list", listed.text(TextStyle.PLAIN, "list (copy).csv", grid -> {
                    while (grid.rows().size() > 8) {
                        grid.rows().remove(grid.rows().size() - 1);
                    }
                    return grid;
                })),
                plain("the same curves again in a folder of copies", Part.silent((roastery, folder, random) -> {
                    Path copies = Files.createDirectories(folder.resolve("backup"));
                    for (Path file : curves(folder)) {
                        Files.copy(file, copies.resolve(file.getFileName()));
                    }
                })),
                plain("the list's rows in no order", Part.silent((roastery, folder, random) -> {
                    Part shuffled = listed.shuffled(TextStyle.PLAIN, "list.csv");
                    shuffled.writing().write(roastery, folder, random);
                })),
                Kind.of(
                                "faults: a curve that ended before its drop",
                                new Part(
                                        EnumSet.of(Fact.BATCHES, Fact.BEAN_CURVES, Fact.AIR_CURVES, Fact.GAS),
                                        (roastery, folder, random) -> {
                                            CorpusKinds.LOGGED
                                                    .files(TextStyle.PLAIN, Naming.number("%d.csv"))
                                                    .writing()
                                                    .write(roastery, folder, random);
                                            Path one = curves(folder).get(2);
                                            String text = Files.readString(one);
                                            Files.writeString(one, text.substring(0, text.length() * 4 / 5));
                                        }),
                                listed.text(TextStyle.PLAIN, "list.csv"))
                        .lacking(2, CURVES));
    }

    private static Kind withoutRow() {
        return Kind.of(
                        "faults: a curve without a row",
                        CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv")),
                        CorpusKinds.LISTED.made(
                                TextStyle.PLAIN,
                                "list.csv",
                                roasts -> CorpusKinds.LISTED.table(roasts.stream()
                                        .filter(roast -> roast != roasts.get(1))
                                        .collect(Collectors.toList()))))
                .lacking(1, ROW);
    }
}
