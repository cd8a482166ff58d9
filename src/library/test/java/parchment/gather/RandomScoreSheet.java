package parchment.gather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

/**
 * Makes a score sheet of known truth in a random layout, language and hand: invented batches and cuppers, and in one language of eight every word is
 * invented too. A score is known by its batch, its cupper ("" where nobody is named) and its attribute ("" where the layout names none).
 */
final class RandomScoreSheet {
    enum Layout {
        CUP_A_ROW,
        CUPPER_A_COLUMN,
        CUPPER_A_COLUMN_WITH_ATTRIBUTES,
        SHEET_A_CUPPER,
        AVERAGES_ONLY,
        GROUPS_OVER_ATTRIBUTES,
        GROUPS_OVER_CUPPERS,
        LONG,
        BATCHES_SIDE_BY_SIDE,
        ROWS_OF_ONE_NAME
    }

    /** Words for: batch, cupper, attribute, score, day, remark, mean; then attributes. */
    private static final Map<String, List<String>> WORDS = new TreeMap<>(Map.of(
            "en",
                    List.of(
                            "Batch,Cupper,Attribute,Score,Date,Comments,Average",
                            "Acidity,Sweetness,Body,Flavour,Balance"),
            "de", List.of("Charge,Verkoster,Merkmal,Punkte,Datum,Bemerkung,Mittel", "Säure,Süße,Körper,Abgang,Aroma"),
            "es",
                    List.of(
                            "Tueste,Catador,Atributo,Puntaje,Fecha,Comentarios,Promedio",
                            "Acidez,Dulzor,Cuerpo,Sabor,Aroma"),
            "pt", List.of("Torra,Provador,Atributo,Nota,Data,Observações,Média", "Acidez,Doçura,Corpo,Sabor,Aroma"),
            "it",
                    List.of(
                            "Tostatura,Assaggiatore,Attributo,Voto,Data,Commenti,Media",
                            "Acidità,Dolcezza,Corpo,Gusto,Aroma"),
            "fr",
                    List.of(
                            "Torréfaction,Dégustateur,Attribut,Note,Date,Remarques,Moyenne",
                            "Acidité,Douceur,Corps,Goût,Équilibre"),
            "nl",
                    List.of(
                            "brand,proever,kenmerk,cijfer,datum,opmerking,gemiddelde",
                            "zoet,zuur,smaak,afdronk,balans")));

    private static final List<String> PEOPLE = List.of("Ana", "Teo", "Wren", "Mirela", "Oda");

    private final Random random;
    private final List<String> heads;
    private final List<String> attributes;
    private final List<String> cuppers;
    private final List<String> batches = new ArrayList<>();
    private final Map<String, Double> truth = new LinkedHashMap<>();
    private final Map<String, String> cells = new LinkedHashMap<>();
    private final List<Sheet> sheets = new ArrayList<>();
    private final Layout layout;
    private final String language;
    private final double step;
    private final double top;

    RandomScoreSheet(long seed) {
        random = new Random(seed);
        layout = Layout.values()[(int) (seed % Layout.values().length)];
        List<String> languages = new ArrayList<>(WORDS.keySet());
        languages.add("invented");
        language = languages.get((int) (seed / Layout.values().length % languages.size()));
        List<String> words = WORDS.getOrDefault(language, List.of(invented(7), invented(5)));
        heads = List.of(words.get(0).split(","));
        List<String> all = new ArrayList<>(List.of(words.get(1).split(",")));
        Collections.shuffle(all, random);
        attributes = all.subList(0, 2 + random.nextInt(3));
        List<String> people = new ArrayList<>(PEOPLE);
        Collections.shuffle(people, random);
        cuppers = people.subList(0, 2 + random.nextInt(2));
        int first = random.nextBoolean() ? 101 : random.nextInt(1, 60);
        for (int i = 0; i < 4 + random.nextInt(5); i++) {
            batches.add(String.valueOf(first + i));
        }
        step = List.of(1.0, 0.5, 0.25).get(random.nextInt(3));
        top = random.nextInt(6) == 0 ? 100 : random.nextInt(4) == 0 ? 5 : 10;
        write();
    }

