package parchment.gather.corpus;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import parchment.gather.corpus.Kind.Part;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind.Fact;

/** Builds score sheets. */
final class ScoreParts {
    /**
     * Holds the words of a score sheet.
     *
     * @param day the heading of the day
     * @param cupper the heading of the cupper
     * @param batch the heading of the batch or whatever stands for it
     * @param attributes the headings of acidity, sweetness, body, overall
     */
    record Words(String day, String cupper, String batch, List<String> attributes) {
        static final Words ENGLISH =
                new Words("Date", "Cupper", "Batch", List.of("Acidity", "Sweetness", "Body", "Overall"));
        static final Words GERMAN =
                new Words("Datum", "Verkoster", "Charge", List.of("Säure", "Süße", "Körper", "Gesamt"));
        static final Words SPANISH =
                new Words("Fecha", "Catador", "Tueste", List.of("Acidez", "Dulzor", "Cuerpo", "General"));
        static final Words FRENCH =
                new Words("Date", "Dégustateur", "Torréfaction", List.of("Acidité", "Douceur", "Corps", "Global"));
        static final Words ITALIAN =
                new Words("Data", "Assaggiatore", "Tostatura", List.of("Acidità", "Dolcezza", "Corpo", "Globale"));
        static final Words PORTUGUESE =
                new Words("Data", "Provador", "Torra", List.of("Acidez", "Doçura", "Corpo", "Geral"));
    }

    /** Says which batch a row is about. */
    interface Key extends BiFunction<Roast, Tasting, List<Object>> {}

    static final Key NUMBER = (roast, tasting) -> List.of(roast.number());
    static final Key CODE = (roast, tasting) -> List.of(tasting.code());
    static final Key DAY_AND_LOT = (roast, tasting) -> List.of(roast.chargedAt().toLocalDate(), roast.lot());
    static final Key NAME_AND_LOT = (roast, tasting) -> List.of("Batch " + roast.number() + " " + roast.lot());

    private ScoreParts() {}

    static Roast roast(Roastery roastery, Tasting tasting) {
        return roastery.batches().stream()
                .filter(roast -> roast.number() == tasting.batch())
                .findFirst()
                .orElseThrow();
    }

    private static List<Object> cells(Object first, Object... more) {
        List<Object> cells = new ArrayList<>();
        for (Object part : List.of(first, more)) {
            Object[] parts = part instanceof Object[] several ? several : new Object[] {part};
            for (Object cell : parts) {
                if (cell instanceof List<?> list) {
                    cells.addAll(list);
                } else {
                    cells.add(cell);
                }
            }
        }
        return cells;
    }

    /** Returns one row a cup and cupper. */
    static Grid cups(Roastery roastery, Words words, Key key) {
        Grid grid = new Grid("Cupping")
                .row(cells(words.day(), words.cupper(), List.of(words.batch().split("\\|")), words.attributes()));
        for (Tasting tasting : roastery.tastings()) {
            grid.row(cells(
                    tasting.tastedOn(),
                    tasting.cupper(),
                    key.apply(roast(roastery, tasting), tasting),
                    List.copyOf(tasting.scores().values())));
        }
        return grid;
    }

    static Part cups(TextStyle style, String file, Words words, Key key) {
        return new Part(
                Set.of(Fact.SCORES),
                (roastery, folder, random) -> style.write(cups(roastery, words, key), folder.resolve(file)));
    }

    static Part cupsSheet(String file, Words words, Key key) {
        return new Part(
                Set.of(Fact.SCORES),
                (roastery, folder, random) -> Spreadsheets.write(folder.resolve(file), cups(roastery, words, key)));
    }

    /** Returns one row a cup and attribute, with a column for each cupper. */
    static Grid cuppersAsColumns(Roastery roastery, Words words, Key key) {
        List<String> cuppers = cuppers(roastery);
        Grid grid =
                new Grid("Cupping").row(cells(words.day(), List.of(words.batch().split("\\|")), "Attribute", cuppers));
        for (List<Tasting> cup : byCup(roastery).values()) {
            int place = 0;
            for (String attribute : InventedRoastery.ATTRIBUTES) {
                List<Object> scores = new ArrayList<>();
                for (String cupper : cuppers) {
                    scores.add(cup.stream()
                            .filter(t -> t.cupper().equals(cupper))
                            .<Object>map(t -> t.scores().get(attribute))
                            .findFirst()
                            .orElse(""));
                }
                grid.row(cells(
                        cup.get(0).tastedOn(),
                        key.apply(roast(roastery, cup.get(0)), cup.get(0)),
                        words.attributes().get(place),
                        scores));
                place++;
            }
        }
        return grid;
    }

