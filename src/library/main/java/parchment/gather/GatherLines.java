package parchment.gather;

import java.util.List;
import java.util.Optional;
import parchment.display.Html;
import parchment.display.Showable;
import parchment.sheet.Words;

/**
 * Shows what a gathering says, a line each. On a page a line that begins at the margin is a paragraph, one that begins with two blanks a point below it,
 * and one that begins with four a line of the file as it stands.
 *
 * @param lines the lines
 */
record GatherLines(List<String> lines) implements Showable {
    private static final String FILE = "    ";
    private static final String POINT = "  ";

    private enum Kind {
        PARAGRAPH("", ""),
        POINTS("<ul style=\"max-width:50em\">", "</ul>\n"),
        FILE_LINES("<pre style=\"overflow-x:auto\">", "</pre>\n");

        private final String begin;
        private final String end;

        Kind(String begin, String end) {
            this.begin = begin;
            this.end = end;
        }

        static Kind of(String line) {
            return line.startsWith(FILE) ? FILE_LINES : line.startsWith(POINT) ? POINTS : PARAGRAPH;
        }
    }

    GatherLines {
        lines = lines.stream().map(Words::harmless).toList();
    }

    @Override
    public String text() {
        return String.join("\n", lines).strip();
    }

    @Override
    public Optional<String> html() {
        StringBuilder html = new StringBuilder();
        Kind last = Kind.PARAGRAPH;
        for (String line : lines) {
            if (line.isBlank()) {
                html.append(last.end);
                last = Kind.PARAGRAPH;
                continue;
            }
            Kind kind = Kind.of(line);
            if (kind != last) {
                html.append(last.end).append(kind.begin);
                last = kind;
            }
            String words = Html.escape(line.strip());
            html.append(
                    switch (kind) {
                        case PARAGRAPH -> "<p style=\"max-width:50em\">" + words + "</p>\n";
                        case POINTS -> "<li>" + words + "</li>\n";
                        case FILE_LINES -> words + "\n";
                    });
        }
        return Optional.of(html.append(last.end).toString());
    }
}
