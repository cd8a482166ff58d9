package parchment.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.answer.Report;
import parchment.evidence.finding.FinishedTrial;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.feature.kind.Role;
import parchment.feature.path.OnProbe;
import parchment.logbook.contents.Cautions;

/** Writes an answer as a page: verdict, numbers, picture, what it was confounded with, how it was reached. */
final class EvidencePage {
    private static final String NOT_MEASURED =
            "Not measured, so not in any of this: gas supply, chimney draught, dirty ducts, how the beans behaved in the drum.";

    private static final String BLINDING =
            "What blinding would buy: who knows the batch tastes what they expect, so however clear a difference is, it stays at"
                    + " \"suggestive\"; codes on the cups and scores written before anybody speaks would let it count in full.";

    private final Evidence evidence;
    private final Measure measure;

    private EvidencePage(Evidence evidence) {
        this.evidence = evidence;
        this.measure = evidence.question().measure();
    }

    /** Returns a sentence that names a place, with the caution after it. */
    static String cautioned(String sentence) {
        return sentence + (sentence.endsWith(".") ? " " : ". ") + Cautions.BESIDE_A_READING;
    }

    static Report of(Evidence evidence) {
        return new EvidencePage(evidence).page();
    }

    private Report page() {
        Report page = Report.titled("Does the " + measure.name() + " matter for the " + evidence.attribute() + "?");
        for (FinishedTrial trial : evidence.trials()) {
            page = trial.onto(page);
        }
        page = page.add(evidence.inShort());
        // Where the line is highest at the edge of what was tried, the reader must know before looking at it.
        page = evidence.beyond().isEmpty() ? page : page.say(evidence.beyond());
        page = evidence.material().sayDoubts(page).add(evidence.pictureAlone());
        FirstScreen around = FirstScreen.of(evidence);
        for (String words : face(around)) {
            page = page.say(words);
        }
        if (namesReadings()) {
            page = page.caution(Cautions.BESIDE_A_READING);
        }
        List<String> notes = evidence.pictureNotes();
        page = notes.isEmpty() ? page : page.say("How to read the picture: " + String.join(" ", notes));
        return page.fold(workedOut());
    }

    /** Where nothing can be told, why just these two readings were compared is not what a reader asks first. */
    private List<String> face(FirstScreen around) {
        List<String> words = new ArrayList<>();
        words.add(evidence.readingsMoved());
        words.add(around.forWhich());
        words.add(evidence.stepsDiffer());
        words.add(around.whatCouldBeWrong());
        words.add(around.partOfIt());
        words.add(evidence.afterThat());
        if (evidence.verdict() != Verdict.CANNOT_TELL) {
            words.add(evidence.whyThese());
        }
        words.removeIf(String::isEmpty);
        return words;
    }

    /** A fitted answer names readings whatever its verdict: a best place, two readings held against each other, or batches that would tell. */
    private boolean namesReadings() {
        return evidence.analysis().isPresent() && measure.role() != Role.CALENDAR;
    }

    private Report workedOut() {
        Report page = Report.titled("How this was worked out")
                .say("Verdict: " + evidence.verdict().words() + ". " + reasons())
                .say(claims())
                .say(counts());
        Optional<Analysis> analysis = evidence.analysis();
        if (analysis.isEmpty()) {
            return page.say(evidence.layout().toString());
        }
        page = best(evidence.judgedByChance() ? page.say(ofAll(analysis.get())) : page, analysis.get());
        if (evidence.verdict() == Verdict.CANNOT_TELL) {
            page = evidence.whyThese().isEmpty() ? page : page.say(evidence.whyThese());
            page = page.say(evidence.whatWouldTell());
        }
        page = page.heading("How far it can be trusted");
        page = evidence.bySteps().isEmpty() ? page : page.say(evidence.bySteps());
        page = page.say(evidence.gain().toString())
                .say(analysis.get().equivalence().words(measure) + " "
                        + analysis.get().repeatability())
                .say(errors(analysis.get()));
        if (evidence.relativeToGeneralLevel().isPresent()) {
            page = page.say("A second view, not the answer: "
                    + evidence.relativeToGeneralLevel().get()
                    + " A cupper who likes a cup scores all of it higher; that is taken out here, and with it whatever truly lifted the"
                    + " whole cup.");
        }
        page = page.heading("What it was confounded with")
                .say(confounded())
                .say(analysis.get().robustness() + " " + evidence.negativeControl())
                .say(cups())
                .say(NOT_MEASURED)
                .add(evidence.facts().table(measure.name()));
        if (!evidence.movedTogether().companions().isEmpty()) {
            page = page.add(evidence.movedTogether().table());
        }
        return page.heading("How it was reached")
                .say(reached(analysis.get()))
                .say("Whether lines and bends in all features miss something is another question: Yardstick.of(\""
                        + evidence.attribute() + "\", logbook) asks it.")
                .add(analysis.get().specificationCurve().table(measure.stepWords()))
                .add(BatchScores.of(analysis.get(), measure, evidence.attribute())
                        .table());
    }

