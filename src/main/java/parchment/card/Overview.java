package parchment.card;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import parchment.display.InShort;
import parchment.display.Report;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.logbook.Cautions;
import parchment.logbook.Logbook;

/**
 * Says what a logbook has to tell before the day begins: the last week, what is odd, what to cup, and what is unsettled.
 *
 * <pre>{@code
 * Overview.of(logbook)
 * }</pre>
 *
 * <p>Each part is worked out by itself: where one cannot be, it says so in words and the others stand. The last week is the seven days that
 * end with the logbook's last roast day. It is the page that {@code parchment open} shows first.
 */
public final class Overview implements ShownAs {
    /** What the overview tells, in this order. */
    public enum Part {
        /** The last week in three sentences. */
        THE_WEEK("This week", OverviewWeek::inShort),
        /** Batches unlike their lot's others, and dates at which a probe began to read differently. */
        WHAT_IS_ODD("What is odd", OverviewWeek::odd),
        /** Batches of the week that are worth cupping. */
        WORTH_CUPPING("What to cup", OverviewWeek::worthCupping),
        /** Questions that the scores cannot answer yet, each with what would tell. */
        UNSETTLED("What is unsettled", Unsettled::of);

        private final String title;
        private final Function<Logbook, Section> work;

        Part(String title, Function<Logbook, Section> work) {
            this.title = title;
            this.work = work;
        }

        /** Returns the heading over it. */
        public String title() {
            return title;
        }

        /**
         * Works this part out; takes seconds for a large logbook. Where that fails, the part says so in words.
         *
         * @throws CancellationException if the thread was interrupted
         */
        public Section of(Logbook logbook) {
            try {
                return work.apply(logbook);
            } catch (CancellationException stopped) {
                throw stopped;
            } catch (RuntimeException fault) {
                return Section.of(
                        this,
                        List.of("This part could not be worked out from this logbook; the rest of the page stands."
                                + " The problems met in reading the logbook may say why."));
            }
        }
    }

    /**
     * Holds one part of the overview.
     *
     * @param part which part
     * @param inShort three sentences that begin it, if it has them
     * @param sentences what follows, a paragraph each
     */
    public record Section(Part part, Optional<InShort> inShort, List<String> sentences) implements Showable {
        /** Copies the sentences. */
        public Section {
            sentences = List.copyOf(sentences);
        }

        static Section of(Part part, List<String> sentences) {
            return new Section(part, Optional.empty(), sentences);
        }

        /** Adds this part to a page under its heading. */
        Report onto(Report page) {
            Report longer = page.heading(part.title());
            if (inShort.isPresent()) {
                longer = longer.add(inShort.get());
            }
            for (String sentence : sentences) {
                longer = longer.say(sentence);
            }
            return longer;
        }

        @Override
        public String text() {
            return onto(Report.titled("")).text().strip();
        }

        /** Returns the part without its heading, for a page that sets headings of its own. */
        @Override
        public Optional<String> html() {
            Report words = Report.titled("");
            if (inShort.isPresent()) {
                words = words.add(inShort.get());
            }
            for (String sentence : sentences) {
                words = words.say(sentence);
            }
            return words.html().map(html -> html.replaceFirst("<h3></h3>\n?", ""));
        }

        @Override
        public String toString() {
            return part.title() + ": " + inShort.map(InShort::found).orElseGet(() -> String.join(" ", sentences));
        }
    }

    private final Logbook logbook;
    private final List<Section> sections;

    private Overview(Logbook logbook, List<Section> sections) {
        this.logbook = logbook;
        this.sections = List.copyOf(sections);
    }

    /** Looks through a logbook; takes seconds for a large one. */
    public static Overview of(Logbook logbook) {
        return new Overview(
                logbook,
                Arrays.stream(Part.values()).map(part -> part.of(logbook)).toList());
    }

    /** Returns the parts in their order. */
    public List<Section> sections() {
        return sections;
    }

    @Override
    public Showable shownAs() {
        Report page = Report.titled("What " + logbook.name() + " has to tell");
        for (Section section : sections) {
            page = section.onto(page);
        }
        return page.caution(Cautions.BESIDE_A_READING);
    }

    @Override
    public String toString() {
        int batches = logbook.batches().size();
        return String.format(
                Locale.ROOT,
                "Overview of %s: %d %s; %s",
                logbook.name(),
                batches,
                batches == 1 ? "batch" : "batches",
                sections.get(0));
    }
}
