package parchment.display;

import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import parchment.display.live.Asked;
import parchment.display.live.Live;

/** Passes on everything but the questions that are put to data. */
record Uncounted(Display.Target page) implements Display.Target {
    @Override
    public void show(Object value) {
        page.show(value);
    }

    @Override
    public void show(String id, Object value) {
        page.show(id, value);
    }

    @Override
    public void update(String id, Object value) {
        page.update(id, value);
    }

    @Override
    public Showable showable(@Nullable Object value) {
        return page.showable(value);
    }

    @Override
    public void register(Class<?> type, Function<Object, ?> form) {
        page.register(type, form);
    }

    @Override
    public void register(String className, Function<Object, ?> form) {
        page.register(className, form);
    }

    @Override
    public void clear() {
        page.clear();
    }

    @Override
    public void asked(Asked question) {
        // Asked for a key, not by somebody who looks for a finding.
    }

    @Override
    public void holdsForPage(String sentence) {
        page.holdsForPage(sentence);
    }

    @Override
    public Map<String, String> live(Live value) {
        return page.live(value);
    }

    @Override
    public Display.Moving moving() {
        return page.moving();
    }
}
