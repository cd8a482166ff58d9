package parchment.trial;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.trial.sealed.AnsweredTrial;
import parchment.trial.sealed.BatchSheets;
import parchment.trial.sealed.DrawnTarget;
import parchment.trial.sealed.SealCheck;
import parchment.trial.sealed.SealedSlips;

/** What a sealed trial shows, for the contract of all that shows itself; its lot and its batches are named as hostilely as a record can hold. */
public final class SealedExamples {
    private SealedExamples() {}

    /** Returns a trial in a folder that only its owner can read, of which one line is open. */
    public static TrialFolder folder() {
        try {
            Path folder = Files.createTempDirectory("sealed").resolve("flip-1");
            folder.toFile().deleteOnExit();
            TrialFolder trial = SealedTrial.in(folder);
            trial.next(SetListing.of("<script>alert(1)</script> & \"lot\"")
                    .on(SealedTrial.DAY)
                    .with("B101", Mass.kilograms(2.5))
                    .with("<b>two</b>", Mass.kilograms(2.5))
                    .with("'three'", Mass.kilograms(2.5))
                    .seenBy("<i>Ada</i>"));
            return trial;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns an opened target. */
    public static DrawnTarget target() {
        return folder().again();
    }

    /** Returns a seal that was held. */
    public static SealCheck check() {
        TrialFolder trial = folder();
        return trial.verify(trial.seal());
    }

    /** Returns batch sheets. */
    public static BatchSheets sheets() {
        return folder().sheets();
    }

    /** Returns slips. */
    public static SealedSlips slips() {
        return folder().slips();
    }

    /** Returns an answer. */
    public static AnsweredTrial answered(Logbook logbook) {
        return folder().answer(logbook);
    }

    /** Returns a flip against which several things speak. */
    public static CoinFlip flip(Logbook logbook) {
        return CoinFlip.of("sweetness", Temperature.celsius(203)).triedIn(logbook);
    }
}
