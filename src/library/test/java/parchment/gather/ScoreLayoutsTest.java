package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds that random scores written in any layout are read back equal; invented data of known truth. */
class ScoreLayoutsTest {
    private static final List<String> BATCHES = List.of("101", "102", "103", "104", "105");
    private static final int SEEDS = 40;

    private static final Map<String, List<List<String>>> WORDS = Map.of(
            "en",
                    List.of(
                            List.of("Batch", "Cupper", "Attribute", "Score", "Cup"),
                            List.of("Acidity", "Sweetness", "Body", "Clean cup")),
            "de",
                    List.of(
                            List.of("Charge", "Verkoster", "Merkmal", "Punkte", "Tasse"),
                            List.of("Säure", "Süße", "Körper", "Nachgeschmack")),
            "es",
                    List.of(
                            List.of("Tueste", "Catador", "Atributo", "Puntaje", "Taza"),
                            List.of("Acidez", "Dulzor", "Cuerpo", "Sabor")),
            "pt",
                    List.of(
                            List.of("Torra", "Provador", "Atributo", "Nota", "Xícara"),
                            List.of("Acidez", "Doçura", "Corpo", "Finalização aroma")),
            "it",
                    List.of(
                            List.of("Tostatura", "Assaggiatore", "Attributo", "Punteggio", "Tazza"),
                            List.of("Acidità", "Dolcezza", "Corpo", "Retrogusto")),
            "fr",
                    List.of(
                            List.of("Torréfaction", "Dégustateur", "Attribut", "Note", "Tasse"),
                            List.of("Acidité", "Douceur", "Corps", "Équilibre")));

    private static final class Truth {
        final List<String> attributes;
        final List<String> cuppers;
        final List<String> heads;
        final Map<String, String> scores = new TreeMap<>();
        final Random random;

        Truth(String language, int seed) {
            random = new Random(seed);
            heads = WORDS.get(language).get(0);
            List<String> all = new ArrayList<>(WORDS.get(language).get(1));
            Collections.shuffle(all, random);
            attributes = all.subList(0, 2 + random.nextInt(3));
            List<String> people = new ArrayList<>(List.of("Ana", "Wren", "Teo", "Mirela"));
            Collections.shuffle(people, random);
            cuppers = people.subList(0, 2 + random.nextInt(3));
            double step = List.of(0.25, 0.5, 1.0).get(random.nextInt(3));
            boolean comma = random.nextBoolean();
            for (String batch : BATCHES) {
                for (String cupper : cuppers) {
                    for (String attribute : attributes) {
                        if (random.nextInt(12) > 0) {
                            String written = String.valueOf(6 + step * random.nextInt((int) (4 / step) + 1))
                                    .replace(".0", "");
                            scores.put(key(batch, cupper, attribute), comma ? written.replace('.', ',') : written);
                        }
                    }
                }
            }
        }

        static String key(String batch, String cupper, String attribute) {
            return batch + " " + cupper + " " + attribute.toLowerCase(java.util.Locale.ROOT);
        }

        String cell(String batch, String cupper, String attribute) {
            String written = scores.get(key(batch, cupper, attribute));
            return written != null ? written : List.of("", "-", "n/a").get(random.nextInt(3));
        }

        Map<String, Double> expected() {
            Map<String, Double> expected = new TreeMap<>();
            scores.forEach((key, cell) -> expected.put(key, Double.valueOf(cell.replace(',', '.'))));
            return expected;
        }
    }

    @ParameterizedTest(name = "{0}, {1}")
    @CsvSource({
        "rows, en",
        "rows, de",
        "attribute over cupper, en",
        "attribute over cupper, it",
        "cupper over attribute, fr",
        "cupper over attribute, pt",
        "group row, en",
        "group row, es",
        "long, en",
        "long, fr",
        "long, pt",
        "cuppers as columns, de",
        "cuppers as columns, es",
        "tabs, it",
        "tabs, de",
        "side by side, en",
        "side by side, fr",
        "side by side, pt"
    })
    void readsBackWhatWasWritten(String layout, String language) {
        for (int seed = 0; seed < SEEDS; seed++) {
            Truth truth = new Truth(language, seed);
            Map<String, Double> read = new LinkedHashMap<>();
            for (FoundTable table : tables(layout, truth)) {
                ScoreSheet sheet = ScoreSheets.of(table, ScoreClues.of(BATCHES)).orElseThrow();
                for (TastedCup cup : sheet.cups()) {
                    cup.scores()
                            .forEach((attribute, score) -> assertEquals(
                                    null, read.put(Truth.key(cup.batch(), cup.cupper(), attribute), score), attribute));
                }
            }
            assertEquals(truth.expected(), new TreeMap<>(read), layout + ", seed " + seed);
        }
    }

