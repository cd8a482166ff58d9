package parchment.gather;

import java.text.Normalizer;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Knows the trade's general words on a sheet of scores in English, German, Spanish, Portuguese, Italian, French and Dutch. The lists are common
 * practice of the trade, from memory, no source; words are compared without accents, case and signs.
 */
final class ScoreWords {
    private static final Pattern ATTRIBUTE =
            words("acid\\w*|zuur\\w*|zoet\\w*|saure|saeure|sauerkeit|sweet\\w*|suss\\w*|suess\\w*|dul[cz]\\w+"
                    + "|docura|dolc\\w+|douceur|sucrosite|body|korper|koerper|cuerpo|corpo|corps|mouthfeel|mundgefuhl|mundgefuehl|textur\\w*"
                    + "|aftertaste|finish|nachgeschmack|abgang|regusto|retrogusto|posgusto|postgusto|retrogosto|arriere gout|finale"
                    + "|balance|balanced|ausgewogen\\w*|equilib\\w+|harmon\\w+|overall|gesamt|gesamteindruck|eindruck|global\\w*|geral"
                    + "|impresion|impression\\w*|impressao|impressione|general|complessiv\\w+|ensemble"
                    + "|flavou?r|geschmack|taste|sabor|gusto|gout|saveur|sapore|aroma|aromas|arom\\w?|duft|geruch|fragran\\w+|fragan\\w+"
                    + "|odeur|odore|smell|parfum|uniform\\w*|einheitlich\\w*|gleichmassig\\w*|clean|clean cup|cleanness|cleanliness"
                    + "|sauber\\w*|reinheit|limp\\w+|pulit\\w+|pulizia|proprete|clarity|klarheit|claridad|clarte"
                    + "|bitter\\w*|amarg\\w+|amar\\w+|amer|amertume|astring\\w+|adstring\\w+|[ck]omplex\\w*|compless\\w+|intens\\w+"
                    + "|juic\\w+|saftig\\w*|fruit\\w*|frucht\\w*|frut\\w+|floral\\w*|persist\\w+"
                    + "|qualit\\w+|calidad|qualidade|kwaliteit|smaak|nasmaak|afdronk|mondgevoel|balans|evenwicht\\w*|geur|zuiver\\w*"
                    + "|schoon\\w*|helder\\w*|volheid|(totaal|eind|algemene )indruk");
    private static final Pattern SCORE = words(
            "score|scores|punkt|punkte|punktzahl|bewertung|wertung|note|noten|nota|notas"
                    + "|puntuacion|puntaje|puntos|pontuacao|pontos|punteggio|punteggi|voto|voti|points|rating|ergebnis|resultado"
                    + "|risultato|resultat|cijfers?|punten|waardering|beoordeling|wert|valor|valore|valeur|value|grade|cupping score|cup score");
    private static final Pattern TOTAL = words(
            "total|totale|sum|summe|gesamtpunkte|gesamtpunktzahl|gesamtsumme|suma|soma"
                    + "|somma|somme|totaal|som|eindcijfer|totaalcijfer|final score|total score|punteggio totale|puntaje total|note totale|endpunktzahl");
    private static final Pattern MEAN =
            words("average|averages|avg|mean|means|gem|gemiddeld\\w*|durchschnitt\\w*|mittel|mittelwert\\w*|schnitt"
                    + "|promedio\\w*|media|medie|moyenne\\w*|moy|panel|panel mean|valor medio|valore medio");
    private static final Map<ScorePart, Pattern> KEYS = new LinkedHashMap<>();
    private static final Pattern AGAINST = words(
            "temp|temperature?\\w*|temperatur\\w*|kg|g|lb|oz|mass|weight|gewicht\\w*|peso"
                    + "|poids|masse|zeit|\\w+zeit|time|tiempo|tempo|temps|dauer|duration|duracion|duracao|durata|duree|loss|verlust"
                    + "|\\w+verlust|merma|perda|perte|calo|moisture|feuchte|\\w*feuchtigkeit|humedad|umidade|umidita|humidite|humidity"
                    + "|density|dichte|densidad|densidade|densita|densite|colour|farbe|colore|couleur|crack|drop|yellow\\w*|gas|burner"
                    + "|airflow|drum|probe temp\\w*|seconds|minutes|sekunden|minuten|price|preis|precio|preco|prezzo|prix|pressure"
                    + "|druck|einwurf\\w*|auswurf\\w*|rohkaffee\\w*|rostkaffee\\w*|machine|maschine|trommel\\w*|bean temp\\w*|air temp\\w*");

