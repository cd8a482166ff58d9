package parchment.lesson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import parchment.lesson.sheet.HandedInPlan;
import parchment.virtual.classroom.ClassList;

/**
 * The plans that were handed in, and what could not be looked into.
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

    /** Returns those students of a class of whom no plan is there, not even one that was not looked into. */
    public List<String> without(List<String> students) {
        ClassList names = new ClassList(students);
        List<String> with = plans.stream()
                .flatMap(plan -> names.find(plan.student()).stream())
                .toList();
        return students.stream()
                .filter(student -> !with.contains(student))
                .filter(student -> refused.stream().noneMatch(each -> each.contains(HandedInPlan.fileName(student))))
                .toList();
    }

    @Override
    public String toString() {
        return LessonWords.count(plans.size(), "plan", "plans") + ", " + refused.size() + " not looked into";
    }
}
