package parchment.gather.corpus.unseen;

import java.util.List;
import parchment.gather.corpus.StrangeKind;

/** Lists the twenty kinds that were written blind. */
public final class UnseenKinds {
    private UnseenKinds() {}

    /** Returns every kind, in a fixed order. */
    public static List<StrangeKind> all() {
        return List.of(
                new TitleLinesAboveEachRoast(),
                new GermanMonthlyTabs(),
                new SpanishDaySheets(),
                new TabARoast(),
                new PortugueseClockNames(),
                new ItalianColumnARoast(),
                new FrenchDayBlocks(),
                new HeadlessFiles(),
                new ScoreTabACupper(),
                new CuppersAcross(),
                new GermanOldEnglishNew(),
                new OneLongTable(),
                new SideBySideOnADay(),
                new ShortenedCoffees(),
                new EverythingInTheName(),
                new HalfMinutesAcross(),
                new SpanishPoundsAndAverages(),
                new AlignedByBlanks(),
                new ItalianClockFolders(),
                new FrenchBlindComments());
    }
}
