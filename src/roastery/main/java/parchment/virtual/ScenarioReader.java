package parchment.virtual;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parchment.display.answer.Spelling;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.people.Cupper;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.people.Habit;
import parchment.virtual.physics.DrumMachine;
import parchment.virtual.physics.GreenBeans;
import parchment.virtual.physics.Probes;
import parchment.virtual.written.VirtualLot;

/** Builds a story from the checked sections of a scenario. */
final class ScenarioReader {
    private static final LocalDate FAR_OFF = LocalDate.of(2099, 12, 31);

    private final String text;
    private final String file;
    private final List<ScenarioSection> sections;
    private final List<String> attributes;
    private final List<Double> zeros;

    private ScenarioReader(String text, String file) {
        this.text = text;
        this.file = file;
        sections = ScenarioText.sections(text, file);
        attributes =
                all(SectionKind.ATTRIBUTE).stream().map(ScenarioSection::title).toList();
        zeros = Collections.nCopies(attributes.size(), 0.0);
    }

    /**
     * Reads a scenario's text.
     *
     * @param file the file's name, for messages
     * @throws IllegalArgumentException if a line is not understood, a needed one is missing, or two do not fit together
     */
    static Story read(String text, String file) {
        return new ScenarioReader(text, file).story();
    }

    private Story story() {
        ScenarioSection whole = one(SectionKind.ROASTERY);
        LocalDate start = whole.date("first day");
        List<VirtualLot> lots = lots(start);
        ScenarioSection drawn = one(SectionKind.DRAWN);
        boolean never = !drawn.has("from");
        return new Story(
                text,
                whole.text("name"),
                whole.text("letters"),
                start,
                one(SectionKind.MACHINE).title(),
                machine(one(SectionKind.MACHINE)),
                probes(),
                upkeep(),
                lots,
                recipes(lots),
                operators(),
                logger(one(SectionKind.LOGGER)),
                all(SectionKind.ATTRIBUTE).stream().map(ScenarioReader::surface).toList(),
                shapes(),
                all(SectionKind.CUPPER).stream().map(this::cupper).toList(),
                cuppings(one(SectionKind.CUPPINGS)),
                never ? FAR_OFF : drawn.date("from"),
                never ? FAR_OFF.minusDays(1) : drawn.date("to"),
                writing(one(SectionKind.BOOK)),
                calendar(whole),
                weather(one(SectionKind.AIR)),
                wear(one(SectionKind.MACHINE)),
                taste(one(SectionKind.FLAVOUR)),
                mislabellings(lots));
    }

    /** Returns the only section of a kind; if the text has none, one in which everything is left out. */
    private ScenarioSection one(SectionKind kind) {
        return all(kind).stream().findFirst().orElseGet(() -> new ScenarioSection(kind, "", file, Map.of()));
    }

    private List<ScenarioSection> all(SectionKind kind) {
        return sections.stream().filter(section -> section.kind() == kind).toList();
    }

    private List<ScenarioSection> allOrOne(SectionKind kind) {
        return all(kind).isEmpty() ? List.of(one(kind)) : all(kind);
    }

    private static Story.Calendar calendar(ScenarioSection of) {
        int fewest = of.whole("fewest batches a day");
        if (of.whole("most batches a day") < fewest) {
            throw of.wrong("most batches a day", "must not be below the fewest, " + fewest + ".");
        }
        return new Story.Calendar(
                of.whole("batches"),
                of.choice("roast days").equals("tuesdays")
                        ? Story.Calendar.Rhythm.TUESDAYS
                        : Story.Calendar.Rhythm.WEEKDAYS,
                of.share("days off"),
                of.share("extra days"),
                fewest,
                of.whole("most batches a day"),
                of.number("small mass"),
                of.number("usual mass"),
                of.number("large mass"));
    }

    private static DrumMachine machine(ScenarioSection of) {
        DrumMachine base = DrumMachine.of(of.choice("character"));
        double least = of.numberOr("least air", base.leastAir());
        double most = of.numberOr("most air", base.mostAir());
        if (!(most > least)) {
            throw of.wrong("most air", "must be above the least air, " + least + " kg/s.");
        }
        DrumMachine machine = new DrumMachine(
                of.numberOr("flame", base.flame()),
                of.shareOr("flame on drum", base.flameOnDrum()),
                of.numberOr("flame lag", base.flameLag()),
                least,
                most,
                of.numberOr("air to beans", base.airToBeans()),
                base.airToMetal(),
                of.numberOr("metal to beans", base.metalToBeans()),
                of.numberOr("metal heat", base.metalHeat()),
                base.loss());
        return machine.worn(of.share("flame factor"), of.share("draught factor"));
    }

