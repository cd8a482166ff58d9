package parchment.period;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import parchment.display.Interruption;
import parchment.stats.series.DayRegression;
import parchment.stats.series.LevelChanges;
import parchment.stats.series.StepProfile;
import parchment.stats.series.WanderingDays;

/**
 * Searches the days of one machine for dates at which several indicators stepped at once.
 *
 * <p>Changes are added one at a time as long as the gain in likelihood is larger than steps gain by chance in rows drawn from the fit
 * without the change, its wandering days included (parametric bootstrap with sequential stopping, Besag and Clifford 1991). Of a
 * change that passes it is asked whether a slow climb, the time of year or the room's temperature explain as much. Given the number,
 * the dates are those of the best split by exact dynamic programming, polished on the full likelihood.
 */
final class ChangeSearch {
    /** Fewest roast days on either side of a change. */
    static final int SHORTEST = 4;

    static final int MOST = 6;
    static final int DRAWS = 199;
    static final int ENOUGH_EXCEEDING = 10;
    static final double LEVEL = 0.05;
    /** Minus twice the log likelihood by which a step must beat a slow change to be called a step. */
    static final double CLEARLY = 4;

    /** The 90 % point of chi-squared with one degree of freedom. */
    static final double SUPPORT = 2.71;

    /** What a change is best described as. */
    enum Shape {
        STEP,
        STEP_OR_SLOW,
        SLOW
    }

    /**
     * A change that was found.
     *
     * @param firstDay number of the first roast day after it
     * @param days numbers of the first days after it that the 90 % date set holds
     * @param chance how often steps gain as much by chance
     * @param shape what it is best described as
     * @param rival the slow change that explains most
     * @param supporting number of indicators that show it by themselves
     * @param inBeans how many of these say what the probe reads in beans
     */
    record Step(
            int firstDay, List<Integer> days, double chance, Shape shape, String rival, int supporting, int inBeans) {
        Step {
            days = List.copyOf(days);
        }
    }

    private final List<Indicator> indicators;
    private final int[] dayOfRow;
    private final double[] dates;
    private final double[] room;
    private final List<WanderingDays> wanderings = new ArrayList<>();
    private final List<SlowChange> accepted = new ArrayList<>();
    private final Random random;

    private ChangeSearch(List<Indicator> indicators, int[] dayOfRow, double[] dates, double[] room, long seed) {
        this.indicators = indicators;
        this.dayOfRow = dayOfRow;
        this.dates = dates;
        this.room = room;
        this.random = new Random(seed);
        for (Indicator indicator : indicators) {
            int[] days =
                    indicator.rows().stream().mapToInt(row -> dayOfRow[row]).toArray();
            wanderings.add(new WanderingDays(days, dates));
        }
    }

    /** A finished search: steps in order of time, the slow changes that were put in their place, in words. */
    record Result(List<Step> steps, List<String> slow, List<Indicator> adjusted) {
        Result {
            steps = List.copyOf(steps);
            slow = List.copyOf(slow);
            adjusted = List.copyOf(adjusted);
        }
    }

    /**
     * Searches.
     *
     * @param dayOfRow number of each batch's roast day, from 0, batches in order of time
     * @param dates date of each roast day, in days
     * @param room the room's temperature per batch, NaN where missing
     */
    static Result run(List<Indicator> indicators, int[] dayOfRow, double[] dates, double[] room, long seed) {
        ChangeSearch search = new ChangeSearch(indicators, dayOfRow, dates, room, seed);
        return search.run();
    }

