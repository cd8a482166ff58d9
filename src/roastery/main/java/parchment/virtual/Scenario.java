package parchment.virtual;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import parchment.display.answer.Spelling;
import parchment.virtual.written.VirtualLot;

/**
 * Describes an invented roastery and its years in a small text file: machine, people, lots, weather, slips and true flavour.
 *
 * <p>A scenario is headings in square brackets and lines of {@code key = value}; what is left out has a stated default. The page
 * docs/virtual-roastery.md lists every section and key. For example:
 *
 * <pre>{@code
 * [roastery]
 * name = Corner roastery (invented)
 * first day = 2025-01-07
 *
 * [lot: Stone Bridge]
 * arrived = 2024-12-02
 *
 * [attribute: sweetness]
 * surface = drawn
 *
 * [cupper: Ada]
 * }</pre>
 *
 * {@code VirtualRoastery.of(Scenario.read(path)).withSeed(7).write(folder)} makes a logbook of it.
 */
public final class Scenario {
    private static final List<String> BUILT_IN = List.of(
            "harbour",
            "hillside",
            "steady-hand",
            "curve-chaser",
            "air-steers",
            "untidy-year",
            "market-table",
            "one-cause",
            "two-together",
            "nothing-there",
            "big-works");

    private final String name;
    private final Story story;

    private Scenario(String name, Story story) {
        this.name = name;
        this.story = story;
    }

    /** Returns the names of the scenarios that come with the library. */
    public static List<String> builtIn() {
        return BUILT_IN;
    }

    /**
     * Returns a scenario that comes with the library.
     *
     * @throws IllegalArgumentException if there is none of that name
     */
    public static Scenario named(String name) {
        if (!BUILT_IN.contains(name)) {
            throw new IllegalArgumentException("There is no scenario '" + name + "'."
                    + Spelling.question(name, BUILT_IN) + " Scenarios: " + String.join(", ", BUILT_IN) + ".");
        }
        return packed(Scenario.class, name + ".scenario");
    }

    /**
     * Reads a scenario from files that are packed beside a class, one after the other as if they were one; it is named after the first.
     *
     * @throws IllegalArgumentException if a line is not understood
     * @throws IllegalStateException if there is no such file
     */
    public static Scenario packed(Class<?> beside, String... files) {
        StringBuilder text = new StringBuilder();
        for (String file : files) {
            try (InputStream in = beside.getResourceAsStream(file)) {
                if (in == null) {
                    throw new IllegalStateException("The library lacks its scenario " + file + ".");
                }
                text.append(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
        return of(text.toString(), files[0]);
    }

    /**
     * Reads a scenario from a file in UTF-8.
     *
     * @throws IOException if the file cannot be read
     * @throws IllegalArgumentException if a line is not understood; the message names file and line and what was expected
     */
    public static Scenario read(Path file) throws IOException {
        Path named = file.getFileName();
        return of(Files.readString(file, StandardCharsets.UTF_8), named == null ? file.toString() : named.toString());
    }

    /**
     * Reads a scenario from its text.
     *
     * @param name what to call it in messages, as in "my.scenario"
     * @throws IllegalArgumentException if a line is not understood; the message names the line and what was expected
     */
    public static Scenario of(String text, String name) {
        return new Scenario(name.replaceAll("\\.scenario$", ""), ScenarioReader.read(text, name));
    }

    /** Returns the scenario's own name: its file's name without the ending. */
    public String name() {
        return name;
    }

    /** Returns the text from which it was read. */
    public String text() {
        return story.text();
    }

    /** Returns what the comments at the head of its text say, in one line; blank if there are none. */
    public String description() {
        return text().lines()
                .takeWhile(line -> line.startsWith("#"))
                .map(line -> line.substring(1).strip())
                .collect(Collectors.joining(" "))
                .replace(VirtualLogbook.WARNING, "")
                .replaceAll("\\s+", " ")
                .strip();
    }

    public Story story() {
        return story;
    }

    @Override
    public String toString() {
        return "scenario " + name + ": " + story.name() + ", "
                + count(
                        (int) story.lots().stream()
                                .filter(VirtualLot::isFirstCrop)
                                .count(),
                        "lot") + ", "
                + count(story.operators().size(), "roaster") + ", "
                + count(story.cuppers().size(), "cupper") + ", "
                + count(story.surfaces().size(), "attribute") + ". " + VirtualLogbook.WARNING;
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
