package parchment.virtual;

import java.time.LocalDate;
import java.util.List;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.Story.Cuppings;
import parchment.virtual.Story.Operator;
import parchment.virtual.Story.ProbePeriod;
import parchment.virtual.Story.Recipe;
import parchment.virtual.Story.Work;
import parchment.virtual.Story.Writing;

/** Holds the two roasteries of the demo logbooks; all people, places, lots and machines are invented. */
final class Stories {
    static final String DUCTS = "ducts cleaned";
    static final String BURNER = "burner cleaned";
    static final String PROBE = "probe moved";

    /** Points per °C and minute; a gentle peak for sweetness and aftertaste, no peak for acidity and bitterness. */
    private static final List<FlavourSurface> SURFACES = List.of(
            new FlavourSurface("acidity", 5.6, -0.17, -0.004, -0.15, -0.25, 0, 0),
            new FlavourSurface("sweetness", 6.0, 0.01, -0.022, 0.25, 0.10, -0.20, -0.02),
            new FlavourSurface("body", 5.0, 0.09, -0.002, 0.30, 0.10, 0, 0),
            new FlavourSurface("bitterness", 3.6, 0.16, 0.005, 0.05, 0.30, 0, 0.02),
            new FlavourSurface("aftertaste", 5.5, 0.02, -0.016, 0.10, 0.15, -0.15, 0),
            new FlavourSurface("liking", 6.1, 0.00, -0.020, 0.15, 0.05, -0.20, -0.02));

    private Stories() {}

    /** Returns the harbour-town roastery: one machine, three lots, two roasters, five cuppers, fourteen months. */
    static Story harbour() {
        Probes first = Probes.fitted();
        Probes moved = new Probes(0.65, 0.93, 34, 14, -2.2);
        return new Story(
                "Harbour roastery (invented)",
                "H",
                LocalDate.of(2024, 1, 9),
                "drum on the quay",
                DrumMachine.fitted(),
                List.of(
                        new ProbePeriod(LocalDate.of(2024, 1, 1), first),
                        new ProbePeriod(LocalDate.of(2024, 10, 7), moved)),
                List.of(
                        new Work(LocalDate.of(2024, 3, 18), DUCTS, ""),
                        new Work(LocalDate.of(2024, 6, 10), DUCTS, "and chaff collector"),
                        new Work(LocalDate.of(2024, 7, 22), BURNER, "yearly service"),
                        new Work(LocalDate.of(2024, 10, 7), PROBE, "new bean probe, one hand lower in the drum front"),
                        new Work(LocalDate.of(2024, 11, 4), DUCTS, "")),
                harbourLots(),
                List.of(new Recipe("filter", 201, 1.8), new Recipe("espresso", 205.5, 1.8)),
                List.of(new Operator("Maren", Habit.steady(), 0.65), new Operator("Tomas", Habit.earlyPush(), 0.35)),
                Logger.good(),
                SURFACES,
                List.of("Ada", "Bela", "Cleo", "Dov", "Esme"),
                new Cuppings(0.7, 2, 3, 5, 0.08, 0.1),
                LocalDate.of(2024, 5, 6),
                LocalDate.of(2024, 8, 31),
                new Writing(TemperatureUnit.CELSIUS, Writing.Times.SECONDS, Writing.Environment.MEASURED, 0.01, 0.5),
                3,
                5);
    }

    private static List<VirtualLot> harbourLots() {
        LocalDate farOff = LocalDate.of(2099, 12, 31);
        return List.of(
                new VirtualLot(
                        "Cinder Ridge",
                        "Eastern Heights (invented)",
                        "washed",
                        "Lantern",
                        LocalDate.of(2023, 5, 20),
                        LocalDate.of(2023, 11, 6),
                        LocalDate.of(2024, 11, 15),
                        16,
                        new GreenBeans(GreenBeans.fromShare(0.109), 6.4, 715, 199.6, 3.0, 118, 1.00),
                        List.of(0.5, 0.1, -0.1, 0.0, 0.1, 0.1),
                        1),
                new VirtualLot(
                        "Salt Meadow",
                        "Southern Bay (invented)",
                        "natural",
                        "Driftwood",
                        LocalDate.of(2023, 9, 1),
                        LocalDate.of(2024, 2, 5),
                        farOff,
                        15,
                        new GreenBeans(GreenBeans.fromShare(0.103), 6.1, 672, 196.8, 3.8, 108, 1.06),
                        List.of(-0.4, 0.5, 0.5, -0.1, 0.1, 0.2),
                        0.7),
                new VirtualLot(
                        "Low Orchard",
                        "Western Slopes (invented)",
                        "washed",
                        "Millstone",
                        LocalDate.of(2024, 1, 15),
                        LocalDate.of(2024, 5, 21),
                        farOff,
                        17,
                        new GreenBeans(GreenBeans.fromShare(0.117), 6.7, 688, 200.6, 3.0, 126, 0.96),
                        List.of(-0.1, -0.2, 0.2, 0.2, -0.1, -0.2),
                        1));
    }

    /** Returns the hillside roastery, awkward on purpose: °F, minutes and seconds, blanks, one cupper, one cup of each batch. */
    static Story hillside() {
        LocalDate farOff = LocalDate.of(2099, 12, 31);
        return new Story(
                "Hillside roastery (invented)",
                "K",
                LocalDate.of(2025, 2, 5),
                "",
                DrumMachine.fitted().worn(0.95, 0.9),
                List.of(new ProbePeriod(LocalDate.of(2025, 1, 1), new Probes(0.6, 0.95, 30, 14, 1.5))),
                List.of(),
                List.of(
                        new VirtualLot(
                                "Stone Bridge",
                                "Northern Terraces (invented)",
                                "washed",
                                "",
                                LocalDate.of(2024, 6, 1),
                                LocalDate.of(2024, 12, 2),
                                farOff,
                                16,
                                new GreenBeans(GreenBeans.fromShare(0.112), 6.4, 700, 199.4, 3.0, 119, 1),
                                List.of(0.2, 0.0, 0.0, 0.0, 0.0, 0.0),
                                1),
                        new VirtualLot(
                                "Moth Field",
                                "Northern Terraces (invented)",
                                "honey",
                                "",
                                LocalDate.of(2024, 6, 20),
                                LocalDate.of(2025, 1, 13),
                                farOff,
                                15,
                                new GreenBeans(GreenBeans.fromShare(0.106), 6.2, 684, 198.2, 3.4, 112, 1.03),
                                List.of(-0.2, 0.3, 0.2, 0.0, 0.1, 0.1),
                                1)),
                List.of(new Recipe("", 204, 2.2)),
                List.of(new Operator("", Habit.gentle(), 1)),
                Logger.coarse(),
                List.of(SURFACES.get(0), SURFACES.get(1), SURFACES.get(2), SURFACES.get(5)),
                List.of("Ruth"),
                new Cuppings(1, 1, 1, 6, 0.5, 0),
                farOff,
                farOff,
                new Writing(
                        TemperatureUnit.FAHRENHEIT,
                        Writing.Times.MINUTES_AND_SECONDS,
                        Writing.Environment.NOT_MEASURED,
                        0.4,
                        0),
                2,
                4);
    }
}
