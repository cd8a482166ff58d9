package parchment.launcher;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import parchment.card.Overview;

/** Names the notebooks by the question that each answers, and where a part of the start page is gone into. */
final class StartQuestions {
    /**
     * One question.
     *
     * @param words the question as a roaster asks it
     * @param notebook the notebook's place in the folder of notebooks
     */
    record Question(String words, String notebook) {}

    private static final String YEAR = "a-lot-through-the-year.ipynb";
    private static final String CLOCK = "one-clock-for-many.ipynb";
    private static final String DROP = "drop-temperature-and-score.ipynb";
    private static final String PATH = "destination-or-path.ipynb";
    private static final String EXPLORER = "explorer.ipynb";

    /** Where to begin. */
    static final Question TOUR = new Question("What is in my logbook?", "tour.ipynb");

    private static final List<Question> ALL = List.of(
            TOUR,
            new Question("Which drop temperature?", DROP),
            new Question("How hot, how long, or how fast?", PATH),
            new Question("What goes with what in the cup?", "what-goes-with-what.ipynb"),
            new Question("What changed since last season: the lot, the machine or the probe?", YEAR),
            new Question("How do many batches look at once?", EXPLORER),
            new Question("Which batches went another way?", CLOCK),
            new Question("Where do the phases lie, and how sure is that?", "marks-and-phases.ipynb"),
            new Question("Can I filter, count and draw it my own way?", "your-own-questions.ipynb"),
            new Question("Where can I learn this from the beginning?", "lessons/0-start-here.ipynb"));

    private static final Map<Overview.Part, List<String>> INTO = Map.of(
            Overview.Part.THE_WEEK, List.of(EXPLORER),
            Overview.Part.WHAT_IS_ODD, List.of(YEAR, CLOCK),
            Overview.Part.UNSETTLED, List.of(DROP, PATH));

    private final Path notebooks;

    StartQuestions(Path notebooks) {
        this.notebooks = notebooks;
    }

    /** Returns the questions whose notebooks are there, the tour first. */
    List<Question> all() {
        return ALL.stream()
                .filter(question -> Files.isRegularFile(notebooks.resolve(question.notebook())))
                .toList();
    }

    /** Returns the questions that a part of the overview leads to. */
    List<Question> after(Overview.Part part) {
        return all().stream()
                .filter(question -> INTO.getOrDefault(part, List.of()).contains(question.notebook()))
                .toList();
    }
}
