package parchment.pipeline;

import static parchment.feature.Features.dropTemperature;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import parchment.evidence.Evidence;
import parchment.logbook.Logbook;
import parchment.otherroastery.DropHabit;
import parchment.otherroastery.OtherLot;
import parchment.otherroastery.OtherRoastery;
import parchment.otherroastery.PlantedFaults;
import parchment.otherroastery.TrueCourse;
import parchment.otherroastery.Truth;
import parchment.quantity.TemperatureUnit;

/**
 * Writes the first screens of six logbooks for the readers of docs/measurements/first-screen.md, and prints what is true of four of them.
 *
 * <p>{@code FOLDER DATASETS} makes the pages {@code 1.html} to {@code 6.html} in the first folder; the second holds the demo logbooks. What is
 * folded away is left out of the pages, so that nobody reads it.
 */
final class FirstScreens {
    private static final String ASKED = OtherCells.ASKED;

    private FirstScreens() {}

    /** Writes the pages. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        Path datasets = Path.of(arguments[1]);
        OtherRoastery ordinary = OtherRoastery.ordinary();
        Map<String, Path> logbooks = new LinkedHashMap<>();
        Truth moved = ordinary.withSeed(11)
                .withFaults(PlantedFaults.none()
                        .withProbeMoved(OtherCells.MOVE, 0.55, 1.12, PlantedFaults.Entry.NOT_WRITTEN))
                .writeTo(put(logbooks, "1", folder));
        for (OtherLot lot : ordinary.lots()) {
            System.out.printf(
                    "1: %s best at %.1f °C as read at the end%n", lot.name(), moved.bestReading(lot.name(), ASKED));
        }
        ordinary.withSeed(12)
                .withEveryLot(ASKED, TrueCourse.slope(6, 0.15))
                .withDrop(ordinary.drop().by(DropHabit.Choice.LOCKSTEP).withHiddenCause(0.1, 0))
                .writeTo(put(logbooks, "2", folder));
        System.out.println("2: 0.15 points per °C, gas and drop in lockstep: cannot be told");
        ordinary.withSeed(13).withEveryLot(ASKED, TrueCourse.none(6)).writeTo(put(logbooks, "3", folder));
        System.out.println("3: no effect");
        ordinary.withSeed(14).withEveryLot(ASKED, TrueCourse.slope(6, -0.15)).writeTo(put(logbooks, "4", folder));
        System.out.println("4: -0.15 points per °C in every lot");
        logbooks.put("5", datasets.resolve("harbour"));
        logbooks.put("6", datasets.resolve("hillside"));
        for (Map.Entry<String, Path> logbook : logbooks.entrySet()) {
            Logbook opened = Logbook.open(logbook.getValue());
            if (logbook.getKey().equals("4")) {
                opened = opened.in(TemperatureUnit.FAHRENHEIT);
            }
            String page =
                    Evidence.of(ASKED, dropTemperature(), opened).page().html().orElseThrow();
            Files.writeString(
                    folder.resolve(logbook.getKey() + ".html"),
                    "<!doctype html><meta charset=\"utf-8\"><body style=\"font-family:sans-serif;margin:1em\">"
                            + page.replaceFirst("(?s)<details><summary.*", "") + "</section>");
        }
    }

    private static Path put(Map<String, Path> logbooks, String name, Path folder) {
        Path own = folder.resolve("logbook " + name);
        logbooks.put(name, own);
        return own;
    }
}