    private Result run() {
        List<Step> steps = new ArrayList<>();
        int most = Math.min(MOST, dates.length / (2 * SHORTEST));
        for (int k = 0; k < most; k++) {
            List<Integer> there = steps.stream().map(Step::firstDay).toList();
            List<double[]> readings = indicators.stream().map(i -> i.y().raw()).toList();
            List<StepProfile> profiles = profiles(there);
            Gain gain = gain(profiles, readings, there);
            if (gain.firstDay < 0) {
                break;
            }
            List<DayRegression> without = fitted(readings, there, List.of());
            double chance = chance(gain, profiles, without, there);
            if (chance > LEVEL) {
                break;
            }
            SlowChange rival = rival(there, gain.firstDay);
            double slow = fitted(readings, there, rival.columns()).stream()
                            .mapToDouble(DayRegression::criterion)
                            .sum()
                    + 2.0 * indicators.size() * rival.columns().size();
            double step = gain.criterion + 2.0 * (indicators.size() + 1);
            Shape shape = slow < step ? Shape.SLOW : slow < step + CLEARLY ? Shape.STEP_OR_SLOW : Shape.STEP;
            if (shape == Shape.SLOW) {
                if (accepted.stream().anyMatch(one -> one.words().equals(rival.words()))) {
                    break;
                }
                accepted.add(rival);
                // Steps found before may have stood for the slow change: search again with it there.
                steps.clear();
                k = -1;
                continue;
            }
            List<Indicator> supporting = supporting(gain, without, readings, there);
            steps.add(new Step(gain.firstDay, List.of(), chance, shape, rival.words(), supporting.size(), (int)
                    supporting.stream().filter(Indicator::toldOfBeans).count()));
            steps = polished(steps);
        }
        List<Step> dated = new ArrayList<>();
        for (Step step : steps) {
            dated.add(new Step(
                    step.firstDay,
                    dateSet(step, steps),
                    step.chance,
                    step.shape,
                    step.rival,
                    step.supporting,
                    step.inBeans));
        }
        return new Result(dated, accepted.stream().map(SlowChange::words).toList(), adjusted());
    }

    /** Returns the indicators with the accepted slow changes among their columns. */
    private List<Indicator> adjusted() {
        List<Indicator> out = new ArrayList<>();
        for (Indicator indicator : indicators) {
            List<Indicator.Numbers> columns = new ArrayList<>(indicator.columns());
            List<String> names = new ArrayList<>(indicator.columnNames());
            for (SlowChange slow : accepted) {
                for (double[] column : slow.columns()) {
                    columns.add(new Indicator.Numbers(picked(column, indicator)));
                    names.add(slow.words());
                }
            }
            out.add(new Indicator(
                    indicator.name(), indicator.celsius(), indicator.rows(), indicator.y(), columns, names));
        }
        return out;
    }

    static double[] step(Indicator indicator, int[] dayOfRow, int firstDay) {
        double[] column = new double[indicator.size()];
        for (int i = 0; i < column.length; i++) {
            column[i] = dayOfRow[indicator.rows().get(i)] >= firstDay ? 1 : 0;
        }
        return column;
    }

    private static double[] picked(double[] column, Indicator indicator) {
        return indicator.rows().stream().mapToDouble(row -> column[row]).toArray();
    }

    private List<double[]> design(int j, List<Integer> steps, List<double[]> more) {
        Indicator indicator = indicators.get(j);
        List<double[]> columns = indicator.rawColumns();
        for (SlowChange slow : accepted) {
            slow.columns().forEach(column -> columns.add(picked(column, indicator)));
        }
        steps.forEach(first -> columns.add(step(indicator, dayOfRow, first)));
        more.forEach(column -> columns.add(picked(column, indicator)));
        return columns;
    }

    private List<DayRegression> fitted(List<double[]> readings, List<Integer> steps, List<double[]> more) {
        List<DayRegression> fits = new ArrayList<>();
        for (int j = 0; j < indicators.size(); j++) {
            fits.add(DayRegression.fit(wanderings.get(j), readings.get(j), design(j, steps, more)));
        }
        return fits;
    }

    /** The best further step: first day after it (-1 if none can be tried), gain, criterion with it. */
    private record Gain(int firstDay, double gain, double criterion) {}

    private List<StepProfile> profiles(List<Integer> steps) {
        List<StepProfile> profiles = new ArrayList<>();
        for (int j = 0; j < indicators.size(); j++) {
            List<Integer> rows = indicators.get(j).rows();
            int[] firstRow = new int[dates.length];
            for (int day = 0; day < firstRow.length; day++) {
                int row = day == 0 ? 0 : firstRow[day - 1];
                while (row < rows.size() && dayOfRow[rows.get(row)] < day) {
                    row++;
                }
                firstRow[day] = row;
            }
            profiles.add(new StepProfile(wanderings.get(j), design(j, steps, List.of()), firstRow));
        }
        return profiles;
    }

