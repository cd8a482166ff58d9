package parchment.align;

import java.util.Optional;
import parchment.logbook.MarkKind;

/** Names the clock that batches are laid over each other on. */
public enum Clock {
    /** Seconds since the green coffee was charged. */
    SINCE_CHARGE("time since charge", MarkKind.CHARGE),
    /** Seconds since yellowing, negative before it. */
    SINCE_YELLOWING("time since yellowing", MarkKind.YELLOWING),
    /** Seconds since the start of first crack, negative before it. */
    SINCE_FIRST_CRACK_START("time since first crack start", MarkKind.FIRST_CRACK_START),
    /** The bean temperature itself: how long each batch took to reach it. */
    BY_BEAN_TEMPERATURE("bean temperature", MarkKind.CHARGE);

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

    /** Returns the mark that the clock starts at; nothing if the clock is the temperature. */
    public Optional<MarkKind> zero() {
        return this == BY_BEAN_TEMPERATURE ? Optional.empty() : Optional.of(zero);
    }

    /** Returns the mark that a batch needs to be laid on this clock. */
    MarkKind needed() {
        return zero;
    }

    @Override
    public String toString() {
        return words;
    }
}
