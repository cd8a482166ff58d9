package parchment.virtual;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;

/** Describes a logbook folder by the Frictionless Data Package standard, version 1, so that other languages can load it. */
final class DataPackage {
    /** Path of the description that all curve files share. */
    static final String CURVE_SCHEMA = "curve-schema.json";

    private static final Gson GSON =
            new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

    private final VirtualLogbook logbook;
    private final List<WrittenTable> tables;

    DataPackage(VirtualLogbook logbook, List<WrittenTable> tables) {
        this.logbook = logbook;
        this.tables = tables;
    }

    String text() {
        JsonObject whole = new JsonObject();
        whole.addProperty("profile", "tabular-data-package");
        whole.addProperty("name", shortName());
        whole.addProperty("title", logbook.name());
        whole.addProperty(
                "description",
                VirtualLogbook.WARNING + " Simulated batches and cuppings; seed " + logbook.seed() + ".");
        JsonArray licences = new JsonArray();
        JsonObject licence = new JsonObject();
        licence.addProperty("name", "GPL-3.0-or-later");
        licence.addProperty("path", "https://www.gnu.org/licenses/gpl-3.0.html");
        licences.add(licence);
        whole.add("licenses", licences);
        JsonArray resources = new JsonArray();
        for (WrittenTable table : tables) {
            resources.add(resource(table));
        }
        whole.add("resources", resources);
        return GSON.toJson(whole) + "\n";
    }

    /** The name's first word, in the letters that the standard allows. */
    private String shortName() {
        String word = logbook.name().toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
        String first = word.replaceAll("^-+", "").replaceAll("-.*$", "");
        return first.isEmpty() ? "roastery" : first;
    }

    String curveSchema() {
        WrittenTable curve = tables.get(tables.size() - 1);
        return GSON.toJson(schema(curve)) + "\n";
    }

    private static JsonObject resource(WrittenTable table) {
        boolean curve = table.path().startsWith("curves/");
        String stem = table.path().replace("curves/", "curve-").replace(".csv", "");
        JsonObject resource = new JsonObject();
        resource.addProperty("profile", "tabular-data-resource");
        resource.addProperty("name", stem.toLowerCase(java.util.Locale.ROOT));
        resource.addProperty("path", table.path());
        resource.addProperty("encoding", "utf-8");
        if (curve) {
            resource.addProperty("schema", CURVE_SCHEMA);
        } else {
            resource.add("schema", schema(table));
        }
        return resource;
    }

    private static JsonObject schema(WrittenTable table) {
        JsonArray fields = new JsonArray();
        for (WrittenTable.Column column : table.columns()) {
            JsonObject field = new JsonObject();
            field.addProperty("name", column.header());
            field.addProperty("type", column.type().word());
            if (column.type() == WrittenTable.Type.DATETIME) {
                field.addProperty("format", "%Y-%m-%dT%H:%M:%S");
            }
            if (column.type() == WrittenTable.Type.BOOLEAN) {
                field.add("trueValues", words("yes"));
                field.add("falseValues", words("no"));
            }
            fields.add(field);
        }
        JsonObject schema = new JsonObject();
        schema.add("fields", fields);
        schema.add("missingValues", table.path().startsWith("curves/") ? words("", "999.9") : words(""));
        return schema;
    }

    private static JsonArray words(String... words) {
        JsonArray array = new JsonArray();
        for (String word : words) {
            array.add(word);
        }
        return array;
    }
}