    private Gain gain(List<StepProfile> profiles, List<double[]> readings, List<Integer> steps) {
        double before = 0;
        double[] sums = new double[dates.length];
        int[] tried = new int[dates.length];
        for (int j = 0; j < profiles.size(); j++) {
            StepProfile.Best best = profiles.get(j).of(readings.get(j));
            before += best.without();
            double[] with = best.with();
            for (int day = 0; day < sums.length; day++) {
                sums[day] += Double.isNaN(with[day]) ? best.without() : with[day];
                tried[day] += Double.isNaN(with[day]) ? 0 : 1;
            }
        }
        for (int day = 0; day < sums.length; day++) {
            int here = day;
            if (tried[day] == 0
                    || day < SHORTEST
                    || day > dates.length - SHORTEST
                    || steps.stream().anyMatch(there -> Math.abs(there - here) < SHORTEST)) {
                sums[day] = Double.NaN;
            }
        }
        int day = best(sums);
        return day < 0 ? new Gain(-1, 0, before) : new Gain(day, before - sums[day], sums[day]);
    }

    private List<DayRegression> atVariancesOf(List<DayRegression> fits, List<double[]> readings, List<Integer> steps) {
        List<DayRegression> out = new ArrayList<>();
        for (int j = 0; j < fits.size(); j++) {
            out.add(fits.get(j).with(readings.get(j), design(j, steps, List.of())));
        }
        return out;
    }

    /** Returns the indicators that gain by themselves what chance would give one in ten. */
    private List<Indicator> supporting(
            Gain gain, List<DayRegression> without, List<double[]> readings, List<Integer> steps) {
        List<Integer> with = new ArrayList<>(steps);
        with.add(gain.firstDay);
        List<DayRegression> fits = fitted(readings, with, List.of());
        List<Indicator> supporting = new ArrayList<>();
        for (int j = 0; j < fits.size(); j++) {
            if (without.get(j).criterion() - fits.get(j).criterion() >= SUPPORT) {
                supporting.add(indicators.get(j));
            }
        }
        return supporting;
    }

    /** Returns the criterion summed over indicators for a step before each day; NaN where none can be tried. */
    private double[] scan(List<DayRegression> without, List<Integer> steps) {
        double[] sums = new double[dates.length];
        Arrays.fill(sums, Double.NaN);
        for (int day = SHORTEST; day <= dates.length - SHORTEST; day++) {
            int here = day;
            if (steps.stream().anyMatch(there -> Math.abs(there - here) < SHORTEST)) {
                continue;
            }
            double sum = 0;
            boolean any = false;
            for (int j = 0; j < without.size(); j++) {
                double value = without.get(j).criterionWith(step(indicators.get(j), dayOfRow, day));
                any |= !Double.isNaN(value);
                sum += Double.isNaN(value) ? without.get(j).criterion() : value;
            }
            sums[day] = any ? sum : Double.NaN;
        }
        return sums;
    }

    private static int best(double[] criteria) {
        int best = -1;
        for (int day = 0; day < criteria.length; day++) {
            if (!Double.isNaN(criteria[day]) && (best < 0 || criteria[day] < criteria[best])) {
                best = day;
            }
        }
        return best;
    }

    /** Returns how often rows drawn without a further step gain as much from one. */
    private double chance(Gain seen, List<StepProfile> profiles, List<DayRegression> without, List<Integer> steps) {
        double shared = SharedSurprise.of(indicators, without, dayOfRow.length);
        int exceeding = 0;
        for (int draw = 1; draw <= DRAWS; draw++) {
            Interruption.checkHere();
            double[] common = WanderingDays.normals(dayOfRow.length, random);
            List<double[]> readings = new ArrayList<>();
            for (int j = 0; j < indicators.size(); j++) {
                double[] own = WanderingDays.normals(indicators.get(j).size(), random);
                for (int i = 0; i < own.length; i++) {
                    double first = common[indicators.get(j).rows().get(i)];
                    own[i] =
                            j == 0 ? first : j == 1 ? shared * first + Math.sqrt(1 - shared * shared) * own[i] : own[i];
                }
                readings.add(without.get(j).drawn(own));
            }
            if (gain(profiles, readings, steps).gain >= seen.gain && ++exceeding >= ENOUGH_EXCEEDING) {
                return (double) exceeding / draw;
            }
        }
        return (exceeding + 1.0) / (DRAWS + 1);
    }

