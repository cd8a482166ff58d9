package parchment.gather;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.Header;

/**
 * Reads what the heading of a recording's column says: its unit, in brackets or behind the name, and which of the drum's readings it
 * speaks of, in English, German, Spanish, Portuguese, French and Italian (common practice, no source).
 *
 * @param heading the heading as it stands
 */
record CurveHeading(String heading) {
    private static final Pattern BRACKETS = Pattern.compile("[\\[(]([^\\[\\]()]*)[])]");
    private static final String SIGN = "[°º˚\uFFFD]";
    private static final Pattern CELSIUS =
            Pattern.compile("(" + SIGN + "|deg\\.?|degrees|grad|grados|graus|degrés|gradi)?\\s?(c|celsius)\\.?");
    private static final Pattern FAHRENHEIT =
            Pattern.compile("(" + SIGN + "|deg\\.?|degrees|grad|grados|graus|degrés|gradi)?\\s?(f|fahrenheit)\\.?");
    private static final Pattern KELVIN = Pattern.compile("(" + SIGN + ")?k|kelvin");

    /** Units of what else is logged; a degree for each minute is one of them. */
    private static final Pattern OTHER_UNIT = Pattern.compile("%|percent|prozent|por ?ciento|pour ?cent|per ?cento"
            + "|rpm|r\\.p\\.m\\.?|u ?/ ?min|1 ?/ ?min|min ?-1|min⁻¹|tr ?/ ?min|tours? ?/ ?min|giri ?/ ?min|rev ?/ ?min|rev ?/ ?s|umdrehungen"
            + "|hz|k?pa|hpa|mpa|m?bar|psi|inh2o|in ?wc|inwc|mmh2o|mmws|mm ?hg|torr"
            + "|k?w|kilowatt|watts?|k?wh|m?j|kj|btu|btu ?/ ?h|k?btu|m?v|volts?|m?a|amp|ampere|amps"
            + "|m ?/ ?s|km ?/ ?h|m[3³] ?/ ?h|m[3³] ?/ ?min|m[3³]|cfm|l ?/ ?min|l ?/ ?h|l ?/ ?s|kg ?/ ?h|g ?/ ?min"
            + "|kg|g|lb|lbs|oz|ppm|db|lux|mm|cm|m|(" + SIGN + ")?\\s?[cfk] ?/ ?(min|s|sec|m|30 ?s)");
    /** Those that are understood without brackets, at the end of a heading. */
    private static final Pattern OTHER_UNIT_AT_END = Pattern.compile(".*?[\\s_.,:;/-]?(%)|.*[\\s_.,:;/-]("
            + "percent|prozent|rpm|u/min|1/min|tr/min|giri/min|hz|k?pa|hpa|m?bar|psi|inh2o|k?w|watts?|btu|volts?|amps?|m/s|m[3³]/h|cfm|l/min"
            + "|" + SIGN + "?[cfk]/(?:min|s|sec))|(rpm)");

    private static final Pattern TEMPERATURE_AT_END = Pattern.compile(
            ".*" + SIGN + "\\s?([cf])\\b.*|.*\\p{L}{2}.*[\\s_.,:;/-]+(?:deg\\.?\\s?)?([cf])|.*\\bdeg\\s?([cf])\\b.*");

    private static final Pattern RATE = Pattern.compile(
            ".*(\\bror\\b|rate of rise|\\brise\\b|anstieg|steigung|\\bdelta\\b|[δΔ∆]|\\bincremento\\b|\\bgradient|\\bincrément|\\bpente\\b|tasa de (subida|aumento)|taxa de (subida|aumento)).*");
    private static final Pattern SET = Pattern.compile(
            ".*(\\bset\\b|set ?point|\\btarget\\b|\\bplan(ned)?\\b|\\bsoll|\\bziel|\\bconsigna\\b|\\bconsigne\\b|\\bobjetivo\\b|\\bobiettivo\\b|\\balvo\\b|\\bcible\\b|\\breference\\b|\\breferenz).*");
    private static final Pattern BEAN = Pattern.compile(".*(bean|bohne|grain|grano|grão|grao|chicco|chicchi|kaffee).*");
    private static final Pattern AIR = Pattern.compile(
            ".*(air|exhaust|environment|abluft|abgas|rauchgas|flue|luft|drum|trommel|chimney|aire|aria|\\bar\\b|escape|fum[ée]es?|scarico|tambor|tambour|tamburo).*");
    private static final Pattern TEMPERATURE =
            Pattern.compile(".*(temp(?!o\\b|s\\b)|celsius|fahrenheit|thermo|termo).*");

