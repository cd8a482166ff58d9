package parchment.notebook;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.file.WholeFile;

/** A notebook file (nbformat 4): its cells in order, and whatever else the file holds, kept as it was. */
public final class Notebook {
    /** Half of a character, which no file can hold; a cell may show one, or a notebook bring one. */
    private static final Pattern HALF_A_CHARACTER = Pattern.compile("\\p{Cs}");

    private static final Gson GSON = new GsonBuilder()
            .setPrettyPrinting()
            .disableHtmlEscaping()
            .serializeNulls()
            .create();

    private static final String SEAL = "parchment_run";

    private final JsonObject json;
    private final List<Cell> cells;

    private Notebook(JsonObject json, List<Cell> cells) {
        this.json = json;
        this.cells = List.copyOf(cells);
    }

    /**
     * Reads a notebook file.
     *
     * @throws IOException if the file cannot be read
     * @throws IllegalArgumentException if it is not a notebook of format 4; the message says what was found
     */
    public static Notebook read(Path file) throws IOException {
        return parse(Files.readString(file), file.toString());
    }

    /** Reads a notebook from its text; {@code name} is for messages. */
    static Notebook parse(String text, String name) {
        JsonElement root;
        try {
            root = JsonParser.parseString(text);
        } catch (JsonParseException e) {
            throw new IllegalArgumentException(name + " is not a notebook: it does not hold valid JSON.", e);
        }
        if (!root.isJsonObject() || !root.getAsJsonObject().has("cells")) {
            throw new IllegalArgumentException(name + " is not a notebook of format 4: it has no list of cells.");
        }
        JsonObject json = root.getAsJsonObject();
        int format = json.has("nbformat") ? json.get("nbformat").getAsInt() : 0;
        if (format != 4) {
            throw new IllegalArgumentException(name + " has notebook format " + format + ", but 4 is needed.");
        }
        List<Cell> cells = new ArrayList<>();
        for (JsonElement cell : json.getAsJsonArray("cells")) {
            cells.add(new Cell(cell.getAsJsonObject()));
        }
        return new Notebook(json, cells);
    }

    public List<Cell> cells() {
        return cells;
    }

    /** Returns the notebook's language as its metadata has it, {@code en} if it has none. */
    public String language() {
        JsonElement metadata = json.get("metadata");
        if (metadata != null
                && metadata.isJsonObject()
                && metadata.getAsJsonObject().has("lang")) {
            return metadata.getAsJsonObject().get("lang").getAsString();
        }
        return "en";
    }

    /** Returns the first heading of the notebook, or the given text if it has none. */
    public String title(String otherwise) {
        return cells.stream()
                .filter(cell -> cell.kind() == Cell.Kind.MARKDOWN)
                .flatMap(cell -> cell.source().lines())
                .filter(line -> line.startsWith("# "))
                .map(line -> line.substring(2).replaceAll("[*_`]", "").strip())
                .findFirst()
                .orElse(otherwise);
    }

    Notebook withCells(List<Cell> replaced) {
        return new Notebook(json, replaced);
    }

    /** Returns the seal that a run has left in the metadata, if there is one. */
    Optional<String> seal() {
        return Optional.ofNullable(json.get("metadata"))
                .filter(JsonElement::isJsonObject)
                .map(metadata -> metadata.getAsJsonObject().get(SEAL))
                .filter(JsonElement::isJsonPrimitive)
                .map(JsonElement::getAsString);
    }

    Notebook withSeal(String seal) {
        JsonObject copy = json.deepCopy();
        JsonElement metadata = copy.get("metadata");
        JsonObject sealed = metadata != null && metadata.isJsonObject() ? metadata.getAsJsonObject() : new JsonObject();
        sealed.addProperty(SEAL, seal);
        copy.add("metadata", sealed);
        return new Notebook(copy, cells);
    }

    /** Writes the notebook, with one blank of indent as Jupyter itself does. */
    public void write(Path file) throws IOException {
        JsonObject copy = new JsonObject();
        for (var entry : json.entrySet()) {
            if (entry.getKey().equals("cells")) {
                JsonArray list = new JsonArray();
                cells.forEach(cell -> list.add(cell.json()));
                copy.add("cells", list);
            } else {
                copy.add(entry.getKey(), entry.getValue());
            }
        }
        WholeFile.at(file).write(HALF_A_CHARACTER.matcher(GSON.toJson(copy)).replaceAll("\uFFFD") + "\n");
    }
}
