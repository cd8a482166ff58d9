package parchment.gather.corpus;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.StrangeKind.Fact;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.quantity.Temperature;

/**
 * Compares a gathered logbook with what truly happened, item by item.
 *
 * <p>An item is a curve of a batch, a row, its day, its minute, its lot, a mass, a mark, one cupper's scores of a cup, or a cup's means. Each is
 * right; or it was left out or is wrong, and the report names it by its batch, its file or its column; or neither, which is in silence.
 */
final class CorpusScore {
    /** Says what became of an item. */
    enum Verdict {
        RIGHT,
        /** Left out, and the report says so. */
        NAMED,
        WRONG_BUT_NAMED,
        LEFT_OUT_IN_SILENCE,
        WRONG_IN_SILENCE
    }

    /**
     * Holds what became of one item.
     *
     * @param fact what it is
     * @param batch the batch's number, or 0 for a batch that never was
     * @param verdict what became of it
     * @param words what was found, for a reader
     */
    record Item(Fact fact, int batch, Verdict verdict, String words) {}

    private static final double MASS_SHARE = 0.005;
    private static final double MARK_SECONDS = 1.5;
    private static final double MINUTE = 60;
    private static final double DEGREES = 0.6;

    private final Roastery roastery;
    private final Set<Fact> facts;
    private final BiPredicate<Roast, Fact> tells;
    private final GatherEntry.Gathered gathered;
    private final NamedLosses losses;
    private final List<Item> items = new ArrayList<>();

    private CorpusScore(
            Roastery roastery, Set<Fact> facts, BiPredicate<Roast, Fact> tells, GatherEntry.Gathered gathered) {
        this.tells = tells;
        this.roastery = roastery;
        this.facts = facts;
        this.gathered = gathered;
        this.losses = new NamedLosses(gathered.report(), gathered.files());
    }

    /** Compares all items that a folder of a kind held. */
    static CorpusScore of(Roastery roastery, StrangeKind kind, GatherEntry.Gathered gathered) {
        return of(roastery, kind.facts(), (roast, fact) -> kind.tells(roastery, roast, fact), gathered);
    }

    /** Compares all items of some facts. */
    static CorpusScore of(
            Roastery roastery, Set<Fact> facts, BiPredicate<Roast, Fact> tells, GatherEntry.Gathered gathered) {
        CorpusScore score = new CorpusScore(roastery, facts, tells, gathered);
        score.compare();
        return score;
    }

    List<Item> items() {
        return List.copyOf(items);
    }

    double share(Verdict verdict) {
        return items.isEmpty() ? 0 : 100.0 * count(verdict) / items.size();
    }

    long count(Verdict verdict) {
        return items.stream().filter(item -> item.verdict() == verdict).count();
    }

    /** Returns, for each fact that is not wholly right, how many items were not and an example. */
    String failures() {
        Map<Fact, List<Item>> failed = items.stream()
                .filter(item -> item.verdict() != Verdict.RIGHT)
                .collect(Collectors.groupingBy(Item::fact, () -> new EnumMap<>(Fact.class), Collectors.toList()));
        return failed.entrySet().stream()
                .map(entry -> {
                    Item first = entry.getValue().get(0);
                    long all = items.stream()
                            .filter(item -> item.fact() == entry.getKey())
                            .count();
                    return String.format(
                            Locale.ROOT,
                            "%s %d/%d (%s: %d %s)",
                            entry.getKey().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                            entry.getValue().size(),
                            all,
                            first.verdict().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                            first.batch(),
                            first.words());
                })
                .collect(Collectors.joining("; "));
    }

    private void compare() {
        List<Batch> batches = gathered.logbook().map(Logbook::batches).orElse(List.of());
        BatchMatch match = BatchMatch.of(roastery, batches, facts.contains(Fact.BATCHES));
        for (Roast roast : roastery.batches()) {
            Optional<Batch> batch = match.of(roast);
            if (facts.contains(Fact.BATCHES)) {
                add(Fact.BATCHES, roast, batch.isPresent(), false, "no batch of that number");
            }
            compare(roast, batch);
        }
        for (Batch extra : match.extra()) {
            boolean named = losses.names(extra.name());
            items.add(new Item(
                    Fact.BATCHES,
                    0,
                    named ? Verdict.WRONG_BUT_NAMED : Verdict.WRONG_IN_SILENCE,
                    "a batch that never was: " + extra.name()));
        }
        new ScoreComparison(roastery, facts, gathered.logbook(), match, this::add).compare();
    }

