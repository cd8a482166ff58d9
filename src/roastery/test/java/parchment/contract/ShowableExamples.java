package parchment.contract;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import parchment.align.Clock;
import parchment.align.Difference;
import parchment.align.Nearest;
import parchment.align.OneClock;
import parchment.align.OverlayChart;
import parchment.align.PaceChart;
import parchment.align.Shapes;
import parchment.align.SpreadSplit;
import parchment.align.Unusual;
import parchment.align.WarpChart;
import parchment.align.WhereTimeWent;
import parchment.calendar.RoastCalendar;
import parchment.calendar.machine.WrittenPeriods;
import parchment.card.BatchCard;
import parchment.card.LotCard;
import parchment.card.Overview;
import parchment.chart.Axis;
import parchment.chart.Line;
import parchment.chart.Panels;
import parchment.chart.Plot;
import parchment.control.Button;
import parchment.control.CheckBox;
import parchment.control.Choice;
import parchment.control.Choices;
import parchment.control.ControlBox;
import parchment.control.CountSlider;
import parchment.control.HtmlNote;
import parchment.control.OutputArea;
import parchment.control.RangeSlider;
import parchment.control.Slider;
import parchment.control.TextField;
import parchment.curve.CleanCurve;
import parchment.curve.ControlSteps;
import parchment.curve.Curve;
import parchment.curve.RateOfRise;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.page.ChosenNames;
import parchment.drift.LotYear;
import parchment.drift.ProbeShifts;
import parchment.drift.Twins;
import parchment.drift.Usual;
import parchment.drift.VarianceShares;
import parchment.drift.Watch;
import parchment.drift.Week;
import parchment.drift.found.WeekCause;
import parchment.drift.found.YearPart;
import parchment.evidence.Desirability;
import parchment.evidence.DestinationOrPath;
import parchment.evidence.Evidence;
import parchment.evidence.Halo;
import parchment.evidence.Screen;
import parchment.evidence.TradeOff;
import parchment.feature.BatchTable;
import parchment.feature.Explorer;
import parchment.feature.Features;
import parchment.gather.Gather;
import parchment.learning.KindsOfRoast;
import parchment.learning.SecondLook;
import parchment.learning.Yardstick;
import parchment.lesson.AnswerKey;
import parchment.lesson.BeforeAndAfter;
import parchment.lesson.ClassResults;
import parchment.lesson.CupsTable;
import parchment.lesson.Lesson;
import parchment.lesson.WrittenTimes;
import parchment.logbook.Batch;
import parchment.logbook.CalendarStrip;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.period.ProbeChange;
import parchment.phase.BatchChart;
import parchment.phase.LearntHabit;
import parchment.phase.MarkHabit;
import parchment.phase.MarkReport;
import parchment.phase.Moments;
import parchment.phase.PhaseTable;
import parchment.phase.Phases;
import parchment.picture.BoxPlot;
import parchment.picture.HeatMap;
import parchment.picture.Histogram;
import parchment.quantity.Mass;
import parchment.stats.Estimate;
import parchment.trial.SealedExamples;
import parchment.trial.TrialExamples;
import parchment.virtual.RoastPlan;
import parchment.virtual.VirtualRoastery;

/**
 * The results that stand for all results. Add a line to {@link #ROOTS} for a new public result: how it is made from a logbook. What can
 * be had from a result through methods without arguments is found from there.
 */
final class ShowableExamples {
    /** By name, so that a failure says which; made once each, from the logbook of a {@link HostileLogbook}. */
    static final Map<String, Function<Logbook, Object>> ROOTS = new LinkedHashMap<>();

