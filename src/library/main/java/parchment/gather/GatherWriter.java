package parchment.gather;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import parchment.file.WholeFile;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookFiles;
import parchment.logbook.MarkKind;
import parchment.sheet.CsvText;
import parchment.sheet.Header;
import parchment.sheet.Numbers;

/** Writes a new logbook folder; a file that is there already is never written over. */
final class GatherWriter {
    static final String ANSWERS = "gathered-answers.properties";
    static final String REPORT = "gathered.txt";

    private final Path folder;
    private final Logbook.Provenance provenance;

    GatherWriter(Path folder, Logbook.Provenance provenance) {
        this.folder = folder;
        this.provenance = provenance;
    }

    void write(String name, Gathering gathering, String report) throws IOException {
        List<GatheredBatch> batches = gathering.batches();
        Files.createDirectories(folder.resolve(LogbookFiles.CURVES));
        batches(batches);
        for (GatheredBatch batch : batches) {
            if (batch.recording().isPresent()) {
                curve(batch, batch.recording().get());
            }
        }
        LotsWriter.write(folder, gathering.lots().lots(), gathering.work());
        StringBuilder settings = new StringBuilder(settings(name, gathering.zone(), gathering.odd()));
        if (!gathering.scored().cups().isEmpty()) {
            CuppingsWriter cuppings = gathering.scored().writer();
            cuppings.write(folder);
            List<String> scales = gathering.questions().keys("scale.");
            scales.forEach(key -> settings.append(key)
                    .append('=')
                    .append(escaped(gathering.questions().raw(key)))
                    .append('\n'));
            cuppings.settings().stream()
                    .filter(line -> scales.stream().noneMatch(key -> line.startsWith(key + "=")))
                    .forEach(line -> settings.append(line).append('\n'));
        }
        file(LogbookFiles.SETTINGS).write(settings.toString());
        file(ANSWERS)
                .write(properties(gathering.questions().settled())
                        + notAnswered(gathering.questions().open()));
        file(REPORT).write(report);
    }

    private WholeFile file(String file) {
        return WholeFile.at(folder.resolve(file)).ifNew();
    }

    private String settings(String name, String zone, Set<Double> odd) {
        StringBuilder text = new StringBuilder("name=").append(escaped(name)).append('\n');
        if (provenance == Logbook.Provenance.INVENTED) {
            text.append("provenance=").append(LogbookFiles.INVENTED).append('\n');
        }
        if (!zone.isEmpty()) {
            text.append("time.zone=").append(zone).append('\n');
        }
        Set<Double> missing = new TreeSet<>(odd);
        missing.removeAll(LogbookFiles.MISSING_READINGS);
        if (!missing.isEmpty()) {
            missing.addAll(LogbookFiles.MISSING_READINGS);
            List<String> numbers = missing.stream().map(Numbers::written).toList();
            text.append("missing.readings=").append(String.join(",", numbers)).append('\n');
        }
        return text.toString();
    }

    static String properties(Map<String, String> answers) {
        StringBuilder text = new StringBuilder("# The answers that this logbook was gathered with.\n"
                + "# Change what was wrong, and give the file to 'gather' with --answers and a new folder. Gathering into this folder\n"
                + "# again takes these answers by itself.\n");
        answers.forEach((key, answer) ->
                text.append(escaped(key)).append('=').append(escaped(answer)).append('\n'));
        return text.toString();
    }

    /** Returns the lines of open questions, which count only once somebody takes their number signs away. */
    private static String notAnswered(List<GatherQuestions.Open> open) {
        StringBuilder text = new StringBuilder();
        open.forEach(question -> text.append(
                        "# Not answered yet. To answer, take the # from the next line and write the answer. It can be: ")
                .append(escaped(question.choices()))
                .append(".\n# ")
                .append(escaped(question.key()))
                .append('=')
                .append(escaped(question.proposal()))
                .append('\n'));
        return text.toString();
    }

    private static String escaped(String text) {
        return text.replace("\\", "\\\\").replace("\n", " ").replace("\r", " ");
    }

