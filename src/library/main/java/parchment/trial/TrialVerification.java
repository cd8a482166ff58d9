package parchment.trial;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.Seal;
import parchment.trial.sealed.SealCheck;
import parchment.trial.sealed.SetDraw;
import parchment.trial.sealed.TrialPlan;

/** Holds what a trial's folder says against digits that were given away. */
final class TrialVerification {
    private TrialVerification() {}

    /**
     * Returns what was found.
     *
     * @param draw where the covered lines were looked for
     * @param seal the digits of the seal, as they were typed
     * @param recordDigits digits of the record, as they were typed
     * @throws IllegalArgumentException if they are not 64 digits
     */
    static SealCheck of(TrialFiles files, Path draw, String seal, String... recordDigits) {
        String given = Seal.typed("A seal", seal);
        List<String> findings = new ArrayList<>(files.findings());
        boolean isOurs =
                files.record().filter(record -> record.seal().equals(given)).isPresent();
        files.seal()
                .filter(found -> !found.digits().equals(given) && !isOurs)
                .ifPresent(found -> findings.add("The digits that you gave are of another seal: this folder's is "
                        + Seal.inFours(found.digits())
                        + ". It is another trial, or it was changed or drawn again since."));
        for (String digits : recordDigits) {
            String typed = Seal.typed("What was given away of a record", digits);
            boolean isThere = files.record().stream()
                    .flatMap(record -> record.entries().stream())
                    .anyMatch(entry -> entry.digits().equals(typed));
            if (!isThere) {
                findings.add("The record does not go through " + Seal.inFours(typed)
                        + ": what was done by then was written anew since, or they are another record's.");
            }
        }
        int sealed = files.seal().map(found -> found.lineSeals().size()).orElse(0);
        int opened = findings.isEmpty() ? files.opened().size() : 0;
        if (findings.isEmpty()) {
            findings.addAll(brokenRules(files));
        }
        return new SealCheck(given, findings, notes(files, draw), opened, sealed);
    }

    private static List<String> notes(TrialFiles files, Path draw) {
        List<String> notes = new ArrayList<>();
        if (files.closed().isEmpty()) {
            notes.add("The covered lines are not at '" + draw
                    + "', so those that are not open were not held against the seal.");
        }
        files.record()
                .map(record -> record.of(TrialRecord.Kind.SLIPS))
                .filter(slips -> !slips.isEmpty())
                .ifPresent(slips -> notes.add("Slips with every target were made on "
                        + slips.get(0).at() + ": whoever made them could read them all."));
        return notes;
    }

    /** A plan that says one draw and a file that holds another were sealed together: nobody changed them, and they are wrong all the same. */
    private static List<String> brokenRules(TrialFiles files) {
        TrialPlan plan = files.plan().orElseThrow();
        List<DrawnLine> lines = files.closed().isEmpty()
                ? files.opened()
                : files.closed().stream().map(DrawnLine::read).toList();
        List<String> broken = new ArrayList<>();
        for (int from = 0; from + plan.size() <= lines.size(); from += plan.size()) {
            List<String> drawn = lines.subList(from, from + plan.size()).stream()
                    .map(DrawnLine::target)
                    .toList();
            if (!SetDraw.follows(drawn, plan.size(), plan.which(), plan.terms().targets())) {
                broken.add("The targets of set " + (from / plan.size() + 1) + " are not those of a set of the plan.");
            }
        }
        return broken;
    }
}
