package parchment.notebook;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Makes the student's and the teacher's edition of each lesson from one source, so that they cannot drift apart.
 *
 * <p>A source is blocks under {@code %% text}, {@code %% run}, {@code %% fill} and {@code %% teacher}. What stands between « and » is the
 * teacher's; the student gets a question mark, or what stands behind a bar inside.
 */
final class LessonPages {
    static final Path LESSONS =
            Path.of("..", "notebooks", "lessons").toAbsolutePath().normalize();
    private static final Pattern ANSWER = Pattern.compile("\u00ab([^\u00bb|]*)(?:\\|([^\u00bb]*))?\u00bb");
    private static final Gson GSON = new GsonBuilder()
            .setPrettyPrinting()
            .disableHtmlEscaping()
            .serializeNulls()
            .create();

    enum Edition {
        STUDENT,
        TEACHER
    }

    private record Block(String kind, String text) {}

    private LessonPages() {}

    static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.list(LESSONS.resolve("source"))) {
            return files.filter(file -> file.toString().endsWith(".txt"))
                    .sorted()
                    .toList();
        }
    }

    /** Returns the text of every notebook by the path it belongs to. */
    static Map<Path, String> all() throws IOException {
        Map<Path, String> pages = new LinkedHashMap<>();
        for (Path source : sources()) {
            for (Edition edition : Edition.values()) {
                pages.put(place(source, edition), page(Files.readString(source), edition));
            }
        }
        return pages;
    }

    static Path place(Path source, Edition edition) {
        String name = source.getFileName().toString().replaceFirst("\\.txt$", "");
        return edition == Edition.STUDENT
                ? LESSONS.resolve(name + ".ipynb")
                : LESSONS.resolve("teacher").resolve(name + "-teacher.ipynb");
    }

    private static String page(String source, Edition edition) {
        JsonArray cells = new JsonArray();
        for (Block block : blocks(source)) {
            boolean teachers = block.kind().equals("teacher");
            if (!teachers || edition == Edition.TEACHER) {
                cells.add(cell(block, cells.size(), edition));
            }
        }
        JsonObject kernel = new JsonObject();
        kernel.addProperty("display_name", "Parchment (Java)");
        kernel.addProperty("language", "java");
        kernel.addProperty("name", "parchment");
        JsonObject language = new JsonObject();
        language.addProperty("file_extension", ".java");
        language.addProperty("mimetype", "text/x-java-source");
        language.addProperty("name", "java");
        JsonObject metadata = new JsonObject();
        metadata.add("kernelspec", kernel);
        metadata.add("language_info", language);
        JsonObject page = new JsonObject();
        page.add("cells", cells);
        page.add("metadata", metadata);
        page.addProperty("nbformat", 4);
        page.addProperty("nbformat_minor", 5);
        return GSON.toJson(page) + "\n";
    }

    private static List<Block> blocks(String source) {
        List<Block> blocks = new ArrayList<>();
        for (String part : source.split("(?m)^%% ")) {
            if (part.isBlank()) {
                continue;
            }
            String kind = part.lines().findFirst().orElse("").strip();
            if (!List.of("text", "run", "fill", "teacher").contains(kind)) {
                throw new IllegalArgumentException("A lesson has no part '" + kind + "': text, run, fill or teacher.");
            }
            blocks.add(new Block(kind, part.substring(part.indexOf('\n') + 1).strip()));
        }
        return blocks;
    }

    private static JsonObject cell(Block block, int number, Edition edition) {
        boolean code = block.kind().equals("run") || block.kind().equals("fill");
        JsonObject metadata = new JsonObject();
        if (block.kind().equals("fill") || block.kind().equals("teacher")) {
            JsonArray tags = new JsonArray();
            tags.add(block.kind());
            metadata.add("tags", tags);
        }
        JsonObject cell = new JsonObject();
        cell.addProperty("cell_type", code ? "code" : "markdown");
        if (code) {
            cell.add("execution_count", com.google.gson.JsonNull.INSTANCE);
        }
        cell.addProperty("id", String.format(Locale.ROOT, "c%02d", number));
        cell.add("metadata", metadata);
        if (code) {
            cell.add("outputs", new JsonArray());
        }
        cell.add("source", Cell.lines(forEdition(block.text(), edition)));
        return cell;
    }

    private static String forEdition(String text, Edition edition) {
        return ANSWER.matcher(text)
                .replaceAll(found -> java.util.regex.Matcher.quoteReplacement(
                        edition == Edition.TEACHER ? found.group(1) : found.group(2) == null ? "?" : found.group(2)));
    }
}
