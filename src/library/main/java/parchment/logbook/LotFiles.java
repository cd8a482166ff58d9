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
import parchment.logbook.Field.Kind;
import parchment.logbook.contents.BlendPart;
import parchment.logbook.contents.LotCheck;
import parchment.sheet.Header;
import parchment.sheet.Words;

/** Reads lots.csv, lot-checks.csv and blends.csv. */
final class LotFiles {
    static final String LOTS = "lots.csv";
    static final String CHECKS = "lot-checks.csv";
    static final String BLENDS = "blends.csv";

    private static final double DENSEST = 2000;
    private static final double SHARE_ROUNDING = 0.02;
    static final List<Field> LOT_FIELDS = List.of(
            required("lot", Kind.NAME),
            optional("origin", Kind.TEXT),
            optional("process", Kind.TEXT),
            optional("variety", Kind.TEXT),
            optional("decaffeination", Kind.TEXT),
            optional("harvested on", Kind.DATE),
            optional("arrived on", Kind.DATE),
            optional("storage", Kind.TEXT),
            optional("screen size", Kind.TEXT),
            optional("moisture", Kind.SHARE),
            optional("density", Kind.DENSITY),
            optional("note", Kind.TEXT));
    private static final List<Field> CHECK_FIELDS = List.of(
            required("lot", Kind.NAME),
            required("measured on", Kind.DATE),
            optional("moisture", Kind.SHARE),
            optional("water activity", Kind.NUMBER),
            optional("density", Kind.DENSITY));
    private static final List<Field> BLEND_FIELDS = List.of(
            required("blend", Kind.NAME),
            required("lot", Kind.NAME),
            optional("share", Kind.SHARE),
            optional("blended", Kind.TEXT));

    private LotFiles() {}

    static List<Lot> lots(Path folder, Settings settings, ProblemLog problems) {
        Map<String, Lot> lots = new LinkedHashMap<>();
        for (Row row : CsvTable.read(folder, LOT_FIELDS, settings, problems).rows()) {
            Optional<String> name = row.requiredName("lot");
            if (name.isEmpty()) {
                continue;
            }
            if (lots.containsKey(name.get())) {
                row.problem(
                        "lot",
                        "the lot " + Words.quote(name.get()) + " again",
                        "a name of its own",
                        "row set aside, the first one kept");
                continue;
            }
            Optional<LocalDate> harvested = row.date("harvested on");
            Optional<LocalDate> arrived = row.date("arrived on");
            if (harvested.isPresent() && arrived.isPresent() && harvested.get().isAfter(arrived.get())) {
                row.problem(
                        "harvested on",
                        "a harvest on " + harvested.get() + " after the arrival on " + arrived.get(),
                        "a harvest before the arrival",
                        "both treated as missing");
                harvested = Optional.empty();
                arrived = Optional.empty();
            }
            lots.put(
                    name.get(),
                    new Lot(
                            name.get(),
                            row.text("origin"),
                            row.text("process"),
                            row.text("variety"),
                            row.text("decaffeination"),
                            harvested,
                            arrived,
                            row.text("storage"),
                            row.text("screen size"),
                            row.share("moisture"),
                            density(row),
                            row.text("note"),
                            row.extras()));
        }
        return new ArrayList<>(lots.values());
    }

    private static OptionalDouble density(Row row) {
        return row.number("density", Double.MIN_VALUE, DENSEST, "grams in a litre, such as 720");
    }

    static List<LotCheck> checks(Path folder, Settings settings, ProblemLog problems) {
        List<LotCheck> checks = new ArrayList<>();
        CsvTable table = CsvTable.read(folder, CHECK_FIELDS, settings, problems);
        table.leaveOutExtras();
        for (Row row : table.rows()) {
            Optional<String> lot = row.requiredName("lot");
            Optional<LocalDate> day = lot.isEmpty() ? Optional.empty() : row.requiredDate("measured on");
            if (lot.isPresent() && day.isPresent()) {
                checks.add(new LotCheck(
                        lot.get(),
                        day.get(),
                        row.share("moisture"),
                        row.number("water activity", 0, 1, "a number from 0 to 1"),
                        density(row)));
            }
        }
        return checks;
    }

    static List<BlendPart> blends(Path folder, Settings settings, ProblemLog problems) {
        List<BlendPart> parts = new ArrayList<>();
        Map<String, Double> sums = new LinkedHashMap<>();
        CsvTable table = CsvTable.read(folder, BLEND_FIELDS, settings, problems);
        table.leaveOutExtras();
        for (Row row : table.rows()) {
            Optional<String> blend = row.requiredName("blend");
            Optional<String> lot = blend.isEmpty() ? Optional.empty() : row.requiredName("lot");
            if (blend.isEmpty() || lot.isEmpty()) {
                continue;
            }
            double share = row.share("share").orElse(Double.NaN);
            sums.merge(blend.get(), share, Double::sum);
            parts.add(new BlendPart(blend.get(), lot.get(), share, blended(row)));
        }
        sums.forEach((blend, sum) -> {
            if (Math.abs(sum - 1) > SHARE_ROUNDING) {
                String found = "shares of " + Words.quote(blend) + " that add up to " + Math.round(sum * 100) + " %";
                problems.add(0, "share", found, "100 %", "kept as written");
            }
        });
        return parts;
    }

    private static BlendPart.Blended blended(Row row) {
        Optional<String> written = row.text("blended");
        if (written.isEmpty()) {
            return BlendPart.Blended.NOT_WRITTEN;
        }
        return switch (Header.name(written.get())) {
            case "before roasting", "before" -> BlendPart.Blended.BEFORE_ROASTING;
            case "after roasting", "after" -> BlendPart.Blended.AFTER_ROASTING;
            default -> {
                row.problem(
                        "blended",
                        Words.quote(written.get()),
                        "'before roasting' or 'after roasting'",
                        "value treated as missing");
                yield BlendPart.Blended.NOT_WRITTEN;
            }
        };
    }
}
