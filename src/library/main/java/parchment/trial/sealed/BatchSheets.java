package parchment.trial.sealed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.display.Showable;
import parchment.logbook.contents.Cautions;
import parchment.sheet.Words;
import parchment.trial.SetListing;

/**
 * Shows a sheet for each batch of the sets that are listed, to print and take to the machine: what is known of it, room for what will be
 * written, and when to stop. The target stands on it once its line is open.
 */
public final class BatchSheets implements Showable {
    private final TrialPlan plan;
    private final Map<Integer, SetListing> listed;
    private final Map<List<Integer>, DrawnLine> opened = new HashMap<>();

    public BatchSheets(TrialPlan plan, Map<Integer, SetListing> listed, List<DrawnLine> lines) {
        this.plan = plan;
        this.listed = listed;
        lines.forEach(line -> opened.put(List.of(line.set(), line.place()), line));
    }

    private record Sheet(String title, List<List<String>> rows) {}

    private List<Sheet> all() {
        List<Sheet> sheets = new ArrayList<>();
        listed.forEach((set, listing) -> {
            for (int place = 1; place <= listing.batches().size(); place++) {
                sheets.add(sheet(set, place, listing));
            }
        });
        return sheets;
    }

    private Sheet sheet(int set, int place, SetListing listing) {
        SetListing.Weighed weighed = listing.batches().get(place - 1);
        String target = Optional.ofNullable(opened.get(List.of(set, place)))
                .map(line -> DrawnTarget.told(plan, line.value()))
                .orElse("");
        List<List<String>> rows = List.of(
                List.of("lot, roast day", listing.lot() + ", " + listing.day()),
                List.of("green mass", weighed.mass().toString()),
                List.of("trial, set", plan.terms().trial() + ", " + set),
                List.of(DrawnTarget.column(plan), target),
                List.of("planned by", "chance"),
                List.of("charged at, charge temperature", ""),
                List.of("yellowing, first crack start", ""),
                List.of("drop, drop temperature", ""),
                List.of("roasted mass", ""),
                List.of("aborted, and why", ""));
        return new Sheet(
                weighed.batch() + ": set " + set + " of " + plan.sets() + ", batch " + place + " of " + plan.size(),
                rows);
    }

    @Override
    public String text() {
        StringBuilder text = new StringBuilder(plan.isInvented() ? Cautions.INVENTED_MACHINE + "\n" : "").append(this);
        for (Sheet sheet : all()) {
            text.append("\n\n").append(sheet.title());
            sheet.rows()
                    .forEach(row -> text.append('\n')
                            .append(row.get(0))
                            .append(": ")
                            .append(row.get(1).isEmpty() ? "______" : row.get(1)));
            text.append('\n').append(DrawnTarget.ABORT);
        }
        text.append("\n\n").append(String.join("\n", Cautions.forAPage()));
        return text.toString();
    }

    @Override
    public Optional<String> html() {
        StringBuilder html = new StringBuilder(SheetHtml.paragraph(toString()));
        if (plan.isInvented()) {
            html.append(SheetHtml.warning(Cautions.INVENTED_MACHINE));
        }
        for (Sheet sheet : all()) {
            html.append(
                    SheetHtml.box(sheet.title(), SheetHtml.form(sheet.rows()) + SheetHtml.warning(DrawnTarget.ABORT)));
        }
        Cautions.forAPage().forEach(caution -> html.append(SheetHtml.paragraph(caution)));
        return Optional.of(html.toString());
    }

    @Override
    public String toString() {
        int sheets = listed.values().stream()
                .mapToInt(listing -> listing.batches().size())
                .sum();
        return "Trial " + plan.terms().trial() + ": " + Words.count(sheets, "batch sheet", "batch sheets") + " of "
                + Words.count(listed.size(), "listed set", "listed sets") + ", " + opened.size()
                + " with an open target.";
    }
}
