package parchment.kernel.cell;

import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import parchment.display.Display;
import parchment.display.Showable;
import parchment.display.live.Asked;
import parchment.display.live.Live;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;

/** What {@link Display} and progress reach while a cell runs. */
record PageTarget(CellPage page, Session session) implements Display.Target {
    @Override
    public void show(Object value) {
        page.show(session.shown(value));
    }

    @Override
    public void show(String id, Object value) {
        Shown shown = session.shown(value);
        session.named().add(id);
        page.showNamed(id, shown);
    }

    @Override
    public void update(String id, Object value) {
        session.named().check(id);
        page.update(id, session.shown(value));
    }

    @Override
    public Showable showable(@Nullable Object value) {
        return session.renderers().of(value);
    }

    @Override
    public void register(Class<?> type, Function<Object, ?> form) {
        session.renderers().register(type, form);
    }

    @Override
    public void register(String className, Function<Object, ?> form) {
        session.renderers().register(className, form);
    }

    @Override
    public void clear() {
        page.clear();
    }

    @Override
    public void asked(Asked question) {
        session.questions().add(question);
    }

    @Override
    public void holdsForPage(String sentence) {
        session.notes().add(sentence);
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
