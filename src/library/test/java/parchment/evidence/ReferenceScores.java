package parchment.evidence;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import parchment.logbook.Batch;
import parchment.logbook.written.CupScores;

/** Writes a drawn logbook as the flat table that the reference program reads: one row per score, nothing computed. */
final class ReferenceScores {
    private ReferenceScores() {}

    static String csv(KnownTruth.Drawn drawn) {
        Map<String, Batch> batches = new HashMap<>();
        drawn.logbook().batches().forEach(batch -> batches.put(batch.name(), batch));
        StringBuilder csv = new StringBuilder(
                "batch,lot,roasted_at,green_mass_kg,drop_temperature_c,cupping,tasted_on,cupper,cup,score\n");
        for (CupScores cup : drawn.logbook().cups()) {
            Batch batch = batches.get(cup.batch());
            csv.append(String.format(
                    Locale.ROOT,
                    "%s,%s,%s,%.17g,%.17g,%s,%s,%s,%s,%.17g\n",
                    batch.name(),
                    batch.lot().orElseThrow(),
                    batch.roastedAt().orElseThrow(),
                    batch.conditions().greenMass().orElseThrow().kilograms(),
                    drawn.measure().readings().get(batch.name()).value(),
                    cup.cupping(),
                    cup.tastedOn(),
                    cup.cupper(),
                    cup.cup().orElseThrow(),
                    cup.score("sweetness")));
        }
        return csv.toString();
    }
}
