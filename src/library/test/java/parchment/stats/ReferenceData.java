package parchment.stats;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads the published data and numbers that lie beside the tests, each folder with its source, licence and tolerance. */
public final class ReferenceData {
    private final List<CSVRecord> rows;

    private ReferenceData(List<CSVRecord> rows) {
        this.rows = rows;
    }

    public static ReferenceData table(String path) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = open(path);
                CSVParser parser = format.parse(reader)) {
            return new ReferenceData(parser.getRecords());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static JsonObject expected(String source, String check) {
        try (Reader reader = open(source + "/expected.json")) {
            return JsonParser.parseReader(reader).getAsJsonObject().getAsJsonObject(check);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Reader open(String path) {
        InputStream stream = ReferenceData.class.getResourceAsStream("/reference/" + path);
        if (stream == null) {
            throw new IllegalStateException("No reference data at " + path);
        }
        try {
            return new InputStreamReader(
                    path.endsWith(".gz") ? new GZIPInputStream(stream) : stream, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public double[] numbers(String column) {
        return rows.stream()
                .mapToDouble(r -> r.get(column).isEmpty() || r.get(column).equals("NA")
                        ? Double.NaN
                        : Double.parseDouble(r.get(column)))
                .toArray();
    }

    public List<String> words(String column) {
        List<String> words = new ArrayList<>();
        rows.forEach(r -> words.add(r.get(column).equals("NA") ? "" : r.get(column)));
        return words;
    }

    public static double[] numbers(JsonElement array) {
        double[] out = new double[array.getAsJsonArray().size()];
        for (int i = 0; i < out.length; i++) {
            out[i] = array.getAsJsonArray().get(i).getAsDouble();
        }
        return out;
    }
}
