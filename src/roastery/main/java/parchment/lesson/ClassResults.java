package parchment.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import parchment.display.Progress;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.lesson.sheet.Envelope;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.Grade;
import parchment.lesson.sheet.Reply;
import parchment.lesson.sheet.StatedClaim;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.written.Overprint;

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
    private final CollectedSheets sheets;
    private final List<String> students;
    private final List<Returned> envelopes;

    private ClassResults(
            List<Marked> marked,
            List<String> unread,
            CollectedSheets sheets,
            List<String> students,
            List<Returned> envelopes) {
        this.marked = List.copyOf(marked);
        this.unread = List.copyOf(unread);
        this.sheets = sheets;
        this.students = List.copyOf(students);
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
                SheetOwner.named(),
                answer -> Lesson.open(
                        answer.lesson(),
                        answer.seed()
                                .orElseThrow(() -> new IllegalArgumentException("The answers of "
                                        + answer.student()
                                        + " come from a class with secret seeds: Classroom.open(...).collect(...)."))));
    }

    /** Marks the sheets, and names those students of a class who handed in none. */
    static ClassResults read(
            Path folder, List<String> students, SheetOwner owner, Function<GivenAnswer, Lesson> lessons)
            throws IOException {
        CollectedSheets sheets = CollectedSheets.in(folder, owner);
        List<Marked> marked = new ArrayList<>();
        List<String> unread = new ArrayList<>(sheets.unread());
        List<Returned> envelopes = new ArrayList<>();
        for (CollectedSheets.Sheet sheet : Progress.over(sheets.sheets(), "marking answers")) {
            GivenAnswer first = sheet.first();
            try {
                Lesson lesson = lessons.apply(first).in(first.degrees());
                List<Marked> ofSheet = sheet.answers().stream()
                        .map(answer -> mark(answer, lesson))
                        .toList();
                envelopes.add(new Returned(first.student(), first.lesson(), lesson.envelope(sheet.answers())));
                marked.addAll(ofSheet);
            } catch (IllegalArgumentException e) {
                unread.add(sheet.file() + ": " + e.getMessage());
            }
        }
        // As on the list of names, not as the files happen to be called; where no class is known, all stay where they
        // are.
        marked.sort(Comparator.comparingInt(one -> students.indexOf(one.answer().student())));
        envelopes.sort(Comparator.comparingInt(one -> students.indexOf(one.student())));
        return new ClassResults(marked, unread, sheets, students, envelopes);
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

    /** Returns every answer, marked; the students in the order of the class's list, where one is known. */
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
        return students.stream()
                .filter(student ->
                        marked.stream().noneMatch(one -> one.answer().student().equals(student)))
                .toList();
    }

    /** Returns the answers that were left out of a sheet that was marked, with the reason. */
    public List<String> notCounted() {
        return sheets.notCounted();
    }

    /** Returns how many plain files in the folder are no sheets of answers, and were passed over. */
    public int passedOver() {
        return sheets.others().size();
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
                .say(sentence())
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
                        .withNumber("intervals that held", "", 0, students, Tally::heldOfStated)
                        .withNumber("points of claims", "", 1, students, Tally::points)
                        .withDashForMissing("no interval was stated")
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
                        .withNumber("intervals that held", "", 0, questions, Tally::heldOfStated)
                        .withDashForMissing("no interval was stated")
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
        for (String answer : notCounted()) {
            page = page.caution("Not counted: " + answer);
        }
        for (String sentence : nothingMarked()) {
            page = page.say(sentence);
        }
        for (String sentence : otherLessons()) {
            page = page.say(sentence);
        }
        if (passedOver() > 0) {
            page = page.say(LessonWords.count(
                            passedOver(),
                            "other file is no sheet of answers and was",
                            "other files are no sheets of answers and were")
                    + " passed over.");
        }
        return page;
    }

    /** Names those of whom nothing was marked, apart by whether something of theirs is there. */
    private List<String> nothingMarked() {
        List<String> there = missing().stream()
                .filter(student -> !sheets.thereOf(student).isEmpty())
                .toList();
        List<String> nothing =
                missing().stream().filter(student -> !there.contains(student)).toList();
        List<String> sentences = new ArrayList<>();
        if (!there.isEmpty()) {
            sentences.add("No sheet marked of " + String.join(", ", there) + ", though something is there: "
                    + there.stream().map(sheets::thereOf).collect(Collectors.joining(", ")) + ".");
        }
        if (!nothing.isEmpty()) {
            sentences.add("Nothing handed in: " + String.join(", ", nothing) + ".");
        }
        return sentences;
    }

    /** Names, for each lesson that half of the class or more handed in, those who handed in others but not this one. */
    private List<String> otherLessons() {
        List<String> sentences = new ArrayList<>();
        for (int lesson : marked.stream()
                .map(one -> one.answer().lesson())
                .distinct()
                .sorted()
                .toList()) {
            List<String> without = students.stream()
                    .filter(student -> !lessonsOf(student).contains(lesson))
                    .toList();
            List<String> others = without.stream()
                    .filter(student -> !lessonsOf(student).isEmpty())
                    .map(student -> student + " (handed in: lesson "
                            + lessonsOf(student).stream().map(String::valueOf).collect(Collectors.joining(", ")) + ")")
                    .toList();
            if (!others.isEmpty() && 2 * without.size() <= students.size()) {
                sentences.add("No sheet of lesson " + lesson + " from: " + String.join(", ", others) + ".");
            }
        }
        return sentences;
    }

    private List<Integer> lessonsOf(String student) {
        return marked.stream()
                .map(Marked::answer)
                .filter(answer -> answer.student().equals(student))
                .map(GivenAnswer::lesson)
                .distinct()
                .sorted()
                .toList();
    }

    @Override
    public Showable shownAs() {
        return Overprint.across(page());
    }

    @Override
    public String toString() {
        return sentence() + " " + VirtualLogbook.WARNING;
    }

    private String sentence() {
        List<Marked> intervals = marked.stream()
                .filter(one -> one.answer()
                        .claim()
                        .filter(c -> c.kind() == StatedClaim.Kind.INTERVAL)
                        .isPresent())
                .toList();
        return String.format(
                Locale.ROOT,
                "%s of %s marked, %s not; %d of %s held the truth.",
                LessonWords.count(marked.size(), "answer", "answers"),
                LessonWords.count(byStudent().size(), "sheet", "sheets"),
                LessonWords.count(unread.size(), "file", "files"),
                new Tally(intervals).held(),
                LessonWords.count(intervals.size(), "stated interval", "stated intervals"));
    }
}
