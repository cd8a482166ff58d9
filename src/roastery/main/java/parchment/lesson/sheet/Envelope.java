package parchment.lesson.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.written.Overprint;

/** Shows, once a lesson is over, what was true, and what each claim earned. */
public final class Envelope implements ShownAs {
    /**
     * Holds one claim beside the truth.
     *
     * @param question the question's name
     * @param truth the truth with its unit
     * @param stated what was stated, if anything was
     * @param grade what it earned; empty if nothing was stated
     * @param lesson what is to be learnt from it
     */
    public record Opened(
            String question, String truth, Optional<StatedClaim> stated, Optional<Grade> grade, String lesson) {}

    private final String title;
    private final List<Opened> claims;
    private final Optional<String> seal;

    /** Takes the seal too where it was handed out, so that the student can hold it against the list. */
    public Envelope(String title, List<Opened> claims, Optional<String> seal) {
        this.title = title;
        this.claims = List.copyOf(claims);
        this.seal = seal;
    }

    /** Returns the claims of the lesson beside the truth. */
    public List<Opened> claims() {
        return claims;
    }

    /** Returns the points earned, 0 to 10 for each claim of the lesson; a claim that was not stated earns nothing. */
    public double points() {
        return claims.stream()
                .flatMap(claim -> claim.grade().stream())
                .mapToDouble(Grade::points)
                .sum();
    }

    private Report page() {
        Report page = Report.titled("The envelope of: " + title);
        if (claims.isEmpty()) {
            return page.say("Nothing was sealed in this lesson.");
        }
        page = page.add(Table.titled("Claims and truth")
                .withText("claim", claims, Opened::question)
                .withText(
                        "stated",
                        claims,
                        c -> c.stated().map(StatedClaim::toString).orElse("nothing"))
                .withText("true", claims, Opened::truth)
                .withText(
                        "points",
                        claims,
                        c -> c.grade()
                                .map(g -> String.format(Locale.ROOT, "%.1f", g.points()))
                                .orElse("0"))
                .withNote("At most " + (int) Grade.FULL + " points for each claim."));
        for (Opened claim : claims) {
            page = page.say(claim.question() + ": "
                    + claim.grade().map(g -> g.words() + " ").orElse("") + claim.lesson());
        }
        if (seal.isPresent()) {
            page = page.say("Its seal (SHA-256), which must stand on the list that was handed out with your folder: "
                    + seal.get());
        }
        return page;
    }

    @Override
    public Showable shownAs() {
        return Overprint.across(page());
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "envelope of '%s': %.1f of %d points. %s",
                title,
                points(),
                10 * claims.size(),
                VirtualLogbook.WARNING);
    }
}