    /** The first screen is about the batches whose targets were drawn; the rest of this part is not. */
    private String ofAll(Analysis analysis) {
        return "From here on all "
                + Wording.count(analysis.material().batches().size(), "scored batch", "scored batches")
                + " count, their targets drawn by chance or not; the sentences and the picture above are of the "
                + evidence.judgedMaterial().batches().size() + " whose targets were.";
    }

    private String reached(Analysis analysis) {
        List<String> words = new ArrayList<>();
        words.add("The slope is from one model of all scores: a line in the " + measure.name()
                + " counted from the mean of its lot and probe period, with that mean, rest days, place in the roast day, green"
                + " mass and date beside it, and lots, roast days, batches, cuppers and cuppings free to differ.");
        words.add(
                analysis.places() == TodaysCourse.Places.READINGS
                        ? "The course and the best place are from a second model, in which each lot has a level of its own and a bend stands beside the line"
                                + (measure.onProbe() == OnProbe.READING ? "; readings count as on today's probe." : ".")
                        : "The course that is drawn is from the same model, with a bend beside the line.");
        words.addAll(analysis.fitted().words());
        words.addAll(evidence.material().remarks());
        return String.join(" ", words);
    }

    private String reasons() {
        return Wording.sentence(String.join("; ", evidence.reasons())) + ".";
    }

    private String claims() {
        StringBuilder words = new StringBuilder();
        evidence.effect()
                .ifPresent(effect -> words.append(effect)
                        .append(' ')
                        .append(evidence.drawn()
                                .map(drawn -> "This rests on " + drawn.material()
                                        + " whose target was drawn by chance, taken as drawn. ")
                                .orElse("")));
        words.append(evidence.association());
        if (evidence.analysis().isPresent()) {
            LotsApart lots = evidence.analysis().get().lotsApart();
            String apart = evidence.judgedByChance()
                    ? lots.words(
                            measure,
                            "Among all " + evidence.batches() + " scored batches, drawn or not, the lots do differ")
                    : lots.words(measure);
            words.append(apart.isEmpty() ? "" : " " + apart);
            if (evidence.analysis().get().bendSeen()) {
                words.append(" The course has a bend, so this one slope does not describe it: look at the picture.");
            }
            words.append(
                    evidence.cuppers() < ScoreDesign.CUPPERS_FOR_SLOPES
                            ? " This is a statement about "
                                    + (evidence.cuppers() == 1
                                            ? "this one cupper"
                                            : "these " + evidence.cuppers() + " cuppers")
                                    + "."
                            : " This is a statement about cuppers like these " + evidence.cuppers() + ".");
        }
        return words.toString();
    }

    private String counts() {
        StringBuilder words =
                new StringBuilder("Behind it: ").append(evidence.material()).append('.');
        List<Exclusion> left = evidence.leftOut();
        if (left.isEmpty()) {
            return words.append(" Nothing was left out.").toString();
        }
        words.append(' ')
                .append(Wording.sentence(
                        String.join("; ", left.stream().map(Exclusion::toString).toList())));
        return words.append('.').toString();
    }

