package parchment.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import parchment.display.Progress;
import parchment.display.Report;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.display.Table;

/**
 * Shows a teacher who found what: each answer marked anew, each claim beside its truth and what it earned.
 *
 * <pre>{@code
 * ClassResults.read(Files.createTempDirectory("answers"))
 * }</pre>
 */
public final class ClassResults implements ShownAs {
    /**
     * Holds one question of one student, marked.
     *
     * @param answer what was handed in
     * @param kind right, not yet, or noted for a claim
     * @param truth the truth of a claim; empty for an answer
     * @param unit what a claim and its truth are stated in; blank for an answer
     * @param grade what a claim earned; empty for an answer
     */
    public record Marked(
            GivenAnswer answer, Reply.Kind kind, OptionalDouble truth, String unit, Optional<Grade> grade) {}

    /**
     * Is a student's envelope, opened, to be given back.
     *
     * @param student whose it is
     * @param lesson the lesson's number
     * @param envelope the truth beside what the student stated
     */
    public record Returned(String student, int lesson, Envelope envelope) {}

    private final List<Marked> marked;
    private final List<String> unread;
    private final List<String> missing;
    private final List<Returned> envelopes;

    private ClassResults(List<Marked> marked, List<String> unread, List<String> missing, List<Returned> envelopes) {
        this.marked = List.copyOf(marked);
        this.unread = List.copyOf(unread);
        this.missing = List.copyOf(missing);
        this.envelopes = List.copyOf(envelopes);
    }

    /**
     * Reads what students with numbers of their own, and no secret seeds, handed in. In a class with secret seeds the classroom reads it:
     * {@link Classroom#collect}.
     *
     * @throws IOException if the folder cannot be read
     */
    public static ClassResults read(Path folder) throws IOException {
        return read(
                folder,
                List.of(),
                answer -> Lesson.open(
                        answer.lesson(),
                        answer.seed()
                                .orElseThrow(() -> new IllegalArgumentException("The answers of "
                                        + answer.student()
                                        + " come from a class with secret seeds: Classroom.open(...).collect(...)."))));
    }

    /** Marks the sheets, and names those students of a class who handed in none. */
    static ClassResults read(Path folder, List<String> students, Function<GivenAnswer, Lesson> lessons)
            throws IOException {
        CollectedSheets sheets = CollectedSheets.in(folder);
        List<Marked> marked = new ArrayList<>();
        List<String> unread = new ArrayList<>(sheets.unread());
        List<Returned> envelopes = new ArrayList<>();
        for (CollectedSheets.Sheet sheet : Progress.over(sheets.sheets(), "marking answers")) {
            List<Marked> ofSheet = new ArrayList<>();
            List<Returned> opened = new ArrayList<>();
            try {
                for (List<GivenAnswer> own : byLessonAndStudent(sheet.answers())) {
                    GivenAnswer first = own.get(0);
                    Lesson lesson = lessons.apply(first).in(first.degrees());
                    own.forEach(answer -> ofSheet.add(mark(answer, lesson)));
                    opened.add(new Returned(first.student(), first.lesson(), lesson.envelope(own)));
                }
                marked.addAll(ofSheet);
                envelopes.addAll(opened);
            } catch (IllegalArgumentException e) {
                unread.add(sheet.file() + ": " + e.getMessage());
            }
        }
        List<String> missing = students.stream()
                .filter(student ->
                        marked.stream().noneMatch(one -> one.answer().student().equals(student)))
                .toList();
        return new ClassResults(marked, unread, missing, envelopes);
    }

    private static Collection<List<GivenAnswer>> byLessonAndStudent(List<GivenAnswer> answers) {
        Map<String, List<GivenAnswer>> found = new LinkedHashMap<>();
        answers.forEach(
                answer -> found.computeIfAbsent(answer.lesson() + " " + answer.student(), name -> new ArrayList<>())
                        .add(answer));
        return found.values();
    }