    static {
        ROOTS.put("Logbook", logbook -> logbook);
        ROOTS.put("CalendarStrip", CalendarStrip::of);
        ROOTS.put("Gather", logbook -> gathered());
        ROOTS.put("RoastCalendar", RoastCalendar::of);
        ROOTS.put("WrittenPeriods", WrittenPeriods::of);
        ROOTS.put("MarkHabit", MarkHabit::of);
        ROOTS.put("PhaseTable", PhaseTable::of);
        ROOTS.put("Phases", logbook -> Phases.of(batch(logbook)));
        ROOTS.put("BatchChart", logbook -> BatchChart.of(batch(logbook)));
        ROOTS.put("OverlayChart", logbook -> OverlayChart.of(logbook, Clock.SINCE_CHARGE));
        ROOTS.put("PaceChart", PaceChart::of);
        ROOTS.put("OneClock", logbook -> OneClock.of(logbook, Clock.SINCE_CHARGE));
        ROOTS.put("Shapes", logbook -> Shapes.of(OneClock.of(logbook, Clock.SINCE_CHARGE)));
        ROOTS.put("WarpChart", logbook -> WarpChart.of(OneClock.of(logbook, Clock.SINCE_CHARGE)));
        ROOTS.put("Difference", Difference::betweenLots);
        ROOTS.put("Nearest", logbook -> Nearest.to(batch(logbook), logbook));
        ROOTS.put("SpreadSplit", SpreadSplit::of);
        ROOTS.put("Unusual", Unusual::of);
        ROOTS.put("KindsOfRoast", KindsOfRoast::of);
        ROOTS.put("SecondLook", SecondLook::of);
        ROOTS.put("Yardstick", logbook -> Yardstick.of(logbook.scored("sweetness", "overall"), logbook));
        ROOTS.put("WhereTimeWent", logbook -> WhereTimeWent.of(batch(logbook), logbook));
        ROOTS.put("LearntHabit", LearntHabit::of);
        ROOTS.put("MarkReport", MarkReport::of);
        ROOTS.put("Moments", logbook -> Moments.of(logbook));
        ROOTS.put("Explorer", Explorer::of);
        ROOTS.put(
                "ChosenNames", logbook -> ChosenNames.among("batch", names(logbook), names(logbook), "with chosen()"));
        ROOTS.put("Slider", logbook -> Slider.of(logbook.name(), 196, 212).withUnit("°C"));
        ROOTS.put("CountSlider", logbook -> CountSlider.of(logbook.name(), 1, 9));
        ROOTS.put(
                "RangeSlider", logbook -> RangeSlider.of(logbook.name(), 2, 12).withUnit("kg"));
        ROOTS.put("Choice", logbook -> Choice.of("batch", someNames(logbook)).showing(name -> name));
        ROOTS.put(
                "Choices", logbook -> Choices.of("batches", someNames(logbook)).startingAt(someNames(logbook)));
        ROOTS.put("CheckBox", logbook -> CheckBox.of(logbook.name()).ticked());
        ROOTS.put("Button", logbook -> Button.of(logbook.name()));
        ROOTS.put("TextField", logbook -> TextField.of("batch").startingAt(logbook.name()));
        ROOTS.put("HtmlNote", logbook -> HtmlNote.ofText(logbook.name()));
        ROOTS.put("OutputArea", logbook -> {
            OutputArea area = OutputArea.empty();
            area.show(logbook);
            area.add(logbook.name());
            return area;
        });
        ROOTS.put(
                "ControlBox",
                logbook -> ControlBox.column(CheckBox.of(logbook.name()), HtmlNote.ofText(logbook.name())));
        ROOTS.put("BatchTable", logbook -> BatchTable.of(logbook, Features.dropTemperature()));
        ROOTS.put("FeatureList", logbook -> Features.all());
        ROOTS.put("TrialAnswer", logbook -> TrialExamples.answer());
        ROOTS.put("TrialFolder", logbook -> SealedExamples.folder());
        ROOTS.put("DrawnTarget", logbook -> SealedExamples.target());
        ROOTS.put("SealCheck", logbook -> SealedExamples.check());
        ROOTS.put("BatchSheets", logbook -> SealedExamples.sheets());
        ROOTS.put("SealedSlips", logbook -> SealedExamples.slips());
        ROOTS.put("AnsweredTrial", SealedExamples::answered);
        ROOTS.put("CoinFlip", SealedExamples::flip);
        ROOTS.put("TrialSize", logbook -> TrialExamples.size());
        ROOTS.put("Evidence", logbook -> Evidence.of(attribute(logbook), Features.dropTemperature(), logbook));
        ROOTS.put(
                "EvidenceAt",
                logbook -> Evidence.of(attribute(logbook), Features.dropTemperature(), logbook)
                        .at(205));
        ROOTS.put("Screen", Screen::of);
        ROOTS.put("Overview", Overview::of);
        ROOTS.put("ProbeShifts", ProbeShifts::of);
        ROOTS.put("Twins", logbook -> {
            Twins twins = Twins.of(logbook);
            return List.of(twins, twins.repeatability(Features.browningTime()));
        });
        ROOTS.put("Usual", logbook -> Usual.of(batch(logbook), logbook));
        ROOTS.put("Watch", logbook -> Watch.of(logbook, Features.dropTime()));
        ROOTS.put(
                "VarianceShares",
                logbook -> List.of(
                        VarianceShares.of(Features.dropTime(), logbook),
                        VarianceShares.of(attribute(logbook), logbook)));
        ROOTS.put("LotYear", logbook -> {
            String lot = batch(logbook).lot().orElseThrow();
            return List.of(LotYear.of(lot, Features.dropTime(), logbook), LotYear.of(lot, attribute(logbook), logbook));
        });
        ROOTS.put(
                "YearPart",
                logbook ->
                        new YearPart("<b>", YearPart.Verdict.SUM_ONLY, new Estimate("<b>", 1, 0.2, 30), "<b>", "<b>"));
        ROOTS.put("TwinsGroup", logbook -> new Twins.Group("<b>", List.of(batch(logbook))));
        ROOTS.put("Week", logbook -> {
            String lot = batch(logbook).lot().orElseThrow();
            return Week.of(logbook).withOrder(lot, Mass.kilograms(5));
        });
        ROOTS.put(
                "WeekCause",
                logbook -> new WeekCause(
                        WeekCause.Kind.DRIFT,
                        WeekCause.Sure.CLEAR,
                        "<b>",
                        LocalDate.of(2025, 3, 4),
                        "<b>",
                        "<b>",
                        "<b>",
                        List.of("<b>")));
        ROOTS.put("LotCard", logbook -> LotCard.of(batch(logbook).lot().orElseThrow(), logbook));
        ROOTS.put("BatchCard", logbook -> BatchCard.of(batch(logbook), logbook));
        ROOTS.put(
                "ProbeChange",
                logbook -> new ProbeChange(
                        "<b>",
                        ProbeChange.Kind.FOUND_AND_WRITTEN,
                        LocalDate.of(2025, 3, 4),
                        LocalDate.of(2025, 3, 4),
                        LocalDate.of(2025, 3, 7),
                        List.of(new Estimate("<b>", 1, 0.2, 30)),
                        0.005,
                        "<b>"));
        ROOTS.put("Halo", Halo::of);
        ROOTS.put("DestinationOrPath", logbook -> DestinationOrPath.of(attribute(logbook), logbook));
        ROOTS.put("Desirability", logbook -> Desirability.larger(4, 8));
        ROOTS.put("TradeOff", logbook -> {
            List<String> attributes = logbook.attributes().isEmpty()
                    ? List.of("acidity", "sweetness")
                    : List.copyOf(logbook.attributes());
            return TradeOff.of(
                    attributes.subList(0, Math.min(2, attributes.size())), Features.dropTemperature(), logbook);
        });
        ROOTS.put("MarkPrediction", logbook -> LearntHabit.of(logbook).predict(batch(logbook), MarkKind.YELLOWING));
        ROOTS.put("CleanCurve", logbook -> CleanCurve.of(curve(logbook)));
        ROOTS.put("RateOfRise", logbook -> RateOfRise.of(curve(logbook)));
        ROOTS.put("ControlSteps", logbook -> ControlSteps.of(curve(logbook)));
        ROOTS.put("Table", logbook -> Table.titled("<b>").withText("<b>", List.of("<b>"), word -> word));
        ROOTS.put(
                "Report",
                logbook -> Report.titled("<b>")
                        .say("<b>")
                        .caution("<b>")
                        .add(logbook)
                        .fold(Report.titled("<b>").say("<b>")));
        ROOTS.put("InShort", logbook -> new InShort("<b>", "<b>", "<b>"));
        ROOTS.put("Plot", logbook -> plot());
        ROOTS.put("Panels", logbook -> Panels.stacked("<b>", List.of(plot())));
        ROOTS.put("Histogram", logbook -> Histogram.of(Features.dropTemperature(), logbook));
        ROOTS.put("BoxPlot", logbook -> BoxPlot.byLot(Features.dropTemperature(), logbook));
        ROOTS.put("HeatMap", logbook -> HeatMap.of(Features.dropTemperature(), Features.developmentTime(), logbook));
        ROOTS.put("RoastPlan", logbook -> RoastPlan.of("lot,drop temperature [°C]\nStone Bridge,201\n", "plan.csv"));
        ROOTS.put(
                "VirtualLogbook",
                logbook -> VirtualRoastery.hillside().withBatches(4).run());
        ROOTS.put("Lesson", logbook -> Lesson.open(2, 1));
        ROOTS.put("PlanSheet", logbook -> Lesson.open(9, 1).plan("<b>", "203", "198"));
        ROOTS.put("PlanTasted", logbook -> {
            Lesson last = Lesson.open(9, 1);
            return last.roast(last.plan("Cinder Ridge", "203", "198", "209"));
        });
        ROOTS.put("Reply", logbook -> Lesson.open(2, 1).check("development", "<script>alert(1)</script>"));
        ROOTS.put("AnswerKey", logbook -> AnswerKey.of(2, 1));
        ROOTS.put("Envelope", logbook -> lesson().openEnvelope());
        ROOTS.put("BeforeAndAfter", logbook -> BeforeAndAfter.of(logbook, "2024-10-07", Features.massLoss()));
        ROOTS.put("WrittenTimes", logbook -> WrittenTimes.of(logbook, MarkKind.FIRST_CRACK_START));
        ROOTS.put("ClassResults", logbook -> results());
        ROOTS.put("AnswerSheet", logbook -> lesson().answers());
        ROOTS.put("CupsTable", logbook -> CupsTable.of("sweetness", logbook, logbook.lastWithCurve()));
        NumericExamples.addTo(ROOTS);
    }

