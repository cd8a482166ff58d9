package parchment.display;

import java.util.Map;

/** Passes on everything but the questions that are put to data. */
record Uncounted(Display.Target page) implements Display.Target {
    @Override
    public void show(Object value) {
        page.show(value);
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
