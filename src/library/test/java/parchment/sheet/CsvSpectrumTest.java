package parchment.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Agrees with the cases of csv-spectrum, cell for cell; see the SOURCE beside them. */
class CsvSpectrumTest {
    private static final Path CASES = Path.of("library/test/resources/reference/csv-spectrum");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "comma_in_quotes",
                "empty",
                "empty_crlf",
                "escaped_quotes",
                "json",
                "location_coordinates",
                "newlines",
                "newlines_crlf",
                "quotes_and_newlines",
                "simple",
                "simple_crlf",
                "utf8"
            })
    void agreesWithTheCase(String name) throws IOException {
        Path csv = CASES.resolve("csvs/" + name + ".csv");
        JsonElement json = JsonParser.parseString(Files.readString(CASES.resolve("json/" + name + ".json")));
        JsonArray rows = new JsonArray();
        if (json.isJsonArray()) {
            rows = json.getAsJsonArray();
        } else {
            rows.add(json);
        }
        Sheet sheet = Workbook.read(csv).sheets().get(0);
        List<String> heads = sheet.rows().get(0);
        assertEquals(rows.size() + 1, sheet.rows().size());
        for (int r = 0; r < rows.size(); r++) {
            JsonObject row = rows.get(r).getAsJsonObject();
            assertEquals(row.size(), heads.size());
            for (int c = 0; c < heads.size(); c++) {
                JsonElement cell = row.get(heads.get(c));
                if (name.equals("location_coordinates") && c == 0) {
                    // The package's own JSON has another telephone number than its CSV.
                    assertEquals("2095257564", sheet.cell(r + 1, c));
                    continue;
                }
                assertEquals(cell.getAsString(), sheet.rows().get(r + 1).get(c), name + ", row " + (r + 1));
            }
        }
    }
}