    private static ClassResults results() {
        try {
            Path folder = Files.createTempDirectory("answers");
            lesson().handIn("<script>alert(1)</script>", folder);
            return ClassResults.read(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Lesson lesson() {
        Lesson lesson = Lesson.open(2, 1);
        lesson.check("whose pen", "<img src=x onerror=alert(1)>");
        lesson.claim("lateness", 1, 9);
        return lesson;
    }

    /** At most so many of one class are looked at, and so many members of a list. */
    private static final int OF_EACH = 4;

    private static List<String> names(Logbook logbook) {
        return logbook.batches().stream().map(Batch::name).toList();
    }

    /** A control needs something to choose from, which a logbook without batches does not have. */
    private static List<String> someNames(Logbook logbook) {
        return names(logbook).isEmpty() ? List.of("no batch") : names(logbook);
    }

    private ShowableExamples() {}

    private static String attribute(Logbook logbook) {
        return logbook.scored("sweetness", HostileLogbook.ATTRIBUTE);
    }

    private static Plot plot() {
        return Plot.of("<script>alert(1)</script>", Axis.number("<b>", "°C"), Axis.number("\"><img>", "s"))
                .with(Line.of("]]><b>", new double[] {1, 2, 3}, new double[] {1, 4, 2}))
                .withNote("<b>");
    }

    /** Returns a batch to ask about: the fourth, the last of a logbook with fewer. */
    private static Batch batch(Logbook logbook) {
        List<Batch> batches = logbook.batches();
        if (batches.isEmpty()) {
            throw new NoBatchToAskAbout();
        }
        return batches.get(Math.min(3, batches.size() - 1));
    }

    /** Says that an example cannot be made at all of a logbook, which is no answer of the product. */
    static final class NoBatchToAskAbout extends RuntimeException {
        private static final long serialVersionUID = 1;

        NoBatchToAskAbout() {
            super("The logbook has no batch that this could be asked about.");
        }
    }

    private static Curve curve(Logbook logbook) {
        return batch(logbook).beanTemperature().orElseThrow();
    }

    /** Returns every result found, with the way to it, as in "Evidence.facts". */
    static Map<Showable, String> found(Logbook logbook) {
        List<Root> roots = new ArrayList<>();
        ROOTS.forEach((name, make) -> flat(make.apply(logbook)).forEach(value -> roots.add(new Root(name, value))));
        return reachedFrom(roots);
    }

    /** A result that is made of a logbook, under its name in {@link #ROOTS}. */
    record Root(String name, Object value) {}

    /** Returns the given results and what can be had from them, with the way to each. */
    static Map<Showable, String> reachedFrom(List<Root> roots) {
        Map<Object, String> seen = new IdentityHashMap<>();
        Map<Class<?>, Integer> counted = new HashMap<>();
        Deque<Object> open = new ArrayDeque<>();
        Map<Showable, String> found = new IdentityHashMap<>();
        roots.forEach(root -> {
            seen.put(root.value(), root.name());
            open.add(root.value());
        });
        while (!open.isEmpty()) {
            Object value = open.remove();
            String way = String.valueOf(seen.get(value));
            if (value instanceof Showable showable) {
                found.put(showable, way);
            }
            members(value).forEach((name, member) -> {
                if (!seen.containsKey(member) && counted.merge(member.getClass(), 1, Integer::sum) <= OF_EACH) {
                    seen.put(member, way + "." + name);
                    open.add(member);
                }
            });
        }
        return found;
    }

    private static Map<String, Object> members(Object value) {
        Map<String, Object> members = new LinkedHashMap<>();
        for (Method method : value.getClass().getMethods()) {
            if (method.getParameterCount() == 0
                    && !Modifier.isStatic(method.getModifiers())
                    && Modifier.isPublic(method.getDeclaringClass().getModifiers())
                    && method.getDeclaringClass().getName().startsWith("parchment.")
                    && !Set.of("shownAs", "iterator", "hashCode").contains(method.getName())) {
                try {
                    int i = 0;
                    for (Object member : flat(method.invoke(value))) {
                        members.put(method.getName() + (i++ == 0 ? "" : "[" + i + "]"), member);
                    }
                } catch (ReflectiveOperationException e) {
                    // A question that this value cannot answer, such as a peak where there is none, says so by
                    // throwing.
                    continue;
                }
            }
        }
        return members;
    }

    /** Returns the value itself, or its members where it is several. */
    static List<Object> flat(Object value) {
        List<Object> flat = new ArrayList<>();
        if (value instanceof Optional<?> optional) {
            optional.ifPresent(inner -> flat.addAll(flat(inner)));
        } else if (value instanceof Collection<?> collection) {
            collection.stream().limit(OF_EACH).forEach(inner -> flat.addAll(flat(inner)));
        } else if (value != null && value.getClass().getName().startsWith("parchment.")) {
            flat.add(value);
        }
        return flat;
    }

    static Set<String> classesOf(Set<Showable> found) {
        Set<String> names = new TreeSet<>();
        found.forEach(value -> names.add(value.getClass().getName()));
        return names;
    }

    /** The gathering of a folder whose every name and note holds markup. */
    private static Gather gathered() {
        try {
            Path folder = Files.createTempDirectory("gathered");
            Gather gather = Gather.of(HostileLogbook.write(folder.resolve("hostile")));
            gather.text();
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
            return gather;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
