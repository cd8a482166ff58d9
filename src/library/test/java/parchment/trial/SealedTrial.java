package parchment.trial;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Random;
import parchment.quantity.Mass;
import parchment.quantity.TemperatureUnit;
import parchment.trial.sealed.DrawnLine;
import parchment.trial.sealed.SetDraw;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialPlan;
import parchment.trial.sealed.TrialTerms;

/** A sealed trial of three sets of three, drawn from a seed, for tests of what is done with it. */
final class SealedTrial {
    static final Clock NOON = Clock.fixed(Instant.parse("2026-12-01T12:00:00Z"), ZoneOffset.UTC);
    static final LocalDate DAY = LocalDate.of(2026, 12, 1);

    private SealedTrial() {}

    static TrialPlan plan() {
        return new TrialPlan(
                new TrialTerms(
                        "flip-1",
                        "sweetness",
                        TrialControl.DROP_TEMPERATURE,
                        List.of(201.5, 203.0, 204.5),
                        0.5,
                        1,
                        1,
                        List.of("Ada", "Ben"),
                        2,
                        TemperatureUnit.CELSIUS),
                3,
                3,
                SetDraw.Targets.ENDS_AND_MIDDLE,
                "°C",
                TrialPlan.SECURE,
                List.of(),
                "2026-11-29T10:00:00Z");
    }

    static List<DrawnLine> lines() {
        return SetDraw.draw("flip-1", 3, 3, SetDraw.Targets.ENDS_AND_MIDDLE, 203, 1.5, new Random(5));
    }

    static TrialFolder in(Path folder) {
        return in(folder, step -> {});
    }

    static TrialFolder in(Path folder, TrialFolder.Steps steps) {
        TrialFolder.seal(folder, plan(), lines());
        return TrialFolder.open(folder, NOON, steps);
    }

    static SetListing set(int number) {
        SetListing listing = SetListing.of("Stone Bridge").on(DAY.plusDays(number - 1L));
        for (int place = 1; place <= 3; place++) {
            listing = listing.with("B" + number + "0" + place, Mass.kilograms(2.5));
        }
        return listing.seenBy("Ada");
    }
}
