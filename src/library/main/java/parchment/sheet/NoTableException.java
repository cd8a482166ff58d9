package parchment.sheet;

import java.io.IOException;

/** Tells the roaster why a file is no table that can be read, and what to do. */
public final class NoTableException extends IOException {
    private static final long serialVersionUID = 1L;

    public NoTableException(String what) {
        super(what);
    }

    NoTableException(String what, Throwable cause) {
        super(what, cause);
    }
}
