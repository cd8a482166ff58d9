package parchment.card;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import parchment.calendar.machine.StrayDates;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Logbook;
import parchment.logbook.contents.Cautions;

/**
 * Tells what a logbook has to say before the day begins: the last week, what is odd, what to cup, and what is unsettled.
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
        THE_WEEK("The last week", OverviewWeek::inShort),
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
            return standing(this, () -> work.apply(logbook));
        }

        /**
         * Works this part out as it is read on a day: the part of the week doubts dates that lie after it.
         *
         * @throws CancellationException if the thread was interrupted
         */
        public Section of(Logbook logbook, LocalDate today) {
            Section section = of(logbook);
            return this == THE_WEEK
                    ? StrayDates.afterToday(logbook, today).map(section::saying).orElse(section)
                    : section;
        }

        /** Names the sort of a failure and where it arose, for those who mend the program. */
        private static String sort(RuntimeException fault) {
            StackTraceElement[] trace = fault.getStackTrace();
            return fault.getClass().getSimpleName()
                    + (trace.length == 0 ? "" : " in " + trace[0].getClassName() + ", line " + trace[0].getLineNumber())
                    + (fault.getMessage() == null ? "." : ": " + fault.getMessage());
        }

        static Section standing(Part part, Supplier<Section> work) {
            try {
                return work.get();
            } catch (CancellationException stopped) {
                throw stopped;
            } catch (RuntimeException fault) {
                return new Section(part, Optional.empty(), List.of(FAILED), List.of(sort(fault)));
            }
        }
    }

    /**
     * Holds one part of the overview.
     *
     * @param part which part
     * @param inShort three sentences that begin it, if it has them
     * @param sentences what follows, a paragraph each
     * @param failed what to tell those who mend the program, folded away; empty unless the part could not be worked out
     */
    public record Section(Part part, Optional<InShort> inShort, List<String> sentences, List<String> failed)
            implements Showable {
        /** Copies the sentences. */
        public Section {
            sentences = List.copyOf(sentences);
            failed = List.copyOf(failed);
        }

        /** Holds a part that was worked out. */
        public Section(Part part, Optional<InShort> inShort, List<String> sentences) {
            this(part, inShort, sentences, List.of());
        }

        private Section saying(String more) {
            return new Section(
                    part,
                    inShort,
                    Stream.concat(sentences.stream(), Stream.of(more)).toList(),
                    failed);
        }

        static Section of(Part part, List<String> sentences) {
            return new Section(part, Optional.empty(), sentences);
        }

        /** Adds this part to a page under its heading. */
        Report onto(Report page) {
            return words(page.heading(part.title()));
        }

        private Report words(Report page) {
            Report longer = page;
            if (inShort.isPresent()) {
                longer = longer.add(inShort.get());
            }
            for (String sentence : sentences) {
                longer = longer.say(sentence);
            }
            Report folded = Report.titled("For those who mend the program");
            for (String line : failed) {
                folded = folded.say(line);
            }
            return failed.isEmpty() ? longer : longer.fold(folded);
        }

        @Override
        public String text() {
            return onto(Report.titled("")).text().strip();
        }

        /** Returns the part without its heading, for a page that sets headings of its own. */
        @Override
        public Optional<String> html() {
            return words(Report.titled("")).html().map(html -> html.replaceFirst("<h3></h3>\n?", ""));
        }

        @Override
        public String toString() {
            return part.title() + ": " + inShort.map(InShort::found).orElseGet(() -> String.join(" ", sentences));
        }
    }

    private static final String FAILED =
            "This part could not be worked out from this logbook; the rest of the page stands. Mend the"
                    + " problems that the tour lists and look again. If it stays so, send the folded line to those who mend the program.";

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