    /** Returns one row a cup, with a column for each cupper and attribute under a row of cuppers. */
    static Grid cuppersAbove(Roastery roastery, Words words, Key key) {
        List<String> cuppers = cuppers(roastery);
        Grid grid = new Grid("Cupping");
        List<Object> top = cells("", "");
        List<Object> heads = cells(words.day(), words.batch());
        for (String cupper : cuppers) {
            grid.merge(0, top.size(), 0, top.size() + words.attributes().size() - 1);
            top.add(cupper);
            words.attributes().forEach(heads::add);
            for (int i = 1; i < words.attributes().size(); i++) {
                top.add("");
            }
        }
        grid.row(top).row(heads);
        for (List<Tasting> cup : byCup(roastery).values()) {
            List<Object> cells = cells(cup.get(0).tastedOn(), key.apply(roast(roastery, cup.get(0)), cup.get(0)));
            cup.forEach(tasting -> cells.addAll(tasting.scores().values()));
            grid.row(cells);
        }
        return grid;
    }

    /** Returns a file or tab for each cupper and cupping day. */
    static List<Grid> ofEachCupper(Roastery roastery, Words words, Key key) {
        List<Grid> grids = new ArrayList<>();
        for (String cupper : cuppers(roastery)) {
            Grid grid = new Grid(cupper)
                    .row(words.cupper() + ":", cupper)
                    .row("")
                    .row(cells(words.day(), List.of(words.batch().split("\\|")), words.attributes()));
            roastery.tastings().stream()
                    .filter(tasting -> tasting.cupper().equals(cupper))
                    .forEach(tasting -> grid.row(cells(
                            tasting.tastedOn(),
                            key.apply(roast(roastery, tasting), tasting),
                            List.copyOf(tasting.scores().values()))));
            grids.add(grid);
        }
        return grids;
    }

    /** Returns one row a batch with the means over its cuppers. */
    static Grid means(Roastery roastery, Words words, Key key) {
        Grid grid =
                new Grid("Means").row(cells(words.day(), List.of(words.batch().split("\\|")), words.attributes()));
        for (List<Tasting> cup : byCup(roastery).values()) {
            List<Object> means = new ArrayList<>();
            InventedRoastery.ATTRIBUTES.forEach(attribute -> means.add(Cells.rounded(
                    cup.stream()
                            .mapToDouble(t -> t.scores().get(attribute))
                            .average()
                            .orElseThrow(),
                    2)));
            grid.row(cells(cup.get(0).tastedOn(), key.apply(roast(roastery, cup.get(0)), cup.get(0)), means));
        }
        return grid;
    }

    /** Returns which batch each blind code stood for. */
    static Grid codes(Roastery roastery, String day, String code, String batch) {
        Grid grid = new Grid("Codes").row(day, code, batch);
        byCup(roastery)
                .values()
                .forEach(cup -> grid.row(
                        cup.get(0).tastedOn(), cup.get(0).code(), cup.get(0).batch()));
        return grid;
    }

    static Map<LocalDate, List<Tasting>> byDay(Roastery roastery) {
        return roastery.tastings().stream()
                .collect(Collectors.groupingBy(Tasting::tastedOn, TreeMap::new, Collectors.toList()));
    }

    static List<String> cuppers(Roastery roastery) {
        Set<String> cuppers = new LinkedHashSet<>();
        roastery.tastings().forEach(tasting -> cuppers.add(tasting.cupper()));
        return List.copyOf(cuppers);
    }

    static Map<String, List<Tasting>> byCup(Roastery roastery) {
        return roastery.tastings().stream()
                .collect(Collectors.groupingBy(
                        tasting -> tasting.cupping() + " " + tasting.batch(), LinkedHashMap::new, Collectors.toList()));
    }
}
