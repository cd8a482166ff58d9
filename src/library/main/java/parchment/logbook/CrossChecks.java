package parchment.logbook;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.logbook.contents.AssumedScale;
import parchment.logbook.contents.BlendPart;
import parchment.logbook.contents.LotCheck;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Machine;
import parchment.logbook.written.Problem;
import parchment.logbook.written.Upkeep;
import parchment.sheet.Words;

/** Looks for names that lead nowhere: a cupping of an unknown batch, a batch of an unknown lot. */
final class CrossChecks {
    private static final String KEPT = "kept as written";

    private final BatchesFile.Result written;
    private final Map<String, Batch> batches;
    private final Set<String> lots = new LinkedHashSet<>();
    private final Set<String> coffees = new LinkedHashSet<>();
    private final Set<String> machines;

    CrossChecks(
            BatchesFile.Result written,
            Map<String, Batch> batches,
            List<Lot> lots,
            List<BlendPart> blends,
            List<Machine> machines) {
        this.written = written;
        this.batches = batches;
        lots.forEach(lot -> this.lots.add(lot.name()));
        coffees.addAll(this.lots);
        blends.forEach(part -> coffees.add(part.blend()));
        this.machines = machines.stream().map(Machine::name).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** Checks the lots and machines that batches name, where there are tables of them. */
    List<Problem> batches() {
        ProblemLog log = new ProblemLog(BatchesFile.FILE);
        Map<String, Integer> unknownLots = new LinkedHashMap<>();
        Map<String, Integer> unknownMachines = new LinkedHashMap<>();
        written.batches().forEach((name, batch) -> {
            batch.lot().filter(lot -> !coffees.contains(lot)).ifPresent(lot -> unknownLots.merge(lot, 1, Integer::sum));
            batch.machine()
                    .filter(machine -> !machines.contains(machine))
                    .ifPresent(machine -> unknownMachines.merge(machine, 1, Integer::sum));
        });
        if (!coffees.isEmpty()) {
            unknown(log, "lot", unknownLots, coffees, LotFiles.LOTS);
        }
        if (!machines.isEmpty()) {
            unknown(log, "machine", unknownMachines, machines, MachineFiles.MACHINES);
        }
        return log.toList();
    }

    private static void unknown(
            ProblemLog log, String what, Map<String, Integer> names, Set<String> known, String file) {
        names.forEach((name, count) -> log.add(
                0,
                what,
                "the " + what + " " + Words.quote(name) + " in " + Words.count(count, "row", "rows"),
                "a row for it in " + file + "." + Words.didYouMean(name, known),
                KEPT));
    }

    List<Problem> lotsOf(List<LotCheck> checks, List<BlendPart> blends) {
        List<Problem> problems = new ArrayList<>();
        if (lots.isEmpty()) {
            return problems;
        }
        ProblemLog checkLog = new ProblemLog(LotFiles.CHECKS);
        unknown(checkLog, "lot", count(checks.stream().map(LotCheck::lot).toList(), lots), lots, LotFiles.LOTS);
        ProblemLog blendLog = new ProblemLog(LotFiles.BLENDS);
        unknown(blendLog, "lot", count(blends.stream().map(BlendPart::lot).toList(), lots), lots, LotFiles.LOTS);
        problems.addAll(checkLog.toList());
        problems.addAll(blendLog.toList());
        return problems;
    }

    private String didYouMean(String name) {
        return name.matches(".*\\d.*") ? "" : Words.didYouMean(name, batches.keySet());
    }

    List<Problem> machinesOf(List<Upkeep> upkeep) {
        ProblemLog log = new ProblemLog(MachineFiles.UPKEEP);
        List<String> names = upkeep.stream().map(Upkeep::machine).toList();
        if (!machines.isEmpty()) {
            unknown(log, "machine", count(names, machines), machines, MachineFiles.MACHINES);
        } else {
            Set<String> roasting = new LinkedHashSet<>();
            batches.values().forEach(batch -> batch.machine().ifPresent(roasting::add));
            if (!roasting.isEmpty()) {
                unknown(log, "machine", count(names, roasting), roasting, BatchesFile.FILE);
            }
        }
        return log.toList();
    }

    private static Map<String, Integer> count(List<String> names, Set<String> known) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        names.stream().filter(name -> !known.contains(name)).forEach(name -> counts.merge(name, 1, Integer::sum));
        return counts;
    }

