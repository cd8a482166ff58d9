package parchment.display.page;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.Deque;
import parchment.display.Html;

/**
 * Writes JSON that may stand inside an HTML page: no text in it can end the block that holds it, since every {@code <}, {@code >} and
 * {@code &} is written as an escape, and so are the two line ends that only JavaScript knows (U+2028 and U+2029).
 */
final class JsonText {
    private final StringWriter out = new StringWriter();
    private final JsonWriter json = new JsonWriter(out);
    private final Deque<Boolean> lists = new ArrayDeque<>();

    JsonText() {
        json.setHtmlSafe(true);
        json.setSerializeNulls(true);
    }

    private interface Step {
        void write() throws IOException;
    }

    private JsonText then(Step step) {
        try {
            step.write();
        } catch (IOException e) {
            throw new UncheckedIOException("Text in memory cannot be written.", e);
        }
        return this;
    }

    JsonText object() {
        lists.push(false);
        return then(json::beginObject);
    }

    JsonText object(String name) {
        lists.push(false);
        return then(() -> json.name(name).beginObject());
    }

    JsonText list(String name) {
        lists.push(true);
        return then(() -> json.name(name).beginArray());
    }

    /** Ends the innermost object or list. */
    JsonText end() {
        return lists.pop() ? then(json::endArray) : then(json::endObject);
    }

    JsonText text(String name, String value) {
        return then(() -> json.name(name).value(Html.allowed(value)));
    }

    JsonText text(String value) {
        return then(() -> json.value(Html.allowed(value)));
    }

    JsonText number(String name, long value) {
        return then(() -> json.name(name).value(value));
    }

    /** Writes numbers rounded to some decimals; a missing one as null. */
    JsonText numbers(String name, double[] values, int decimals) {
        list(name);
        for (double value : values) {
            then(() -> {
                if (Double.isFinite(value)) {
                    json.jsonValue(rounded(value, decimals));
                } else {
                    json.nullValue();
                }
            });
        }
        return end();
    }

    private static String rounded(double value, int decimals) {
        BigDecimal number = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return number.signum() == 0 ? "0" : number.toPlainString();
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
