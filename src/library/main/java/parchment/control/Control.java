package parchment.control;

import java.util.Optional;
import parchment.display.live.Live;
import parchment.display.live.Wire;

/** One thing on a page that has a label and a value. */
public sealed interface Control extends Live
        permits Slider, CountSlider, RangeSlider, Choice, Choices, CheckBox, Button, TextField, HtmlNote, OutputArea {

    /** Returns what stands beside the control, with the unit of its value. */
    String label();

    /** Returns the value with its two sides, for pages; cells ask the control itself. */
    Wire<?> wire();

    /** Returns where the control stands, and what it shows, for a page on which it stands still. */
    @Override
    default String text() {
        return Still.text(toString(), wire());
    }

    @Override
    default Optional<String> html() {
        return Still.html(toString(), wire());
    }
}
