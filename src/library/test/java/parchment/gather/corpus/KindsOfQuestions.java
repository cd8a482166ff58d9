package parchment.gather.corpus;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import parchment.gather.corpus.CurveColumn.Clock;
import parchment.gather.corpus.Kind.Part;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.ScoreParts.Words;
import parchment.gather.corpus.StrangeKind.Fact;

/** Folders that truly leave something open, with what the roaster who kept them would answer. */
final class KindsOfQuestions {
    private static final TextStyle TWO_WAYS = TextStyle.PLAIN.dates("M/d/yyyy", "HH:mm");

    private static final DateTimeFormatter MINUTE = Naming.pattern("yyyy-MM-dd HHmm");
    private static final Words TASTED =
            new Words("Tasted", "Cupper", "Roasted|Coffee", List.of("Acidity", "Sweetness", "Body", "Overall"));

    private KindsOfQuestions() {}

    private static Part numbered() {
        return CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv"));
    }

    private static ListParts list(ListColumn... more) {
        List<ListColumn> columns = new ArrayList<>(List.of(
                ListColumn.number("Batch"),
                ListColumn.date("Date"),
                ListColumn.time("Time"),
                ListColumn.lot("Coffee")));
        columns.addAll(List.of(more));
        return new ListParts(List.copyOf(columns));
    }

