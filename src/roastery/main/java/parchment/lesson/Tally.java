package parchment.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import parchment.lesson.ClassResults.Marked;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.Grade;
import parchment.lesson.sheet.Reply;
import parchment.lesson.sheet.StatedClaim;

/** Counts answers that belong together: one student's of a lesson, or a whole class's to one question. */
record Tally(List<Marked> answers) {
    /**
     * Counts the answers of each lesson apart, by something more.
     *
     * @param groups an empty map, whose order is that of the tallies
     */
    static List<Tally> each(Map<String, List<Marked>> groups, List<Marked> all, Function<GivenAnswer, String> by) {
        for (Marked one : all) {
            groups.computeIfAbsent(one.answer().lesson() + " " + by.apply(one.answer()), name -> new ArrayList<>())
                    .add(one);
        }
        return groups.values().stream().map(Tally::new).toList();
    }

    GivenAnswer first() {
        return answers.get(0).answer();
    }

    int lesson() {
        return first().lesson();
    }

    List<Marked> claims() {
        return answers.stream().filter(one -> one.grade().isPresent()).toList();
    }

    long right() {
        return answers.stream().filter(one -> one.kind() == Reply.Kind.RIGHT).count();
    }

    int tries() {
        return answers.stream().mapToInt(one -> one.answer().tries()).sum();
    }

    long held() {
        return answers.stream().filter(Tally::held).count();
    }

    /** Counts the intervals that held the truth; missing where no interval was stated, as by whoever said that it cannot be told. */
    double heldOfStated() {
        boolean stated = answers.stream()
                .flatMap(one -> one.answer().claim().stream())
                .anyMatch(claim -> claim.kind() == StatedClaim.Kind.INTERVAL);
        return stated ? held() : Double.NaN;
    }

    private static boolean held(Marked one) {
        double truth = one.truth().orElse(Double.NaN);
        return one.answer()
                .claim()
                .filter(claim -> claim.lower() <= truth && truth <= claim.upper())
                .isPresent();
    }

    double points() {
        return answers.stream()
                .flatMap(one -> one.grade().stream())
                .mapToDouble(Grade::points)
                .sum();
    }
}
