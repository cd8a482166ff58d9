package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.align.Unusual;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.contents.EmptyLogbook;
import parchment.quantity.Unit;

/** Puts into words what was different in a batch. */
final class UsualReasons {
    private UsualReasons() {}

    /** Returns what the path did differently, then each feature that came to the word given. */
    static List<String> of(Usual usual, Usual.Verdict verdict) {
        List<String> reasons =
                new ArrayList<>(usual.path().map(Unusual.Found::reasons).orElse(List.of()));
        usual.compared().stream()
                .filter(one -> one.verdict() == verdict)
                .map(one -> words(usual, one))
                .forEach(reasons::add);
        return List.copyOf(reasons);
    }

    private static String words(Usual usual, Usual.Compared one) {
        Unit unit = one.feature().unit();
        double off = one.value() - one.usual();
        boolean crack =
                one.feature().name().equals(Features.firstCrackTemperature().name());
        Usual.Compared development = find(usual, Features.developmentTime());
        return one.feature().name() + " " + unit.formatOnClock(one.value(), usual.reader()) + ", which is "
                + unit.formatStep(Math.abs(off), usual.reader()) + (off > 0 ? " above" : " below") + " the usual"
                + (crack
                        ? markWords(
                                off,
                                find(usual, Features.rateAtFirstCrack()).usual(),
                                development.usual() - development.value())
                        : "");
    }

    /**
     * Says that the mark may be late or early where the development time is off to the other side by about as much: a crack that came at another
     * temperature, or a probe that read off, would have left it as it was.
     *
     * @param off how far the reading at the mark lies above the usual, °C
     * @param risePerMinute the usual rate of rise there
     * @param shorter by how many seconds the development time is shorter than usual
     */
    static String markWords(double off, double risePerMinute, double shorter) {
        double seconds = 60 * off / risePerMinute;
        if (!(shorter * Math.signum(off) >= Usual.ABOUT_AS_MUCH * Math.abs(seconds))) {
            return "";
        }
        return String.format(
                Locale.ROOT,
                " (perhaps first crack was marked about %.0f s too %s: the development time is %.0f s %s than usual)",
                Math.abs(seconds),
                off > 0 ? "late" : "early",
                Math.abs(shorter),
                off > 0 ? "shorter" : "longer");
    }

    private static Usual.Compared find(Usual usual, Feature feature) {
        return usual.compared().stream()
                .filter(c -> c.feature().name().equals(feature.name()))
                .findFirst()
                .orElseThrow();
    }

    /** Names what could be held against the others, as in "drop temperature and mass loss". */
    static String heldWords(Usual usual) {
        List<String> names = usual.compared().stream()
                .filter(one -> one.verdict() != Usual.Verdict.CANNOT_TELL)
                .map(one -> one.feature().name())
                .toList();
        int last = names.size() - 1;
        return last < 1
                ? String.join("", names)
                : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    /** Says the whole answer in one sentence without its full stop. */
    static String sentence(Usual usual) {
        if (usual.oddCharge().isPresent() && usual.verdict() != Usual.Verdict.CANNOT_TELL) {
            return "batch " + usual.batch().name() + " was "
                    + usual.oddCharge().get().words() + ", too few like it to say more than this: in "
                    + heldWords(usual) + " it is "
                    + switch (usual.verdict()) {
                        case LIKE_THE_OTHERS, CANNOT_TELL -> "like ";
                        case A_LITTLE_UNLIKE_THE_OTHERS -> "a little unlike ";
                        case UNLIKE_THE_OTHERS -> "unlike ";
                    }
                    + usual.comparedWith()
                    + (usual.reasons().isEmpty() ? "" : ": " + String.join("; ", usual.reasons()));
        }
        return switch (usual.verdict()) {
            case CANNOT_TELL ->
                EmptyLogbook.isStandIn(usual.batch()) && usual.leftOut().isEmpty()
                        ? "The logbook has no batch yet"
                        : "Cannot tell whether batch " + usual.batch().name() + " is like the others: "
                                + (usual.batch().lot().isEmpty()
                                        ? usual.leftOut().orElse("no lot was written for it")
                                        : usual.tooFew());
            case LIKE_THE_OTHERS -> "batch " + usual.batch().name() + " is like " + usual.comparedWith();
            case A_LITTLE_UNLIKE_THE_OTHERS ->
                "batch " + usual.batch().name() + " is a little unlike " + usual.comparedWith() + ": "
                        + String.join("; ", usual.reasons());
            case UNLIKE_THE_OTHERS ->
                String.format(
                        Locale.ROOT,
                        "batch %s is unlike %s: %s",
                        usual.batch().name(),
                        usual.held() > 0
                                ? usual.comparedWith()
                                : usual.path()
                                        .map(Unusual.Found::comparedWith)
                                        .orElse(usual.comparedWith())
                                        .replaceFirst(": (.*)", " ($1)"),
                        String.join("; ", usual.reasons())
                                + (usual.held() > 0
                                        ? ""
                                        : ". Its curve was held against those; " + numbersApart(usual)));
        };
    }

    /** Its curve can be held against other lots where those of its own are few; its numbers cannot. */
    private static String numbersApart(Usual usual) {
        return usual.batch().lot().isEmpty()
                ? "its numbers cannot be held against any, because no lot was written for it"
                : "its numbers cannot be held against its lot's: " + usual.tooFew();
    }
}
