package parchment.virtual;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.FlavourSurface;

/**
 * The truth behind a virtual logbook, against which answers are held: what no reading, mark or score shows outright.
 *
 * <p>The file is sealed against accident only: a glance at it tells nothing, {@link #open} tells everything.
 */
public final class SealedTruth {
    private static final Gson GSON =
            new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();
    private static final int LINE = 120;
    /** What every sealed file begins with. */
    public static final String WHAT = "The truth behind an invented logbook";

    private final JsonObject content;

    private SealedTruth(JsonObject content) {
        this.content = content;
    }

    /** Gathers the truth of a virtual logbook. */
    static SealedTruth of(VirtualLogbook logbook) {
        return new SealedTruth(new TruthContent(logbook).gather());
    }

    /**
     * Opens a sealed file.
     *
     * @throws IOException if the file cannot be read or is no sealed truth
     */
    public static SealedTruth open(Path file) throws IOException {
        String text = Files.readString(file, StandardCharsets.UTF_8);
        try {
            JsonObject envelope = JsonParser.parseString(text).getAsJsonObject();
            StringBuilder sealed = new StringBuilder();
            for (JsonElement line : envelope.getAsJsonArray("sealed")) {
                sealed.append(line.getAsString());
            }
            byte[] inside = Base64.getDecoder().decode(sealed.toString());
            return new SealedTruth(JsonParser.parseString(new String(inside, StandardCharsets.UTF_8))
                    .getAsJsonObject());
        } catch (JsonParseException
                | IllegalStateException
                | IllegalArgumentException
                | NullPointerException
                | ClassCastException e) {
            throw new IOException(
                    file + " is not a sealed truth: expected what the virtual roastery writes beside a logbook.", e);
        }
    }

    /** Returns the text of the sealed file. */
    public String sealedText() {
        String inside = Base64.getEncoder().encodeToString(content.toString().getBytes(StandardCharsets.UTF_8));
        JsonObject envelope = new JsonObject();
        envelope.addProperty("what", WHAT + ", sealed against accident only");
        envelope.addProperty("to open", "SealedTruth.open(Path.of(\"this file\"))");
        envelope.addProperty("warning", VirtualLogbook.WARNING);
        JsonArray lines = new JsonArray();
        for (int from = 0; from < inside.length(); from += LINE) {
            lines.add(inside.substring(from, Math.min(inside.length(), from + LINE)));
        }
        envelope.add("sealed", lines);
        return GSON.toJson(envelope) + "\n";
    }

    /** Returns the seal: the SHA-256 of the sealed file, as 64 hexadecimal digits. */
    public String seal() {
        return Seed.sha256(sealedText());
    }

    /**
     * Opens a sealed file whose seal was handed out before.
     *
     * @param seal the 64 hexadecimal digits, as they stand in the README of the logbook
     * @throws IOException if the file cannot be read or is no sealed truth
     * @throws IllegalArgumentException if the file does not have this seal
     */
    public static SealedTruth open(Path file, String seal) throws IOException {
        String found = Seed.sha256(Files.readString(file, StandardCharsets.UTF_8));
        if (!found.equals(seal.strip().toLowerCase(java.util.Locale.ROOT))) {
            throw new IllegalArgumentException("The seal of " + file + " is broken: expected " + seal.strip()
                    + ", but the file has " + found + ". It is another file, or it was changed.");
        }
        return open(file);
    }

    /**
     * Refuses to be written over another truth: a seal that was given out binds the teacher to it. The same truth, or the beginning of
     * it that a stopped command has left, is in nobody's way.
     *
     * @throws IOException if something else is in the place; the message says what to do
     */
    public void checkPlace(Path file) throws IOException {
        if (Files.exists(file) && !sealedText().startsWith(Files.readString(file, StandardCharsets.UTF_8))) {
            throw new IOException(
                    file + " is there already and holds the truth of another logbook, or of an older version;"
                            + " whoever has that logbook's seal will ask for it, so it was left as it is. Name another folder, or move the file away.");
        }
    }

    /** Returns the seed from which everything was drawn. */
    public Seed seed() {
        return Seed.parse(content.get("seed").getAsString());
    }

    /** Returns the scenario's text, if it lies in the envelope; it does where the seed is secret. */
    public java.util.Optional<String> scenario() {
        return content.has("scenario")
                ? java.util.Optional.of(content.get("scenario").getAsString())
                : java.util.Optional.empty();
    }

    /** Returns everything, as readable JSON. */
    public String text() {
        return GSON.toJson(content) + "\n";
    }

    /** Returns the names of the batches. */
    public List<String> batches() {
        List<String> names = new ArrayList<>();
        for (JsonElement batch : content.getAsJsonArray("batches")) {
            names.add(batch.getAsJsonObject().get("batch").getAsString());
        }
        return names;
    }

    /**
     * Returns the true numbers of a batch by name, such as "end temperature [°C]"; what did not happen is left out.
     *
     * @throws IllegalArgumentException if there is no such batch
     */
    public Map<String, Double> batch(String name) {
        for (JsonElement batch : content.getAsJsonArray("batches")) {
            JsonObject truth = batch.getAsJsonObject();
            if (truth.get("batch").getAsString().equals(name)) {
                Map<String, Double> numbers = new TreeMap<>();
                for (Map.Entry<String, JsonElement> entry : truth.entrySet()) {
                    if (entry.getValue().isJsonPrimitive()
                            && entry.getValue().getAsJsonPrimitive().isNumber()) {
                        numbers.put(entry.getKey(), entry.getValue().getAsDouble());
                    }
                }
                return numbers;
            }
        }
        throw new IllegalArgumentException("The truth has no batch '" + name + "'; it has "
                + batches().size() + " batches, from " + batches().get(0) + " on.");
    }

    /** Returns the true surfaces of the attributes, in the order of the score sheet. */
    public List<FlavourSurface> surfaces() {
        List<FlavourSurface> surfaces = new ArrayList<>();
        Gson gson = new Gson();
        for (JsonElement surface : content.getAsJsonArray("surfaces")) {
            surfaces.add(gson.fromJson(surface, FlavourSurface.class));
        }
        return surfaces;
    }

    @Override
    public String toString() {
        return "truth behind " + content.get("logbook").getAsString() + ": "
                + batches().size() + " batches, "
                + content.getAsJsonArray("surfaces").size() + " surfaces. " + VirtualLogbook.WARNING;
    }
}