    private Report best(Report page, Analysis analysis) {
        TriedRange range = analysis.range();
        Peak peak = evidence.peak().orElseThrow();
        if (evidence.whyNoBest().isPresent()) {
            return page.say("Where " + evidence.attribute()
                    + (evidence.bendIsDoubtful()
                            ? " is best cannot be told, because "
                                    + evidence.whyNoBest().get() + "; nor can it for any"
                            : " is best cannot be told, for the same reason as the verdict; nor can it for any")
                    + " one lot. The picture shows the scores as they are.");
        }
        if (analysis.places() == TodaysCourse.Places.FROM_LOTS_MEANS) {
            return page.say("Where " + evidence.attribute()
                    + " is best cannot be told as a reading: the probe was changed since, and by how much its readings differ is not"
                    + " known.");
        }
        if (analysis.places() == TodaysCourse.Places.OF_SEVERAL_PROBES) {
            return ofSeveralMachines(page);
        }
        Bests bests = evidence.bests().orElseThrow();
        boolean several = bests.lots().size() > 1;
        String moved = analysis.material().movedToToday() ? measure.placesOnTodaysProbe() : "";
        String groups = several
                ? " This is the common course of " + bests.count() + ", each with a level of its own." + moved
                : moved;
        Report longer = page.say(peak.words(evidence.attribute(), measure)
                + (peak.answer() == Peak.Answer.INSIDE && !analysis.bendSeen()
                        ? " The bend itself may be chance: take this place as a guess."
                        : "")
                + String.format(
                        Locale.ROOT,
                        " Tried: %s, the middle 80 %% from %s.",
                        measure.range(range.lowest(), range.highest()),
                        measure.range(range.low(), range.high()))
                + groups);
        if (several) {
            longer = longer.add(bests.table(evidence.attribute(), measure))
                    .say(bests.words(evidence.attribute(), measure));
        }
        return longer;
    }

    private Report ofSeveralMachines(Report page) {
        Report longer = page.say("Where " + evidence.attribute()
                + " is best cannot be told for several machines at once: a place on one machine's probe is not the same on another's. Ask with"
                + " the batches of one machine."
                + (evidence.bests().isPresent() ? " Each lot on its machine is in the table." : ""));
        if (evidence.bests().isEmpty()) {
            return longer;
        }
        Bests bests = evidence.bests().get();
        return longer.add(bests.table(evidence.attribute(), measure));
    }

    private String errors(Analysis analysis) {
        Reliability reliability = analysis.reliability();
        if (!reliability.corrects()) {
            return reliability.toString();
        }
        Slope fitted = analysis.fittedSlope().per(measure.step());
        return reliability + " The slope above is corrected for it; as fitted it is "
                + Wording.signed(fitted.estimate()) + " points per " + measure.stepWords() + ".";
    }

    private String confounded() {
        StringBuilder words = new StringBuilder(
                evidence.effect().isPresent()
                        ? "Where targets were drawn by chance nothing else can stand behind the effect by more than chance; the rest is"
                                + " only watched. "
                        : notDrawn() + ", so whatever moved together with it may stand behind the score. ");
        List<Facts.Fact> facts = evidence.facts().notable();
        if (!facts.isEmpty()) {
            words.append(Wording.sentence(Wording.list(facts.stream()
                            .map(fact -> fact.name() + " explains " + Wording.percent(fact.explains()))
                            .toList())))
                    .append(" of the spread of the ")
                    .append(measure.name())
                    .append(". ");
        }
        return words.append(evidence.movedTogether()).toString();
    }

    private String notDrawn() {
        int drawn = evidence.drawnTargets();
        return drawn == 0
                ? "Nobody drew the " + measure.name() + " by chance"
                : "The " + measure.name() + " was drawn by chance for "
                        + Wording.count(drawn, "scored batch", "scored batches")
                        + " only, too few to answer by themselves";
    }

    private String cups() {
        return evidence.cuppedBatches() + " " + evidence.blindness() + " "
                + (evidence.blindness().enough() || evidence.scores() == 0 ? "" : BLINDING + " ") + evidence.layout();
    }
}
