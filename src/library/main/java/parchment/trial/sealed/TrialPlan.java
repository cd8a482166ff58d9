package parchment.trial.sealed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import parchment.quantity.TemperatureUnit;

/**
 * Holds what a trial's sealed plan says: what is asked, of what, by which rules; a line each, in words that anybody can read.
 *
 * @param terms what an answer needs of it
 * @param sets how many sets there are
 * @param size how many batches a set has
 * @param which which targets a set has
 * @param unit what the targets are in: °C, or the label of the gas
 * @param drawnBy where the chance came from
 * @param checked what was held against before the draw: a line each
 * @param written when it was written, in ISO 8601
 */
public record TrialPlan(
        TrialTerms terms,
        int sets,
        int size,
        SetDraw.Targets which,
        String unit,
        String drawnBy,
        List<String> checked,
        String written) {
    static final String HEADER = "parchment-plan-1";

    /** What stands in a plan that was drawn by the computer's own chance. */
    public static final String SECURE = "chance of this computer, kept nowhere";

    /** What ends the line of a plan that was drawn for the logbook of a virtual roastery. */
    public static final String INVENTED = ", for an invented machine";

    private static final String CHECKED = "checked";

    public TrialPlan {
        checked = List.copyOf(checked);
    }

    /** Returns whether it was drawn for a machine that nobody may roast by. */
    boolean isInvented() {
        return drawnBy.endsWith(INVENTED);
    }

    /** Returns the text that is sealed. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add(HEADER);
        lines.add("trial: " + terms.trial());
        lines.add("question: " + terms.score() + ", " + terms.control().words());
        lines.add("targets [" + unit + "]: "
                + terms.targets().stream().map(DrawnLine::target).collect(Collectors.joining(" ")));
        lines.add("draw: permuted, within lot and day, sets of " + size
                + (which == SetDraw.Targets.ENDS && size > 2 ? ", " + which.words() : ""));
        lines.add("sets: " + sets);
        lines.add("smallest difference that matters [points over the targets]: " + points(terms.smallestDifference()));
        lines.add("primary: slope as assigned, batch means within set, two-sided, "
                + (terms.looks() == 1 ? "5 in 100" : "2.94 in 100 at each of 2 looks"));
        lines.add("interval: 90 in 100, randomisation");
        lines.add("secondary: achieved value, Anderson-Rubin set, 90 in 100");
        lines.add("lost: counted by target, bounds +-" + points(terms.lostBatch()) + " point");
        lines.add("looks: " + terms.looks());
        lines.add("cuppers: " + cuppers(terms.cuppers()));
        lines.add("cups: " + terms.cups());
        lines.add("shown in: " + (terms.reader() == TemperatureUnit.CELSIUS ? "C" : "F"));
        lines.add("drawn by: " + drawnBy);
        checked.forEach(each -> lines.add(CHECKED + ": " + each));
        lines.add("written: " + written);
        return String.join("\n", lines) + "\n";
    }

    private static String points(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    /** Names have blanks between them, or commas where one of them has a blank of its own. */
    private static String cuppers(List<String> names) {
        boolean blanks = names.stream().anyMatch(name -> name.contains(" "));
        return String.join(blanks ? ", " : " ", names) + (blanks && names.size() == 1 ? "," : "");
    }

    /**
     * Reads the text of a plan.
     *
     * @throws IllegalArgumentException if it is none; the message names what is wrong
     */
    public static TrialPlan read(String text) {
        Map<String, String> said = new LinkedHashMap<>();
        List<String> checked = new ArrayList<>();
        List<String> lines = text.lines().toList();
        if (lines.isEmpty() || !lines.get(0).equals(HEADER)) {
            throw new IllegalArgumentException("line 1 is not '" + HEADER + "'");
        }
        for (String line : lines.subList(1, lines.size())) {
            int colon = line.indexOf(": ");
            if (colon < 0) {
                throw new IllegalArgumentException("the line '" + line + "' has no colon");
            }
            String key = line.substring(0, colon);
            String value = line.substring(colon + 2);
            if (key.equals(CHECKED)) {
                checked.add(value);
            } else if (key.startsWith("targets [") && key.endsWith("]")) {
                said.put("targets", value);
                said.put("unit", key.substring("targets [".length(), key.length() - 1));
            } else {
                said.put(key, value);
            }
        }
        String question = of(said, "question");
        TrialControl control = Arrays.stream(TrialControl.values())
                .filter(each -> question.endsWith(", " + each.words()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the question '" + question + "' names no control"));
        String draw = of(said, "draw");
        String size = draw.replaceFirst(".* sets of (\\d).*", "$1");
        TrialTerms terms = new TrialTerms(
                of(said, "trial"),
                question.substring(0, question.length() - control.words().length() - 2),
                control,
                Arrays.stream(of(said, "targets").split(" "))
                        .map(target -> number("targets", target))
                        .toList(),
                number("smallest difference", of(said, "smallest difference that matters [points over the targets]")),
                (int) number("looks", said.getOrDefault("looks", "1")),
                number("lost", of(said, "lost").replaceFirst(".*\\+-([0-9.]+) point.*", "$1")),
                names(of(said, "cuppers")),
                (int) number("cups", of(said, "cups")),
                said.getOrDefault("shown in", "C").equals("F") ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS);
        return new TrialPlan(
                terms,
                (int) number("sets", of(said, "sets")),
                (int) number("draw", size),
                draw.endsWith(", " + SetDraw.Targets.ENDS.words())
                                || terms.targets().size() == 2
                        ? SetDraw.Targets.ENDS
                        : SetDraw.Targets.ENDS_AND_MIDDLE,
                of(said, "unit"),
                said.getOrDefault("drawn by", SECURE),
                checked,
                of(said, "written"));
    }

    private static List<String> names(String written) {
        return Arrays.stream(written.split(written.contains(",") ? "," : " "))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
    }

    private static String of(Map<String, String> said, String key) {
        String value = said.get(key);
        if (value == null) {
            throw new IllegalArgumentException("it says nothing of '" + key + "'");
        }
        return value;
    }

    private static double number(String key, String written) {
        try {
            return Double.parseDouble(written);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("'" + key + "' is '" + written + "', and not a number", e);
        }
    }
}
