package parchment.kernel.stop;

import java.util.Optional;

/** Guards the classes of a session's cells, and where one cannot be guarded lets it run as it is and has one line for the reader. */
public final class Guarding {
    private boolean told;
    private Optional<String> untold = Optional.empty();

    /** Returns the class guarded, or as it is where {@link GuardedBytecode} cannot read or rewrite it. */
    public byte[] guard(byte[] classFile) {
        try {
            return GuardedBytecode.guard(classFile);
        } catch (RuntimeException e) { // Newer than the byte code library, or too long with the checks in it.
            if (!told) {
                told = true;
                untold = Optional.of(notice(classFile));
            }
            return classFile;
        }
    }

    /** Returns the line, the first time it is asked for after a class could not be guarded. */
    public Optional<String> untold() {
        Optional<String> line = untold;
        untold = Optional.empty();
        return line;
    }

    private static String notice(byte[] classFile) {
        String why = GuardedBytecode.knows(classFile)
                ? "This cell is too long to be guarded"
                : "Java " + Runtime.version().feature() + " is newer than what guards the cells here";
        return why
                + ": a cell runs all the same, but once stopped it may go on in the background, and an exit in it ends the session.";
    }
}
