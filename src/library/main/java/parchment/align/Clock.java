package parchment.align;

import java.util.Optional;
import parchment.logbook.MarkKind;

/**
 * Names the clock that batches are laid over each other on.
 *
 * <pre>{@code
 * OverlayChart.of(logbook, Clock.SINCE_CHARGE)
 * OneClock.of(logbook, Clock.BY_ALL_MARKS)
 * }</pre>
 */
public enum Clock {
    /** Seconds since the green coffee was charged. */
    SINCE_CHARGE("time since charge", MarkKind.CHARGE),
    /** Seconds since yellowing, negative before it. */
    SINCE_YELLOWING("time since yellowing", MarkKind.YELLOWING),
    /** Seconds since the start of first crack, negative before it. */
    SINCE_FIRST_CRACK_START("time since first crack start", MarkKind.FIRST_CRACK_START),
    /**
     * All marks at once: each batch's clock is stretched and pressed smoothly, so that charge, turning point, yellowing, first crack
     * start and drop of all batches fall on the middle batch's.
     */
    BY_ALL_MARKS("time on the common clock of all marks", MarkKind.DROP),
    /** The bean temperature itself: how long each batch took to reach it. */
    BY_BEAN_TEMPERATURE("bean temperature", MarkKind.CHARGE),
    /**
     * The elastic clock: each batch's clock is stretched and pressed so that its rate of rise runs along that of the mean roast. Rising
     * bean temperatures alone could not set such a clock: each is a stretched copy of every other.
     */
    BY_RATE_OF_RISE("time on the common clock of the rate of rise", MarkKind.DROP);

    private final String words;
    private final MarkKind zero;

    Clock(String words, MarkKind zero) {
        this.words = words;
        this.zero = zero;
    }

    /** Returns the clock's name, as an axis writes it. */
    public String words() {
        return words;
    }

    /** Returns the mark that the clock starts at; nothing if the clock is the temperature, or is set by more than one mark. */
    public Optional<MarkKind> zero() {
        return this == SINCE_CHARGE || this == SINCE_YELLOWING || this == SINCE_FIRST_CRACK_START
                ? Optional.of(zero)
                : Optional.empty();
    }

    /** Returns the mark that a batch needs to be laid on this clock. */
    MarkKind needed() {
        return zero;
    }

    /** Returns whether the rate of rise, rather than the bean temperature, is compared on this clock. */
    boolean comparesRates() {
        return this == BY_BEAN_TEMPERATURE || this == BY_RATE_OF_RISE;
    }

    @Override
    public String toString() {
        return words;
    }
}