    static {
        KEYS.put(
                ScorePart.NOTE,
                words(
                        "notes|comments?|remarks?|kommentare?|bemerkung(en)?|anmerkung(en)?|notiz(en)?"
                                + "|comentarios?|observac\\w+|osservazion\\w|commenti?o?|commentaires?|remarques?|descriptors?|descriptores"
                                + "|beschreibung(en)?|descripcion|descricao|descrizione|description|deskriptoren|cup notes|opmerking(en)?|notities?|toelichting"));
        KEYS.put(
                ScorePart.ROASTED,
                words(
                        "roasted( on)?|roast(ing)? (date|day)|date of roast|rostdatum|roestdatum|rosttag"
                                + "|geroste?t( am)?|fecha (de|del) (tueste|tostado|tostion)|data (da|de|di) (torra|tostatura)|date de torrefaction|gebrand( op)?|branddatum|brand datum"));
        KEYS.put(
                ScorePart.DAY,
                words("date|datum|fecha|data|day|tag|dia|giorno|jour|tasted( on)?|cupped( on)?|verkostet( am)?|when"
                        + "|(tasting|cupping) (date|day)|(date|day) (of )?(the )?(tasting|cupping|tasted|cupped)"
                        + "|verkostungs ?(datum|tag)|(datum|tag) (der )?verkostung|degustiert( am)?|geproefd( op)?|proef ?datum"
                        + "|(fecha|dia) (de )?(la )?(cata|degustacion)|catado( el)?"
                        + "|(data|giorno) ((di|della) )?(prova|degustazione|assaggio)|(data|giorno) dell assaggio|assaggiato( il)?"
                        + "|(date|jour) (de )?(la )?degustation|deguste( le)?"
                        + "|(data|dia) ((da|de) )?(prova|degustacao)|provado( em)?"));
        KEYS.put(
                ScorePart.CUPPER,
                words(
                        "cuppers?|tasters?|taster name|tasted by|cupped by|judges?|panell?ist|verkoster(in)?|prufer(in)?"
                                + "|pruefer(in)?|juror(in)?|catador(a|es|as)?|provador(a|es)?|degustador(a)?|assaggiator[ei]|assaggiatrice"
                                + "|degustateur|degustatrice|juge|juez|giudice|proevers?|beoordelaars?|who|name|naam|wie|wer|quien|quem|chi|evaluador|avaliador|nombre|nome|nom"));
        KEYS.put(
                ScorePart.CODE,
                words(
                        "(blind ?)?(code|codes|codigo|codice|kode)|blindcode|blind|code (ciego|cego|cieco|aveugle)"
                                + "|codigo (ciego|cego)|codice cieco|blind no|sample|samples|muster|muster ?nr|probe|proben|probe nr|muestra"
                                + "|amostra|campione|echantillon|monster|monster ?nr|sample (no|nr|code|id|number)|letter|buchstabe|letra"));
        KEYS.put(
                ScorePart.BATCH,
                words(
                        "(batch|roast|brand|charge|rostung|roestung|rostcharge|tueste|tostado|tostion|torra|tosta"
                                + "|tostatura|torrefaction|cuisson|fournee|lot torrefie|lot de torrefaction|bache|lote de tueste|branding)( (no|nr|num|number|nummer|id|name|numero|n))?"
                                + "|chargen ?(nr|nummer)|brand ?(nr|nummer)|rostnummer|roest ?nr|rost ?nr|batches|no|nr|n|numero|nummer|number|id|batch lot"
                                + "|(no|nr|numero|n) (de|da|di|del|della)? ?(tueste|torra|tostatura|torrefaction|charge|lote)"));
        KEYS.put(
                ScorePart.LOT,
                words(
                        "lot|lots|lote|lotto|coffee|coffees|kaffee|cafe|caffe|sorte|bohne|bohnen|bean|beans|koffie|boon|bonen|herkomst|partij|origin"
                                + "|origen|herkunft|green lot|green coffee|partie|partida|lot (no|nr|number)"));
        KEYS.put(
                ScorePart.CUP,
                words(
                        "cups?|tassen?|tazas?|xicaras?|chicaras?|tazz[ae]|tasses?|kopjes?|bowl|schale|cup (no|nr|number)|taza (no|n)"));
        KEYS.put(
                ScorePart.POSITION,
                words(
                        "(serving )?(position|order|place)|platz|plaats|volgorde|reihenfolge|orden( de servicio)?|ordem|ordine"
                                + "|ordre|posicion|posicao|posizione"));
        KEYS.put(
                ScorePart.CUPPING,
                words("cupping|session|sitzung|verkostung|sesion|sessao|sessione|seance|degustation"
                        + "|cata|degustazione|prova|round|runde|ronda|ronde|proeverij|proeving|tasting"));
        KEYS.put(
                ScorePart.ATTRIBUTE,
                words(
                        "attributes?|merkmale?|eigenschaft|atributos?|attribut[oi]?|attributs?|criterion|criteria"
                                + "|kriterium|kriterien|criterios?|criteri|critere|criteres|caracteristica|caratteristica|eigenschappen|kenmerk(en)?|quality asked"));
    }

