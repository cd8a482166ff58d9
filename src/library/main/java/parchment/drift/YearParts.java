package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.drift.found.YearPart;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Estimate;

/** Tells the parts of a lot's year from a fit, each as far as the logbook can tell it from the others. */
final class YearParts {
    private static final int LEAST_DAYS = 5;
    private static final double LEAST_SPAN = 45;
    /** Days of the year held against each other, by the name of their column. */
    static final String[][] WAVE = {{"mid-January", "mid-July"}, {"mid-April", "mid-October"}};

    private final String lot;
    private final Response response;
    private final LotRows rows;
    private final TemperatureUnit reader;
    private final LotYear.Assumption assumption;
    private final Optional<String> reference;

    YearParts(
            String lot,
            Response response,
            LotRows rows,
            TemperatureUnit reader,
            LotYear.Assumption assumption,
            Optional<String> reference) {
        this.lot = lot;
        this.response = response;
        this.rows = rows;
        this.reader = reader;
        this.assumption = assumption;
        this.reference = reference;
    }

    List<YearPart> of(YearModel fitted) {
        List<YearPart> found = new ArrayList<>();
        found.add(ageing(fitted));
        found.addAll(season(fitted));
        for (YearModel.Column column : fitted.columns()) {
            if (column.part == YearModel.Part.ROOM || column.part == YearModel.Part.PERIOD) {
                int place = fitted.columns().indexOf(column);
                Estimate estimate = fitted.term(place);
                boolean free = fitted.regression().kept(place) && fitted.inflation(place) <= YearModel.TOO_ALIKE;
                found.add(
                        free
                                ? new YearPart(column.name, YearPart.Verdict.TOLD, estimate, shown(estimate), "")
                                : together(column.name, fitted, place));
            }
        }
        return List.copyOf(found);
    }

    private YearPart ageing(YearModel fitted) {
        String name = "change per 100 days since arrival";
        int place = fitted.place(YearModel.Part.AGE, lot);
        if (place < 0 || rows.daysOf(lot) < LEAST_DAYS || rows.spanOf(lot) < LEAST_SPAN) {
            return new YearPart(
                    name,
                    YearPart.Verdict.CANNOT_TELL,
                    nothing(name),
                    "",
                    String.format(
                            Locale.ROOT,
                            "%s has this number on %d roast days over %.0f days; %d roast days over %.0f days are needed.",
                            lot,
                            rows.daysOf(lot),
                            rows.spanOf(lot),
                            LEAST_DAYS,
                            LEAST_SPAN));
        }
        if (!fitted.regression().kept(place) || fitted.inflation(place) > YearModel.TOO_ALIKE) {
            return together(name, fitted, place);
        }
        Estimate sum = fitted.term(place);
        boolean season = fitted.has(YearModel.Part.SEASON);
        String cuppers = response.kind() == Response.Kind.SCORE ? ", a drift of all cuppers together" : "";
        if (!season) {
            return new YearPart(
                    name,
                    YearPart.Verdict.SUM_ONLY,
                    sum,
                    shown(sum),
                    "This is the sum of ageing, drift of the machine, time of year and the room" + cuppers
                            + ": the logbook does not hold 24 months of roasting in nearly every month, so they cannot be told apart.");
        }
        Optional<Integer> anchor = reference
                .map(other -> fitted.place(YearModel.Part.AGE, other))
                .filter(other -> other >= 0 && fitted.regression().kept(other));
        if (anchor.isPresent()) {
            Estimate own = fitted.difference(place, anchor.get());
            return new YearPart(
                    "ageing per 100 days",
                    YearPart.Verdict.TOLD,
                    own,
                    shown(own),
                    "Beyond what the reference coffee " + reference.orElse("")
                            + " moved by, which is taken not to age.");
        }
        if (assumption == LotYear.Assumption.MACHINE_DID_NOT_DRIFT) {
            return new YearPart(
                    "ageing per 100 days",
                    YearPart.Verdict.TOLD,
                    sum,
                    shown(sum),
                    "Told on the stated assumption that the machine did not drift; nothing in the logbook can check it.");
        }
        return new YearPart(
                name,
                YearPart.Verdict.SUM_ONLY,
                sum,
                shown(sum),
                "This is the sum of ageing and a steady drift of the machine" + cuppers
                        + ": date is arrival plus age, so no number of batches tells them apart. A coffee kept so that it does"
                        + " not age and roasted now and then would.");
    }

    private List<YearPart> season(YearModel fitted) {
        if (!fitted.has(YearModel.Part.SEASON) && !rows.showsMostOfAYear()) {
            return List.of(new YearPart(
                    "time of year",
                    YearPart.Verdict.CANNOT_TELL,
                    nothing("time of year"),
                    "",
                    String.format(
                            Locale.ROOT,
                            "A season needs 24 months of roasting in nearly every month of the year; there are %.0f.",
                            rows.span() / 30.44)));
        }
        Optional<YearModel> together = Optional.empty();
        List<YearPart> parts = new ArrayList<>();
        for (String[] pair : WAVE) {
            String name = pair[0] + " against " + pair[1];
            int place = fitted.place(YearModel.Part.SEASON, pair[0]);
            if (place >= 0 && fitted.regression().kept(place) && fitted.inflation(place) <= YearModel.TOO_ALIKE) {
                Estimate estimate = fitted.term(place);
                parts.add(new YearPart(
                        name,
                        YearPart.Verdict.TOLD,
                        estimate,
                        shown(estimate),
                        rows.has(YearModel.Part.ROOM)
                                ? "As far as the room's readings and what the roaster did do not carry it."
                                : "As far as what the roaster did does not carry it."));
            } else {
                together = together.or(() -> Optional.of(rows.fitTogether()));
                parts.add(sum(name, pair[0], together.get()));
            }
        }
        return parts;
    }

    /** Tells the sum of the time of year and what moved with it. */
    private YearPart sum(String name, String column, YearModel together) {
        int place = together.place(YearModel.Part.SEASON, column);
        if (!together.regression().kept(place) || together.inflation(place) > YearModel.TOO_ALIKE) {
            return together(name, together, place);
        }
        Estimate estimate = together.term(place);
        String cuppers = response.kind() == Response.Kind.SCORE ? ", a drift of all cuppers together" : "";
        return new YearPart(
                name,
                YearPart.Verdict.SUM_ONLY,
                estimate,
                shown(estimate),
                rows.showsSeason()
                        ? "This is the sum of the time of year and the room's temperature and humidity, which moved together in this"
                                + " logbook."
                        : String.format(
                                Locale.ROOT,
                                "This is the sum of the time of year, the room, ageing and drift of the machine%s: the logbook holds"
                                        + " %.0f months of roasting, and 24 in nearly every month of the year would tell them apart.",
                                cuppers,
                                rows.span() / 30.44));
    }

    private YearPart together(String name, YearModel fitted, int place) {
        return new YearPart(
                name,
                YearPart.Verdict.CANNOT_TELL,
                nothing(name),
                "",
                "It moved together with " + fitted.culprit(place).words() + " in this logbook.");
    }

    private static Estimate nothing(String name) {
        return new Estimate(name, Double.NaN, Double.NaN, Double.NaN);
    }

    private String shown(Estimate estimate) {
        return response.shown(estimate, reader);
    }
}