    private static Story.Wear wear(ScenarioSection of) {
        return new Story.Wear(
                of.share("draught lost a day"), of.share("flame lost a day"), of.whole("days since cleaning"));
    }

    private List<Story.ProbePeriod> probes() {
        List<Story.ProbePeriod> periods = new ArrayList<>();
        for (ScenarioSection of : all(SectionKind.PROBE)) {
            if (!periods.isEmpty() && !periods.get(periods.size() - 1).from().isBefore(of.day())) {
                throw of.wrong("offset", "belongs to a probe that comes before the one above; put the oldest first.");
            }
            periods.add(new Story.ProbePeriod(
                    of.day(),
                    new Probes(
                            of.number("covering mass"),
                            of.share("full cover"),
                            of.number("bean lag"),
                            of.number("air lag"),
                            of.number("offset"))));
        }
        return periods.isEmpty() ? List.of(new Story.ProbePeriod(LocalDate.EPOCH, Probes.fitted())) : periods;
    }

    private List<Story.Work> upkeep() {
        return all(SectionKind.UPKEEP).stream()
                .map(of -> new Story.Work(of.day(), of.text("what"), of.textOr("note", "")))
                .sorted(java.util.Comparator.comparing(Story.Work::day))
                .toList();
    }

    private static Story.Weather weather(ScenarioSection of) {
        return new Story.Weather(
                of.number("mean temperature"),
                of.number("season"),
                of.whole("warmest day"),
                of.number("day to day"),
                of.share("humidity"),
                of.share("humidity season"),
                of.number("pressure"),
                of.share("gas supply"),
                of.share("chimney"));
    }

    private List<Story.Operator> operators() {
        return allOrOne(SectionKind.ROASTER).stream()
                .map(of -> new Story.Operator(of.title(), habit(of), of.share("share")))
                .toList();
    }

    private static Habit habit(ScenarioSection of) {
        Habit base = Habit.named(of.choice("habit"));
        return new Habit(
                of.shareOr("gas at start", base.gasAtStart()),
                of.shareOr("gas after yellowing", base.gasAfterYellowing()),
                of.shareOr("gas spread", base.gasSpread()),
                of.shareOr("last cut", base.lastCut()),
                of.shareOr("air at start", base.airAtStart()),
                of.shareOr("air at end", base.airAtEnd()),
                of.numberOr("air opens at", base.airOpensAt()),
                of.shareOr("chase", base.chase()),
                of.numberOr("aim", base.aim()),
                of.numberOr("reaction", base.reaction()),
                of.numberOr("drop care", base.dropCare()),
                of.numberOr("feel", base.feel()),
                of.numberOr("mark delay", base.markDelay()),
                of.numberOr("mark spread", base.markSpread()),
                of.numberOr("rounding", base.rounding()),
                of.shareOr("forgets", base.forgets()));
    }

    private List<Story.Recipe> recipes(List<VirtualLot> lots) {
        return allOrOne(SectionKind.RECIPE).stream()
                .map(of -> new Story.Recipe(
                        of.title(),
                        of.number("drop"),
                        of.number("varied"),
                        of.has("only from") ? lot("only from", of, lots) : ""))
                .toList();
    }

    /** Reads the name of a lot that must have a section. */
    private static String lot(String key, ScenarioSection of, List<VirtualLot> lots) {
        List<String> names = lots.stream().map(VirtualLot::name).distinct().toList();
        if (!names.contains(of.text(key))) {
            throw of.wrong(
                    key,
                    "names the lot '" + of.text(key) + "', which has no section."
                            + Spelling.question(of.text(key), names));
        }
        return of.text(key);
    }

    private List<VirtualLot> lots(LocalDate start) {
        List<VirtualLot> lots = new ArrayList<>();
        for (ScenarioSection of : all(SectionKind.LOT)) {
            lots.addAll(crops(of, lot(of)));
        }
        if (lots.stream().noneMatch(lot -> lot.isThere(start))) {
            throw new IllegalArgumentException(file + ": no lot is in store on the first day, " + start
                    + ". Let one arrive by then, or start later.");
        }
        return lots;
    }

    private VirtualLot lot(ScenarioSection of) {
        LocalDate arrived = of.date("arrived");
        return new VirtualLot(
                of.title(),
                of.text("origin"),
                of.choice("process"),
                of.textOr("variety", ""),
                of.dateOr("harvested", arrived.minusDays(200)),
                arrived,
                of.dateOr("sold out", FAR_OFF),
                of.whole("screen size"),
                new GreenBeans(
                        GreenBeans.fromShare(of.share("moisture")),
                        of.number("bean size"),
                        of.number("density"),
                        of.number("cracks at"),
                        of.number("crack spread"),
                        of.number("yellowing dose"),
                        of.number("reactivity")),
                of.points("flavour", attributes, zeros),
                of.number("share"),
                1);
    }

