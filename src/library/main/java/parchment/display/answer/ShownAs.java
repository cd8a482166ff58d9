package parchment.display.answer;

import java.util.Map;
import java.util.Optional;
import parchment.display.Showable;

/** Shows itself exactly as another value does: a chart of batches as the plot it draws, a list as its table. */
public interface ShownAs extends Showable {

    /** Returns the value whose text, HTML and SVG are this one's. */
    Showable shownAs();

    @Override
    default String text() {
        return shownAs().text();
    }

    @Override
    default Optional<String> html() {
        return shownAs().html();
    }

    @Override
    default Optional<String> svg() {
        return shownAs().svg();
    }

    @Override
    default Map<String, String> otherForms() {
        return shownAs().otherForms();
    }
}
