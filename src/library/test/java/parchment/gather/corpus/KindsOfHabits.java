package parchment.gather.corpus;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import parchment.gather.corpus.CurveColumn.Clock;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;
import parchment.logbook.MarkKind;

/** Habits of keeping files: folders for days and machines, curves beside the list, names of photographs, days without a year. Common practice, no source. */
final class KindsOfHabits {
    private static final List<String> MONTHS =
            List.of("jan", "fev", "mar", "abr", "mai", "jun", "jul", "ago", "set", "out", "nov", "dez");

    private static final CurveParts LOGGED = CurveParts.of(
            CurveColumn.sinceStart("Time [s]", Clock.SECONDS),
            CurveColumn.bean("Bean [°C]"),
            CurveColumn.air("Air [°C]"));

    private KindsOfHabits() {}

    static List<Kind> all() {
        return List.of(
                Kind.of("habits: a tab each day, the curves beside its list", besideTheList()),
                Kind.of(
                        "habits: a folder each day, numbers of the day, days without a year",
                        dayFolders(),
                        daysWithoutYear()),
                Kind.of("habits: a folder each machine, numbers of the machine", machineFolders(), machineList()),
                Kind.of(
                        "habits: a list with the names of photographs",
                        LOGGED.files(TextStyle.PLAIN, Naming.started("'IMG_'yyyyMMdd_HHmmss'.txt'")),
                        ListParts.of(
                                        new ListColumn(
                                                "photo",
                                                Set.of(),
                                                roast -> Naming.started("'IMG_'yyyyMMdd_HHmmss'.jpg'")
                                                        .name()
                                                        .apply(roast)),
                                        ListColumn.lot("coffee"),
                                        ListColumn.green("grams in", ListColumn.GRAM),
                                        ListColumn.roasted("grams out", ListColumn.GRAM),
                                        ListColumn.yellowing("yellow", Clock.MINUTES),
                                        ListColumn.crack("crack", Clock.MINUTES),
                                        ListColumn.drop("end", Clock.MINUTES))
                                .text(TextStyle.PLAIN, "roasts.csv")),
                Kind.of(
                        "habits: minutes and seconds with letters, a month's name between slashes",
                        CurveParts.of(
                                        new CurveColumn(
                                                "Tempo",
                                                Set.of(),
                                                (roast, reading) -> letters(reading.seconds()
                                                        - roast.readings()
                                                                .get(0)
                                                                .seconds())),
                                        CurveColumn.bean("Grãos"),
                                        CurveColumn.air("Ar"))
                                .files(TextStyle.GERMAN, Naming.number("torra %d.csv")),
                        ListParts.of(
                                        ListColumn.number("Nº"),
                                        new ListColumn("Data", Set.of(Fact.DAYS), KindsOfHabits::slashed),
                                        ListColumn.lot("Café"),
                                        ListColumn.green("Peso cru (kg)", ListColumn.KILOGRAM),
                                        ListColumn.roasted("Peso torrado (kg)", ListColumn.KILOGRAM),
                                        ListColumn.drop("Descarga", Clock.MINUTES))
                                .text(TextStyle.GERMAN, "torras.csv")),
                Kind.of(
                        "habits: times of day with a point and am or pm",
                        LOGGED.files(TextStyle.PLAIN, Naming.number("Log%d.csv")),
                        ListParts.of(
                                        ListColumn.number("Roast"),
                                        ListColumn.date("Date"),
                                        new ListColumn(
                                                "Start",
                                                Set.of(Fact.TIMES),
                                                roast -> Naming.pattern("h.mma")
                                                        .format(roast.chargedAt())
                                                        .toLowerCase(Locale.ROOT)),
                                        ListColumn.lot("Coffee"),
                                        ListColumn.green("In kg", ListColumn.KILOGRAM),
                                        ListColumn.roasted("Out kg", ListColumn.KILOGRAM),
                                        ListColumn.drop("End", Clock.MINUTES))
                                .text(TextStyle.PLAIN, "log book.csv")));
    }

    private static String letters(double seconds) {
        long whole = Math.round(seconds);
        return String.format(Locale.ROOT, "%dm%02ds", whole / 60, whole % 60);
    }

    private static String slashed(Roast roast) {
        return String.format(
                Locale.ROOT,
                "%d/%s/%02d",
                roast.chargedAt().getDayOfMonth(),
                MONTHS.get(roast.chargedAt().getMonthValue() - 1),
                roast.chargedAt().getYear() % 100);
    }

