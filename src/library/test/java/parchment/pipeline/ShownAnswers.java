package parchment.pipeline;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import parchment.align.Nearest;
import parchment.drift.LotYear;
import parchment.drift.Usual;
import parchment.drift.Watch;
import parchment.evidence.Evidence;
import parchment.evidence.Halo;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * Prints the answers to the questions of docs/measurements/before-and-after.md as rows of a table, in the library's own words.
 *
 * <p>{@code FOLDER LOT}. Asks only what the code before the change had too, so that the same file compiles there.
 */
final class ShownAnswers {
    private static final String ATTRIBUTE = "sweetness";

    private ShownAnswers() {}

    /** Prints the rows of a logbook. */
    public static void main(String[] arguments) {
        if (arguments.length != 2) {
            System.err.println("Say the logbook's folder and one of its lots.");
            return;
        }
        Logbook logbook = Logbook.open(Path.of(arguments[0]));
        String lot = arguments[1];
        Evidence evidence = Evidence.of(ATTRIBUTE, Features.dropTemperature(), logbook);
        row("verdict", evidence.verdict().words());
        row("reasons", String.join("; ", evidence.reasons()));
        row("headline", evidence.claim().toString());
        String page = evidence.page().text();
        row("best and tried", paragraphs(page, "Tried: "));
        row("best of each lot", cells(evidence.page().html().orElseThrow(), "of each lot, as read on today"));
        row("what would tell", paragraphs(page, "What would tell|further batches|hardly varied"));
        Batch last = logbook.lastWithCurve();
        Nearest nearest = Nearest.to(last, logbook);
        row(
                "nearest to " + last.name(),
                nearest + ". "
                        + paragraphs(nearest.shownAs().text(), "not searched|written nowhere|on the same scale"));
        row(
                "watch",
                Watch.of(logbook.only(batch -> batch.lot().orElse("").equals(lot)), Features.dropTemperature())
                        .toString());
        row("halo", Halo.of(logbook).toString());
        row("usual " + last.name(), Usual.of(last, logbook).toString());
        row("year of " + lot, LotYear.of(lot, Features.massLoss(), logbook).toString());
    }

    /** Returns the paragraphs of a page in which a pattern is found, without its tables. */
    private static String paragraphs(String page, String pattern) {
        return Arrays.stream(page.split("\n\n"))
                .filter(part -> !part.contains("\n"))
                .filter(part -> Pattern.compile(pattern).matcher(part).find())
                .collect(Collectors.joining(" "));
    }

    /** Returns the rows of the table with such words in its title; the page's text would cut long cells. */
    private static String cells(String html, String title) {
        int from = html.lastIndexOf(title);
        if (from < 0) {
            return "no such table";
        }
        return html.substring(html.indexOf("</thead>", from), html.indexOf("</table>", from))
                .replaceAll("(?s)</t[dh]>", ", ")
                .replaceAll("(?s),? ?</tr>", "; ")
                .replaceAll("(?s)<[^>]*>", "")
                .replaceAll("\\s+", " ");
    }

    private static void row(String question, String answer) {
        System.out.println("| " + question + " | " + answer.replace("|", "/").replace("\n", " ") + " |");
    }
}
