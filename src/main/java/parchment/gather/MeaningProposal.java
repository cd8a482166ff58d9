package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.gather.StrangeColumn.Form;
import parchment.logbook.Quantity;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Header;
import parchment.sheet.Value;
import parchment.sheet.Words;

/**
 * Proposes what the columns of a strange file mean, each with its reason; a person confirms it.
 *
 * <p>Ranges of temperatures are common practice, no source: beans are dropped between 170 and 260 °C, which is 340 to 500 °F.
 *
 * @param meaning what the column is taken for
 * @param reason why, as the rest of a sentence
 */
record MeaningProposal(Meaning meaning, String reason) {
    /** A column needs as many numbers to be taken for times or temperatures. */
    static final int FEWEST_ROWS = 10;

    private static final double SMOOTH = 0.3;
    private static final double LEAST_RANGE = 40;
    private static final int MANY_VALUES = 40;

    /** Proposes a meaning for each column, by place; the columns are of one file. */
    static List<MeaningProposal> of(List<StrangeColumn> columns) {
        Map<Integer, MeaningProposal> found = new LinkedHashMap<>();
        int time = time(columns, found);
        List<Integer> temperatures = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            if (i != time && looksLikeTemperature(columns.get(i))) {
                temperatures.add(i);
            }
        }
        temperatures(columns, temperatures, found);
        List<MeaningProposal> all = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            MeaningProposal proposal = found.get(i);
            all.add(proposal != null ? proposal : other(columns.get(i)));
        }
        HeadlessControl.in(columns, all).forEach(all::set);
        return all;
    }

    /** Returns whether a file with these proposals is a recording: it has times and a temperature. */
    static boolean isRecording(List<MeaningProposal> proposals) {
        return proposals.stream().anyMatch(p -> p.meaning().kind() == Meaning.Kind.TIME)
                && proposals.stream()
                        .anyMatch(p -> p.meaning().quantity().equals(Optional.of(Quantity.BEAN_TEMPERATURE)));
    }

    private static int time(List<StrangeColumn> columns, Map<Integer, MeaningProposal> found) {
        int best = -1;
        for (int i = 0; i < columns.size(); i++) {
            Optional<MeaningProposal> proposal = time(columns.get(i));
            boolean better = best < 0 || isNamedTime(columns.get(i)) && !isNamedTime(columns.get(best));
            if (proposal.isPresent() && better) {
                found.remove(best);
                best = i;
                found.put(i, proposal.get());
            }
        }
        return best;
    }

    private static boolean isNamedTime(StrangeColumn column) {
        return column.heading().toLowerCase(Locale.ROOT).matches(".*(time|zeit|clock|uhr|elapsed|heure|hora).*");
    }

    private static Optional<MeaningProposal> time(StrangeColumn column) {
        if (column.mostly(Form.DATE_AND_TIME)) {
            return Optional.of(
                    new MeaningProposal(Meaning.time(Meaning.DATE_AND_TIME), "its values are dates with times"));
        }
        if (column.mostly(Form.CLOCK)) {
            boolean seconds = column.first().chars().filter(c -> c == ':').count() == 2;
            boolean day = seconds
                    && !column.first().startsWith("0:0")
                    && !column.first().startsWith("00:0");
            String form = day ? Meaning.TIME_OF_DAY : seconds ? "h:min:s" : "min:s";
            return Optional.of(new MeaningProposal(
                    Meaning.time(form),
                    "its values are times such as " + column.first()
                            + (day ? ", too late for the start of a roast" : "")));
        }
        if (!column.mostly(Form.NUMBER) || !column.rises() || column.numberCount() < FEWEST_ROWS) {
            return Optional.empty();
        }
        double span = column.lastNumber() - column.firstNumber();
        String rises = String.format(Locale.ROOT, "it rises from row to row, by %.0f in all", span);
        String stated = Header.parse(column.heading()).plainUnit();
        if (Value.TimeUnit.of(stated).isPresent() || stated.equals(Meaning.MILLISECONDS)) {
            return Optional.of(new MeaningProposal(Meaning.time(stated), rises + ", and its heading has the unit"));
        }
        // No roast is shorter than 12 seconds or longer than five hours.
        if (column.firstNumber() > 20_000 && column.lastNumber() < 80_000 && span > 0 && span < 1) {
            return Optional.of(new MeaningProposal(
                    Meaning.time(Meaning.SERIAL),
                    rises.replaceFirst(", by .*", "")
                            + " by parts of a day, as a spreadsheet writes dates with times"));
        }
        if (span <= 0.2 && column.firstNumber() >= 0 && column.lastNumber() < 1) {
            return Optional.of(new MeaningProposal(
                    Meaning.time(Meaning.SHARE_OF_DAY),
                    rises.replaceFirst(", by .*", "") + " by parts of a day, as a spreadsheet writes times"));
        }
        if (span > 100_000) {
            return Optional.of(
                    new MeaningProposal(Meaning.time(Meaning.MILLISECONDS), rises + ": too many for seconds"));
        }
        return Optional.of(
                span < 40
                        ? new MeaningProposal(Meaning.time("min"), rises + ": too few for seconds")
                        : new MeaningProposal(Meaning.time("s"), rises));
    }

    private static boolean looksLikeTemperature(StrangeColumn column) {
        double high = column.quantile(0.98);
        double low = column.quantile(0.02);
        if (!column.mostly(Form.NUMBER) || column.numberCount() < FEWEST_ROWS || !(high > 120 && high < 1000)) {
            return false;
        }
        boolean moves = high - low >= LEAST_RANGE && column.roughness() < SMOOTH;
        // An air temperature may hardly move, but it takes many values where a control takes few.
        boolean manyValues = low > 60 && column.distinct() >= MANY_VALUES;
        return moves || manyValues || namedTemperature(column);
    }

    private static boolean namedTemperature(StrangeColumn column) {
        Header header = Header.parse(column.heading());
        return stated(column).isPresent() || header.name().contains("temp");
    }

    private static void temperatures(
            List<StrangeColumn> columns, List<Integer> places, Map<Integer, MeaningProposal> found) {
        if (places.isEmpty()) {
            return;
        }
        int bean = places.get(0);
        String reason = "it is the only temperature";
        Optional<Integer> named =
                places.stream().filter(i -> isNamedBean(columns.get(i))).findFirst();
        if (named.isPresent()) {
            bean = named.get();
            reason = "its heading says so";
        } else if (places.size() > 1) {
            for (int place : places) {
                boolean air = isNamedAir(columns.get(place));
                boolean bestAir = isNamedAir(columns.get(bean));
                if (bestAir && !air
                        || air == bestAir
                                && columns.get(place).quantile(0.02)
                                        < columns.get(bean).quantile(0.02)) {
                    bean = place;
                }
            }
            reason = String.format(
                    Locale.ROOT,
                    "of the temperatures it falls lowest, to %.0f, as cold beans make it",
                    columns.get(bean).quantile(0.02));
        }
        Scale scale = scale(columns.get(bean));
        found.put(
                bean,
                new MeaningProposal(
                        Meaning.of(Quantity.BEAN_TEMPERATURE, scale.unit().symbol()), reason + "; " + scale.reason()));
        boolean airFound = false;
        for (int place : places) {
            if (place == bean) {
                continue;
            }
            Optional<Scale> stated = stated(columns.get(place));
            if (airFound) {
                found.put(place, new MeaningProposal(Meaning.EXTRA, "a third temperature has no place of its own"));
                continue;
            }
            airFound = true;
            String why = isNamedAir(columns.get(place)) ? "its heading says so" : "it is the other temperature";
            found.put(
                    place,
                    new MeaningProposal(
                            Meaning.of(
                                    Quantity.AIR_TEMPERATURE,
                                    stated.orElse(scale).unit().symbol()),
                            why + "; " + stated.map(Scale::reason).orElse("the scale of the bean temperature")));
        }
    }

    private static boolean isNamedBean(StrangeColumn column) {
        return column.heading()
                .toLowerCase(Locale.ROOT)
                .matches(".*(bean|bohne|grain|grano|grão|grao|chicco|kaffee).*");
    }

    private static boolean isNamedAir(StrangeColumn column) {
        return column.heading()
                .toLowerCase(Locale.ROOT)
                .matches(
                        ".*(air|exhaust|environment|abluft|luft|drum|chimney|aire|aria|\\bar\\b|escape|fum[ée]es?|scarico).*");
    }

    private record Scale(TemperatureUnit unit, String reason) {}

    private static Optional<Scale> stated(StrangeColumn column) {
        Header header = Header.parse(column.heading());
        Optional<TemperatureUnit> unit =
                header.brackets() == Header.Brackets.NONE ? unbracketed(column.heading()) : header.temperatureUnit();
        return unit.map(scale -> new Scale(scale, "its heading has the unit"));
    }

    /** "Bean C", "°C Bohne" and "Temp °F" have their unit too; a lone letter counts at the end only, behind a word. */
    private static Optional<TemperatureUnit> unbracketed(String heading) {
        String small = heading.toLowerCase(Locale.ROOT).strip();
        boolean celsius = small.matches("[°º]\\s?c\\b.*|.*[°º]\\s?c|.*\\p{L}{2}[ _]c|.*\\bcelsius\\b.*");
        boolean fahrenheit = small.matches("[°º]\\s?f\\b.*|.*[°º]\\s?f|.*\\p{L}{2}[ _]f|.*\\bfahrenheit\\b.*");
        return celsius == fahrenheit
                ? Optional.empty()
                : Optional.of(celsius ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT);
    }

    private static Scale scale(StrangeColumn column) {
        return stated(column).orElseGet(() -> {
            double high = column.quantile(0.98);
            String values =
                    String.format(Locale.ROOT, "the unit is not written; values up to %.0f fit a drop in ", high);
            return high > 300
                    ? new Scale(TemperatureUnit.FAHRENHEIT, values + "°F, and no bean stands that many °C")
                    : new Scale(TemperatureUnit.CELSIUS, values + "°C, and too few for °F");
        });
    }

    private static MeaningProposal other(StrangeColumn column) {
        Header header = Header.parse(column.heading());
        String unit = header.brackets() == Header.Brackets.NONE ? "" : header.unit();
        if (column.filled() == 0) {
            return new MeaningProposal(Meaning.LEFT_OUT, "it is empty");
        }
        if (column.mostly(Form.WORDS)) {
            long marks = column.words().keySet().stream()
                    .filter(word -> MarkWords.of(word).isPresent())
                    .count();
            return new MeaningProposal(
                    Meaning.EVENTS,
                    "it holds words such as " + Words.some(column.words().keySet())
                            + (marks > 0
                                    ? ", of which " + marks + (marks == 1 ? " names a mark" : " name a mark")
                                    : ""));
        }
        if (!column.mostly(Form.NUMBER)) {
            return new MeaningProposal(Meaning.LEFT_OUT, "it is neither numbers nor words throughout");
        }
        String name = header.name();
        Optional<Quantity> control = name.matches(
                        ".*(g[aá][sz]|burner|flame|brenner|br[uû]leur|bruciatore|quemador|queimador|llama|fiamma|chama).*")
                ? Optional.of(Quantity.GAS)
                : name.matches(".*(air|fan|damper|luft|ventil).*")
                        ? Optional.of(Quantity.AIRFLOW)
                        : name.matches(".*(power|heater|heiz).*")
                                ? Optional.of(Quantity.HEATER_POWER)
                                : name.matches(".*(drum|trommel).*")
                                        ? Optional.of(Quantity.DRUM_SPEED)
                                        : Optional.empty();
        return control.map(quantity -> new MeaningProposal(
                        Meaning.of(quantity, unit),
                        "its heading speaks of it, and it takes " + Words.count(column.distinct(), "value", "values")))
                .orElseGet(() -> new MeaningProposal(
                        Meaning.EXTRA, "its heading says nothing that is known; kept under its own name"));
    }
}
