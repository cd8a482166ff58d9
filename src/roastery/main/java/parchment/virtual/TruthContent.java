package parchment.virtual;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import parchment.virtual.chance.Seed;
import parchment.virtual.people.Cupper;
import parchment.virtual.people.FlavourSurface;
import parchment.virtual.physics.SimulatedRoast;
import parchment.virtual.physics.SimulatedRoast.Trace;
import parchment.virtual.written.VirtualBatch;
import parchment.virtual.written.VirtualLot;

/** Gathers what is true of a virtual logbook into one JSON object. */
final class TruthContent {
    private final VirtualLogbook logbook;

    TruthContent(VirtualLogbook logbook) {
        this.logbook = logbook;
    }

    JsonObject gather() {
        JsonObject content = new JsonObject();
        content.addProperty("logbook", logbook.name());
        Seed seed = logbook.seed();
        if (seed.isSecret()) {
            // With both, whoever opens the envelope can make the logbook anew and compare.
            content.addProperty("seed", seed.text());
            content.addProperty("scenario", logbook.story().text());
        } else {
            content.addProperty("seed", Long.parseLong(seed.text()));
        }
        content.add("surfaces", surfaces());
        content.add("lots", lots());
        content.add("cuppers", cuppers());
        content.add("probe periods", probes());
        content.add("operators", operators());
        if (!logbook.story().mislabellings().isEmpty()) {
            content.add("mislabelled lots", mislabellings());
        }
        JsonArray batches = new JsonArray();
        for (VirtualBatch batch : logbook.batches()) {
            batches.add(batch(batch));
        }
        content.add("batches", batches);
        return content;
    }

    private JsonObject batch(VirtualBatch batch) {
        SimulatedRoast roast = batch.roast();
        JsonObject truth = new JsonObject();
        truth.addProperty("batch", batch.name());
        truth.addProperty("lot", batch.plan().lot().name());
        put(truth, "end temperature [°C]", batch.endTemperature(), 2);
        put(truth, "drop reading [°C]", batch.dropReading(), 2);
        put(truth, "meant drop reading [°C]", batch.plan().meantDrop(), 2);
        put(truth, "drop [s]", roast.drop(), 1);
        put(truth, "turning point [s]", roast.turningPoint(), 1);
        put(truth, "yellowing [s]", roast.yellowing(), 1);
        put(truth, "first pop [s]", roast.firstCrackStart(), 1);
        put(truth, "steady popping [s]", roast.steadyCracking(), 1);
        put(truth, "last pop [s]", roast.firstCrackEnd(), 1);
        put(truth, "browning time [s]", batch.browningTime(), 1);
        put(truth, "development time [s]", batch.developmentTime(), 1);
        put(truth, "moisture left [kg/kg]", roast.at(Trace.MOISTURE, roast.drop()), 4);
        put(truth, "hidden state", batch.hidden(), 3);
        put(truth, "flame factor", batch.conditions().flameFactor(), 4);
        put(truth, "draught factor", batch.conditions().draughtFactor(), 4);
        put(truth, "probe period", batch.conditions().probePeriod(), 0);
        List<String> attributes = logbook.attributes();
        for (int a = 0; a < attributes.size(); a++) {
            put(truth, "true " + attributes.get(a), batch.flavour().get(a), 3);
        }
        return truth;
    }

    private JsonArray surfaces() {
        JsonArray array = new JsonArray();
        for (FlavourSurface surface : logbook.surfaces()) {
            JsonObject truth = new JsonObject();
            truth.addProperty("attribute", surface.attribute());
            put(truth, "level", surface.level(), 4);
            put(truth, "destination", surface.destination(), 4);
            put(truth, "destinationSquared", surface.destinationSquared(), 4);
            put(truth, "browning", surface.browning(), 4);
            put(truth, "development", surface.development(), 4);
            put(truth, "developmentSquared", surface.developmentSquared(), 4);
            put(truth, "together", surface.together(), 4);
            array.add(truth);
        }
        return array;
    }

    private JsonArray lots() {
        JsonArray array = new JsonArray();
        for (VirtualLot lot : logbook.lots()) {
            JsonObject truth = new JsonObject();
            truth.addProperty("lot", lot.name());
            put(truth, "moisture on arrival [kg/kg]", lot.beans().moisture(), 4);
            put(truth, "crack temperature [°C]", lot.beans().crackTemperature(), 2);
            put(truth, "reactivity", lot.beans().reactivity(), 3);
            truth.add("flavour", numbers(lot.flavour()));
            array.add(truth);
        }
        return array;
    }

    private JsonArray cuppers() {
        JsonArray array = new JsonArray();
        for (Cupper cupper : logbook.cuppers()) {
            JsonObject truth = new JsonObject();
            truth.addProperty("cupper", cupper.name());
            put(truth, "bias", cupper.bias(), 3);
            truth.add("attribute bias", numbers(cupper.attributeBias()));
            put(truth, "scale", cupper.scale(), 3);
            put(truth, "noise", cupper.noise(), 3);
            put(truth, "halo", cupper.halo(), 3);
            put(truth, "contrast", cupper.contrast(), 3);
            put(truth, "fatigue", cupper.fatigue(), 3);
            if (cupper.impression() != Cupper.IMPRESSION || cupper.ownTaste() != 0) {
                put(truth, "impression", cupper.impression(), 3);
                put(truth, "own taste", cupper.ownTaste(), 3);
            }
            array.add(truth);
        }
        return array;
    }

    private JsonArray probes() {
        JsonArray array = new JsonArray();
        for (Story.ProbePeriod period : logbook.story().probes()) {
            JsonObject truth = new JsonObject();
            truth.addProperty("from", period.from().toString());
            put(truth, "offset [°C]", period.probes().beanOffset(), 2);
            put(truth, "lag [s]", period.probes().beanLag(), 1);
            put(truth, "full cover", period.probes().fullCover(), 3);
            array.add(truth);
        }
        return array;
    }

    private JsonArray operators() {
        JsonArray array = new JsonArray();
        for (Story.Operator operator : logbook.story().operators()) {
            JsonObject truth = new JsonObject();
            truth.addProperty("operator", operator.name());
            put(truth, "delay of a mark [s]", operator.habit().markDelay(), 1);
            put(truth, "spread of that delay [s]", operator.habit().markSpread(), 1);
            put(truth, "marks forgotten", operator.habit().forgets(), 2);
            put(truth, "drop follows smell [°C]", operator.habit().feel(), 2);
            array.add(truth);
        }
        return array;
    }

    private JsonArray mislabellings() {
        JsonArray array = new JsonArray();
        for (Story.Mislabelling slip : logbook.story().mislabellings()) {
            JsonObject truth = new JsonObject();
            truth.addProperty("lot", slip.lot());
            truth.addProperty("written as", slip.writtenAs());
            truth.addProperty("from", slip.from().toString());
            truth.addProperty("to", slip.to().toString());
            array.add(truth);
        }
        return array;
    }

    private static JsonArray numbers(List<Double> values) {
        JsonArray array = new JsonArray();
        for (double value : values) {
            array.add(Decimals.exact(value, 3));
        }
        return array;
    }

    private static void put(JsonObject object, String name, double value, int decimals) {
        if (!Double.isNaN(value)) {
            object.addProperty(name, Decimals.exact(value, decimals));
        }
    }
}
