package parchment.kernel.imports;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import jdk.jshell.ImportSnippet;
import jdk.jshell.JShell;
import jdk.jshell.SnippetEvent;
import parchment.kernel.imports.ReaderImports.Declared;

/**
 * Makes the imports of a session: ours, which a cell finds in place, and room for the reader's, which win as if ours were not there.
 *
 * <p>To Java two imports of whole packages are equals, so that a name in both means nothing. A room of ours with a name that the reader has
 * imported too is therefore imported as a whole no more; its other names are imported one by one as cells use them.
 */
public final class SessionImports {
    private final JShell shell;
    private final Supplier<ClassLoader> loader;
    private final Function<String, List<SnippetEvent>> eval;
    private final Consumer<Supplier<List<SnippetEvent>>> keeping;
    private final Imports ours = new Imports();
    private final ReaderImports readers = new ReaderImports();
    private final Set<String> settled = new HashSet<>();

    /**
     * @param loader finds the classes that a cell can name
     * @param eval runs a snippet
     * @param keeping makes a change to the imports, and looks after the variables that are there
     */
    public SessionImports(
            JShell shell,
            Supplier<ClassLoader> loader,
            Function<String, List<SnippetEvent>> eval,
            Consumer<Supplier<List<SnippetEvent>>> keeping) {
        this.shell = shell;
        this.loader = loader;
        this.eval = eval;
        this.keeping = keeping;
    }

    /** Makes the imports that the code needs, and takes back those whose names it declares itself. */
    public void makeFor(String code) {
        for (String type : Imports.typesDeclaredIn(code)) {
            // JShell would refuse every later cell if a type of the cell's own and an imported one had the same name.
            dropImportsOf(type);
            readers.addType(type);
        }
        letReaderWin(code);
        ours.neededBy(code).forEach(declaration -> keeping.accept(() -> shell.eval(declaration)));
    }

    public void makeRest() {
        while (makeOneMore()) {
            // Each call makes one.
        }
    }

    /** Makes one more import; returns false once there is none. */
    public boolean makeOneMore() {
        String declaration = ours.next();
        if (declaration != null) {
            keeping.accept(() -> shell.eval(declaration));
        }
        return declaration != null;
    }

    /** Makes room for what the reader is about to import by its name: two such imports of one name are an error in Java. */
    public void makeRoomFor(Declared declared) {
        if (!declared.isWhole()) {
            dropImportsOf(declared.name());
            ours.leave(declared.name());
        }
    }

    /** Takes that room back when the import has failed. */
    public void takeRoomBack(Declared declared) {
        if (!declared.isWhole()) {
            ours.takeBack(declared.name());
        }
    }

    /** Lets the names in a cell mean what the reader has just imported. */
    public void made(Declared declared, String code) {
        readers.add(declared);
        settled.clear();
        letReaderWin(code);
        ours.neededBy(code).forEach(declaration -> keeping.accept(() -> shell.eval(declaration)));
    }

    private void letReaderWin(String code) {
        for (String name : readers.namesIn(code)) {
            List<String> rooms = ours.roomsOf(name);
            if ((!rooms.isEmpty() || ours.isWord(name)) && settled.add(name)) {
                Optional<Declared> readersOwn = readers.of(name, loader.get()).filter(from -> !isOurs(from.place()));
                readersOwn.ifPresent(from -> giveUp(name, rooms, from));
            }
        }
    }

    /** A reader who writes an import of ours means ours, and Java's rules for equals hold. */
    private boolean isOurs(String place) {
        return place.startsWith("parchment.");
    }

    private void giveUp(String name, List<String> rooms, Declared readersOwn) {
        ours.leave(name);
        if (!readersOwn.isStatic()) {
            drop(snippet -> !snippet.isStatic()
                    && snippet.fullname().startsWith("parchment.")
                    && snippet.name().equals(name));
        }
        for (String room : rooms) {
            if (!readers.hasWhole("parchment." + room)) {
                String whole = ours.close(room);
                drop(snippet -> !snippet.isStatic() && snippet.fullname().equals(whole));
            }
        }
        if (rooms.isEmpty() || Imports.isOfJava(name) && !Imports.isPlaceOfJava(readersOwn.place())) {
            keeping.accept(() -> eval.apply(readersOwn.code()));
        }
    }

    private void dropImportsOf(String type) {
        drop(imported -> !imported.isStatic() && imported.fullname().endsWith("." + type));
    }

    private void drop(Predicate<ImportSnippet> which) {
        shell.imports().filter(which).toList().forEach(snippet -> keeping.accept(() -> shell.drop(snippet)));
    }
}
