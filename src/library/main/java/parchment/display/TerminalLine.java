package parchment.display;

import java.io.Console;

/** One line of a terminal that is written over; nothing where standard output does not go to a terminal. */
final class TerminalLine implements Display.Moving {
    private int width;

    /** Returns the line of the terminal, or one that shows nothing. */
    static Display.Moving here() {
        return isTerminal() ? new TerminalLine() : Display.Moving.NOWHERE;
    }

    @Override
    public void now(Showable value) {
        write(value.text(), "");
    }

    @Override
    public void last(Showable value) {
        write(value.text(), System.lineSeparator());
    }

    private void write(String text, String end) {
        String blanks = " ".repeat(Math.max(0, width - text.length()));
        width = text.length();
        System.err.print("\r" + text + blanks + end);
        System.err.flush();
    }

    /** From Java 22 on a console may be there without a terminal, and says so itself. */
    private static boolean isTerminal() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            return Boolean.TRUE.equals(Console.class.getMethod("isTerminal").invoke(console));
        } catch (NoSuchMethodException beforeJava22) {
            return true;
        } catch (ReflectiveOperationException e) {
            return false;
        }
    }
}
