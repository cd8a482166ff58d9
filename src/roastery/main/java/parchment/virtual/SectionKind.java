package parchment.virtual;

import static parchment.virtual.Setting.NEEDED;
import static parchment.virtual.Setting.choice;
import static parchment.virtual.Setting.date;
import static parchment.virtual.Setting.number;
import static parchment.virtual.Setting.percent;
import static parchment.virtual.Setting.points;
import static parchment.virtual.Setting.text;
import static parchment.virtual.Setting.whole;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.virtual.Setting.Type;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.people.Habit;
import parchment.virtual.physics.DrumMachine;

/** Names the sections of a scenario and the settings of each; the page docs/virtual-roastery.md is written from them. */
enum SectionKind {
    ROASTERY(
            "roastery",
            Named.NO,
            "The whole. Once, and needed.",
            text("name", NEEDED, "the logbook's name"),
            text("letters", "B", "first letters of every batch's name"),
            date("first day", NEEDED, "first day on which it may roast"),
            whole("batches", 1, 100_000, "100", "how many batches, unless the call says otherwise"),
            choice(
                    "roast days",
                    List.of("tuesdays", "weekdays"),
                    "tuesdays",
                    "Tuesdays with a Friday now and then, or every day from Monday to Friday"),
            percent("days off", "20", "share of weeks (with weekdays: of days) without roasting"),
            percent("extra days", "12", "share of weeks in which a Friday is added to a Tuesday"),
            whole("fewest batches a day", 1, 24, "3", "fewest batches on a roast day"),
            whole("most batches a day", 1, 24, "5", "most batches on a roast day"),
            number("small mass", "kg", 0.8, 2.8, "1.4", "green mass of the tenth of batches that are small"),
            number("usual mass", "kg", 0.8, 2.8, "2.1", "green mass of most batches"),
            number("large mass", "kg", 0.8, 2.8, "2.4", "green mass of about a third of batches")),
    MACHINE(
            "machine",
            Named.MAY_BE,
            "The drum machine. Without a name the roastery keeps no book of machines, rooms and cuppings.",
            choice(
                    "character",
                    DrumMachine.characters(),
                    "ordinary drum",
                    "what the machine is like; the lines below change it"),
            percentOver("flame factor", 30, 200, "the flame against the character's"),
            percentOver("draught factor", 30, 200, "the air drawn through against the character's"),
            number("flame", "kW", 1, 20, "(as the character)", "heat of the flame at full gas"),
            percent("flame on drum", "(as the character)", "share of that heat that goes into the metal"),
            number("flame lag", "s", 0.5, 60, "(as the character)", "time constant of the flame"),
            number("least air", "kg/s", 0.001, 0.1, "(as the character)", "air drawn through at airflow 0"),
            number("most air", "kg/s", 0.001, 0.1, "(as the character)", "air drawn through at airflow 100 %"),
            number(
                    "air to beans",
                    "kW/K",
                    0.0001,
                    0.05,
                    "(as the character)",
                    "heat from air to the beans of 1 kg, per degree"),
            number(
                    "metal to beans",
                    "kW/K",
                    0.0001,
                    0.05,
                    "(as the character)",
                    "heat from metal to the beans of 1 kg, per degree"),
            number("metal heat", "kJ/K", 1, 60, "(as the character)", "heat that warms the metal by one degree"),
            percentOver(
                    "draught lost a day",
                    0,
                    2,
                    "0.12",
                    "draught lost per day since 'ducts cleaned', for at most 180 days"),
            percentOver("flame lost a day", 0, 0.2, "0.015", "flame lost per day since 'burner cleaned'"),
            whole(
                    "days since cleaning",
                    0,
                    1000,
                    "180",
                    "how long ago ducts and burner were cleaned on the first day")),
    PROBE(
            "probe",
            Named.DAY,
            "How the probes are fitted from a day on; a second such section is a probe that was moved.",
            number(
                    "covering mass",
                    "kg",
                    0.1,
                    3,
                    "0.65",
                    "green mass that covers the bean probe to 63 % of what beans can cover"),
            percent("full cover", "94.8", "share of the bean probe that a full drum covers"),
            number("bean lag", "s", 1, 120, "39", "time constant of the bean probe"),
            number("air lag", "s", 1, 120, "14", "time constant of the air probe"),
            number("offset", "°C", -20, 20, "0", "what the bean probe reads too high")),
    UPKEEP(
            "upkeep",
            Named.DAY,
            "Work on the machine. 'ducts cleaned' and 'burner cleaned' make them as new; the machine clogs and tires without.",
            text("what", NEEDED, "what was done: ducts cleaned, burner cleaned, probe moved, or words of your own"),
            text("note", "(none)", "a note")),
    AIR(
            "room air",
            Named.NO,
            "Seasons and weather.",
            number("mean temperature", "°C", 5, 40, "20", "mean over the year"),
            number("season", "°C", 0, 20, "4.5", "how far summer and winter are from that mean"),
            whole("warmest day", 1, 366, "205", "warmest day of the year, counted from 1 January"),
            number("day to day", "°C", 0, 10, "1", "standard deviation of a day's temperature"),
            percent("humidity", "60", "mean relative humidity"),
            percent("humidity season", "8", "how far summer and winter are from that mean"),
            number("pressure", "hPa", 600, 1060, "1014", "mean pressure"),
            percent("gas supply", "1.5", "standard deviation of the flame from day to day"),
            percent("chimney", "3", "standard deviation of the draught from day to day")),
    ROASTER(
            "roaster",
            Named.MAY_BE,
            "A person at the machine.",
            choice("habit", Habit.names(), "steady", "how this person roasts; the lines below change it"),
            percent("share", "100", "how often this person roasts, against the others"),
            percent("gas at start", "(as the habit)", "gas from charge to yellowing"),
            percent("gas after yellowing", "(as the habit)", "gas after the cut that follows yellowing"),
            percent("gas spread", "(as the habit)", "standard deviation of both"),
            percent("last cut", "(as the habit)", "gas taken away before first crack"),
            percent("air at start", "(as the habit)", "airflow until it is opened"),
            percent("air at end", "(as the habit)", "airflow from first crack on"),
            number("air opens at", "°C", 100, 230, "(as the habit)", "bean reading at which the air begins to open"),
            number(
                    "chase",
                    "% per °C/min",
                    0,
                    10,
                    "(as the habit)",
                    "gas moved per °C/min that the rate of rise is off"),
            number(
                    "aim",
                    "°C/min",
                    0,
                    30,
                    "(as the habit)",
                    "rate of rise that the person expects at 165 °C, and 0.12 less per °C above"),
            number("reaction", "s", 0, 30, "(as the habit)", "mean time from seeing to doing"),
            number(
                    "drop care",
                    "°C",
                    0,
                    5,
                    "(as the habit)",
                    "standard deviation of the drop reading around the meant one"),
            number("feel", "°C", 0, 5, "(as the habit)", "how far the drop follows the smell of the beans"),
            number("mark delay", "s", 0, 60, "(as the habit)", "mean delay of a written mark"),
            number("mark spread", "s", 0, 60, "(as the habit)", "standard deviation of that delay"),
            number("rounding", "s", 1, 60, "(as the habit)", "step to which written times are rounded"),
            percent("forgets", "(as the habit)", "share of marks that are not written")),
    RECIPE(
            "recipe",
            Named.MAY_BE,
            "What is roasted for.",
            number("drop", "°C", 190, 230, "203", "bean reading at which the drop is usually meant"),
            number("varied", "°C", 0, 6, "1.8", "standard deviation of what is meant"),
            text("only from", "(any lot)", "the one lot from which it is roasted")),
    DRAWN(
            "drops drawn by chance",
            Named.NO,
            "A stretch in which every drop is drawn before the charge, evenly from 197 to 208 °C.",
            date("from", NEEDED, "first day"),
            date("to", NEEDED, "last day")),
    LOT(
            "lot",
            Named.YES,
            "A lot of green coffee.",
            text("origin", "Nowhere (invented)", "invented region"),
            choice("process", List.of("washed", "natural", "honey"), "washed", "how it was processed"),
            text("variety", "(none)", "invented variety"),
            date("harvested", "(200 days before it arrived)", "day of harvest"),
            date("arrived", NEEDED, "day of arrival; it is roasted from then on"),
            date("sold out", "(never)", "last day on which it is roasted"),
            whole(
                    "arrives again after",
                    0,
                    2000,
                    "0",
                    "days until a new crop of it replaces it, under its name and a number; 0: never"),
            whole("screen size", 12, 20, "16", "usual size of the beans in 64ths of an inch"),
            number("moisture", "%", 6, 16, "11", "water in the whole, on arrival"),
            number("bean size", "mm", 4, 10, "6.4", "diameter of a ball of a bean's volume"),
            number("density", "g/L", 500, 900, "705", "mass of a litre"),
            number("cracks at", "°C", 185, 215, "199.6", "mean core temperature at which beans crack"),
            number("crack spread", "°C", 0.5, 10, "3", "standard deviation of that between beans"),
            number(
                    "yellowing dose",
                    "s",
                    30,
                    400,
                    "119.9",
                    "browning at which beans look yellow, in seconds at 150 °C"),
            number("reactivity", "", 0.3, 2, "1", "heat of reaction against the published rate"),
            points("flavour", "(0 each)", "points added to attributes"),
            number("share", "", 0, 100, "1", "how often it is roasted, against the other lots in store")),
    MISLABELLED(
            "mislabelled lot",
            Named.NO,
            "A sack in the wrong place: batches of one lot are written down as another.",
            text("lot", NEEDED, "the lot that was roasted"),
            text("written as", NEEDED, "the lot that was written down"),
            date("from", NEEDED, "first day"),
            date("to", NEEDED, "last day")),
    LOGGER(
            "logger",
            Named.NO,
            "What reads the probes.",
            choice("kind", Logger.kinds(), "good", "what it is like; the lines below change it"),
            number("interval", "s", 0.5, 30, "(as the kind)", "seconds between readings"),
            number("noise", "°C", 0, 5, "(as the kind)", "standard deviation of a reading"),
            percent("gaps", "(as the kind)", "share of batches with a gap of 10 to 30 s"),
            percent("spikes", "(as the kind)", "share of batches with spikes"),
            percent("broken readings", "(as the kind)", "share of batches with readings of 999.9"),
            percent(
                    "started late",
                    "(as the kind)",
                    "share of batches whose readings begin 20 to 120 s after the charge"),
            percent(
                    "stopped early",
                    "(as the kind)",
                    "share of batches whose readings end 10 to 60 s before the drop")),
    BOOK(
            "book",
            Named.NO,
            "How the logbook is kept.",
            choice("temperatures", List.of("celsius", "fahrenheit"), "celsius", "the unit"),
            choice("times", List.of("seconds", "minutes and seconds"), "seconds", "how times on curves are written"),
            choice("air probe", List.of("yes", "no"), "yes", "whether there is one"),
            percent("lot forgotten", "1", "share of batches without their lot"),
            percent("plan written", "50", "share of batches whose meant drop is written before the charge")),
    ATTRIBUTE(
            "attribute",
            Named.YES,
            "One line of the score sheet, with its true surface (formula above); d in °C, w and v in minutes.",
            choice(
                    "surface",
                    FlavourSurface.shapes(),
                    "as set",
                    "as set below, or drawn from the seed in this shape; 'drawn' draws the shape too"),
            number("level", "", 0, 10, "5", "points at the middle"),
            number("destination", "", -3, 3, "0", "a, points per °C of end temperature"),
            number("destination squared", "", -1, 1, "0", "b"),
            number("browning", "", -3, 3, "0", "c, points per minute of browning"),
            number("development", "", -3, 3, "0", "e, points per minute of development"),
            number("development squared", "", -3, 3, "0", "f"),
            number("together", "", -1, 1, "0", "g")),
    FLAVOUR(
            "flavour",
            Named.NO,
            "What moves the cup beside the surfaces.",
            number(
                    "ageing",
                    "",
                    0,
                    2,
                    "0.04",
                    "points that the first attribute loses per month in store; the others less"),
            number("batch", "", 0, 3, "0.2", "standard deviation of a batch around its surface, points"),
            number(
                    "hidden",
                    "",
                    0,
                    3,
                    "0.2",
                    "points per standard deviation of the beans' hidden state, which also moves the drop"),
            number("cup", "", 0, 3, "0.25", "standard deviation of a cup of the same batch, points"),
            number("rest", "", 0, 1, "0.05", "points lost per day away from the fifth day of rest")),
    CUPPER(
            "cupper",
            Named.YES,
            "A person who scores. What is left out is drawn from the seed, where that is said.",
            number("bias", "", -5, 5, "(drawn, spread 0.4)", "points above the others on every attribute"),
            points("attribute bias", "(drawn, spread 0.3)", "points above the others on single attributes"),
            number("scale", "", 0, 3, "(drawn, 0.75 to 1.25)", "how widely scores are spread; 1 is as the truth"),
            number("noise", "", 0, 5, "(drawn, 0.45 to 0.75)", "standard deviation of one score"),
            percent("halo", "(drawn, 15 to 45)", "share of a cup's general level in every attribute"),
            percent(
                    "contrast",
                    "(drawn, 0 to 12)",
                    "points lost per point that the cup before was above the middle: the sequence effect"),
            number("fatigue", "", 0, 1, "(drawn, 0 to 0.03)", "points lost per place in the order"),
            number(
                    "impression",
                    "",
                    0,
                    5,
                    "0.3",
                    "standard deviation of the general impression of a cup, which enters through the halo"),
            number(
                    "own taste",
                    "",
                    0,
                    5,
                    "0",
                    "standard deviation of this person's own taste for a batch, on each attribute")),
    CUPPINGS(
            "cuppings",
            Named.NO,
            "How cuppings are held.",
            percent("share", "70", "share of batches that are cupped"),
            whole("cups", 1, 5, "2", "cups of each batch"),
            whole("fewest cuppers", 1, 50, "3", "fewest cuppers at a table"),
            whole("most batches", 1, 12, "5", "most batches at a table"),
            percent("codes left out", "8", "share of tables at which cuppers see which batch is which"),
            percent("talk first", "10", "share of tables at which people speak before they score"),
            number("table shift", "", 0, 3, "0.2", "standard deviation of a table's shift of an attribute, points"),
            number("cupper shift", "", 0, 3, "0.2", "standard deviation of a cupper's shift at a table, points"),
            percent("agreement", "60", "how far scores move to the table's mean where people spoke first"),
            number("hope", "", 0, 1, "0.08", "points per °C of drop that cuppers add who see which batch it is"),
            number("step", "", 0.01, 2, "0.25", "step to which points are rounded"));

