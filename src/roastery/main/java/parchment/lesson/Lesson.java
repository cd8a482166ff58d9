package parchment.lesson;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.display.Showable;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.file.WholeFile;
import parchment.lesson.sheet.Envelope;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.HandedInPlan;
import parchment.lesson.sheet.Reply;
import parchment.lesson.sheet.StatedClaim;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.VirtualLogbook;

/**
 * Is one student's lesson: its logbook, its questions, and the answers given so far.
 *
 * <pre>{@code
 * var lesson = Lesson.open(1, 7);                     // lesson one, student number seven
 * lesson.check("drop temperature", "204.5")           // says whether it is right, or gives a hint
 * }</pre>
 *
 * <p>Every lesson starts from its own saved state: the same number and seed give the same batches everywhere, whatever was done in
 * other lessons. Opened by a number, the truth is sealed against accident only: {@link #openEnvelope} opens it for whoever asks. A
 * folder that a teacher handed out holds no truth at all. A lesson remembers what was answered, and so it changes; everything else here
 * does not.
 */
public final class Lesson implements ShownAs {
    private final LessonSource source;
    private final LessonMaterial material;
    private final Logbook logbook;
    private final Map<String, GivenAnswer> given = new LinkedHashMap<>();
    private boolean opened;

    private Lesson(LessonSource source, TemperatureUnit unit) {
        this.source = source;
        this.logbook = source.logbook().in(unit);
        this.material = source.plan().material(logbook, source.behind().map(LessonSource.Behind::roasted));
    }

    /**
     * Opens a lesson for work alone.
     *
     * @param number of the lesson, from 1 to 9
     * @param seed the student's own number: another number, other batches
     * @throws IllegalArgumentException if there is no such lesson
     */
    public static Lesson open(int number, long seed) {
        LessonSource source = LessonSource.seeded(number, seed);
        return new Lesson(source, source.logbook().readerUnit());
    }

    /**
     * Opens a lesson from the folder that a teacher handed out.
     *
     * @throws IOException if the folder cannot be read, or holds another lesson
     */
    public static Lesson open(int number, String folder) throws IOException {
        LessonSource source = LessonSource.handedOut(number, Path.of(folder));
        return new Lesson(source, source.logbook().readerUnit());
    }

    /** Returns the same lesson, from its beginning, with temperatures on another scale. */
    public Lesson in(TemperatureUnit unit) {
        return new Lesson(source, unit);
    }

    /** Returns the number of the lesson. */
    public int number() {
        return source.number();
    }

    /** Returns the lesson's title. */
    public String title() {
        return source.plan().title();
    }

    /** Returns the lesson's logbook. */
    public Logbook logbook() {
        return logbook;
    }