    private ScoreWords() {}

    private static Pattern words(String alternatives) {
        return Pattern.compile(alternatives);
    }

    /** Returns text in lower case, without accents and signs. */
    static String plain(String text) {
        return Normalizer.normalize(
                        text.toLowerCase(Locale.ROOT).replace("ß", "ss").replace("ø", "average"), Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^\\p{L}\\p{N}]+", " ")
                .strip();
    }

    /** Returns whether the text names an attribute of taste; "total" does not. */
    static boolean isAttribute(String text) {
        String plain = plain(text);
        if (ATTRIBUTE.matcher(plain).matches()) {
            return true;
        }
        String[] each = plain.split(" ");
        if (each.length > 4 || isTotal(text)) {
            return false;
        }
        for (String word : each) {
            if (ATTRIBUTE.matcher(word).matches()) {
                return true;
            }
        }
        return false;
    }

    /** Returns whether the text says that numbers are scores, and no more. */
    static boolean isScore(String text) {
        return SCORE.matcher(plain(text)).matches();
    }

    /** Returns whether a heading says that numbers stand below, and not of what. */
    static boolean isBareNumber(String text) {
        return plain(text).matches("|no|nr|n|numero|nummer|number|id");
    }

    /** Returns whether a heading can only mean codes; a "sample" can be a batch. */
    static boolean isCodeAlone(String text) {
        return plain(text)
                .matches("blind|((blind ?)?(code|codes|codigo|codice|kode))( (ciego|cego|cieco|aveugle|no|nr))?");
    }

    /** Returns whether the text says "roasted" alone, which can be a day, or a mass. */
    static boolean isBareRoasted(String text) {
        return plain(text).matches("roasted|geroste?t");
    }

    static boolean isTotal(String text) {
        return TOTAL.matcher(plain(text)).matches();
    }

    static boolean isMean(String text) {
        return MEAN.matcher(plain(text)).matches();
    }

    /** Returns what a heading says that a column is, other than a score. */
    static Optional<ScorePart> key(String heading) {
        String plain = plain(heading);
        if (plain.isEmpty() && heading.matches(".*[#№].*")) {
            return Optional.of(ScorePart.BATCH);
        }
        return KEYS.entrySet().stream()
                .filter(known -> known.getValue().matcher(plain).matches())
                .map(Map.Entry::getKey)
                .findFirst();
    }

    /** Returns whether a heading names something that is weighed, timed or measured on a machine. */
    static boolean speaksAgainst(String heading) {
        if (heading.matches(".*[\\[(]\\s*(°\\s*[CFcf]|[CFcf]|kg|g|lb|oz|s|min|min:s|%|mbar|kPa|g/[lL])\\s*[\\])].*")) {
            return true;
        }
        String plain = plain(heading);
        if (isAttribute(heading)) {
            return false;
        }
        for (String word : plain.split(" ")) {
            if (AGAINST.matcher(word).matches()) {
                return true;
            }
        }
        return AGAINST.matcher(plain).matches();
    }

    /** Returns the number of a cup, as in "cup 2", or 0. */
    static int cupNumber(String text) {
        String plain = plain(text);
        return plain.matches("(cup|tasse|taza|xicara|chicara|tazza|schale|bowl|kop|kopje)( no| nr| n)? ?\\d{1,2}")
                ? Integer.parseInt(plain.replaceAll("\\D+", ""))
                : 0;
    }

    /** Returns whether the text is a short code without meaning, such as K7, 4B, Q, or three figures. */
    static boolean isCode(String text) {
        return text.strip().matches("[A-Za-z]{1,2}[-. ]?\\d{1,3}|\\d{1,3}[-. ]?[A-Za-z]{1,2}|[A-Z]{1,2}|\\d{3}");
    }

    /** Returns whether the text can be a person's name: a word or three, no figures, none of the words known here. */
    static boolean isName(String text) {
        String stripped = text.strip();
        return stripped.matches("\\p{Lu}[\\p{L}\\p{M}'’.-]*( \\p{L}[\\p{L}\\p{M}'’.-]*){0,2}")
                && !stripped.matches("[A-Z]{1,2}")
                && key(stripped).isEmpty()
                && !isAttribute(stripped)
                && !isScore(stripped)
                && !isTotal(stripped)
                && !isMean(stripped)
                && !speaksAgainst(stripped)
                && !plain(stripped)
                        .matches("(sheet|tabelle|blatt|hoja|planilha|foglio|feuille|feuil|table|tabla|tabela)\\b.*");
    }
}
