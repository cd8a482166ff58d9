package parchment.kernel.cell;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import jdk.jshell.ImportSnippet;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.Snippet.SubKind;
import jdk.jshell.SnippetEvent;
import jdk.jshell.VarSnippet;
import org.jspecify.annotations.Nullable;
import parchment.kernel.page.CellPage;

/**
 * Keeps the variables of a session as a notebook's reader expects, where JShell would not: what was made from a variable outlives its
 * redefinition, old values are let go of, and a variable whose cell failed is not there rather than 0.
 */
final class Variables {
    private static final Pattern NAME = Pattern.compile("(?<![\\w$.])[A-Za-z_$][\\w$]*");

    private final JShell shell;
    private final CellControl control;
    private final Set<String> failed;
    private final Set<String> lost = new LinkedHashSet<>();

    /** @param failed is filled with the names of variables whose cell failed */
    Variables(JShell shell, CellControl control, Set<String> failed) {
        this.shell = shell;
        this.control = control;
        this.failed = failed;
    }

    /** Looks after all variables when a snippet has run. */
    void afterRun(Map<String, Class<?>> before, Snippet snippet, List<SnippetEvent> events, CellPage page) {
        keep(before, snippet instanceof VarSnippet variable ? variable.name() : "", events);
        lost.forEach(name -> tellLost(name, page));
        lost.clear();
        if (snippet instanceof VarSnippet variable) {
            failed.remove(variable.name());
        }
    }

    /** Looks after all variables when an import was made for the reader, or taken back; what is lost is told with the next snippet. */
    void afterImport(Map<String, Class<?>> before, List<SnippetEvent> events) {
        keep(before, "", events);
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

    /** Says which of the variables that a cell names hold many things, and how to let go of them; nothing where none does. */
    List<String> howToFree(String code) {
        Set<String> written =
                NAME.matcher(code).results().map(MatchResult::group).collect(Collectors.toSet());
        List<String> holding = control.holders().keySet().stream()
                .filter(written::contains)
                .filter(name -> holdsMany(control.valueOf(name)))
                .sorted()
                .toList();
        if (holding.isEmpty()) {
            return List.of();
        }
        String names = holding.stream().map(name -> "`" + name + "`").collect(Collectors.joining(", "));
        String lines = holding.stream().map(name -> name + " = null;").collect(Collectors.joining(" "));
        return List.of("What the cell has put into " + names
                + " is still there and takes up memory. To let go of it, run: `" + lines + "`");
    }

    private static boolean holdsMany(@Nullable Object value) {
        return value instanceof Collection<?>
                || value instanceof Map<?, ?>
                || value instanceof CharSequence
                || value != null && value.getClass().isArray();
    }

    private void drop(VarSnippet variable) {
        Class<?> holder = control.holders().get(variable.name());
        if (holder != null) {
            CellControl.release(variable.name(), holder); // First, because the other takes memory.
        }
        shell.drop(variable);
    }

    /**
     * Lets go of the old value of a variable that was defined anew, and keeps the values of those made from it: JShell would set
     * {@code var evidence = f(logbook)} to null when the cell that defines {@code logbook} runs once more.
     *
     * @param own the variable that was defined, or empty
     */
    private void keep(Map<String, Class<?>> before, String own, List<SnippetEvent> events) {
        control.holders().forEach((name, holder) -> {
            Class<?> old = before.get(name);
            if (old == null || old == holder) {
                return;
            }
            if (!name.equals(own) && !CellControl.carryOver(name, old, holder)) {
                lost.add(name);
            }
            CellControl.release(name, old);
        });
        for (SnippetEvent event : events) {
            if (isLost(event)
                    && event.snippet() instanceof VarSnippet variable
                    && control.valueOf(variable.name()) != null
                    && !keptByItsType(variable, event)) {
                lost.add(variable.name());
                Class<?> holder = control.holders().get(variable.name());
                if (holder != null) {
                    CellControl.release(variable.name(), holder);
                }
            }
        }
    }

    private static boolean isLost(SnippetEvent event) {
        return event.previousStatus() == Status.VALID
                && (event.status() == Status.RECOVERABLE_DEFINED || event.status() == Status.RECOVERABLE_NOT_DEFINED);
    }

    /**
     * Declares a variable anew by its type in full, with the value that it had, when a name in its declaration has come to mean something else
     * by an import.
     */
    private boolean keptByItsType(VarSnippet variable, SnippetEvent event) {
        Class<?> holder = control.holders().get(variable.name());
        if (holder == null || event.causeSnippet() != null && !(event.causeSnippet() instanceof ImportSnippet)) {
            return false;
        }
        Optional<String> type = CellControl.typeOf(variable.name(), holder);
        if (type.isEmpty()) {
            return false;
        }
        Map<String, Class<?>> before = control.holders();
        List<SnippetEvent> events = shell.eval(type.get() + " " + variable.name() + ";");
        Class<?> now = control.holders().get(variable.name());
        boolean kept = now != null && now != holder && CellControl.carryOver(variable.name(), holder, now);
        keep(before, variable.name(), events);
        return kept;
    }

    private static void tellLost(String variable, CellPage page) {
        page.print(
                CellPage.Stream.STDERR,
                "`" + variable + "` is empty now, because what it was made from has changed: run its cell again.\n");
    }
}
