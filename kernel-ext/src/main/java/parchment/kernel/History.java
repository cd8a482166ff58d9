package parchment.kernel;

import com.google.gson.JsonArray;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.regex.Pattern;
import org.dflib.jjava.jupyter.messages.request.HistoryRequest;

/** The cells run in this session, as clients ask for them (arrow up in a console). */
final class History {
    private static final int SESSION = 1;

    private record Entry(int number, String code, String shown) {}

    /** Cells whose output is kept too; older ones keep their code alone, or a day's tables would fill the memory. */
    private static final int WITH_OUTPUT = 50;

    private final List<Entry> entries = new ArrayList<>();

    void add(int number, String code, String shown) {
        entries.add(new Entry(number, code, shown));
        int old = entries.size() - 1 - WITH_OUTPUT;
        if (old >= 0) {
            entries.set(old, new Entry(entries.get(old).number, entries.get(old).code, ""));
        }
    }

    /** Returns the entries asked for, in the order they ran. */
    JsonArray answer(HistoryRequest request) {
        List<Entry> found;
        if (request instanceof HistoryRequest.Range range) {
            boolean here = range.getSessionIndex() == SESSION || range.getSessionIndex() == 0;
            found = entries.stream()
                    .filter(entry -> here && entry.number >= range.getStart() && entry.number < range.getStop())
                    .toList();
        } else if (request instanceof HistoryRequest.Search search) {
            Pattern glob = glob(search.getPattern());
            List<Entry> matching = entries.stream()
                    .filter(entry -> glob.matcher(entry.code).matches())
                    .toList();
            if (search.filterUnique()) {
                LinkedHashMap<String, Entry> last = new LinkedHashMap<>();
                matching.forEach(entry -> last.put(entry.code, entry));
                matching = List.copyOf(last.values());
            }
            found = tail(matching, search.getMaxReturnLength());
        } else if (request instanceof HistoryRequest.Tail tail) {
            found = tail(entries, tail.getMaxReturnLength());
        } else {
            found = List.of();
        }
        return json(found, request.includeOutput());
    }

    private static List<Entry> tail(List<Entry> entries, int count) {
        return count <= 0 ? entries : entries.subList(Math.max(0, entries.size() - count), entries.size());
    }

    private static Pattern glob(String pattern) {
        StringBuilder regex = new StringBuilder();
        for (char c : pattern.toCharArray()) {
            regex.append(c == '*' ? ".*" : c == '?' ? "." : Pattern.quote(String.valueOf(c)));
        }
        return Pattern.compile(regex.toString(), Pattern.DOTALL);
    }

    private static JsonArray json(List<Entry> entries, boolean withOutput) {
        JsonArray list = new JsonArray();
        for (Entry entry : entries) {
            JsonArray item = new JsonArray();
            item.add(SESSION);
            item.add(entry.number);
            if (withOutput) {
                JsonArray pair = new JsonArray();
                pair.add(entry.code);
                pair.add(entry.shown);
                item.add(pair);
            } else {
                item.add(entry.code);
            }
            list.add(item);
        }
        return list;
    }
}