    private static final Pattern GAS = Pattern.compile(
            ".*(g[aá][sz]|burner|flame|brenner|br[uû]leur|bruciatore|quemador|queimador|llama|fiamma|chama).*");
    private static final Pattern DRUM_SPEED = Pattern.compile(
            ".*(trommel|drum|tambor|tambour|tamburo).*(speed|drehzahl|geschwindigkeit|velocidad|velocidade|vitesse|velocità|velocita|giri|rpm|umdrehung).*"
                    + "|.*(speed|drehzahl|geschwindigkeit|velocidad|velocidade|vitesse|velocità|velocita|giri|rpm|umdrehung).*(trommel|drum|tambor|tambour|tamburo).*");
    private static final Pattern FLOW = Pattern.compile(
            ".*(\\bfan|blower|damper|air ?flow|air ?speed|lüfter|luefter|ventil|gebläse|geblaese|luftstrom|luftmenge|luftklappe|zugluft|ventol"
                    + "|(flujo|caudal|fluxo|flusso|portata|débit|debit|flux)\\b.*|tiraje|tiraggio|\\btirage\\b|exaustor|extractor).*");
    private static final Pattern POWER = Pattern.compile(
            ".*(power|heater|heiz|leistung|potencia|potência|puissance|potenza|riscaldat|resistenza|resistencia).*");

    /** Gas that has burned is hot, and is no control. */
    private static final Pattern BURNED =
            Pattern.compile(".*(abgas|rauchgas|flue|exhaust|escape|[ée]chappement|scarico|fum[ée]e?).*");
    /** What else is logged and is no temperature. */
    private static final Pattern ELSE = Pattern.compile(
            ".*(pressure|druck|presi[oó]n|pression|press[aã]o|humid|feucht|humed|umid|speed|drehzahl|velocidad|vitesse|velocit[àa]"
                    + "|frequen|weight|gewicht|\\bpeso\\b|poids|volt|strom\\b|umdrehung|\\bgiri\\b).*");

    /** Times that count from the charge, in the words of the trade. */
    private static final Pattern SINCE_CHARGE = Pattern.compile(
            ".*(\\b(since|after|from)( the)? (charge|charging|drop[ -]?in|loading|load|beans in)\\b"
                    + "|\\b(seit|ab|nach)( der| dem)? (f[uü]e?llen|einf[uü]e?ll\\w*|einwurf|einwerfen|beschick\\w*|charge|chargieren|aufgabe)"
                    + "|\\bdesde( la| el| a| o)? (carga|cargar|carregamento|entrada)\\b|\\bap[oó]s( a)? carga\\b"
                    + "|\\b(depuis|apr[eè]s)( la| le| l['’])? ?(charge|chargement|enfournement)\\b"
                    + "|\\b(dal|dalla|dopo il|dopo la) (carico|carica|caricamento)\\b).*",
            Pattern.UNICODE_CHARACTER_CLASS);

    /** What a control's heading speaks of. */
    enum Control {
        GAS,
        AIRFLOW,
        HEATER_POWER,
        DRUM_SPEED
    }

    static CurveHeading of(StrangeColumn column) {
        return new CurveHeading(column.heading());
    }

    private String small() {
        return heading.toLowerCase(Locale.ROOT).replaceAll("[\\s\\u00A0]+", " ").strip();
    }

    /** Returns the heading without what stands in brackets, in small letters. */
    private String name() {
        return BRACKETS.matcher(small()).replaceAll(" ").strip();
    }

    private List<String> bracketed() {
        return BRACKETS.matcher(small())
                .results()
                .map(found -> found.group(1).strip())
                .toList();
    }

    /** Returns the scale of temperature that the heading states, in brackets or without. */
    Optional<TemperatureUnit> temperatureUnit() {
        for (String unit : bracketed()) {
            Optional<TemperatureUnit> scale = scale(unit);
            if (scale.isPresent()) {
                return scale;
            }
        }
        if (isOtherUnit()) {
            return Optional.empty();
        }
        String name = name();
        boolean celsius = name.matches(".*\\bcelsius\\b.*");
        boolean fahrenheit = name.matches(".*\\bfahrenheit\\b.*");
        Matcher plain = TEMPERATURE_AT_END.matcher(name);
        if (celsius == fahrenheit && !celsius && plain.matches()) {
            String letter =
                    plain.group(1) != null ? plain.group(1) : plain.group(2) != null ? plain.group(2) : plain.group(3);
            celsius = letter.equals("c");
            fahrenheit = !celsius;
        }
        return celsius == fahrenheit
                ? Optional.empty()
                : Optional.of(celsius ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT);
    }

