package parchment.logbook;

import static parchment.logbook.Field.optional;
import static parchment.logbook.Field.required;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import parchment.file.NameForms;
import parchment.logbook.Field.Kind;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.sheet.Header;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Reads cuppings.csv and sessions.csv. */
final class CuppingFiles {
    static final String CUPPINGS = "cuppings.csv";
    static final String SESSIONS = "sessions.csv";

    private static final List<Field> CUP_FIELDS = List.of(
            required("cupping", Kind.NAME),
            required("tasted on", Kind.DATE),
            required("cupper", Kind.NAME),
            required("batch", Kind.NAME),
            optional("blind code", Kind.TEXT),
            optional("cup", Kind.TEXT),
            optional("serving position", Kind.NUMBER),
            optional("note", Kind.TEXT));
    private static final String BLIND = "blind";
    private static final String BEFORE_DISCUSSION = "scored before discussion";
    private static final List<Field> SESSION_FIELDS =
            List.of(required("cupping", Kind.NAME), optional(BLIND, Kind.TEXT), optional(BEFORE_DISCUSSION, Kind.TEXT));

    /** Holds the cups and the lines they stand on. */
    record Cups(List<CupScores> cups, List<Integer> lines) {
        /** Returns the same cups, each of the batch that its name is another Unicode form of, where there is one such batch alone. */
        Cups ofBatches(Set<String> names) {
            if (cups.stream().allMatch(cup -> names.contains(cup.batch()))) {
                return this;
            }
            NameForms forms = NameForms.of(names);
            List<CupScores> joined = cups.stream()
                    .map(cup -> forms.meant(cup.batch())
                            .filter(name -> !name.equals(cup.batch()))
                            .map(cup::ofBatch)
                            .orElse(cup))
                    .toList();
            return new Cups(joined, lines);
        }
    }

    private CuppingFiles() {}

    static Cups cups(Path folder, Settings settings, ProblemLog problems) {
        CsvTable table = CsvTable.read(folder, CUP_FIELDS, settings, problems);
        Map<Integer, String> attributes = attributes(table);
        unknownScales(attributes, settings, problems);
        ofSessions().forEach(name -> table.tellOfAnotherFile(name, SESSIONS, "cupping"));
        List<CupScores> cups = new ArrayList<>();
        List<Integer> lines = new ArrayList<>();
        for (Row row : table.rows()) {
            Optional<String> cupping = row.requiredName("cupping");
            Optional<LocalDate> day = cupping.isEmpty() ? Optional.empty() : row.requiredDate("tasted on");
            Optional<String> cupper = day.isEmpty() ? Optional.empty() : row.requiredName("cupper");
            Optional<String> batch = cupper.isEmpty() ? Optional.empty() : row.requiredName("batch");
            if (cupping.isEmpty() || day.isEmpty() || cupper.isEmpty() || batch.isEmpty()) {
                continue;
            }
            Map<String, String> extras = new LinkedHashMap<>();
            table.extras().forEach((index, header) -> {
                if (!attributes.containsKey(index)) {
                    row.extra(index, header).ifPresent(text -> extras.put(header.written(), text));
                }
            });
            cups.add(new CupScores(
                    cupping.get(),
                    day.get(),
                    cupper.get(),
                    settings.batchName(batch.get()),
                    row.text("blind code"),
                    row.text("cup"),
                    servingPosition(row),
                    scores(row, table, attributes, settings),
                    row.text("note"),
                    extras));
            lines.add(row.line());
        }
        return Duplicates.cups(new Cups(cups, lines), problems);
    }

    /** Returns what is a fact of the whole cupping and no score, even where it is written as 0 and 1. */
    private static List<String> ofSessions() {
        return List.of(BLIND, BEFORE_DISCUSSION);
    }

