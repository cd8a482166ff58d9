package parchment.gather;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Knows in which languages a sheet's headings can be, and which words mean something in some languages only: a "brand" is a roast in Dutch and a maker in
 * English, and "data" are days in Italian. Common practice, from memory, no source.
 */
final class SheetLanguage {
    private enum Language {
        ENGLISH(
                "acidity|sweetness|body|flavou?r|aftertaste|balance|overall|cuppers?|tasters?|batch|roast|score|notes|comments|coffee|tasted|cupped|who"
                        + "|sample|remarks|clean cup|mouthfeel|fragrance|bitterness|average"),
        DUTCH(
                "zoet\\w*|zuur\\w*|smaak|nasmaak|afdronk|balans|geur|proevers?|opmerking(en)?|geproefd|koffie|gemiddelde?|cijfers?|wie|mondgevoel|bonen"),
        NORDIC(
                "syrlighed|syrlighet|syra|sodme|sotme|sotma|krop|kropp|fylde|fyllighet|smag|smak|eftersmag|ettersmak|eftersmak|dato|bemaerkning(er)?|kaffe"
                        + "|smager|smaker|karakter|betyg|kommentar(er)?"),
        ITALIAN(
                "acidita|dolcezza|corpo|retrogusto|equilibrio|assaggiator[ei]|tostatura|punteggio|caffe|giudice|aroma|gusto|lotto"),
        PORTUGUESE(
                "acidez|docura|corpo|finalizacao|provador(es)?|torra|nota|xicara|cafe|lote|atributo|sabor|equilibrio"),
        GERMAN(
                "saure|susse|korper|nachgeschmack|verkoster|charge|punkte|bemerkung(en)?|merkmal|prufer|kaffee|datum|rostung|gesamt");

        private final Pattern words;

        Language(String words) {
            this.words = Pattern.compile(words);
        }
    }

    private static final Map<String, Set<Language>> ONLY_IN = Map.of(
            "brand", EnumSet.of(Language.DUTCH, Language.NORDIC),
            "brands", EnumSet.of(Language.DUTCH, Language.NORDIC),
            "data", EnumSet.of(Language.ITALIAN, Language.PORTUGUESE),
            "tag", EnumSet.of(Language.GERMAN));

    private final Set<Language> spoken = EnumSet.noneOf(Language.class);

    private SheetLanguage() {}

    /** Returns the languages of some headings; none where no word is known. */
    static SheetLanguage of(Collection<String> headings) {
        SheetLanguage language = new SheetLanguage();
        List<String> plain = headings.stream().map(ScoreWords::plain).toList();
        for (Language one : Language.values()) {
            if (plain.stream().anyMatch(word -> one.words.matcher(word).matches())) {
                language.spoken.add(one);
            }
        }
        return language;
    }

    /** Returns whether a heading may be taken at its word: it means the same everywhere, or the sheet is in a language in which it means that. */
    boolean allows(String heading) {
        Set<Language> only = ONLY_IN.get(ScoreWords.plain(heading).replaceFirst(" (no|nr|num|number|nummer|id)$", ""));
        return only == null || only.stream().anyMatch(spoken::contains);
    }
}
