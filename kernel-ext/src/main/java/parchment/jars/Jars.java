package parchment.jars;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.display.Showable;

/**
 * Loads jars into the running notebook, so that the cells after it, and later lines of the same cell, can use their classes.
 *
 * <pre>{@code
 * Jars.add("org.apache.commons:commons-math3:3.6.1")
 * }</pre>
 *
 * <p>A library is named as its makers publish it, group:artifact:version; all that it needs comes along. It is taken from the local
 * repository of Maven on this machine if it is there with all that it needs. Otherwise it is fetched from Maven Central, or from where the
 * settings of Maven ({@code ~/.m2/settings.xml}) say, over https only and with checksums that fit. What is loaded is listed before it is, with
 * sizes and licences. A file of your own is added by its path: {@code Jars.add(Path.of("tools/blends.jar"))}.
 *
 * <p>What Parchment itself runs on stays as it is: a library that it brings in another version is named, and Parchment's is used. So is what the
 * session loaded first.
 *
 * <p>A jar's code can do whatever you can do on this machine. Load only what you trust.
 */
public final class Jars implements Showable {
    /**
     * The session is the one thing here that changes, as in {@link parchment.display.Display}: a cell has no object at hand that could know it,
     * and only the notebook puts one in place, for as long as a cell runs.
     */
    private static final AtomicReference<Optional<SessionJars>> SESSION = new AtomicReference<>(Optional.empty());

    /** So many jars are named in a sentence. */
    private static final int NAMED = 4;

    private final List<Jar> added;
    private final List<Path> there;
    private final List<String> notes;
    private final List<Jar> all;

    private final Form form;

    private enum Form {
        SENTENCE,
        LIST
    }

    /** A call that loaded something has listed it before, so its value is a sentence. */
    Jars(List<Jar> added, List<String> notes, List<Jar> all) {
        this(added, List.of(), notes, all, Form.SENTENCE);
    }

    private Jars(List<Jar> added, List<Path> there, List<String> notes, List<Jar> all, Form form) {
        this.added = List.copyOf(added);
        this.there = List.copyOf(there);
        this.notes = List.copyOf(notes);
        this.all = List.copyOf(all);
        this.form = form;
    }

    /**
     * Loads libraries from a repository of Maven, with all that they need.
     *
     * @param coordinates each as group:artifact:version, such as {@code org.apache.commons:commons-math3:3.6.1}
     * @throws IllegalArgumentException if one is not of that form, is not to be had, or needs a newer Java; nothing is loaded then
     */
    public static Jars add(String... coordinates) {
        if (coordinates.length == 0) {
            throw new IllegalArgumentException(
                    "Which jar? Name a library, as in Jars.add(\"org.apache.commons:commons-math3:3.6.1\").");
        }
        for (String each : coordinates) {
            if (!Coordinate.looksLikeOne(each) && JarFiles.isThere(each)) {
                throw new IllegalArgumentException(
                        "'" + each + "' is a file, and a file is added by its path: Jars.add(Path.of(\""
                                + each.replace('\\', '/') + "\")).");
            }
        }
        return session()
                .addLibraries(Arrays.stream(coordinates).map(Coordinate::parse).toList());
    }

    /**
     * Loads a jar, all jars directly in a folder, or a folder of classes.
     *
     * @param place a path that counts from the notebook's folder
     * @throws IllegalArgumentException if it is not there, is no jar, or needs a newer Java; nothing is loaded then
     */
    public static Jars add(Path place) {
        return session().addFiles(Files.isDirectory(place) ? SessionJars.jarsIn(place) : List.of(place));
    }

    /**
     * Names one more repository for this session, which is asked after those named before.
     *
     * @param id its short name, such as {@code ours}; one named before under it is replaced
     * @param url its address, which begins with https
     * @throws IllegalArgumentException if it does not
     */
    public static void repository(String id, String url) {
        session().addRepository(Repository.encrypted(id, url));
    }

    /** Returns what this session has loaded so far, in order; where a class is in several, the first is used. */
    public static Jars all() {
        List<Jar> loaded = session().loaded();
        return new Jars(loaded, List.of(), List.of(), loaded, Form.LIST);
    }

    /** Puts a session in place until the result is closed; for notebooks, not for cells. */
    public static InPlace on(SessionJars session) {
        Optional<SessionJars> before = SESSION.getAndSet(Optional.of(session));
        return () -> SESSION.set(before);
    }

    static SessionJars session() {
        return Objects.requireNonNull(SESSION.get())
                .orElseThrow(
                        () -> new IllegalStateException("Jars are added in a cell of a notebook. Outside one, name them"
                                + " on Java's class path: java -cp ..."));
    }

    /** Returns the jars that this call added. */
    public List<Jar> added() {
        return added;
    }

    /** Returns the same where some of what was asked for had been loaded before. */
    Jars withThere(List<Path> before) {
        return new Jars(added, before, notes, all, form);
    }

    /** Returns where the jars lie that this call asked for, and what they brought along; those that were there already come first. */
    public List<String> paths() {
        return Stream.concat(there.stream(), added.stream().map(Jar::path))
                .distinct()
                .map(Path::toString)
                .toList();
    }

    /** Returns what was left out, and why, in sentences. */
    public List<String> notes() {
        return notes;
    }

    static String count(int jars) {
        return jars == 1 ? "1 jar" : String.format(Locale.ROOT, "%,d jars", jars);
    }

    @Override
    public String text() {
        if (form == Form.SENTENCE) {
            return toString();
        }
        if (all.isEmpty()) {
            return "This session has loaded no jar of yours.";
        }
        return count(all.size()) + " of yours in this session:\n"
                + all.stream().map(jar -> "  " + jar.name() + "  " + jar.path()).collect(Collectors.joining("\n"));
    }

    /** Returns names in a row, for a sentence. */
    static String row(List<?> names) {
        return names.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    @Override
    public String toString() {
        long bytes = added.stream().mapToLong(Jar::bytes).sum();
        List<String> sentences = new ArrayList<>();
        sentences.add(
                added.isEmpty()
                        ? there.isEmpty() ? "Nothing new was loaded." : "Nothing new was loaded: it is there already."
                        : count(added.size()) + " (" + Jar.size(bytes) + "): "
                                + row(added.stream().limit(NAMED).map(Jar::name).toList())
                                + (added.size() > NAMED ? " and " + (added.size() - NAMED) + " more." : "."));
        if (all.size() > added.size()) {
            sentences.add("This session has " + count(all.size()) + " of yours now.");
        }
        return String.join(" ", sentences);
    }

    /** Ends a session's place when closed. */
    @FunctionalInterface
    public interface InPlace extends AutoCloseable {
        @Override
        void close();
    }
}