    /** Returns the columns that hold scores: most of what is filled in is a number. */
    private static Map<Integer, String> attributes(CsvTable table) {
        Map<Integer, String> attributes = new LinkedHashMap<>();
        List<String> noScores = ofSessions().stream().map(Header::plain).toList();
        table.extras().forEach((index, header) -> {
            if (noScores.contains(Header.plain(header.name()))) {
                return;
            }
            int numbers = 0;
            int filled = 0;
            for (Row row : table.rows()) {
                Optional<String> text = row.at(index);
                filled += text.isPresent() ? 1 : 0;
                numbers += text.isPresent() && !Double.isNaN(Numbers.parse(text.get(), table.decimal())) ? 1 : 0;
            }
            if (filled > 0 && 2 * numbers > filled && !attributes.containsValue(header.name())) {
                attributes.put(index, header.name());
            }
        });
        return attributes;
    }

    private static void unknownScales(Map<Integer, String> attributes, Settings settings, ProblemLog problems) {
        List<String> plain = attributes.values().stream().map(Settings::plain).toList();
        for (String stated : settings.scales().keySet()) {
            if (!plain.contains(stated)) {
                problems.add(
                        0,
                        "",
                        "no column of scores for the setting scale." + stated,
                        "one of the attributes " + Words.some(attributes.values()) + "."
                                + Words.didYouMean(stated, attributes.values()),
                        "setting left out");
            }
        }
    }

    private static OptionalInt servingPosition(Row row) {
        OptionalDouble written = row.number("serving position", 1, 10_000, "a place in the order, counted from 1");
        return written.isEmpty() ? OptionalInt.empty() : OptionalInt.of((int) Math.round(written.getAsDouble()));
    }

    private static Map<String, Double> scores(
            Row row, CsvTable table, Map<Integer, String> attributes, Settings settings) {
        Map<String, Double> scores = new LinkedHashMap<>();
        attributes.forEach((index, attribute) -> {
            Optional<String> text = row.at(index);
            if (text.isEmpty()) {
                return;
            }
            double score = Numbers.parse(text.get(), table.decimal());
            Logbook.Scale scale = settings.scales().get(Settings.plain(attribute));
            if (Double.isNaN(score)) {
                row.problem(attribute, Words.quote(text.get()), "a number", "value treated as missing");
            } else if (!Bounds.ON_A_SCALE.holds(score)) {
                row.problem(attribute, Words.quote(text.get()), Bounds.ON_A_SCALE.words(), "value treated as missing");
            } else if (scale != null && (score < scale.low() || score > scale.high())) {
                row.problem(
                        attribute,
                        Words.quote(text.get()),
                        "a score from " + scale.low() + " to " + scale.high() + ", its scale in " + Settings.FILE,
                        "value treated as missing");
            } else {
                scores.put(attribute, score);
            }
        });
        return scores;
    }

    static List<Cupping> sessions(Path folder, Settings settings, ProblemLog problems) {
        Map<String, Cupping> sessions = new LinkedHashMap<>();
        for (Row row : CsvTable.read(folder, SESSION_FIELDS, settings, problems).rows()) {
            Optional<String> name = row.requiredName("cupping");
            if (name.isEmpty()) {
                continue;
            }
            if (sessions.containsKey(name.get())) {
                row.problem(
                        "cupping",
                        "the cupping " + Words.quote(name.get()) + " again",
                        "a name of its own",
                        "row set aside, the first one kept");
                continue;
            }
            sessions.put(
                    name.get(), new Cupping(name.get(), said(row, BLIND), said(row, BEFORE_DISCUSSION), row.extras()));
        }
        return new ArrayList<>(sessions.values());
    }

    private static Cupping.Said said(Row row, String column) {
        Optional<String> written = row.text(column);
        if (written.isEmpty()) {
            return Cupping.Said.NOT_WRITTEN;
        }
        return switch (Header.name(written.get())) {
            case "yes", "true" -> Cupping.Said.YES;
            case "no", "false" -> Cupping.Said.NO;
            default -> {
                row.problem(column, Words.quote(written.get()), "'yes' or 'no'", "value treated as missing");
                yield Cupping.Said.NOT_WRITTEN;
            }
        };
    }
}
