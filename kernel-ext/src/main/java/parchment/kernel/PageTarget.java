package parchment.kernel;

import java.util.Map;
import java.util.UUID;
import parchment.display.Asked;
import parchment.display.Display;
import parchment.display.Live;
import parchment.display.Showable;

/** What {@link Display} and progress reach while a cell runs. */
record PageTarget(CellPage page, QuestionsAsked questions, PageNotes notes) implements Display.Target {
    @Override
    public void show(Object value) {
        page.show(Shown.of(value));
    }

    @Override
    public void clear() {
        page.clear();
    }

    @Override
    public void asked(Asked question) {
        questions.add(question);
    }

    @Override
    public void holdsForPage(String sentence) {
        notes.add(sentence);
    }

    @Override
    public Map<String, String> live(Live value) {
        return page.live(value);
    }

    @Override
    public Display.Moving moving() {
        return new Place(page, UUID.randomUUID().toString());
    }

    private record Place(CellPage page, String id) implements Display.Moving {
        @Override
        public void now(Showable value) {
            page.show(id, Shown.of(value));
        }

        @Override
        public void last(Showable value) {
            now(value);
        }
    }
}
