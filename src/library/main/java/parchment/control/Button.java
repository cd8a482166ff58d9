package parchment.control;

import parchment.display.live.Wire;

/**
 * A button that a person presses.
 *
 * <pre>{@code
 * Button.of("Draw the newest batch").onPress(() -> Display.show(BatchChart.of(logbook.lastWithCurve())))
 * }</pre>
 */
public final class Button implements Control {
    private final String label;
    private final Wire<Integer> wire = new Wire<>(0);

    private Button(String label) {
        this.label = label;
    }

    /** Returns a button with words on it. */
    public static Button of(String label) {
        return new Button(label);
    }

    /** Does the work each time a person presses the button; what it prints and shows appears below. */
    public Button onPress(Runnable work) {
        wire.onChange(count -> work.run());
        return this;
    }

    /** Returns how often the button has been pressed. */
    public int presses() {
        return wire.value();
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public Wire<Integer> wire() {
        return wire;
    }

    @Override
    public String toString() {
        int presses = presses();
        return "the button '" + label + "' "
                + (presses == 0
                        ? "has not been pressed yet."
                        : "was pressed " + (presses == 1 ? "once." : presses + " times."));
    }
}