    private static Kind.Part besideTheList() {
        ListParts listed = ListParts.of(
                ListColumn.number("Batch"),
                ListColumn.time("Charge"),
                ListColumn.lot("Coffee"),
                ListColumn.green("Green kg", ListColumn.KILOGRAM),
                ListColumn.roasted("Roasted kg", ListColumn.KILOGRAM),
                ListColumn.yellowing("Yellow", Clock.MINUTES),
                ListColumn.crack("First crack", Clock.MINUTES),
                ListColumn.drop("Drop", Clock.MINUTES));
        CurveParts curves = CurveParts.of(CurveColumn.sinceStart("time", Clock.MINUTES), CurveColumn.bean("bean °C"))
                .every(10);
        Set<Fact> facts = EnumSet.of(Fact.DAYS, Fact.BEAN_CURVES);
        facts.addAll(listed.facts());
        return new Kind.Part(facts, (roastery, folder, random) -> {
            List<Grid> tabs = new ArrayList<>();
            CurveParts.byDay(roastery)
                    .forEach((day, roasts) -> tabs.add(listed.table(roasts)
                            .beside(curves.wide(roasts))
                            .named(Naming.pattern("dd.MM.yyyy").format(day))));
            Spreadsheets.write(folder.resolve("roasts.xlsx"), tabs);
        });
    }

    /** Numbers each roast among those that are alike in something. */
    private static Map<Integer, Integer> numbers(List<Roast> roasts, Function<Roast, Object> alike) {
        Map<Object, Integer> counts = new LinkedHashMap<>();
        Map<Integer, Integer> numbers = new LinkedHashMap<>();
        roasts.forEach(roast -> numbers.put(roast.number(), counts.merge(alike.apply(roast), 1, Integer::sum)));
        return numbers;
    }

    private static Kind.Part dayFolders() {
        Set<Fact> facts = LOGGED.facts();
        facts.add(Fact.DAYS);
        return new Kind.Part(facts, (roastery, folder, random) -> {
            Map<Integer, Integer> numbers =
                    numbers(roastery.batches(), roast -> roast.chargedAt().toLocalDate());
            for (Roast roast : roastery.batches()) {
                Path file = folder.resolve(roast.chargedAt().toLocalDate().toString())
                        .resolve(numbers.get(roast.number()) + ".csv");
                TextStyle.GERMAN.write(LOGGED.table("curve", roast), file);
            }
        });
    }

    private static Kind.Part daysWithoutYear() {
        return new Kind.Part(
                Set.of(
                        Fact.DAYS,
                        Fact.LOTS,
                        Fact.GREEN_MASSES,
                        Fact.ROASTED_MASSES,
                        Fact.YELLOWING,
                        Fact.FIRST_CRACK,
                        Fact.DROP),
                (roastery, folder, random) -> {
                    Map<Integer, Integer> numbers = numbers(
                            roastery.batches(), roast -> roast.chargedAt().toLocalDate());
                    Grid grid = new Grid("Liste").row("Tag", "Nr", "Bohne", "rein", "raus", "Gelb", "Crack", "raus um");
                    for (Roast roast : roastery.batches()) {
                        int number = numbers.get(roast.number());
                        grid.row(
                                number == 1 ? Naming.pattern("dd.MM.").format(roast.chargedAt()) : "",
                                number,
                                roast.lot(),
                                ListColumn.mass(roast.greenKilograms(), ListColumn.GRAM) + " g",
                                ListColumn.mass(roast.roastedKilograms(), ListColumn.GRAM) + " g",
                                Clock.MINUTES.written(roast.marks().get(MarkKind.YELLOWING)),
                                Clock.MINUTES.written(roast.marks().get(MarkKind.FIRST_CRACK_START)),
                                Clock.MINUTES.written(roast.marks().get(MarkKind.DROP)));
                    }
                    TextStyle.GERMAN.write(
                            grid,
                            folder.resolve("Liste "
                                    + roastery.batches().get(0).chargedAt().getYear() + ".csv"));
                });
    }

    private static String machine(Roast roast) {
        return roast.number() % 3 == 0 ? "Small" : "Big";
    }

    private static Kind.Part machineFolders() {
        return new Kind.Part(LOGGED.facts(), (roastery, folder, random) -> {
            Map<Integer, Integer> numbers = numbers(roastery.batches(), KindsOfHabits::machine);
            for (Roast roast : roastery.batches()) {
                Path file = folder.resolve(machine(roast)).resolve("roast " + numbers.get(roast.number()) + ".csv");
                TextStyle.PLAIN.write(LOGGED.table("curve", roast), file);
            }
        });
    }

    private static Kind.Part machineList() {
        ListParts rest = ListParts.of(
                ListColumn.date("Date"),
                ListColumn.time("Time"),
                ListColumn.lot("Coffee"),
                ListColumn.green("Green (g)", ListColumn.GRAM),
                ListColumn.roasted("Roasted (g)", ListColumn.GRAM),
                ListColumn.drop("Drop", Clock.MINUTES));
        return new Kind.Part(rest.facts(), (roastery, folder, random) -> {
            Map<Integer, Integer> numbers = numbers(roastery.batches(), KindsOfHabits::machine);
            Grid grid = new Grid("roasts");
            List<Object> head = new ArrayList<>(List.of("Machine", "No"));
            head.addAll(rest.columns().stream().map(ListColumn::head).toList());
            grid.row(head);
            for (Roast roast : roastery.batches()) {
                List<Object> row = new ArrayList<>(List.of(machine(roast), numbers.get(roast.number())));
                row.addAll(rest.row(roast));
                grid.row(row);
            }
            TextStyle.PLAIN.write(grid, folder.resolve("roasts.csv"));
        });
    }
}
