package parchment.gather;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import parchment.sheet.Words;

/** Asks a person the open questions of a gathering, the one that decides most batches first, and works it out again with each answer. */
final class GatherTalk {
    private final Gather.Console console;
    private final Appendable out;
    private boolean explained;

    GatherTalk(Gather.Console console, Appendable out) {
        this.console = console;
        this.out = out;
    }

    /** Returns the gathering with what was answered. */
    Gather ask(Gather gather) {
        Gather answered = gather;
        Set<String> asked = new HashSet<>();
        while (true) {
            Optional<GatherQuestions.Open> next = answered.gathering().questions().open().stream()
                    .filter(open -> asked.add(open.key()))
                    .findFirst();
            if (next.isEmpty()) {
                return answered;
            }
            Optional<String> answer = ask(next.get());
            if (answer.isEmpty()) {
                return answered; // Nobody is there: what is proposed stands.
            }
            answered = answered.answer(next.get().key(), answer.get());
        }
    }

    private Optional<String> ask(GatherQuestions.Open open) {
        while (true) {
            String explanation = explained
                    ? ""
                    : "(Press Enter to take what stands in brackets; type ? to see what can be answered. Each answer can be changed later.)\n";
            explained = true;
            Optional<String> line = console.ask(
                            explanation + Words.harmless(open.question() + " [" + open.proposal() + "]"))
                    .map(String::strip);
            if (line.isEmpty()) {
                return line;
            }
            if (line.get().isEmpty()) {
                return Optional.of(open.proposal());
            }
            // A question mark asks back, also where any word would do as an answer.
            boolean asksBack = line.get().equals("?");
            String answer = GatherQuestions.asChosen(line.get(), open.valid());
            if (!asksBack && open.valid().test(answer)) {
                return Optional.of(answer);
            }
            say((asksBack ? "It can be: " : "That is none of: ") + open.choices() + ".");
        }
    }

    void say(String line) {
        try {
            out.append(line).append('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void say(List<String> lines) {
        lines.forEach(this::say);
    }
}
