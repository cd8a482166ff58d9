package parchment.period;

import java.time.LocalDate;
import parchment.logbook.Logbook;
import parchment.virtual.VirtualRoastery;

/**
 * Counts, on logbooks of the full virtual roastery, how often its moved probe is found within two roast days and how often a change is
 * invented before it.
 *
 * <p>A row of the table in docs/measurements/drift.md. Argument: logbooks. Marks are late as the roasters are, ducts get dirty, rooms are
 * warm in summer: everything that could pass for a probe.
 */
final class VirtualProbeStudy {
    private static final LocalDate MOVED = LocalDate.of(2024, 10, 7);

    private VirtualProbeStudy() {}

    /** Prints the counts; the argument is the number of logbooks. */
    public static void main(String[] arguments) {
        int logbooks = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
        int found = 0;
        int beside = 0;
        int invented = 0;
        for (int i = 0; i < logbooks; i++) {
            Logbook whole = VirtualRoastery.harbour().withSeed(9_000 + i).run().opened();
            boolean near = false;
            boolean other = false;
            for (ProbeChange change : ProbePeriods.of(whole).changes()) {
                if (change.kind() == ProbeChange.Kind.FOUND_AND_WRITTEN
                        && !change.earliest().isAfter(MOVED.plusDays(15))) {
                    near = true;
                } else if (change.kind() == ProbeChange.Kind.FOUND_WITHOUT_ENTRY) {
                    other = true;
                }
            }
            // A logbook of its own: a filter alone would not make the machine forget what came later.
            Logbook before = Logbook.of(
                    whole.between(LocalDate.of(2024, 1, 1), MOVED.minusDays(1)).contents());
            boolean none = ProbePeriods.of(before).changes().stream()
                    .noneMatch(c -> c.kind() == ProbeChange.Kind.FOUND_WITHOUT_ENTRY);
            found += near ? 1 : 0;
            beside += other ? 1 : 0;
            invented += none ? 0 : 1;
            System.out.println((i + 1) + " logbooks: found " + found + ", another invented beside it " + beside
                    + ", invented before it " + invented);
        }
    }
}
