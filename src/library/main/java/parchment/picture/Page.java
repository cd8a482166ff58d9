package parchment.picture;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.Report;

/**
 * What a picture of this room shows: a title, a sentence, the picture if there is something to draw, and what has to be known of it.
 *
 * @param title what is drawn, with how many rows
 * @param sentence what is seen, or why nothing is drawn
 * @param picture empty if there is nothing to draw
 * @param notes at the foot; empty ones say nothing
 * @param behind the numbers that are drawn, as a table, folded away; empty if there are none
 */
record Page(String title, String sentence, Optional<Drawn> picture, List<String> notes, Optional<Showable> behind) {
    Page {
        notes = notes.stream().filter(note -> !note.isEmpty()).toList();
    }

    static Page ofNothing(String title, String sentence, List<String> notes) {
        return new Page(title, sentence, Optional.empty(), notes, Optional.empty());
    }

    /** Checks that XChart is there: Java would only name a class of it. */
    static void check() {
        try {
            Class.forName("org.knowm.xchart.XYChart", false, Page.class.getClassLoader());
        } catch (ClassNotFoundException missing) {
            throw new UnsupportedOperationException(
                    "This picture needs the library XChart, which is not on the class path. Add org.knowm.xchart:xchart to your"
                            + " project; in a notebook of Parchment it is there.",
                    missing);
        }
    }

    String words() {
        return title + ". " + sentence + (notes.isEmpty() ? "" : " " + String.join(" ", notes));
    }

    private Report report() {
        Report report = Report.titled(title).say(sentence);
        if (picture.isPresent()) {
            report = report.add(picture.get());
        }
        for (String note : notes) {
            report = report.say(note);
        }
        return behind.isPresent()
                ? report.fold(Report.titled("The numbers behind it").add(behind.get()))
                : report;
    }

    Optional<String> html() {
        return report().html();
    }

    Map<String, String> otherForms() {
        return picture.map(Drawn::otherForms).orElse(Map.of());
    }
}
