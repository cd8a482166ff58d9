package parchment.display.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Html;
import parchment.display.Showable;

/**
 * Puts sentences, tables and pictures under one title, so that a result shows itself as one page.
 *
 * <pre>{@code
 * Report.titled("Drop temperature and sweetness")
 *         .say("38 of 41 batches were cupped; 3 have no cupping and are left out.")
 *         .add(PhaseTable.of(logbook))
 *         .heading("What it was confounded with")
 *         .say("The drop temperature rose with the season.")
 *         .add(CalendarStrip.of(logbook))
 * }</pre>
 *
 * <p>A report is a value: every method returns a copy with one more part.
 */
public final class Report implements Showable {
    private enum Kind {
        HEADING,
        SENTENCES,
        CAUTION,
        PART,
        FOLDED
    }

    private record Part(Kind kind, Showable content) {}

    private record Words(String words) implements Showable {
        @Override
        public String text() {
            return words;
        }
    }

    private final String title;
    private final List<Part> parts;

    private Report(String title, List<Part> parts) {
        this.title = title;
        this.parts = List.copyOf(parts);
    }

    /** Returns a report with a title and nothing else. */
    public static Report titled(String title) {
        return new Report(title, List.of());
    }

    /** Returns the report with one more paragraph. */
    public Report say(String sentences) {
        return with(Kind.SENTENCES, new Words(sentences));
    }

    /** Returns the report with one more paragraph set apart, for what the reader must not overlook. */
    public Report caution(String sentences) {
        return with(Kind.CAUTION, new Words(sentences));
    }

    /** Returns the report with a heading over what follows. */
    public Report heading(String heading) {
        return with(Kind.HEADING, new Words(heading));
    }

    /** Returns the report with one more table, picture or other value that can show itself. */
    public Report add(Showable part) {
        return with(Kind.PART, part);
    }

    /**
     * Returns the report with a part that is folded away under its title until the reader opens it; as text it stands under its title like
     * any other.
     *
     * @param inside what is folded away; its title is what the reader sees
     */
    public Report fold(Report inside) {
        return with(Kind.FOLDED, inside);
    }

    private Report with(Kind kind, Showable content) {
        List<Part> longer = new ArrayList<>(parts);
        longer.add(new Part(kind, content));
        return new Report(title, longer);
    }

    /** Returns the title. */
    public String title() {
        return title;
    }

    @Override
    public String text() {
        StringBuilder text = new StringBuilder(title);
        for (Part part : parts) {
            text.append("\n\n").append(part.content().text());
        }
        return text.toString();
    }

    @Override
    public Optional<String> html() {
        return Optional.of("<section class=\"parchment-report\" style=\"overflow-wrap:break-word\"><h3>"
                + WholeNames.inParagraph(title) + "</h3>\n" + htmlOfParts() + "</section>");
    }

    private String folded() {
        return "<details><summary style=\"cursor:pointer;padding:.4em 0\">" + Html.escape(title) + "</summary>\n"
                + htmlOfParts() + "</details>";
    }

    private String htmlOfParts() {
        StringBuilder html = new StringBuilder();
        for (Part part : parts) {
            String words = Html.escape(part.content().text());
            String whole = WholeNames.inParagraph(part.content().text());
            html.append(
                    switch (part.kind()) {
                        case HEADING -> "<h4>" + whole + "</h4>";
                        case SENTENCES -> "<p style=\"max-width:50em\">" + whole + "</p>";
                        case CAUTION ->
                            "<p role=\"note\" style=\"max-width:50em;border-left:4px solid currentColor;"
                                    + "padding-left:.7em\">" + whole + "</p>";
                        case PART -> part.content().html().orElse("<pre>" + words + "</pre>");
                        case FOLDED -> ((Report) part.content()).folded();
                    });
            html.append('\n');
        }
        return html.toString();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT, "%s: a page of %d %s", title, parts.size(), parts.size() == 1 ? "part" : "parts");
    }
}
