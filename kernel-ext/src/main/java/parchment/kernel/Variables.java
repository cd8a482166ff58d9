package parchment.kernel;

import java.util.List;
import java.util.Map;
import java.util.Set;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.VarSnippet;

/**
 * Keeps the variables of a session as a notebook's reader expects, where JShell would not: what was made from a variable outlives its
 * redefinition, old values are let go of, and a variable whose cell failed is not there rather than 0.
 */
final class Variables {
    private final JShell shell;
    private final CellControl control;
    private final Set<String> failed;

    /** @param failed is filled with the names of variables whose cell failed */
    Variables(JShell shell, CellControl control, Set<String> failed) {
        this.shell = shell;
        this.control = control;
        this.failed = failed;
    }

    /** Looks after all variables when a snippet has run. */
    void afterRun(Map<String, Class<?>> before, Snippet snippet, List<SnippetEvent> events, CellPage page) {
        keepOthers(before, snippet, page);
        events.forEach(event -> tellWhatIsLost(event, page));
        if (snippet instanceof VarSnippet variable) {
            failed.remove(variable.name());
        }
    }

    /** JShell keeps the value of a bare expression in a variable that nobody asked for. */
    void dropIfUnnamed(Snippet snippet) {
        if (snippet.subKind() == SubKind.TEMP_VAR_EXPRESSION_SUBKIND && snippet instanceof VarSnippet variable) {
            drop(variable);
        }
    }

    /** A variable whose value was never worked out would be 0 or null, and the next cell would reckon with it. */
    void dropFailed(Snippet snippet) {
        if (snippet.subKind() == SubKind.VAR_DECLARATION_WITH_INITIALIZER_SUBKIND
                && snippet instanceof VarSnippet variable) {
            failed.add(variable.name());
            drop(variable);
        }
    }

    private void drop(VarSnippet variable) {
        Class<?> holder = control.holders().get(variable.name());
        shell.drop(variable);
        if (holder != null) {
            CellControl.release(variable.name(), holder);
        }
    }

    /**
     * Lets go of the old value of a variable that was defined anew, and keeps the values of those made from it: JShell would set
     * {@code var evidence = f(logbook)} to null when the cell that defines {@code logbook} runs once more.
     */
    private void keepOthers(Map<String, Class<?>> before, Snippet defined, CellPage page) {
        String own = defined instanceof VarSnippet variable ? variable.name() : "";
        control.holders().forEach((name, holder) -> {
            Class<?> old = before.get(name);
            if (old == null || old == holder) {
                return;
            }
            if (!name.equals(own) && !CellControl.carryOver(name, old, holder)) {
                tellLost(name, page);
            }
            CellControl.release(name, old);
        });
    }

    private static void tellWhatIsLost(SnippetEvent event, CellPage page) {
        if (event.causeSnippet() != null
                && event.previousStatus() == Status.VALID
                && (event.status() == Status.RECOVERABLE_DEFINED || event.status() == Status.RECOVERABLE_NOT_DEFINED)
                && event.snippet() instanceof VarSnippet variable) {
            tellLost(variable.name(), page);
        }
    }

    private static void tellLost(String variable, CellPage page) {
        page.print(
                CellPage.Stream.STDERR,
                "`" + variable + "` is empty now, because what it was made from has changed: run its cell again.\n");
    }
}