    /** Says what follows the kind in a section's heading. */
    enum Named {
        NO,
        MAY_BE,
        YES,
        DAY
    }

    private final String word;
    private final Named named;
    private final String meaning;
    private final List<Setting> settings;

    SectionKind(String word, Named named, String meaning, Setting... settings) {
        this.word = word;
        this.named = named;
        this.meaning = meaning;
        this.settings = List.of(settings);
    }

    private static Setting percentOver(String key, double low, double high, String meaning) {
        return percentOver(key, low, high, "100", meaning);
    }

    private static Setting percentOver(String key, double low, double high, String fallback, String meaning) {
        return new Setting(key, "%", Type.NUMBER, low, high, List.of(), fallback, meaning);
    }

    String word() {
        return word;
    }

    Named named() {
        return named;
    }

    String meaning() {
        return meaning;
    }

    List<Setting> settings() {
        return settings;
    }

    Optional<Setting> setting(String key) {
        return settings.stream().filter(setting -> setting.key().equals(key)).findFirst();
    }

    static List<String> words() {
        return Arrays.stream(values()).map(SectionKind::word).toList();
    }

    /** Returns whether a scenario may have several such sections. */
    boolean isRepeated() {
        return switch (this) {
            case PROBE, UPKEEP, ROASTER, RECIPE, LOT, MISLABELLED, ATTRIBUTE, CUPPER -> true;
            default -> false;
        };
    }

    /** Returns how the heading is written. */
    String heading() {
        return switch (named) {
            case NO -> "[" + word + "]";
            case MAY_BE, YES -> "[" + word + ": name]";
            case DAY -> "[" + word + ": 2024-01-01]";
        };
    }
}