    static List<Kind> all() {
        return List.of(
                Kind.of(
                                "questions: no date later than the twelfth",
                                numbered(),
                                list(ListColumn.green("Green kg", ListColumn.KILOGRAM))
                                        .text(TWO_WAYS, "list.csv"))
                        .happening(KindsOfQuestions::early)
                        .answering("How are the dates written", "month/day/year"),
                Kind.of(
                                "questions: no date later than the twelfth, in names of recordings and scores too",
                                CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.started("MM-dd-yyyy HHmmss'.csv'")),
                                list(ListColumn.green("Green kg", ListColumn.KILOGRAM))
                                        .text(TWO_WAYS, "list.csv"),
                                ScoreParts.cups(TWO_WAYS, "scores.csv", Words.ENGLISH, ScoreParts.NUMBER))
                        .happening(KindsOfQuestions::early)
                        .answering("date.order", "month/day/year"),
                Kind.of(
                                "questions: kilograms or pounds",
                                CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.number("%d.csv")),
                                list(
                                                ListColumn.green("Green weight", ListColumn.POUND),
                                                ListColumn.roasted("Roasted weight", ListColumn.POUND))
                                        .text(TextStyle.PLAIN, "list.csv"))
                        .answering("'Green weight'", "green mass [lb]"),
                Kind.of(
                                "questions: two machines charged in the same minutes",
                                CorpusKinds.LOGGED.files(
                                        TextStyle.PLAIN,
                                        new Naming(Set.of(Fact.DAYS, Fact.TIMES), roast -> onMachine(roast) + ".csv")),
                                list(ListColumn.green("Green kg", ListColumn.KILOGRAM))
                                        .text(TextStyle.PLAIN.dates("yyyy-MM-dd", "HH:mm"), "list.csv"))
                        .happening(KindsOfQuestions::twoMachines)
                        .answering(KindsOfQuestions::eachJoin),
                Kind.of(
                                "questions: a plan and a list of the same batches",
                                numbered(),
                                list(ListColumn.green("Green kg", ListColumn.KILOGRAM))
                                        .text(TextStyle.PLAIN, "list.csv"),
                                new Part(
                                        Set.of(),
                                        (roastery, folder, random) -> list(new ListColumn(
                                                        "Green kg",
                                                        Set.of(),
                                                        roast -> ListColumn.mass(
                                                                roast.greenKilograms() + 0.5, ListColumn.KILOGRAM)))
                                                .text(TextStyle.PLAIN, "a plan.csv")
                                                .writing()
                                                .write(roastery, folder, random)))
                        .answering("Which of the two stands", "list"),
                Kind.of(
                                "questions: the list's clock an hour behind",
                                CorpusKinds.LOGGED.files(TextStyle.PLAIN, Naming.started("yyyy-MM-dd HHmmss'.csv'")),
                                hourBehind().text(TextStyle.PLAIN.dates("yyyy-MM-dd", "HH:mm"), "list.csv"))
                        .answering("clock", "logger"),
                Kind.of(
                                "questions: nobody is named on a score sheet",
                                numbered(),
                                CorpusKinds.SHORT.text(TextStyle.PLAIN, "list.csv"),
                                scores(1))
                        .happening(KindsOfQuestions::oneCupper)
                        .answering(roastery -> Map.of("Who scored", cupper(roastery))),
                Kind.of(
                                "questions: no day on a score sheet",
                                numbered(),
                                CorpusKinds.SHORT.text(TextStyle.PLAIN, "list.csv"),
                                scores(0))
                        .happening(KindsOfQuestions::oneCupping)
                        .answering(roastery -> Map.of(
                                "On which day",
                                roastery.tastings().get(0).tastedOn().toString())),
                Kind.of(
                                "questions: a lot in small letters on some rows",
                                numbered(),
                                ListParts.of(
                                                ListColumn.number("Batch"),
                                                ListColumn.at("Roasted at"),
                                                new ListColumn("Coffee", Set.of(Fact.LOTS), KindsOfQuestions::careless))
                                        .text(TextStyle.PLAIN, "list.csv"))
                        .happening(KindsOfQuestions::threeLots)
                        .answering(KindsOfQuestions::eachLot),
                Kind.of(
                                "questions: two batches of a lot on the day that a score sheet names",
                                numbered(),
                                CorpusKinds.SHORT.text(TextStyle.PLAIN, "list.csv"),
                                ScoreParts.cups(TextStyle.PLAIN, "scores.csv", TASTED, ScoreParts.DAY_AND_LOT))
                        .happening(KindsOfQuestions::twiceTheSame)
                        .answering(KindsOfQuestions::eachCup),
                Kind.of(
                                "questions: a cool charge in °F or a hot one in °C, and no recording",
                                list(ListColumn.chargeFahrenheit("Charge temp"), ListColumn.drop("Drop", Clock.MINUTES))
                                        .text(TextStyle.PLAIN, "list.csv"))
                        .happening(KindsOfQuestions::coolCharges)
                        .answering("'Charge temp'", "charge temperature [°F]"));
    }

    /** Returns the roastery with each of its days moved to the third of a month or later, and none past the twelfth. */
    private static Roastery early(Roastery roastery) {
        List<LocalDate> days = List.copyOf(CurveParts.byDay(roastery).keySet());
        return moved(roastery, roast -> {
            LocalDate day = LocalDate.of(2031, 3, 3)
                    .plusDays(2L * days.indexOf(roast.chargedAt().toLocalDate()) % 8)
                    .plusMonths(2L * days.indexOf(roast.chargedAt().toLocalDate()) / 8);
            return day.atTime(roast.chargedAt().toLocalTime());
        });
    }

    private static Roastery moved(Roastery roastery, Function<Roast, LocalDateTime> charged) {
        List<Roast> roasts = roastery.batches().stream()
                .map(roast -> changed(roast, charged.apply(roast), roast.lot()))
                .toList();
        Map<Integer, LocalDate> days = new LinkedHashMap<>();
        roasts.forEach(roast -> days.put(roast.number(), roast.chargedAt().toLocalDate()));
        Map<Integer, LocalDate> tasted = new LinkedHashMap<>();
        roastery.tastings()
                .forEach(tasting -> tasted.merge(
                        tasting.cupping(),
                        days.get(tasting.batch()),
                        (one, other) -> one.isAfter(other) ? one : other));
        return new Roastery(
                roasts,
                roastery.tastings().stream()
                        .map(tasting -> new Tasting(
                                tasting.cupping(),
                                tasted.get(tasting.cupping()),
                                tasting.cupper(),
                                tasting.batch(),
                                tasting.code(),
                                tasting.scores()))
                        .toList());
    }

    private static Roast changed(Roast roast, LocalDateTime chargedAt, String lot) {
        return new Roast(
                roast.number(),
                chargedAt,
                lot,
                roast.greenKilograms(),
                roast.roastedKilograms(),
                roast.marks(),
                roast.readings(),
                roast.note());
    }

    /** Returns the roastery with a second machine, charged in the minute of the first where a day has two roasts left. */
    private static Roastery twoMachines(Roastery roastery) {
        Map<Integer, LocalDateTime> charged = new LinkedHashMap<>();
        CurveParts.byDay(roastery).values().forEach(day -> {
            for (int i = 0; i < day.size(); i++) {
                charged.put(day.get(i).number(), day.get(i - i % 2).chargedAt());
            }
        });
        return moved(roastery, roast -> charged.get(roast.number()));
    }

    private static String machine(Roast roast) {
        return roast.number() % 2 == 0 ? "north" : "south";
    }

    private static String onMachine(Roast roast) {
        return machine(roast) + " " + MINUTE.format(roast.chargedAt());
    }

    private static Map<String, String> eachJoin(Roastery roastery) {
        return roastery.batches().stream()
                .collect(Collectors.toMap(
                        roast -> "join." + onMachine(roast).replace(' ', '-'),
                        roast -> String.valueOf(roast.number())));
    }

    private static ListParts hourBehind() {
        return ListParts.of(
                ListColumn.number("Batch"),
                ListColumn.date("Date"),
                new ListColumn(
                        "Time",
                        Set.of(Fact.TIMES),
                        roast -> roast.chargedAt().minusHours(1).toLocalTime()),
                ListColumn.lot("Coffee"));
    }

    private static String cupper(Roastery roastery) {
        return ScoreParts.cuppers(roastery).get(0);
    }

    private static Roastery oneCupper(Roastery roastery) {
        return new Roastery(
                roastery.batches(),
                roastery.tastings().stream()
                        .filter(tasting -> tasting.cupper().equals(cupper(roastery)))
                        .toList());
    }

    private static Roastery oneCupping(Roastery roastery) {
        return new Roastery(
                roastery.batches(),
                roastery.tastings().stream()
                        .filter(tasting -> tasting.cupping() == 1)
                        .toList());
    }

    /** Returns the score sheet without the columns of these places. */
    private static Part scores(int... without) {
        return new Part(Set.of(Fact.SCORES), (roastery, folder, random) -> {
            Grid full = ScoreParts.cups(roastery, Words.ENGLISH, ScoreParts.NUMBER);
            Grid less = new Grid("scores");
            for (List<Object> row : full.rows()) {
                List<Object> cells = new ArrayList<>(row);
                for (int place : without) {
                    cells.remove(place);
                }
                less.row(cells);
            }
            TextStyle.PLAIN.write(less, folder.resolve("scores.csv"));
        });
    }

    private static Object careless(Roast roast) {
        return roast.number() % 5 < 2 ? roast.lot().toLowerCase(Locale.ROOT) : roast.lot();
    }

    /** Returns the roastery with fewer lots, so that each is roasted often. */
    private static Roastery threeLots(Roastery roastery) {
        List<String> lots =
                roastery.batches().stream().map(Roast::lot).distinct().limit(3).toList();
        return new Roastery(
                roastery.batches().stream()
                        .map(roast -> changed(roast, roast.chargedAt(), lots.get(roast.number() % lots.size())))
                        .toList(),
                List.of());
    }

    /** Returns the roastery with its drum charged at about 124 °C, which is about 255 °F. */
    private static Roastery coolCharges(Roastery roastery) {
        return new Roastery(
                roastery.batches().stream().map(KindsOfQuestions::cool).toList(), List.of());
    }

    private static Roast cool(Roast roast) {
        double much = ListColumn.atCharge(roast) - 121 - roast.number() % 7;
        return new Roast(
                roast.number(),
                roast.chargedAt(),
                roast.lot(),
                roast.greenKilograms(),
                roast.roastedKilograms(),
                roast.marks(),
                roast.readings().stream()
                        .map(reading -> new Reading(
                                reading.seconds(),
                                Cells.rounded(reading.beanCelsius() - (reading.seconds() <= 0 ? much : 0), 1),
                                reading.airCelsius(),
                                reading.gasPercent()))
                        .toList(),
                roast.note());
    }

    private static Map<String, String> eachLot(Roastery roastery) {
        Map<String, String> answers = new LinkedHashMap<>();
        roastery.batches().forEach(roast -> answers.put("'" + roast.lot() + "'", roast.lot()));
        return answers;
    }

    /** Returns the roastery with each roast that was not cupped being of the lot of one that was, on the same day. */
    private static Roastery twiceTheSame(Roastery roastery) {
        Set<Integer> cupped = roastery.tastings().stream().map(Tasting::batch).collect(Collectors.toSet());
        Map<LocalDate, List<Roast>> days = CurveParts.byDay(roastery);
        List<Roast> roasts = new ArrayList<>();
        for (Roast roast : roastery.batches()) {
            String lot = days.get(roast.chargedAt().toLocalDate()).stream()
                    .filter(other -> !cupped.contains(roast.number()) && cupped.contains(other.number()))
                    .map(Roast::lot)
                    .findFirst()
                    .orElse(roast.lot());
            roasts.add(changed(roast, roast.chargedAt(), lot));
        }
        return new Roastery(roasts, roastery.tastings());
    }

    private static Map<String, String> eachCup(Roastery roastery) {
        Map<String, String> answers = new LinkedHashMap<>();
        roastery.tastings()
                .forEach(tasting -> answers.put(
                        "of lot '" + ScoreParts.roast(roastery, tasting).lot() + "' roasted on "
                                + ScoreParts.roast(roastery, tasting)
                                        .chargedAt()
                                        .toLocalDate(),
                        String.valueOf(tasting.batch())));
        return answers;
    }
}