    /**
     * Names the scores that look like slips of the pen: the few above the scale that all others are on, where none is written.
     *
     * @param scaled the attributes that have a written scale, plain
     */
    List<Problem> slips(CuppingFiles.Cups cups, Set<String> scaled) {
        ProblemLog log = new ProblemLog(CuppingFiles.CUPPINGS);
        Set<String> attributes = new LinkedHashSet<>();
        cups.cups().forEach(cup -> attributes.addAll(cup.scores().keySet()));
        attributes.removeIf(attribute -> scaled.contains(Settings.plain(attribute)));
        for (String attribute : attributes) {
            AssumedScale scale = AssumedScale.of(cups.cups().stream()
                    .mapToDouble(cup -> cup.score(attribute))
                    .toArray());
            for (int i = 0; i < cups.cups().size() && scale.above() > 0; i++) {
                double score = cups.cups().get(i).score(attribute);
                if (score > scale.top()) {
                    log.add(
                            cups.lines().get(i),
                            attribute,
                            plain(score) + " for batch "
                                    + Words.quote(cups.cups().get(i).batch()),
                            "at most " + plain(scale.top()) + ", as in the other "
                                    + (scale.scores() - scale.above()) + " scores; write scale." + attribute
                                    + " into " + Settings.FILE,
                            "kept as written, and every answer counts it: correct it if it is a slip");
                }
            }
        }
        return log.toList();
    }

    private static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    /** Checks the batches that cups name, whether they were tasted before they were roasted, and the cuppings of sessions.csv. */
    List<Problem> cups(CuppingFiles.Cups cups, List<Cupping> sessions) {
        ProblemLog log = new ProblemLog(CuppingFiles.CUPPINGS);
        Set<String> cuppings = new LinkedHashSet<>();
        Map<String, String> meant = new HashMap<>();
        for (int i = 0; i < cups.cups().size(); i++) {
            CupScores cup = cups.cups().get(i);
            int line = cups.lines().get(i);
            cuppings.add(cup.cupping());
            Batch batch = batches.get(cup.batch());
            if (batch == null) {
                // More than so many are listed by count alone: then no names are gone through for them either.
                String question = meant.size() == ProblemLog.ALIKE_KEPT
                        ? meant.getOrDefault(cup.batch(), "")
                        : meant.computeIfAbsent(cup.batch(), this::didYouMean);
                log.add(
                        line,
                        "batch",
                        "the batch " + Words.quote(cup.batch()),
                        "a batch of this logbook." + question,
                        "scores kept, joined to no batch");
            } else if (batch.roastDay()
                    .filter(day -> day.isAfter(cup.tastedOn()))
                    .isPresent()) {
                log.add(
                        line,
                        "tasted on",
                        "a cupping on " + cup.tastedOn() + " of a batch roasted later, " + Words.quote(batch.name()),
                        "a cupping after the roast",
                        KEPT);
            }
        }
        ProblemLog sessionLog = new ProblemLog(CuppingFiles.SESSIONS);
        for (Cupping session : sessions) {
            if (!cuppings.contains(session.name())) {
                sessionLog.add(
                        0,
                        "cupping",
                        "the cupping " + Words.quote(session.name()),
                        "scores of it in " + CuppingFiles.CUPPINGS + "." + Words.didYouMean(session.name(), cuppings),
                        KEPT);
            }
        }
        List<Problem> problems = log.toList();
        problems.addAll(sessionLog.toList());
        return problems;
    }
}