    private String invented(int count) {
        Set<String> made = new TreeSet<>();
        boolean capital = random.nextBoolean();
        while (made.size() < count) {
            StringBuilder word = new StringBuilder();
            for (int i = 0; i < 2 + random.nextInt(2); i++) {
                word.append("bdfgklmnprstvz".charAt(random.nextInt(14)))
                        .append("aeiou".charAt(random.nextInt(5)))
                        .append(List.of("", "r", "k", "lf", "mp", "x").get(random.nextInt(6)));
            }
            String plain = word.toString();
            boolean meansSomething = ScoreWords.key(plain).isPresent()
                    || ScoreWords.isAttribute(plain)
                    || ScoreWords.speaksAgainst(plain)
                    || ScoreWords.isMean(plain)
                    || ScoreWords.isScore(plain);
            if (!meansSomething) {
                made.add(capital ? plain.substring(0, 1).toUpperCase(Locale.ROOT) + plain.substring(1) : plain);
            }
        }
        List<String> shuffled = new ArrayList<>(made);
        Collections.shuffle(shuffled, random);
        return String.join(",", shuffled);
    }

    /** Returns the batches that are known beside the sheet. */
    List<String> batches() {
        return batches;
    }

    Layout layout() {
        return layout;
    }

    List<FoundTable> tables() {
        return sheets.stream().flatMap(sheet -> FoundTable.in(sheet).stream()).toList();
    }

    /** Returns the scores by batch, cupper and attribute. */
    Map<String, Double> truth() {
        return truth;
    }

    /** Returns how each score is written, by batch, cupper and attribute. */
    Map<String, String> cells() {
        return cells;
    }

    String shown() {
        StringBuilder text = new StringBuilder(layout + ", " + language + "\n");
        sheets.forEach(sheet -> {
            text.append("  ").append(sheet.file()).append('\n');
            sheet.rows()
                    .forEach(row ->
                            text.append("    ").append(String.join(" | ", row)).append('\n'));
        });
        return text.toString();
    }

    /** Makes a score, notes it, and returns the cell that holds it: a number in some hand, or a sign for nothing. */
    private String cell(String batch, String cupper, String attribute) {
        double low = top == 100 ? 75 : top == 5 ? 1 : 4;
        double high = top == 100 ? 92 : top == 5 ? 5 : 9.5;
        double score = Math.rint((low + (high - low) * random.nextDouble()) / step) * step;
        String key = key(batch, cupper, attribute);
        if (random.nextInt(25) == 0) {
            return List.of("", "-", "n/a", "—", "?").get(random.nextInt(5));
        }
        String number = Numbers.written(score);
        String written = switch (random.nextInt(40)) {
            case 0 -> number + " (fruity)";
            case 1 -> number + "?";
            case 2 -> number + "*";
            case 3, 4, 5 -> number.replace('.', ',');
            case 6 -> number + " - dry";
            default -> number;
        };
        truth.put(key, score);
        cells.put(key, written);
        return written;
    }

    static String key(String batch, String cupper, String attribute) {
        return batch + " / " + cupper + " / " + attribute.toLowerCase(Locale.ROOT);
    }

    private void sheet(String file, List<List<String>> rows) {
        List<List<String>> all = new ArrayList<>();
        if (random.nextInt(4) == 0) {
            all.add(List.of("Harbour roastery, spring"));
            all.add(List.of());
        }
        all.addAll(rows);
        sheets.add(new Sheet(Path.of(file), "", ';', Numbers.Decimal.EITHER, all));
    }

    private void write() {
        switch (layout) {
            case CUP_A_ROW -> rows();
            case CUPPER_A_COLUMN -> cupperAColumn();
            case CUPPER_A_COLUMN_WITH_ATTRIBUTES -> attributesDown();
            case SHEET_A_CUPPER -> sheetACupper();
            case AVERAGES_ONLY -> unnamed(1);
            case GROUPS_OVER_ATTRIBUTES -> groups(cuppers, attributes, true);
            case GROUPS_OVER_CUPPERS -> groups(attributes, cuppers, false);
            case LONG -> longTable();
            case BATCHES_SIDE_BY_SIDE -> sideBySide();
            case ROWS_OF_ONE_NAME -> unnamed(6);
        }
    }

