package parchment.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Holds the plans that were handed in, and what could not be looked into.
 *
 * @param plans the plans, in the order of their files
 * @param refused links, pipes and folders without the right to read, each with the reason; one of them may have been meant as a plan
 */
public record HandedInPlans(List<HandedInPlan> plans, List<String> refused) {
    /** Copies the lists. */
    public HandedInPlans {
        plans = List.copyOf(plans);
        refused = List.copyOf(refused);
    }

    /**
     * Finds the plans in a folder and the folders inside it.
     *
     * @throws IOException if the folder cannot be read
     */
    public static HandedInPlans in(Path folder) throws IOException {
        CollectedFiles files = CollectedFiles.in(folder);
        return new HandedInPlans(
                files.files().stream()
                        .filter(HandedInPlan::isOne)
                        .map(HandedInPlan::of)
                        .toList(),
                files.refused());
    }

    @Override
    public String toString() {
        return Checks.count(plans.size(), "plan", "plans") + ", " + refused.size() + " not looked into";
    }
}