    /** Returns the slow change that explains most. */
    private SlowChange rival(List<Integer> steps, int firstDay) {
        int from =
                steps.stream().filter(s -> s < firstDay).mapToInt(s -> s).max().orElse(0);
        int to = steps.stream().filter(s -> s > firstDay).mapToInt(s -> s).min().orElse(dates.length);
        List<SlowChange> rivals = SlowChange.all(dates, dayOfRow, room, dates[from], dates[to - 1]);
        List<double[]> readings = indicators.stream().map(i -> i.y().raw()).toList();
        return Collections.min(
                rivals,
                Comparator.comparingDouble(rival -> fitted(readings, steps, rival.columns()).stream()
                                .mapToDouble(DayRegression::criterion)
                                .sum()
                        + 2.0 * indicators.size() * rival.columns().size()));
    }

    /** Moves the dates to the best split: that of exact dynamic programming on the days, and each polished given the others. */
    private List<Step> polished(List<Step> steps) {
        List<double[]> readings = indicators.stream().map(i -> i.y().raw()).toList();
        List<Integer> there =
                new ArrayList<>(steps.stream().map(Step::firstDay).sorted().toList());
        List<DayRegression> fits = fitted(readings, there, List.of());
        List<Integer> best = there;
        if (there.size() > 1) {
            List<Integer> exact = exact(fits, there);
            if (exact.size() == there.size() && criterion(fits, readings, exact) < criterion(fits, readings, there)) {
                best = exact;
            }
        }
        best = new ArrayList<>(best);
        for (int k = 0; k < best.size(); k++) {
            List<Integer> others = new ArrayList<>(best);
            others.remove(k);
            int day = best(scan(atVariancesOf(fits, readings, others), others));
            if (day >= 0) {
                best.set(k, day);
            }
        }
        Collections.sort(best);
        List<Step> moved = new ArrayList<>();
        List<Step> open = new ArrayList<>(steps);
        for (int day : best) {
            Step nearest = Collections.min(open, Comparator.comparingInt(s -> Math.abs(s.firstDay - day)));
            open.remove(nearest);
            moved.add(new Step(
                    day, List.of(), nearest.chance, nearest.shape, nearest.rival, nearest.supporting, nearest.inBeans));
        }
        return moved;
    }

    private double criterion(List<DayRegression> fits, List<double[]> readings, List<Integer> steps) {
        return atVariancesOf(fits, readings, steps).stream()
                .mapToDouble(DayRegression::criterion)
                .sum();
    }

    private List<Integer> exact(List<DayRegression> fits, List<Integer> steps) {
        List<double[]> series = new ArrayList<>();
        for (int j = 0; j < indicators.size(); j++) {
            List<double[]> columns = design(j, steps, List.of());
            series.add(DayMeans.of(
                    indicators.get(j), fits.get(j), columns, columns.size() - steps.size(), dayOfRow, dates.length));
        }
        return LevelChanges.exact(series, SHORTEST, steps.size()).positions(steps.size());
    }

    /** Returns the days of which the 90 % date set is made: those of highest likelihood, the step's size integrated out. */
    private List<Integer> dateSet(Step step, List<Step> all) {
        List<double[]> readings = indicators.stream().map(i -> i.y().raw()).toList();
        List<Integer> every = all.stream().map(Step::firstDay).toList();
        List<Integer> others =
                every.stream().filter(day -> day != step.firstDay).toList();
        List<DayRegression> without = atVariancesOf(fitted(readings, every, List.of()), readings, others);
        double[] criteria = scan(without, others);
        int from = others.stream()
                .filter(s -> s < step.firstDay)
                .mapToInt(s -> s)
                .max()
                .orElse(0);
        int to = others.stream()
                .filter(s -> s > step.firstDay)
                .mapToInt(s -> s)
                .min()
                .orElse(dates.length);
        double[] information = new double[criteria.length];
        for (int day = 0; day < information.length; day++) {
            information[day] = 1;
            for (int j = 0; j < without.size() && !Double.isNaN(criteria[day]); j++) {
                double own = without.get(j).informationOn(step(indicators.get(j), dayOfRow, day));
                information[day] *= own > 0 ? own : 1;
            }
        }
        return DateSet.of(criteria, information, from + 1, to);
    }
}
