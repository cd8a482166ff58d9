package parchment.virtual;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.display.answer.Spelling;

/**
 * Takes a scenario's text apart: headings in square brackets, lines of {@code key = value}, comments from {@code #} on.
 *
 * <p>Every line is checked before anything is built; an error names file and line, says what was expected, and tells at most three
 * problems at once.
 */
final class ScenarioText {
    private static final int MOST_PROBLEMS = 3;

    private final String file;
    private final List<String> problems = new ArrayList<>();
    private final List<ScenarioSection> sections = new ArrayList<>();
    private Optional<SectionKind> kind = Optional.empty();
    private String title = "";
    private int headingLine;
    private boolean skipping = true;
    private Map<String, ScenarioSection.Entry> entries = new LinkedHashMap<>();

    private ScenarioText(String file) {
        this.file = file;
    }

    /**
     * Reads the sections.
     *
     * @throws IllegalArgumentException if a line is not understood or a needed one is missing
     */
    static List<ScenarioSection> sections(String text, String file) {
        ScenarioText reader = new ScenarioText(file);
        String clean = text.startsWith("\uFEFF") ? text.substring(1) : text;
        List<String> lines = clean.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            reader.line(lines.get(i), i + 1);
        }
        reader.close();
        reader.checkWhole();
        return List.copyOf(reader.sections);
    }

    private void line(String raw, int number) {
        int comment = raw.indexOf('#');
        String line = (comment < 0 ? raw : raw.substring(0, comment)).strip();
        if (line.isEmpty()) {
            return;
        }
        if (line.startsWith("[")) {
            close();
            open(line, number);
        } else if (!skipping) {
            entry(line, number);
        } else if (sections.isEmpty() && kind.isEmpty() && problems.isEmpty()) {
            problem(number, "expected a section's heading such as [roastery], but found '" + line + "'.");
        }
    }

    private void open(String line, int number) {
        skipping = true;
        if (!line.endsWith("]")) {
            problem(number, "a section's heading ends with ']'; found '" + line + "'.");
            return;
        }
        String inside = line.substring(1, line.length() - 1);
        int colon = inside.indexOf(':');
        String word = (colon < 0 ? inside : inside.substring(0, colon)).strip().toLowerCase(Locale.ROOT);
        int index = SectionKind.words().indexOf(word);
        if (index < 0) {
            problem(
                    number,
                    "there is no section '" + word + "'." + Spelling.question(word, SectionKind.words()) + " Sections: "
                            + String.join(", ", SectionKind.words()) + ".");
            return;
        }
        SectionKind found = SectionKind.values()[index];
        title = colon < 0 ? "" : inside.substring(colon + 1).strip();
        Optional<String> wrong = wrongTitle(found);
        if (wrong.isPresent()) {
            problem(number, wrong.get());
            return;
        }
        kind = Optional.of(found);
        headingLine = number;
        entries = new LinkedHashMap<>();
        skipping = false;
    }

    private Optional<String> wrongTitle(SectionKind found) {
        boolean day = Setting.date("day", "", "").wrong(title).isEmpty();
        boolean right = switch (found.named()) {
            case NO -> title.isEmpty();
            case MAY_BE -> true;
            case YES -> !title.isEmpty();
            case DAY -> day;
        };
        boolean twice = sections.stream()
                .anyMatch(section -> section.kind() == found
                        && (!found.isRepeated()
                                || section.title().equals(title)
                                        && (found.named() == SectionKind.Named.YES || found == SectionKind.PROBE)));
        if (right && !twice) {
            return Optional.empty();
        }
        return Optional.of(
                right
                        ? "a second section [" + found.word() + (title.isEmpty() ? "" : ": " + title)
                                + "]; expected it once."
                        : "expected a heading of the form " + found.heading() + ", but the part after the colon is '"
                                + title + "'.");
    }

    private void entry(String line, int number) {
        SectionKind here = kind.orElseThrow();
        int equals = line.indexOf('=');
        if (equals < 0) {
            problem(number, "expected 'key = value', but found '" + line + "'.");
            return;
        }
        String left = line.substring(0, equals).strip();
        String value = line.substring(equals + 1).strip();
        int bracket = left.indexOf('[');
        String key = (bracket < 0 ? left : left.substring(0, bracket))
                .strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\s+", " ");
        Optional<Setting> setting = here.setting(key);
        if (setting.isEmpty()) {
            List<String> known = here.settings().stream().map(Setting::key).toList();
            problem(
                    number,
                    "[" + here.word() + "] has no '" + key + "'." + Spelling.question(key, known) + " It has: "
                            + String.join(", ", known) + ".");
            return;
        }
        String unit = bracket < 0
                ? setting.get().unit()
                : left.substring(bracket + 1).replace("]", "").strip();
        if (!unit.replace("°", "").equals(setting.get().unit().replace("°", ""))) {
            problem(
                    number,
                    "'" + key + "' is expected "
                            + (setting.get().unit().isEmpty()
                                    ? "without a unit"
                                    : "in " + setting.get().unit())
                            + ", but was given in '" + unit + "'.");
        } else if (entries.containsKey(key)) {
            problem(
                    number,
                    "'" + key + "' stands here a second time; the first is in line "
                            + entries.get(key).line() + ".");
        } else {
            setting.get().wrong(value).ifPresent(words -> problem(number, words));
            entries.put(key, new ScenarioSection.Entry(value, number));
        }
    }

    /** Ends the section that is open and checks that nothing needed is missing. */
    private void close() {
        if (skipping) {
            return;
        }
        SectionKind here = kind.orElseThrow();
        for (Setting setting : here.settings()) {
            if (setting.fallback().equals(Setting.NEEDED) && !entries.containsKey(setting.key())) {
                problem(
                        headingLine,
                        "the section [" + here.word() + "] needs a line '" + setting.written() + " = ...', "
                                + setting.expected() + ": " + setting.meaning() + ".");
            }
        }
        sections.add(new ScenarioSection(here, title, file + ", line " + headingLine, entries));
    }

    private void checkWhole() {
        if (problems.isEmpty()) {
            for (SectionKind needed :
                    List.of(SectionKind.ROASTERY, SectionKind.LOT, SectionKind.ATTRIBUTE, SectionKind.CUPPER)) {
                if (sections.stream().noneMatch(section -> section.kind() == needed)) {
                    problems.add(file + ": a scenario needs a section " + needed.heading() + ".");
                }
            }
        }
        if (!problems.isEmpty()) {
            int more = problems.size() - MOST_PROBLEMS;
            throw new IllegalArgumentException(String.join(
                            "\n", problems.subList(0, Math.min(MOST_PROBLEMS, problems.size())))
                    + (more > 0 ? "\nAnd " + more + " more." : ""));
        }
    }

    private void problem(int line, String words) {
        problems.add(file + ", line " + line + ": " + words);
    }
}