    private static Marked mark(GivenAnswer answer, Lesson lesson) {
        Optional<ClaimQuestion> claim = lesson.questions().stream()
                .filter(question -> question.name().equals(answer.question()))
                .filter(ClaimQuestion.class::isInstance)
                .map(ClaimQuestion.class::cast)
                .findFirst();
        if (claim.isPresent()) {
            return new Marked(
                    answer,
                    Reply.Kind.NOTED,
                    claim.get().shownTruth(),
                    claim.get().unit(),
                    answer.claim().flatMap(claim.get()::grade));
        }
        return new Marked(
                answer,
                lesson.check(answer.question(), answer.answer()).kind(),
                OptionalDouble.empty(),
                "",
                Optional.empty());
    }

    /** Returns every answer, marked. */
    public List<Marked> marked() {
        return marked;
    }

    /** Returns the opened envelope of each sheet that was marked, to be given back. */
    public List<Returned> envelopes() {
        return envelopes;
    }

    /** Returns the files that could not be read or marked, with the reason. */
    public List<String> unread() {
        return unread;
    }

    /** Returns the students of the class of whom nothing was marked; empty where the class is not known. */
    public List<String> missing() {
        return missing;
    }

    private List<Tally> byQuestion() {
        return Tally.each(new TreeMap<>(), marked, GivenAnswer::question);
    }

    private List<Tally> byStudent() {
        return Tally.each(new LinkedHashMap<>(), marked, GivenAnswer::student);
    }

    private Report page() {
        List<Marked> claims = new Tally(marked).claims();
        List<Tally> students = byStudent();
        List<Tally> questions = byQuestion();
        Report page = Report.titled("Who found what")
                .say(toString())
                .add(Table.titled("By student")
                        .withText("student", students, one -> one.first().student())
                        .withNumber("lesson", "", 0, students, Tally::lesson)
                        .withNumber("right", "", 0, students, Tally::right)
                        .withNumber(
                                "answered",
                                "",
                                0,
                                students,
                                one -> one.answers().size() - one.claims().size())
                        .withNumber("tries", "", 0, students, Tally::tries)
                        .withNumber(
                                "claims", "", 0, students, one -> one.claims().size())
                        .withNumber("intervals that held", "", 0, students, Tally::held)
                        .withNumber("points of claims", "", 1, students, Tally::points)
                        .withRowsShown(40))
                .add(Table.titled("By question")
                        .withNumber("lesson", "", 0, questions, Tally::lesson)
                        .withText("question", questions, one -> one.first().question())
                        .withNumber(
                                "students",
                                "",
                                0,
                                questions,
                                one -> one.answers().size())
                        .withNumber("right", "", 0, questions, Tally::right)
                        .withNumber(
                                "claims", "", 0, questions, one -> one.claims().size())
                        .withNumber("intervals that held", "", 0, questions, Tally::held)
                        .withNote("A claim is never right or wrong: it is graded.")
                        .withRowsShown(40))
                .add(Table.titled("Every claim")
                        .withText("student", claims, one -> one.answer().student())
                        .withText("claim", claims, one -> one.answer().question())
                        .withText(
                                "stated",
                                claims,
                                one -> one.answer()
                                        .claim()
                                        .map(StatedClaim::toString)
                                        .orElse(""))
                        .withNumber("true", "", 2, claims, one -> one.truth().orElse(Double.NaN))
                        .withText("in", claims, Marked::unit)
                        .withNumber(
                                "points",
                                "",
                                1,
                                claims,
                                one -> one.grade().map(Grade::points).orElse(Double.NaN))
                        .withNote(
                                "Answers were marked anew from what was handed in, on the scale of temperature that it was answered on.")
                        .withRowsShown(40));
        for (String file : unread) {
            page = page.caution("Not marked: " + file);
        }
        if (!missing.isEmpty()) {
            page = page.say("Nothing from: " + String.join(", ", missing) + ".");
        }
        return page;
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public String toString() {
        List<Marked> intervals = marked.stream()
                .filter(one -> one.answer()
                        .claim()
                        .filter(c -> c.kind() == StatedClaim.Kind.INTERVAL)
                        .isPresent())
                .toList();
        int sheets = byStudent().size();
        return String.format(
                Locale.ROOT,
                "%s of %s marked, %s not; %d of %s held the truth.",
                count(marked.size(), "answer"),
                count(sheets, "sheet"),
                count(unread.size(), "file"),
                new Tally(intervals).held(),
                count(intervals.size(), "stated interval"));
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
