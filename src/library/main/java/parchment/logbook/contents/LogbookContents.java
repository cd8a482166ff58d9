package parchment.logbook.contents;

import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.Batch;
import parchment.logbook.Logbook.CrackHabit;
import parchment.logbook.Logbook.Provenance;
import parchment.logbook.Logbook.Scale;
import parchment.logbook.Lot;
import parchment.logbook.Problems;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Machine;
import parchment.logbook.written.Upkeep;
import parchment.quantity.MassUnit;
import parchment.quantity.TemperatureUnit;

/**
 * Everything that a logbook is made of, for those who build or change one without files.
 *
 * @param name the logbook's name
 * @param folder the folder that it was read from; empty for a logbook that is in none
 * @param zone the time zone of times without an offset
 * @param readerUnit the temperature scale results are shown in
 * @param massUnit the unit masses are shown in
 * @param scales the lowest and highest score of an attribute, where it was stated
 * @param crackHabit what the roaster calls the start of first crack
 * @param provenance where the batches come from
 */
public record LogbookContents(
        String name,
        Optional<Path> folder,
        ZoneId zone,
        TemperatureUnit readerUnit,
        MassUnit massUnit,
        List<Batch> batches,
        List<Lot> lots,
        List<LotCheck> lotChecks,
        List<BlendPart> blends,
        List<Machine> machines,
        List<CupScores> cups,
        List<Cupping> cuppings,
        List<Upkeep> upkeep,
        Map<String, Scale> scales,
        CrackHabit crackHabit,
        Provenance provenance,
        Problems problems) {

    /** Copies the collections, and tells the time of each batch in the logbook's zone, so that a roast day is the same everywhere. */
    public LogbookContents {
        ZoneId own = zone;
        batches = batches.stream().map(batch -> batch.in(own)).toList();
        lots = List.copyOf(lots);
        lotChecks = List.copyOf(lotChecks);
        blends = List.copyOf(blends);
        machines = List.copyOf(machines);
        cups = List.copyOf(cups);
        cuppings = List.copyOf(cuppings);
        upkeep = List.copyOf(upkeep);
        scales = Collections.unmodifiableMap(new LinkedHashMap<>(scales));
    }

    /** Returns the contents of a logbook of batches and nothing else, in °C and kg, with times in UTC. */
    public static LogbookContents ofBatches(String name, List<Batch> batches) {
        return new LogbookContents(
                name,
                Optional.empty(),
                ZoneOffset.UTC,
                TemperatureUnit.CELSIUS,
                MassUnit.KILOGRAM,
                batches,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                CrackHabit.NOT_WRITTEN,
                Provenance.ROASTED,
                new Problems(List.of()));
    }

    /** Returns a builder that begins with these contents. */
    public Builder toBuilder() {
        return new Builder(this);
    }

    /** Builds contents that differ from others in some of their parts. */
    public static final class Builder {
        private final String name;
        private Optional<Path> folder;
        private ZoneId zone;
        private TemperatureUnit readerUnit;
        private MassUnit massUnit;
        private List<Batch> batches;
        private List<Lot> lots;
        private List<LotCheck> lotChecks;
        private List<BlendPart> blends;
        private List<Machine> machines;
        private List<CupScores> cups;
        private List<Cupping> cuppings;
        private List<Upkeep> upkeep;
        private Map<String, Scale> scales;
        private CrackHabit crackHabit;
        private Provenance provenance;
        private Problems problems;

        private Builder(LogbookContents from) {
            name = from.name;
            folder = from.folder;
            zone = from.zone;
            readerUnit = from.readerUnit;
            massUnit = from.massUnit;
            batches = from.batches;
            lots = from.lots;
            lotChecks = from.lotChecks;
            blends = from.blends;
            machines = from.machines;
            cups = from.cups;
            cuppings = from.cuppings;
            upkeep = from.upkeep;
            scales = from.scales;
            crackHabit = from.crackHabit;
            provenance = from.provenance;
            problems = from.problems;
        }

        /** Sets the folder that it was read from. */
        public Builder folder(Path other) {
            this.folder = Optional.of(other);
            return this;
        }

        /** Sets the time zone of times without an offset. */
        public Builder zone(ZoneId other) {
            this.zone = other;
            return this;
        }

        /** Sets the temperature scale results are shown in. */
        public Builder readerUnit(TemperatureUnit other) {
            this.readerUnit = other;
            return this;
        }

        /** Sets the unit masses are shown in. */
        public Builder massUnit(MassUnit other) {
            this.massUnit = other;
            return this;
        }

        /** Sets the batches. */
        public Builder batches(List<Batch> other) {
            this.batches = other;
            return this;
        }

        /** Sets the lots. */
        public Builder lots(List<Lot> other) {
            this.lots = other;
            return this;
        }

        /** Sets what was measured of lots in store. */
        public Builder lotChecks(List<LotCheck> other) {
            this.lotChecks = other;
            return this;
        }

        /** Sets the parts of blends. */
        public Builder blends(List<BlendPart> other) {
            this.blends = other;
            return this;
        }

        /** Sets the machines. */
        public Builder machines(List<Machine> other) {
            this.machines = other;
            return this;
        }

        /** Sets every cupper's scores of every cup. */
        public Builder cups(List<CupScores> other) {
            this.cups = other;
            return this;
        }

        /** Sets how cuppings were held. */
        public Builder cuppings(List<Cupping> other) {
            this.cuppings = other;
            return this;
        }

        /** Sets the work done on the machines. */
        public Builder upkeep(List<Upkeep> other) {
            this.upkeep = other;
            return this;
        }

        /** Sets the ranges of scores. */
        public Builder scales(Map<String, Scale> other) {
            this.scales = other;
            return this;
        }

        /** Sets what the roaster calls the start of first crack. */
        public Builder crackHabit(CrackHabit other) {
            this.crackHabit = other;
            return this;
        }

        /** Sets where the batches come from. */
        public Builder provenance(Provenance other) {
            this.provenance = other;
            return this;
        }

        /** Sets what could not be read as written. */
        public Builder problems(Problems other) {
            this.problems = other;
            return this;
        }

        /** Returns the contents. */
        public LogbookContents build() {
            return new LogbookContents(
                    name,
                    folder,
                    zone,
                    readerUnit,
                    massUnit,
                    batches,
                    lots,
                    lotChecks,
                    blends,
                    machines,
                    cups,
                    cuppings,
                    upkeep,
                    scales,
                    crackHabit,
                    provenance,
                    problems);
        }
    }
}