    private void rows() {
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(heads.get(0), heads.get(1)));
        boolean day = random.nextBoolean();
        boolean warm = random.nextInt(3) == 0;
        boolean remark = random.nextInt(3) == 0;
        boolean mean = random.nextInt(4) == 0;
        if (day) {
            head.add(0, heads.get(4));
        }
        head.addAll(attributes);
        if (warm) {
            head.add("Vorlat");
        }
        if (remark) {
            head.add(heads.get(5));
        }
        rows.add(head);
        for (String batch : batches) {
            for (String cupper : cuppers) {
                List<String> row = new ArrayList<>(List.of(batch, cupper));
                if (day) {
                    row.add(0, "2031-06-04");
                }
                attributes.forEach(attribute -> row.add(cell(batch, cupper, attribute)));
                if (warm) {
                    row.add(String.valueOf(210 + random.nextInt(4)));
                }
                if (remark) {
                    row.add(random.nextBoolean() ? "like plum jam" : "");
                }
                rows.add(row);
            }
        }
        if (mean) {
            List<String> row = new ArrayList<>(Collections.nCopies(head.size(), ""));
            row.set(0, language.equals("invented") ? "Average" : heads.get(6));
            for (int i = 0; i < attributes.size(); i++) {
                row.set(i + (day ? 3 : 2), "6.87");
            }
            rows.add(row);
        }
        sheet("cuppings.csv", rows);
    }

    private void cupperAColumn() {
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(heads.get(0)));
        head.addAll(cuppers);
        rows.add(head);
        for (String batch : batches) {
            List<String> row = new ArrayList<>(List.of(batch));
            cuppers.forEach(cupper -> row.add(cell(batch, cupper, "")));
            rows.add(row);
        }
        sheet("cupping 2031-06-04.csv", rows);
    }

    private void attributesDown() {
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(heads.get(0), heads.get(2)));
        head.addAll(cuppers);
        rows.add(head);
        for (String batch : batches) {
            String name = batch;
            for (String attribute : attributes) {
                List<String> row = new ArrayList<>(List.of(name, attribute));
                cuppers.forEach(cupper -> row.add(cell(batch, cupper, attribute)));
                rows.add(row);
                name = random.nextBoolean() ? "" : batch;
            }
        }
        sheet("cuppings.csv", rows);
    }

    private void sheetACupper() {
        for (String cupper : cuppers) {
            List<List<String>> rows = new ArrayList<>();
            List<String> head = new ArrayList<>(List.of(heads.get(0)));
            head.addAll(attributes);
            rows.add(head);
            for (String batch : batches) {
                List<String> row = new ArrayList<>(List.of(batch));
                attributes.forEach(attribute -> row.add(cell(batch, cupper, attribute)));
                rows.add(row);
            }
            sheet("cupping " + cupper + ".csv", rows);
        }
    }

    private void unnamed(int each) {
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of(heads.get(0)));
        head.addAll(attributes);
        rows.add(head);
        for (String batch : batches) {
            for (int i = 0; i < each; i++) {
                List<String> row = new ArrayList<>(List.of(batch));
                for (String attribute : attributes) {
                    row.add(cell(batch, each == 1 ? "" : " " + (i + 1), attribute));
                }
                rows.add(row);
            }
        }
        sheet("cupping.csv", rows);
    }

    private void groups(List<String> over, List<String> under, boolean cuppersOver) {
        List<List<String>> rows = new ArrayList<>();
        List<String> above = new ArrayList<>(List.of(""));
        List<String> head = new ArrayList<>(List.of(heads.get(0)));
        for (String first : over) {
            String written = first;
            for (String second : under) {
                above.add(written);
                head.add(second);
                written = "";
            }
        }
        rows.add(above);
        rows.add(head);
        for (String batch : batches) {
            List<String> row = new ArrayList<>(List.of(batch));
            for (String first : over) {
                for (String second : under) {
                    row.add(cuppersOver ? cell(batch, first, second) : cell(batch, second, first));
                }
            }
            rows.add(row);
        }
        sheets.add(new Sheet(Path.of("cuppings.csv"), "", ';', Numbers.Decimal.EITHER, rows));
    }

    private void longTable() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(heads.subList(0, 4));
        for (String batch : batches) {
            for (String cupper : cuppers) {
                for (String attribute : attributes) {
                    rows.add(List.of(batch, cupper, attribute, cell(batch, cupper, attribute)));
                }
            }
        }
        sheet("cuppings.csv", rows);
    }

    private void sideBySide() {
        for (String cupper : cuppers) {
            List<List<String>> rows = new ArrayList<>();
            List<String> head = new ArrayList<>(List.of(""));
            head.addAll(batches);
            rows.add(head);
            for (String attribute : attributes) {
                List<String> row = new ArrayList<>(List.of(attribute));
                batches.forEach(batch -> row.add(cell(batch, cupper, attribute)));
                rows.add(row);
            }
            sheet("cupping " + cupper + ".csv", rows);
        }
    }
}
