package parchment.trial;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookFiles;
import parchment.logbook.Problems;
import parchment.logbook.written.BatchPlan;
import parchment.logbook.written.Problem;
import parchment.quantity.Mass;
import parchment.sheet.Words;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.DrawnTarget;
import parchment.trial.sealed.Seal;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialPlan;

/**
 * Holds the opened places of a trial, and each cell of batches.csv that says otherwise than the sealed draw. The draw rules: what was typed
 * changes no place.
 */
record AssignedCells(List<AssignedBatch> batches, Problems problems) {
    /** Targets are typed with one decimal, on any scale of temperature. */
    private static final double TYPED = 0.06;

    /** A scale's last digit. */
    private static final double WEIGHED = 0.0055;

    private static final String RULES = "the sealed draw rules";

    static AssignedCells of(TrialPlan plan, List<DrawnLine> opened, Map<Integer, SetListing> listed, Logbook logbook) {
        List<AssignedBatch> places = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        Map<String, DrawnLine> drawn = new HashMap<>();
        for (DrawnLine line : opened) {
            SetListing listing = Optional.ofNullable(listed.get(line.set())).orElseThrow();
            SetListing.Weighed weighed = listing.batches().get(line.place() - 1);
            drawn.put(weighed.batch(), line);
            Optional<Batch> batch = logbook.find(weighed.batch());
            Set<String> eyes = new LinkedHashSet<>(listing.eyes());
            batch.flatMap(each -> each.label(Batch.Label.OPERATOR)).ifPresent(eyes::add);
            places.add(AssignedBatch.drawn(
                            Integer.toString(line.set()),
                            line.place(),
                            listing.lot(),
                            listing.day(),
                            weighed.batch(),
                            line.value())
                    .with(batch.isPresent() ? AssignedBatch.State.NOT_CUPPED : AssignedBatch.State.LOST)
                    .seenBy(eyes));
            if (batch.isEmpty()) {
                problems.add(problem(
                        weighed.batch(),
                        "batch",
                        "no row of batch " + Words.quote(weighed.batch()),
                        "one, since its line of set " + line.set() + " was opened",
                        "counted as lost"));
            } else {
                problems.addAll(cells(plan, line, listing, weighed, batch.get()));
            }
        }
        for (Batch batch : logbook.batches()) {
            if (batch.plan().trial().filter(plan.terms().trial()::equals).isPresent()
                    && !drawn.containsKey(batch.name())) {
                problems.add(problem(
                        batch.name(),
                        "trial",
                        Words.quote(plan.terms().trial()) + " for batch " + Words.quote(batch.name()),
                        "a batch whose line was opened; nothing joins a trial afterwards",
                        "left out of the trial"));
            }
        }
        return new AssignedCells(List.copyOf(places), new Problems(problems));
    }

    private static List<Problem> cells(
            TrialPlan plan, DrawnLine line, SetListing listing, SetListing.Weighed weighed, Batch batch) {
        List<Problem> problems = new ArrayList<>();
        String of = " for batch " + Words.quote(batch.name());
        BatchPlan written = batch.plan();
        Optional<BatchPlan.Planned> planned =
                written.planned(plan.terms().control().words());
        boolean otherUnit = plan.terms().control() == TrialControl.FIRST_GAS
                && planned.filter(value -> !value.unit().equals(plan.unit())).isPresent();
        if (planned.isEmpty() || otherUnit || Math.abs(planned.get().value() - line.value()) > TYPED) {
            problems.add(problem(
                    batch.name(),
                    DrawnTarget.column(plan),
                    planned.map(value -> otherUnit
                                            ? DrawnLine.target(value.value()) + " " + value.unit()
                                            : DrawnTarget.told(plan, value.value()))
                                    .orElse("nothing")
                            + of,
                    DrawnTarget.told(plan, line.value()) + ", as was drawn",
                    RULES));
        }
        if (written.plannedBy() != BatchPlan.PlannedBy.CHANCE) {
            String by = written.plannedBy() == BatchPlan.PlannedBy.CHOICE ? "'choice'" : "nothing";
            problems.add(problem(batch.name(), "planned by", by + of, "'chance'", RULES));
        }
        word(problems, batch.name(), "trial", written.trial(), plan.terms().trial());
        word(problems, batch.name(), "set", written.set(), Integer.toString(line.set()));
        word(problems, batch.name(), "lot", batch.lot(), listing.lot());
        word(
                problems,
                batch.name(),
                "roasted at",
                batch.roastDay().map(LocalDate::toString),
                listing.day().toString());
        Optional<Mass> green = batch.conditions().greenMass();
        if (green.filter(mass -> Math.abs(mass.kilograms() - weighed.mass().kilograms()) > WEIGHED)
                .isPresent()) {
            problems.add(problem(
                    batch.name(),
                    "green mass",
                    green.get() + of,
                    weighed.mass() + ", as was weighed before the draw",
                    "the batch stays where it was listed"));
        }
        return problems;
    }

    private static void word(
            List<Problem> problems, String batch, String column, Optional<String> found, String expected) {
        if (!found.filter(expected::equals).isPresent()) {
            problems.add(problem(
                    batch,
                    column,
                    found.map(Words::quote).orElse("nothing") + " for batch " + Words.quote(batch),
                    Words.quote(expected) + ", as was listed",
                    RULES));
        }
    }

    private static Problem problem(String batch, String column, String found, String expected, String done) {
        return new Problem(LogbookFiles.BATCHES, 0, column, found, expected, done, batch);
    }

    /** Returns what an answer is made from, as the record binds it: equal scores give equal digits on any machine. */
    static String digits(List<AssignedBatch> batches) {
        StringBuilder text = new StringBuilder();
        for (AssignedBatch batch : batches) {
            text.append(batch.set())
                    .append('|')
                    .append(batch.place())
                    .append('|')
                    .append(batch.batch())
                    .append('|')
                    .append(batch.state().words())
                    .append('|')
                    .append(batch.achieved().isPresent() ? batch.achieved().getAsDouble() : "missing");
            batch.scores().stream()
                    .map(score -> "|" + score.cupper() + " " + score.points())
                    .sorted()
                    .forEach(text::append);
            text.append('\n');
        }
        return Seal.sha256(text.toString());
    }
}
