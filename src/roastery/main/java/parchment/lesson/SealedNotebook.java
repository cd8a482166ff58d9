package parchment.lesson;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/**
 * Turns a lesson's notebook into that of one student's sealed folder: it opens the folder, speaks of no envelope that the student
 * could open, and hands in under the student's name without anything to be taken away or filled in.
 */
final class SealedNotebook {
    private static final Gson GSON = new GsonBuilder()
            .setPrettyPrinting()
            .disableHtmlEscaping()
            .serializeNulls()
            .create();

    private static final String ENVELOPE_TEXT =
            "The envelope is with your teacher, who opens it for everybody at once. You can state your claim anew until you hand in.";
    private static final String HAND_IN_TEXT =
            "Run the next cell when you are done. It writes your sheet of answers into the folder"
                    + " *answers* beside this page; give that sheet to your teacher. You may run it again: the later sheet takes the place of the"
                    + " earlier.";
    private static final String PLAN_TEXT =
            "Your teacher's machine roasts your plan. When it stands, run the next cell: it writes the"
                    + " plan into the folder *answers* beside this page. Run it again if you change your mind before it is collected.\n\n"
                    + "Later you get a folder back. Put it beside this page, and run the cell after the next.";
    private static final String ABOUT_NUMBERS = "## Your number";
    private static final String FOLDER_TEXT = """
            ## Your folder

            This folder is yours. Each lesson in it has batches of its own: so neighbours can help each other to understand, but not to copy.
            What is true about them lies in an envelope that your teacher keeps; after the class you get it back, opened.

            That is all. Lesson 1 is next.""";

    private SealedNotebook() {}

    /**
     * Returns the notebook of a lesson for a student.
     *
     * @param page the notebook for work alone
     * @param name what to call it in messages
     * @throws IOException if it is no notebook, or does not open the lesson where it can be changed
     */
    static String of(String page, int lesson, String student, String name) throws IOException {
        JsonObject notebook = parsed(page, name);
        Pattern opens = Pattern.compile(
                "Lesson\\.open\\(" + lesson + ", 1\\);( *// put your own number in the place of the second 1)?");
        boolean[] opened = {false};
        replaceCells(notebook, (kind, text) -> {
            String folder = "Lesson.open(" + lesson + ", \"lesson-" + lesson + "\")";
            if (kind.equals("code")) {
                Matcher found = opens.matcher(text);
                opened[0] |= found.find();
                return code(found.replaceAll(Matcher.quoteReplacement(folder + ";")), student);
            }
            return Optional.of(words(text.replace("Lesson.open(" + lesson + ", 1)", folder)));
        });
        if (!opened[0]) {
            throw new IOException(
                    name + " cannot be handed out sealed: no cell of it opens the lesson with Lesson.open(" + lesson
                            + ", 1); and so it would not open the student's folder.");
        }
        return GSON.toJson(notebook) + "\n";
    }

    /**
     * Returns the notebook that starts the course, in words for sealed folders.
     *
     * @throws IOException if it is no notebook
     */
    static String start(String page) throws IOException {
        JsonObject notebook = parsed(page, "The notebook of lesson 0");
        replaceCells(
                notebook,
                (kind, text) -> Optional.of(
                        kind.equals("markdown") && text.contains(ABOUT_NUMBERS)
                                ? text.substring(0, text.indexOf(ABOUT_NUMBERS)) + FOLDER_TEXT
                                : text));
        return GSON.toJson(notebook) + "\n";
    }

    private static Optional<String> code(String text, String student) {
        String named = "(\"" + student + "\")";
        return switch (text.strip()) {
            case "// lesson.openEnvelope()" -> Optional.empty();
            case "// lesson.handIn(\"?\")\nlesson.answers()" -> Optional.of("lesson.handIn" + named);
            case "var tasted = lesson.roast(plan);\ntasted" ->
                Optional.of("lesson.handInPlan(plan, \"" + student + "\")" + NEXT_CELL + "var tasted = lesson.tasted"
                        + named + ";\ntasted");
            default -> Optional.of(text);
        };
    }

    /** Stands where one cell becomes two. */
    private static final String NEXT_CELL = "\u0000";

    private static String words(String text) {
        if (text.contains("it opens the envelope")) {
            return ENVELOPE_TEXT;
        }
        if (text.startsWith("## Hand in")) {
            return "## Hand in\n\n" + HAND_IN_TEXT;
        }
        return text.replaceAll(
                        "state what you believe as an interval, and open the\\s+envelope",
                        "and state what you believe as an interval")
                .replaceAll(
                        "The invented machine roasts your plan on its next day;[^\\n]*",
                        Matcher.quoteReplacement(PLAN_TEXT
                                + " The cuppers taste blind, two cups of each, and write before anybody speaks."));
    }

    private interface Change {
        /** Returns what a cell becomes; empty if it goes. */
        Optional<String> of(String kind, String text);
    }

    private static void replaceCells(JsonObject notebook, Change change) {
        JsonArray cells = new JsonArray();
        for (JsonElement each : notebook.getAsJsonArray("cells")) {
            JsonObject cell = each.getAsJsonObject();
            String kind = cell.get("cell_type").getAsString();
            Optional<String> becomes = change.of(kind, source(cell));
            if (becomes.isPresent()) {
                int part = 0;
                for (String text : becomes.get().split(NEXT_CELL)) {
                    JsonObject changed = cell.deepCopy();
                    changed.add("source", lines(text));
                    if (part > 0 && changed.has("id")) {
                        changed.addProperty("id", changed.get("id").getAsString() + "-" + part);
                    }
                    part++;
                    cells.add(changed);
                }
            }
        }
        notebook.add("cells", cells);
    }

    private static JsonObject parsed(String page, String name) throws IOException {
        try {
            JsonObject notebook = JsonParser.parseString(page).getAsJsonObject();
            if (notebook.has("cells") && notebook.get("cells").isJsonArray()) {
                return notebook;
            }
        } catch (JsonParseException | IllegalStateException e) {
            // Said below, as for a file of another kind.
        }
        throw new IOException(name + " is no notebook.");
    }

    private static String source(JsonObject cell) {
        JsonElement source = cell.get("source");
        return source.isJsonArray()
                ? StreamSupport.stream(source.getAsJsonArray().spliterator(), false)
                        .map(JsonElement::getAsString)
                        .collect(Collectors.joining())
                : source.getAsString();
    }

    private static JsonArray lines(String text) {
        JsonArray lines = new JsonArray();
        for (String line : text.split("(?<=\n)")) {
            lines.add(line);
        }
        return lines;
    }
}
