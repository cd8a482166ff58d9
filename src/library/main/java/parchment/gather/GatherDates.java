package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/**
 * Decides in which order the dates of each table of a folder are written, from all of them together; asked once if none of them shows it.
 *
 * @param dates what the dates themselves tell
 * @param asked the order for those that tell nothing
 * @param names how dates such as 31-01-05 in names are read
 * @param folders whether the names of folders are the days of what lies in them
 */
record GatherDates(Dates dates, DateOrder asked, NameDates names, FolderDays folders) {
    static final String KEY = "date.order";
    static final String AS_WRITTEN = "as written";
    static final String NAMES = "the names of the files";

    /** Decides it. */
    static GatherDates decide(List<GatherStyle> styles, List<FoundTable> sheets, GatherQuestions questions) {
        return decide(styles, sheets, FolderDays.NONE, questions);
    }

    /** Decides it where names of folders may be days. */
    static GatherDates decide(
            List<GatherStyle> styles, List<FoundTable> sheets, FolderDays folders, GatherQuestions questions) {
        List<Dates.Source> sources = new ArrayList<>();
        styles.forEach(style -> sources.add(new Dates.Source(
                key(style),
                source(style.sample(), style),
                style.tables().stream().flatMap(GatherDates::inRecording).toList())));
        sheets.forEach(sheet -> sources.add(
                new Dates.Source(key(sheet), source(sheet), inSheet(sheet).toList())));
        Stream<WrittenDay> inNames = Stream.concat(
                        styles.stream().flatMap(style -> style.tables().stream()), sheets.stream())
                .flatMap(table -> Stream.of(
                        String.valueOf(table.sheet().file().getFileName()),
                        table.sheet().tab()))
                .distinct()
                .flatMap(name -> WrittenDay.inName(name).stream());
        Stream<WrittenDay> ofFolders = styles.stream()
                .flatMap(style -> style.tables().stream())
                .map(table -> table.sheet().file())
                .flatMap(file -> folders.of(file).stream())
                .distinct();
        List<WrittenDay> named = Stream.concat(inNames, ofFolders).toList();
        NameDates names = NameDates.decide(
                named,
                sources.stream().flatMap(source -> source.dates().stream()).toList(),
                questions);
        sources.add(0, new Dates.Source(NAMES, NAMES, names.withDayAndMonth(named)));
        Dates dates = Dates.decide(sources);
        dates.told().forEach(questions::say);
        return new GatherDates(dates, asked(dates, questions), names, folders);
    }

    /** Two files in two folders may have one name. */
    private static String key(FoundTable sheet) {
        return TablePlace.of(sheet).toString();
    }

    private static String key(GatherStyle style) {
        return "style " + style.letter();
    }

    private static String source(FoundTable sheet) {
        return TablePlace.of(sheet).shown();
    }

    private static String source(FoundTable sample, GatherStyle style) {
        return style.tables().size() == 1 ? source(sample) : "the recordings of style " + style.letter();
    }

    private static Stream<WrittenDay> inRecording(FoundTable table) {
        List<String> cells = new ArrayList<>();
        table.above().forEach(cells::addAll);
        if (!table.rows().isEmpty()) {
            cells.addAll(table.rows().get(0));
            cells.addAll(table.rows().get(table.rows().size() - 1));
        }
        return cells.stream().flatMap(cell -> WrittenDay.find(cell).stream());
    }

    private static Stream<WrittenDay> inSheet(FoundTable sheet) {
        List<WrittenDay> found = new ArrayList<>();
        sheet.above()
                .forEach(cells -> cells.forEach(cell -> WrittenDay.find(cell).ifPresent(found::add)));
        for (int i = 0; i < sheet.headings().size(); i++) {
            List<String> cells =
                    sheet.column(i).stream().filter(cell -> !cell.isBlank()).toList();
            List<WrittenDay> days = cells.stream()
                    .flatMap(cell -> WrittenDay.ofCell(cell).stream())
                    .toList();
            if (!days.isEmpty() && 2 * days.size() >= cells.size()) {
                found.addAll(days);
            }
        }
        return found.stream();
    }

    private static DateOrder asked(Dates dates, GatherQuestions questions) {
        if (dates.inQuestion() == 0) {
            return DateOrder.ISO_ONLY;
        }
        String choices = "day/month/year, month/day/year, " + AS_WRITTEN + " (leave out what can be read two ways)";
        String answer = dates.order().isPresent()
                ? questions.tell(
                        KEY,
                        "Dates are read so, because " + dates.reason(),
                        dates.order().get().words(),
                        GatherDates::isAnswer,
                        choices)
                : questions.ask(
                        KEY,
                        "How are the dates written: day/month/year or month/day/year? "
                                + (dates.perSource().isEmpty()
                                        ? "None of them shows it."
                                        : "Some files show the one, some the other, and the rest nothing.")
                                + " Enter leaves out those that can be read two ways, and it can be answered later.",
                        AS_WRITTEN,
                        GatherDates::isAnswer,
                        choices,
                        dates.inQuestion());
        for (DateOrder order : DateOrder.values()) {
            if (order != DateOrder.ISO_ONLY && order.words().equals(answer)) {
                return order;
            }
        }
        questions.leaveOut("Nobody said how the dates are written: " + Words.count(dates.inQuestion(), "date", "dates")
                + " that can be read two ways " + (dates.inQuestion() == 1 ? "is" : "are") + " left out. To take "
                + (dates.inQuestion() == 1 ? "it" : "them") + " in, answer " + KEY
                + " with day/month/year or month/day/year.");
        return DateOrder.ISO_ONLY;
    }

    private static boolean isAnswer(String text) {
        return text.equals(AS_WRITTEN)
                || text.isEmpty()
                || text.equals(DateOrder.DAY_MONTH_YEAR.words())
                || text.equals(DateOrder.MONTH_DAY_YEAR.words());
    }

    /** Returns the order for a list or score sheet. */
    DateOrder of(FoundTable sheet) {
        return of(key(sheet));
    }

    /** Returns the order for the recordings of a style, the dates in their files' names among them. */
    DateOrder of(GatherStyle style) {
        return of(key(style));
    }

    /** Returns how dates are read in a recording and in its name, under the order for its style. */
    FileDates ofRecording(DateOrder order) {
        return new FileDates(order, names, folders);
    }

    private DateOrder of(String key) {
        return Optional.ofNullable(dates.perSource().get(key)).orElse(asked);
    }
}