    /**
     * Returns a batch by what the lesson calls it, as in {@code lesson.batch("A")}.
     *
     * @throws IllegalArgumentException if the lesson calls no batch so
     */
    public Batch batch(String role) {
        String name = material.roles().get(role);
        if (name == null) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "Lesson %d calls no batch '%s'. It speaks of: %s. Any other batch is logbook.batch(\"...\").",
                    number(),
                    role,
                    String.join(", ", material.roles().keySet())));
        }
        return logbook.batch(name);
    }

    /**
     * Says whether an answer is right, or gives a hint: a first one, then a second.
     *
     * @param question the question's name
     * @param answer what stands between the quotation marks
     * @throws IllegalArgumentException if the lesson has no such question
     */
    public Reply check(String question, String answer) {
        LessonQuestion asked = material.question(number(), question);
        if (AnswerText.isBlank(answer)) {
            return new Reply(
                    Reply.Kind.NOTHING_YET,
                    asked.asks() + " Put your answer in the place of the question mark and run the cell again.");
        }
        if (asked instanceof ClaimQuestion) {
            return asked.reply(answer, 0);
        }
        int before = tries(question);
        Reply reply = asked.reply(answer, before);
        note(asked, before + 1, Optional.of(reply), answer, Optional.empty());
        return reply;
    }

    /** Says whether a number is right, or gives a hint. */
    public Reply check(String question, double answer) {
        return check(question, String.format(Locale.ROOT, "%.6f", answer));
    }

    /**
     * Notes a claim: an interval that, the student believes, holds the truth in 9 of 10 such claims. It can be stated anew until the
     * envelope is opened.
     *
     * @throws IllegalArgumentException if the lesson asks for no such claim
     */
    public Reply claim(String question, String lower, String upper) {
        ClaimQuestion asked = material.claim(number(), question);
        if (AnswerText.isBlank(lower) || AnswerText.isBlank(upper)) {
            return new Reply(
                    Reply.Kind.NOTHING_YET,
                    asked.asks() + " Put a lower and an upper end in the places of the question marks, in "
                            + asked.unit() + "; or say lesson.cannotTell(\"" + question + "\").");
        }
        OptionalDouble low = AnswerText.number(lower);
        OptionalDouble high = AnswerText.number(upper);
        if (low.isEmpty() || high.isEmpty()) {
            return new Reply(Reply.Kind.NOTHING_YET, "Two numbers are asked for here, as in \"-0.5\", \"0.5\".");
        }
        return claim(question, low.getAsDouble(), high.getAsDouble());
    }

    /** Notes a claim that is given as two numbers. */
    public Reply claim(String question, double lower, double upper) {
        ClaimQuestion asked = material.claim(number(), question);
        if (!(lower <= upper)) {
            return new Reply(
                    Reply.Kind.NOTHING_YET,
                    "The lower end comes first; here it is above the upper one. Below zero, the number that is further from zero is"
                            + " the lower one.");
        }
        return state(asked, StatedClaim.between(lower, upper));
    }

    /**
     * Notes the claim that these batches and cups cannot tell.
     *
     * @throws IllegalArgumentException if the lesson asks for no such claim
     */
    public Reply cannotTell(String question) {
        return state(material.claim(number(), question), StatedClaim.cannotTell());
    }

    private Reply state(ClaimQuestion asked, StatedClaim claim) {
        if (opened) {
            return new Reply(
                    Reply.Kind.NOT_YET,
                    "The envelope is open: what is stated now is no claim. Take another seed to try again.");
        }
        note(asked, tries(asked.name()) + 1, Optional.empty(), "", Optional.of(claim));
        return new Reply(
                Reply.Kind.NOTED,
                asked.name() + ": " + claim
                        + (claim.kind() == StatedClaim.Kind.INTERVAL ? " " + asked.unit() : "")
                        + ". You can state it anew until the envelope is opened.");
    }

    /**
     * Opens the envelope: what was true, and what each claim earned. After that no claim is taken.
     *
     * @throws IllegalStateException if the truth is with the teacher
     */
    public Envelope openEnvelope() {
        if (source.behind().isEmpty()) {
            throw new IllegalStateException("The envelope of this lesson is with your teacher. Hand in your answers:"
                    + " lesson.handIn(\"your name\").");
        }
        opened = true;
        return envelope(given.values());
    }

    /** Opens the envelope over answers that were handed in, on the teacher's machine. */
    Envelope envelope(Collection<GivenAnswer> answers) {
        Optional<String> seal = source.student()
                .flatMap(student -> behind())
                .map(all -> all.truth().seal());
        return new Envelope(title(), material.opened(answers), seal);
    }

    /** Returns the answers given so far. */
    public AnswerSheet answers() {
        return new AnswerSheet(List.copyOf(given.values()));
    }

    /**
     * Writes the answers into the folder 'answers' beside the notebook, for the teacher to collect.
     *
     * @param student the student's number or name, as the teacher knows it
     * @throws IOException if the file cannot be written
     */
    public Reply handIn(String student) throws IOException {
        return handIn(student, Path.of("answers"));
    }

    /**
     * Writes the answers into a folder, for the teacher to collect; an earlier file of the same student and lesson is replaced.
     *
     * @throws IOException if the file cannot be written
     */
    public Reply handIn(String student, Path folder) throws IOException {
        if (AnswerText.isBlank(student)) {
            return new Reply(Reply.Kind.NOTHING_YET, "Put your number or name in the place of the question mark.");
        }
        String known = source.student().orElse(student.strip());
        AnswerSheet sheet = answers().by(known);
        if (sheet.answers().isEmpty()) {
            return new Reply(
                    Reply.Kind.NOTHING_YET,
                    "There is no answer to hand in. Fill in a blank, run its cell, and then run this one again.");
        }
        return new Reply(Reply.Kind.NOTED, sheet + ", written to " + sheet.writeTo(folder, number(), known) + ".");
    }

    /** Returns what was behind the logbook; for the classes of this room. */
    Optional<VirtualLogbook> behind() {
        return source.behind().map(LessonSource.Behind::roasted);
    }

    List<LessonQuestion> questions() {
        return material.questions();
    }

    /**
     * Puts five batches of one lot on a sheet, for the invented machine to roast.
     *
     * @param lot the lot, which must be in store
     * @param drops the bean temperatures at which they are to be dropped, in the lesson's unit, in the order of roasting
     * @throws IllegalArgumentException if a temperature is no number or outside what the machine takes; the message says which
     */
    public PlanSheet plan(String lot, String... drops) {
        return PlanSheet.of(lot, List.of(drops), logbook.readerUnit());
    }

    /**
     * Roasts a plan on the invented machine and has it cupped blind.
     *
     * @throws IllegalStateException if the machine is the teacher's
     * @throws IllegalArgumentException if the lot is not in store
     */
    public PlanTasted roast(PlanSheet plan) {
        LessonSource.Behind behind = source.behind()
                .orElseThrow(() -> new IllegalStateException("Your teacher's machine roasts this plan. Hand it in:"
                        + " lesson.handInPlan(plan, \"your name\")."));
        return new PlanTasted(behind.roastery().roast(plan.plan()).opened().in(logbook.readerUnit()));
    }

    /**
     * Shows the planned batches that the teacher's machine has roasted and given back as a folder.
     *
     * @throws parchment.logbook.contents.LogbookException if there is no such folder
     */
    public PlanTasted tasted(String folder) {
        return new PlanTasted(Logbook.open(folder).in(logbook.readerUnit()));
    }

    /**
     * Writes a plan into the folder 'answers' beside the notebook, for the teacher's machine to roast.
     *
     * @throws IOException if the file cannot be written
     */
    public Reply handInPlan(PlanSheet plan, String student) throws IOException {
        if (AnswerText.isBlank(student)) {
            return new Reply(Reply.Kind.NOTHING_YET, "Put your number or name in the place of the question mark.");
        }
        String known = source.student().orElse(student.strip());
        Path file = Files.createDirectories(Path.of("answers")).resolve(HandedInPlan.fileName(known));
        WholeFile.at(file).write(plan.csv());
        return new Reply(Reply.Kind.NOTED, "The plan was written to " + file + ".");
    }

    /** Opens a lesson of a student in a class, on the teacher's machine. */
    static Lesson of(LessonSource source) {
        return new Lesson(source, source.logbook().readerUnit());
    }

    private int tries(String question) {
        GivenAnswer before = given.get(question);
        return before == null ? 0 : before.tries();
    }

    private void note(
            LessonQuestion asked, int tries, Optional<Reply> reply, String answer, Optional<StatedClaim> claim) {
        given.put(
                asked.name(),
                new GivenAnswer(
                        number(),
                        source.student().orElse(""),
                        source.seed(),
                        source.code(),
                        logbook.readerUnit(),
                        asked.name(),
                        tries,
                        reply.map(r -> r.kind() == Reply.Kind.RIGHT ? GivenAnswer.Right.YES : GivenAnswer.Right.NO),
                        answer.strip(),
                        claim));
    }

    private Report page() {
        Report page = Report.titled("The logbook of lesson " + number())
                .say(source.plan().goal())
                .say(logbook.toString() + ".")
                .caution(VirtualLogbook.WARNING + " Everything here comes from a virtual roastery.");
        return material.roles().isEmpty()
                ? page
                : page.say("Batches that this lesson speaks of: "
                        + String.join(
                                ", ",
                                material.roles().entrySet().stream()
                                        .map(role -> role.getKey() + " is " + role.getValue())
                                        .toList())
                        + ".");
    }

    @Override
    public Showable shownAs() {
        return page();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "lesson %d, %s: %d questions, %d answered",
                number(),
                title(),
                material.questions().size(),
                given.size());
    }
}