    /** A lot that arrives again is replaced by the next crop, a year apart in age but not in kind. */
    private static List<VirtualLot> crops(ScenarioSection of, VirtualLot first) {
        int every = of.whole("arrives again after");
        if (every == 0) {
            return List.of(first);
        }
        if (every < 30) {
            throw of.wrong("arrives again after", "is 0 for never, or at least 30 days.");
        }
        List<VirtualLot> crops = new ArrayList<>();
        LocalDate arrived = first.arrivedOn();
        for (int crop = 1; arrived.isBefore(first.soldOutOn()); crop++) {
            crops.add(first.crop(crop, arrived, arrived.plusDays(every - 1L)));
            arrived = arrived.plusDays(every);
        }
        return crops;
    }

    private List<Story.Mislabelling> mislabellings(List<VirtualLot> lots) {
        List<Story.Mislabelling> slips = new ArrayList<>();
        for (ScenarioSection of : all(SectionKind.MISLABELLED)) {
            slips.add(new Story.Mislabelling(
                    of.date("from"), of.date("to"), lot("lot", of, lots), lot("written as", of, lots)));
        }
        return slips;
    }

    private static Logger logger(ScenarioSection of) {
        Logger base = Logger.of(of.choice("kind"));
        return new Logger(
                of.numberOr("interval", base.interval()),
                base.jitter(),
                of.numberOr("noise", base.noise()),
                base.noiseMemory(),
                of.shareOr("gaps", base.gapRate()),
                of.shareOr("spikes", base.spikeRate()),
                of.shareOr("broken readings", base.sentinelRate()),
                of.shareOr("started late", base.lateRate()),
                of.shareOr("stopped early", base.cutRate()));
    }

    private static Story.Writing writing(ScenarioSection of) {
        return new Story.Writing(
                of.choice("temperatures").equals("celsius") ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT,
                of.choice("times").equals("seconds")
                        ? Story.Writing.Times.SECONDS
                        : Story.Writing.Times.MINUTES_AND_SECONDS,
                of.choice("air probe").equals("yes")
                        ? Story.Writing.AirProbe.MEASURED
                        : Story.Writing.AirProbe.NOT_MEASURED,
                of.share("lot forgotten"),
                of.share("plan written"));
    }

    private static FlavourSurface surface(ScenarioSection of) {
        return new FlavourSurface(
                of.title(),
                of.number("level"),
                of.number("destination"),
                of.number("destination squared"),
                of.number("browning"),
                of.number("development"),
                of.number("development squared"),
                of.number("together"));
    }

    private Map<String, String> shapes() {
        Map<String, String> shapes = new TreeMap<>();
        for (ScenarioSection of : all(SectionKind.ATTRIBUTE)) {
            if (!of.choice("surface").equals("as set")) {
                shapes.put(of.title(), of.choice("surface"));
            }
        }
        return shapes;
    }

    private static Story.Taste taste(ScenarioSection of) {
        return new Story.Taste(
                of.number("ageing"), of.number("batch"), of.number("hidden"), of.number("cup"), of.number("rest"));
    }

    private Story.CupperGiven cupper(ScenarioSection of) {
        of.points("attribute bias", attributes, zeros);
        return new Story.CupperGiven(
                of.title(),
                drawn -> new Cupper(
                        drawn.name(),
                        of.numberOr("bias", drawn.bias()),
                        of.has("attribute bias")
                                ? of.points("attribute bias", attributes, zeros)
                                : drawn.attributeBias(),
                        of.numberOr("scale", drawn.scale()),
                        of.numberOr("noise", drawn.noise()),
                        of.shareOr("halo", drawn.halo()),
                        of.shareOr("contrast", drawn.contrast()),
                        of.numberOr("fatigue", drawn.fatigue()),
                        of.number("impression"),
                        of.number("own taste")));
    }

    private static Story.Cuppings cuppings(ScenarioSection of) {
        return new Story.Cuppings(
                of.share("share"),
                of.whole("cups"),
                of.whole("fewest cuppers"),
                of.whole("most batches"),
                of.share("codes left out"),
                of.share("talk first"),
                of.number("table shift"),
                of.number("cupper shift"),
                of.share("agreement"),
                of.number("hope"),
                of.number("step"));
    }
}
