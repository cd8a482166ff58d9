package parchment.gather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.sheet.Words;

/** Asks of which batch cups are where several can be meant, once for all cups that the sheets call the same, and names those that join no batch. */
final class CupQuestions {
    private static final String NONE = "none";

    private final GatherQuestions questions;

    CupQuestions(GatherQuestions questions) {
        this.questions = questions;
    }

    /** Returns the cups with their batches: those that are certain, and those that are answered or stand until they are. */
    List<CupJoin.Joined> joined(CupJoin found) {
        List<CupJoin.Joined> joined = new ArrayList<>(found.joined());
        Map<String, List<CupJoin.Doubtful>> doubtful = new TreeMap<>();
        found.doubtful()
                .forEach(cup -> doubtful.computeIfAbsent(key(cup.cup()), key -> new ArrayList<>())
                        .add(cup));
        doubtful.forEach((key, cups) -> {
            String answer = ask(key, cups);
            if (answer.equals(NONE)) {
                questions.leaveOut(Words.count(cups.size(), "cup", "cups") + " "
                        + shown(cups.get(0).cup()) + ": no batch, so left out (" + key + ").");
            } else {
                cups.forEach(cup -> joined.add(
                        answer.equals(cup.unlessTold())
                                ? new CupJoin.Joined(cup.cup(), answer, cup.reason())
                                : cup.settled(answer)));
            }
        });
        found.told().forEach(questions::leaveOut);
        found.unjoined()
                .forEach(cup ->
                        questions.leaveOut(TablePlace.of(cup.cup().table()).shown() + ", line "
                                + cup.cup().line() + ": the cup " + shown(cup.cup()) + " joins no batch: "
                                + withoutPlace(cup)));
        return joined;
    }

    private String ask(String key, List<CupJoin.Doubtful> cups) {
        CupJoin.Doubtful first = cups.get(0);
        String stands =
                cups.stream().map(CupJoin.Doubtful::unlessTold).distinct().count() == 1 ? first.unlessTold() : "";
        List<String> can = stands.isEmpty() ? first.found().batches() : first.alternatives();
        return questions.askOf(
                key,
                "Of which batch " + (cups.size() == 1 ? "is the cup " : "are the " + cups.size() + " cups ")
                        + shown(first.cup()) + "? It is not certain: " + first.reason()
                        + (can.isEmpty()
                                ? ""
                                : (stands.isEmpty() ? " It can be " : " It could also be ") + Words.all(can) + ".")
                        + " Answer with the batch's name, or " + NONE + ".",
                stands.isEmpty() ? NONE : stands,
                text -> !text.isBlank(),
                "the name of a batch, " + NONE,
                new GatherQuestions.Decides(cups.size(), "cup", "cups"));
    }

    private static String withoutPlace(CupJoin.Unjoined cup) {
        String place = CupSearch.place(cup.cup());
        return cup.reason().startsWith(place)
                ? cup.reason().substring(place.length()).replaceFirst("^:? ", "")
                : cup.reason();
    }

    private static String key(TastedCup cup) {
        return "cup."
                + GatherQuestions.key(Stream.of(
                                cup.batch(),
                                cup.code(),
                                cup.lot(),
                                cup.tastedOn().map(LocalDate::toString).orElse(""))
                        .filter(part -> !part.isEmpty())
                        .collect(Collectors.joining(" ")));
    }

    /** Returns what the sheet calls the cup: "of 'Wren', roasted on 2031-06-11, tasted on 2031-06-18". */
    private static String shown(TastedCup cup) {
        Optional<LocalDate> roasted = CupSearch.isoDay(cup.batch());
        String name = !cup.batch().isEmpty() && roasted.isEmpty()
                ? cup.batch()
                : !cup.code().isEmpty() ? cup.code() : cup.lot();
        return Stream.of(
                        !name.isEmpty() ? "of " + Words.quote(name) : roasted.isEmpty() ? "without a name" : "",
                        roasted.map(day -> "roasted on " + day).orElse(""),
                        cup.tastedOn().map(day -> "tasted on " + day).orElse(""))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
    }
}