    private void compare(Roast roast, Optional<Batch> batch) {
        for (CurveComparison.Line line : CurveComparison.LINES) {
            if (facts.contains(line.fact())) {
                CurveComparison.Agreement agreement = CurveComparison.of(roast, batch, line);
                add(line.fact(), roast, agreement.right(), agreement.there(), agreement.words());
            }
        }
        text(Fact.LOTS, roast, Optional.of(roast.lot()), batch.flatMap(Batch::lot));
        if (facts.contains(Fact.DAYS)) {
            Optional<String> day = batch.flatMap(Batch::roastDay).map(Object::toString);
            text(Fact.DAYS, roast, Optional.of(roast.chargedAt().toLocalDate().toString()), day);
        }
        if (facts.contains(Fact.TIMES)) {
            // A batch whose day alone is known stands at midnight.
            Optional<Double> off = batch.flatMap(Batch::roastedAt)
                    .filter(at -> at.toLocalTime().toSecondOfDay() != 0)
                    .map(at -> Math.abs((double) Duration.between(roast.chargedAt(), at.toLocalDateTime())
                            .toSeconds()));
            add(
                    Fact.TIMES,
                    roast,
                    off.filter(seconds -> seconds <= MINUTE).isPresent(),
                    off.isPresent(),
                    roast.chargedAt() + " became "
                            + batch.flatMap(Batch::roastedAt)
                                    .map(Object::toString)
                                    .orElse("nothing"));
        }
        mass(
                Fact.GREEN_MASSES,
                roast,
                roast.greenKilograms(),
                batch.flatMap(b -> b.conditions().greenMass()));
        mass(
                Fact.ROASTED_MASSES,
                roast,
                roast.roastedKilograms(),
                batch.flatMap(b -> b.conditions().roastedMass()));
        mark(Fact.YELLOWING, roast, MarkKind.YELLOWING, batch);
        mark(Fact.FIRST_CRACK, roast, MarkKind.FIRST_CRACK_START, batch);
        mark(Fact.DROP, roast, MarkKind.DROP, batch);
        charge(roast, batch);
    }

    private void charge(Roast roast, Optional<Batch> batch) {
        if (facts.contains(Fact.CHARGE_TEMPERATURES)) {
            double truth = ListColumn.atCharge(roast);
            double found = batch.flatMap(b -> b.conditions().chargeTemperature())
                    .map(Temperature::celsius)
                    .orElse(Double.NaN);
            boolean right = Math.abs(found - truth) <= DEGREES;
            add(Fact.CHARGE_TEMPERATURES, roast, right, !Double.isNaN(found), truth + " °C became " + found);
        }
    }

    private void text(Fact fact, Roast roast, Optional<String> truth, Optional<String> found) {
        if (facts.contains(fact)) {
            boolean right = found.map(NamedLosses::composed).equals(truth.map(NamedLosses::composed));
            add(fact, roast, right, found.isPresent(), truth.orElse("") + " became " + found.orElse("nothing"));
        }
    }

    private void mass(Fact fact, Roast roast, double truth, Optional<Mass> found) {
        if (facts.contains(fact)) {
            double mass = found.map(m -> m.in(MassUnit.KILOGRAM)).orElse(Double.NaN);
            boolean right = Math.abs(mass - truth) <= MASS_SHARE * truth;
            add(fact, roast, right, found.isPresent(), truth + " kg became " + mass);
        }
    }

    private void mark(Fact fact, Roast roast, MarkKind kind, Optional<Batch> batch) {
        if (facts.contains(fact)) {
            double truth = roast.marks().get(kind);
            double found = batch.flatMap(b -> b.writtenMark(kind))
                    .map(elapsed -> elapsed.seconds())
                    .orElse(Double.NaN);
            boolean there = !Double.isNaN(found);
            add(fact, roast, Math.abs(found - truth) <= MARK_SECONDS, there, truth + " s became " + found);
        }
    }

    private void add(Fact fact, Roast roast, boolean right, boolean there, String words) {
        if (!tells.test(roast, fact)) {
            return;
        }
        Verdict verdict;
        String said = "";
        if (right) {
            verdict = Verdict.RIGHT;
        } else {
            Optional<String> line = losses.line(roast, fact);
            boolean named = line.isPresent();
            said = line.map(found -> " [said: " + found.strip() + "]").orElse("");
            verdict = there
                    ? (named ? Verdict.WRONG_BUT_NAMED : Verdict.WRONG_IN_SILENCE)
                    : (named ? Verdict.NAMED : Verdict.LEFT_OUT_IN_SILENCE);
        }
        items.add(new Item(fact, roast.number(), verdict, words + said));
    }

    /** Returns the facts that have an item. */
    Set<Fact> compared() {
        Set<Fact> compared = new HashSet<>();
        items.forEach(item -> compared.add(item.fact()));
        return compared.isEmpty() ? EnumSet.noneOf(Fact.class) : EnumSet.copyOf(compared);
    }
}
