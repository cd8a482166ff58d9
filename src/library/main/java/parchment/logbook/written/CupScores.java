package parchment.logbook.written;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One cupper's scores of one cup, the row that every question about taste is asked of.
 *
 * @param cupping the cupping's name
 * @param tastedOn the day it was tasted
 * @param cupper who scored
 * @param batch the batch in the cup
 * @param blindCode the code the cup was served under
 * @param cup which cup of the batch, as written
 * @param servingPosition the place in the order of serving, counted from 1
 * @param scores one score per attribute that was scored; an attribute that was left blank is absent
 * @param note whatever else was written
 * @param extras every other column that was filled in and holds no scores, by header
 */
public record CupScores(
        String cupping,
        LocalDate tastedOn,
        String cupper,
        String batch,
        Optional<String> blindCode,
        Optional<String> cup,
        OptionalInt servingPosition,
        Map<String, Double> scores,
        Optional<String> note,
        Map<String, String> extras) {

    /** Copies the scores and the extras, keeping the order of the columns. */
    public CupScores {
        scores = Collections.unmodifiableMap(new LinkedHashMap<>(scores));
        extras = Collections.unmodifiableMap(new LinkedHashMap<>(extras));
    }

    /** Holds one cupper's scores of one cup without any extra. */
    public CupScores(
            String cupping,
            LocalDate tastedOn,
            String cupper,
            String batch,
            Optional<String> blindCode,
            Optional<String> cup,
            OptionalInt servingPosition,
            Map<String, Double> scores,
            Optional<String> note) {
        this(cupping, tastedOn, cupper, batch, blindCode, cup, servingPosition, scores, note, Map.of());
    }

    /** Returns the same scores as of the batch of the given name. */
    public CupScores ofBatch(String name) {
        return new CupScores(cupping, tastedOn, cupper, name, blindCode, cup, servingPosition, scores, note, extras);
    }

    /** Returns the same cup with other scores. */
    public CupScores withScores(Map<String, Double> others) {
        return new CupScores(cupping, tastedOn, cupper, batch, blindCode, cup, servingPosition, others, note, extras);
    }

    /** Returns the score of an attribute, or NaN if this cup was not scored on it. */
    public double score(String attribute) {
        Double score = scores.get(attribute);
        return score == null ? Double.NaN : score;
    }
}