    private static List<FoundTable> tables(String layout, Truth truth) {
        List<String> lines = new ArrayList<>();
        String batchHead = truth.heads.get(0);
        switch (layout) {
            case "rows" -> {
                lines.add(batchHead + "|" + truth.heads.get(1) + "|" + String.join("|", truth.attributes));
                for (String batch : BATCHES) {
                    for (String cupper : truth.cuppers) {
                        lines.add(batch + "|" + cupper
                                + cells(truth, batch, List.of(cupper), truth.attributes, Outer.CUPPER));
                    }
                }
            }
            case "attribute over cupper", "cupper over attribute", "group row" -> {
                Outer outer = layout.startsWith("attribute") ? Outer.ATTRIBUTE : Outer.CUPPER;
                StringBuilder head = new StringBuilder(batchHead);
                StringBuilder above = new StringBuilder();
                for (String first : outer == Outer.CUPPER ? truth.cuppers : truth.attributes) {
                    String over = first;
                    for (String second : outer == Outer.CUPPER ? truth.attributes : truth.cuppers) {
                        head.append('|').append(layout.equals("group row") ? second : first + " / " + second);
                        above.append('|').append(over);
                        over = "";
                    }
                }
                lines.add(head.toString());
                for (String batch : BATCHES) {
                    lines.add(batch + cells(truth, batch, truth.cuppers, truth.attributes, outer));
                }
                if (layout.equals("group row")) {
                    return List.of(
                            MadeTables.named("s.csv", "", List.of(above.toString()), lines.toArray(String[]::new)));
                }
            }
            case "long" -> {
                lines.add(batchHead + "|" + truth.heads.get(1) + "|" + truth.heads.get(2) + "|" + truth.heads.get(3));
                for (String batch : BATCHES) {
                    for (String cupper : truth.cuppers) {
                        for (String attribute : truth.attributes) {
                            lines.add(batch + "|" + cupper + "|" + attribute + "|"
                                    + truth.cell(batch, cupper, attribute));
                        }
                    }
                }
            }
            case "cuppers as columns" -> {
                lines.add(batchHead + "|" + truth.heads.get(2) + "|" + String.join("|", truth.cuppers));
                for (String batch : BATCHES) {
                    String written = batch;
                    for (String attribute : truth.attributes) {
                        lines.add(written + "|" + attribute
                                + cells(truth, batch, truth.cuppers, List.of(attribute), Outer.CUPPER));
                        written = "";
                    }
                }
            }
            default -> {
                List<FoundTable> tables = new ArrayList<>();
                for (String cupper : truth.cuppers) {
                    List<String> own = new ArrayList<>();
                    if (layout.equals("tabs")) {
                        own.add(batchHead + "|" + String.join("|", truth.attributes));
                        BATCHES.forEach(
                                b -> own.add(b + cells(truth, b, List.of(cupper), truth.attributes, Outer.CUPPER)));
                    } else {
                        own.add("|" + String.join("|", BATCHES));
                        for (String attribute : truth.attributes) {
                            StringBuilder line = new StringBuilder(attribute);
                            BATCHES.forEach(b -> line.append('|').append(truth.cell(b, cupper, attribute)));
                            own.add(line.toString());
                        }
                    }
                    tables.add(MadeTables.named("s.xlsx", cupper, List.of(), own.toArray(String[]::new)));
                }
                return tables;
            }
        }
        return List.of(MadeTables.of(lines.toArray(String[]::new)));
    }

    private enum Outer {
        CUPPER,
        ATTRIBUTE
    }

    private static String cells(Truth truth, String batch, List<String> cuppers, List<String> attributes, Outer outer) {
        StringBuilder cells = new StringBuilder();
        for (String first : outer == Outer.CUPPER ? cuppers : attributes) {
            for (String second : outer == Outer.CUPPER ? attributes : cuppers) {
                String cupper = outer == Outer.CUPPER ? first : second;
                cells.append('|').append(truth.cell(batch, cupper, outer == Outer.CUPPER ? second : first));
            }
        }
        return cells.toString();
    }
}