    private void batches(List<GatheredBatch> batches) throws IOException {
        Set<MarkKind> marks = new TreeSet<>();
        Set<String> written = new LinkedHashSet<>();
        boolean notes = false;
        for (GatheredBatch batch : batches) {
            marks.addAll(batch.marks().keySet());
            written.addAll(batch.written().keySet());
            notes |= !batch.notes().isEmpty();
        }
        written.remove("note");
        List<Column> columns = new ArrayList<>();
        columns.add(new Column("batch", GatheredBatch::name));
        columns.add(new Column("roasted at", GatherWriter::roastedAt));
        written.forEach(heading ->
                columns.add(new Column(heading, batch -> batch.written().getOrDefault(heading, ""))));
        marks.forEach(mark -> columns.add(new Column(
                mark.words() + " [min:s]", batch -> minutes(batch.marks().get(mark)))));
        if (notes || batches.stream().anyMatch(batch -> batch.written().containsKey("note"))) {
            columns.add(new Column("note", GatherWriter::note));
        }
        // In the order of the roaster's day; columns of other names stand before the note, as they were found.
        columns.sort(Comparator.comparingInt(column -> LogbookFiles.placeInBatches(Header.parse(column.heading()))));
        file(LogbookFiles.BATCHES).write(writer -> {
            CsvText.append(columns.stream().map(Column::heading).toList(), writer);
            for (GatheredBatch batch : batches) {
                CsvText.append(
                        columns.stream().map(column -> column.of().apply(batch)).toList(), writer);
            }
        });
    }

    private record Column(String heading, Function<GatheredBatch, String> of) {}

    private static String roastedAt(GatheredBatch batch) {
        return batch.roastedAt()
                .map(at -> at.truncatedTo(ChronoUnit.SECONDS).toString())
                .or(() -> batch.day().map(Object::toString))
                .orElse("");
    }

    private static String minutes(@Nullable Double seconds) {
        if (seconds == null) {
            return "";
        }
        long tenths = Math.round(seconds * 10);
        String whole = String.format(Locale.ROOT, "%d:%02d", tenths / 600, tenths / 10 % 60);
        return tenths % 10 == 0 ? whole : whole + "." + tenths % 10;
    }

    private static String note(GatheredBatch batch) {
        List<String> parts = new ArrayList<>();
        Optional.ofNullable(batch.written().get("note")).ifPresent(parts::add);
        parts.addAll(batch.notes());
        return String.join("; ", parts);
    }

    private void curve(GatheredBatch batch, Recording recording) throws IOException {
        GatherColumns columns =
                GatherColumns.ofCurve(recording.meanings(), recording.file().headings());
        List<String> headings = new ArrayList<>(List.of(GatherColumns.TIME));
        headings.addAll(columns.headings());
        Path file = Path.of(LogbookFiles.CURVES).resolve(LogbookFiles.curve(batch.name()));
        file(file.toString()).write(writer -> {
            CsvText.append(headings, writer);
            for (int i = 0; i < recording.rows().size(); i++) {
                double at = recording.seconds().get(i);
                if (at < batch.from() || at >= batch.to()) {
                    continue;
                }
                List<String> cells =
                        recording.file().rows().get(recording.rows().get(i));
                List<String> row = new ArrayList<>(List.of(seconds(at - batch.zero())));
                columns.places()
                        .forEach(place -> row.add(number(
                                cells.get(place), recording.file().sheet().decimal())));
                CsvText.append(row, writer);
            }
        });
    }

    private static String seconds(double at) {
        double thousandths = Math.round(at * 1000) / 1000.0;
        return Numbers.written(thousandths);
    }

    /** A number gets a decimal point, whatever sign it was written with. */
    private static String number(String cell, Numbers.Decimal decimal) {
        if (cell.indexOf(',') < 0) {
            return cell;
        }
        double value = Numbers.parse(cell, decimal);
        double either = Double.isNaN(value) ? Numbers.parse(cell, Numbers.Decimal.EITHER) : value;
        return Double.isNaN(either) ? cell : Numbers.written(either);
    }
}
