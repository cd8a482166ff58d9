package parchment.display.live;

import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;

/** Something that shows itself, whose forms are worked out once however often they are asked for; for a picture that takes its time. */
final class DrawnOnce implements Showable {
    private final Showable drawn;
    private @Nullable String text;
    private @Nullable Optional<String> html;
    private @Nullable Optional<String> svg;
    private @Nullable Map<String, String> others;

    private DrawnOnce(Showable drawn) {
        this.drawn = drawn;
    }

    /** Returns a value that keeps its forms; one that is live changes, and is returned as it is. */
    static Showable of(Showable drawn) {
        return drawn instanceof Live ? drawn : new DrawnOnce(drawn);
    }

    @Override
    public String text() {
        String known = text;
        if (known == null) {
            known = drawn.text();
            text = known;
        }
        return known;
    }

    @Override
    public Optional<String> html() {
        Optional<String> known = html;
        if (known == null) {
            known = drawn.html();
            html = known;
        }
        return known;
    }

    @Override
    public Optional<String> svg() {
        Optional<String> known = svg;
        if (known == null) {
            known = drawn.svg();
            svg = known;
        }
        return known;
    }

    @Override
    public Map<String, String> otherForms() {
        Map<String, String> known = others;
        if (known == null) {
            known = drawn.otherForms();
            others = known;
        }
        return known;
    }

    @Override
    public String toString() {
        return text();
    }
}