    private static Optional<TemperatureUnit> scale(String unit) {
        return CELSIUS.matcher(unit).matches()
                ? Optional.of(TemperatureUnit.CELSIUS)
                : FAHRENHEIT.matcher(unit).matches()
                        ? Optional.of(TemperatureUnit.FAHRENHEIT)
                        : KELVIN.matcher(unit).matches() ? Optional.of(TemperatureUnit.KELVIN) : Optional.empty();
    }

    /** Returns whether the heading states a unit that is none of a temperature. */
    boolean isOtherUnit() {
        return otherUnit().isPresent();
    }

    private Optional<String> otherUnit() {
        for (String unit : bracketed()) {
            if (OTHER_UNIT.matcher(unit).matches()) {
                return Optional.of(unit);
            }
        }
        Matcher end = OTHER_UNIT_AT_END.matcher(name());
        if (!end.matches()) {
            return Optional.empty();
        }
        return Optional.of(end.group(1) != null ? end.group(1) : end.group(2) != null ? end.group(2) : end.group(3));
    }

    /** Returns the unit as it stands, in brackets or behind the name; "" if none is written. */
    String unit() {
        Header header = Header.parse(heading);
        if (header.brackets() != Header.Brackets.NONE) {
            return header.unit();
        }
        String written = header.written();
        return otherUnit()
                .map(unit -> {
                    int from = written.toLowerCase(Locale.ROOT).lastIndexOf(unit);
                    return from < 0 ? unit : written.substring(from, from + unit.length());
                })
                .orElse("");
    }

    /** Returns which control the heading speaks of; nothing if it names a temperature or its unit. */
    Optional<Control> control() {
        String name = name();
        if (temperatureUnit().isPresent() || TEMPERATURE.matcher(name).matches()) {
            return Optional.empty();
        }
        if (isGas(name)) {
            return Optional.of(Control.GAS);
        }
        if (DRUM_SPEED.matcher(name).matches()) {
            return Optional.of(Control.DRUM_SPEED);
        }
        if (FLOW.matcher(name).matches()) {
            return Optional.of(Control.AIRFLOW);
        }
        if (POWER.matcher(name).matches()) {
            return Optional.of(Control.HEATER_POWER);
        }
        // "Air" and "drum" are temperatures as often as controls: what the values look like, or the unit, decides.
        if (name.matches(".*(air|luft|aire|aria|\\bar\\b|tiro).*")) {
            return Optional.of(Control.AIRFLOW);
        }
        return name.matches(".*(drum|trommel|tambor|tambour|tamburo).*")
                ? Optional.of(Control.DRUM_SPEED)
                : Optional.empty();
    }

    private static boolean isGas(String name) {
        return GAS.matcher(name).matches() && !BURNED.matcher(name).matches();
    }

    /** Returns whether values under the heading cannot be temperatures, however they look: another unit, a rate, or a control by its words. */
    boolean isNoTemperature() {
        String name = name();
        if (isOtherUnit() || RATE.matcher(name).matches()) {
            return true;
        }
        if (temperatureUnit().isPresent() || TEMPERATURE.matcher(name).matches()) {
            return false;
        }
        return isGas(name)
                || ELSE.matcher(name).matches()
                || DRUM_SPEED.matcher(name).matches()
                || FLOW.matcher(name).matches()
                || POWER.matcher(name).matches();
    }

    /** Returns whether it names a temperature, by a word or by its unit. */
    boolean isTemperature() {
        return !isNoTemperature()
                && (temperatureUnit().isPresent() || TEMPERATURE.matcher(name()).matches());
    }

    /** Returns whether the times under it count from the charge. */
    boolean isSinceCharge() {
        return SINCE_CHARGE.matcher(small()).matches();
    }

    boolean isBean() {
        return BEAN.matcher(small()).matches() && !isSet();
    }

    boolean isAir() {
        return AIR.matcher(small()).matches();
    }

    /** Returns whether it holds what was wanted, not what was read. */
    boolean isSet() {
        return SET.matcher(small()).matches();
    }
}
