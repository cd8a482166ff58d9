package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.gather.ListColumn.Confidence;

class ListColumnsTest {
    private static ListColumns columns(Clues clues, String... lines) {
        return ListColumns.of(Sheets.table(lines), clues);
    }

    private static ListColumns columns(String... lines) {
        return columns(Clues.NONE, lines);
    }

    private static Clues curves(String... stems) {
        List<Clues.Recorded> recorded = new ArrayList<>();
        for (String stem : stems) {
            recorded.add(new Clues.Recorded(stem, "", Optional.empty(), Optional.empty()));
        }
        return new Clues(recorded);
    }

    private static String meanings(ListColumns columns) {
        return columns.columns().stream()
                .map(column -> column.meaning() + (column.unit().isEmpty() ? "" : " " + column.unit()))
                .collect(Collectors.joining(", "));
    }

    private static ListColumn first(ListColumns columns, ListMeaning meaning) {
        return columns.of(meaning).orElseThrow();
    }

    @Test
    void theCurvesNamesFindTheBatchesUnderAnyHeading() {
        ListColumns columns = columns(
                curves("roast-0101", "roast-0102", "roast-0103"),
                "Which|Code|Green kg",
                "101|A1|5",
                "102|A2|5",
                "103|A3|5");
        assertEquals(ListMeaning.BATCH, columns.columns().get(0).meaning());
        assertEquals(
                "its values are the names or numbers of 3 of 3 curve files",
                columns.columns().get(0).reason());
        assertEquals(Confidence.CERTAIN, columns.columns().get(0).confidence());
    }

    @Test
    void withoutCurvesTheHeadingAndOnceEachFindThem() {
        ListColumns columns =
                columns("Batch/Lot|Date|Coffee", "7|2031-06-01|Huila", "8|2031-06-01|Guji", "9|2031-06-02|Guji");
        assertEquals("BATCH, DATE, LOT", meanings(columns));
    }

    @ParameterizedTest
    @CsvSource({"Lote,T-12,T-13,T-14,BATCH", "Lote,Huila,Guji,Huila,LOT", "Lot,12,13,14,BATCH"})
    void aLotThatStandsOnceEachIsABatchAndOneThatComesAgainALot(
            String heading, String one, String two, String three, ListMeaning meaning) {
        ListColumns columns = columns(
                heading + "|Fecha|Peso verde|Peso tostado",
                one + "|2031-06-01|5|4.2",
                two + "|2031-06-01|5|4.3",
                three + "|2031-06-02|5|4.25");
        assertEquals(meaning, columns.columns().get(0).meaning());
    }

    @Test
    void numbersThatBeginAgainWithTheDayAreRunningNumbers() {
        ListColumns columns = columns(
                "Nr.|Datum|Sorte",
                "1|01.06.2031|Huila",
                "2|01.06.2031|Guji",
                "1|02.06.2031|Huila",
                "2|02.06.2031|Huila");
        assertEquals("RUNNING_NUMBER, DATE, LOT", meanings(columns));
    }

    @Test
    void theLighterOfTwoMassesIsRoastedWhateverItIsCalled() {
        ListColumns columns =
                columns("Batch|Kilos A|Kilos B|Lost", "1|4.2|5|16", "2|4.3|5|14", "3|4.25|5|15", "4|4.1|5|18");
        assertEquals("BATCH, ROASTED_MASS kg, GREEN_MASS kg, MASS_LOSS %", meanings(columns));
        assertEquals(
                "is 15 % lighter than 'Kilos B' row by row, which is what 'Lost' says; it has a median of 4.3 without a unit: kg or lb",
                first(columns, ListMeaning.ROASTED_MASS).reason());
    }

    @ParameterizedTest
    @CsvSource({
        // 8 to 25 % lighter, common practice; the last on each side that is taken: 6 and 28 %.
        "95,false",
        "94,true",
        "85,true",
        "72,true",
        "71,false",
    })
    void aPairOfMassesMustLoseWhatRoastsLose(int outOfHundred, boolean pair) {
        String[] lines = new String[5];
        lines[0] = "Batch|One|Two";
        for (int i = 1; i < lines.length; i++) {
            lines[i] = i + "|" + 20 + "|" + 20 * outOfHundred / 100.0;
        }
        assertEquals(pair, columns(lines).of(ListMeaning.GREEN_MASS).isPresent());
    }

    @ParameterizedTest
    @CsvSource({
        "Green (kg),5,kg,CERTAIN",
        "Green lb,11,lb,CERTAIN",
        "Green,5 kg,kg,CERTAIN",
        "Green,5,kg,OPEN",
        "Green,100,g,CERTAIN",
        "Green,99,kg,OPEN",
        "Rohkaffee,5,kg,CERTAIN",
        "Rohkaffee,40,kg,OPEN",
        "Rohkaffee (g),5.000,g,CERTAIN",
        "Green (oz),176,oz,CERTAIN",
    })
    void theUnitOfAMassIsItsOwnOrFollowsFromItsSize(String heading, String value, String unit, Confidence confidence) {
        ListColumn green = first(
                columns("Batch|" + heading + "|Notes", "1|" + value + "|ok", "2|" + value + "|", "3|" + value + "|"),
                ListMeaning.GREEN_MASS);
        assertEquals(unit, green.unit());
        assertEquals(confidence, green.confidence());
    }

    @Test
    void poundsGoWithFahrenheitAndAreAsked() {
        ListColumns columns = columns("Batch|Green|Charge temp", "1|11|400", "2|11|405", "3|11|395");
        assertEquals("BATCH, GREEN_MASS lb, CHARGE_TEMPERATURE °F", meanings(columns));
        assertEquals(
                List.of(ListMeaning.GREEN_MASS),
                columns.open().stream().map(ListColumn::meaning).toList());
    }

    @ParameterizedTest
    @CsvSource({
        "200,°C,CERTAIN",
        "245,°C,CERTAIN",
        "246,°C,OPEN",
        "262,°C,OPEN",
        "263,°F,OPEN",
        "290,°F,CERTAIN",
        "400,°F,CERTAIN"
    })
    void theScaleOfATemperatureFollowsFromItsSize(String value, String unit, Confidence confidence) {
        ListColumn charge = first(
                columns("Batch|Charge temp", "1|" + value, "2|" + value, "3|" + value), ListMeaning.CHARGE_TEMPERATURE);
        assertEquals(unit, charge.unit());
        assertEquals(confidence, charge.confidence());
    }

    @Test
    void oneHeadingMeansWhatItsValuesAllow() {
        assertEquals(
                ListMeaning.GREEN_MASS,
                columns("Batch|Charge", "1|5", "2|5", "3|5").columns().get(1).meaning());
        assertEquals(
                ListMeaning.CHARGE_TEMPERATURE,
                columns("No.|Charge|Green kg", "1|200|5", "2|205|5", "3|198|5")
                        .columns()
                        .get(1)
                        .meaning());
        assertEquals(
                ListMeaning.BATCH,
                columns("Charge|Datum|Sorte", "H1|01.06.2031|A", "H2|01.06.2031|B", "H3|02.06.2031|A")
                        .columns()
                        .get(0)
                        .meaning());
        assertEquals(
                ListMeaning.DROP,
                columns("Batch|Drop", "1|11:00", "2|10:50", "3|11:10")
                        .columns()
                        .get(1)
                        .meaning());
        assertEquals(
                ListMeaning.DROP_TEMPERATURE,
                columns("Batch|Drop|Time", "1|215|11:00", "2|214|10:50", "3|216|11:10")
                        .columns()
                        .get(1)
                        .meaning());
        assertEquals(
                ListMeaning.DATE,
                columns("Batch|Roasted|Green kg", "1|2031-06-01|5", "2|2031-06-02|5", "3|2031-06-03|5")
                        .columns()
                        .get(1)
                        .meaning());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "11:00|10:50|min:s|CERTAIN",
                "11:00:00|10:50:00|min:s, as h:mm:ss|CERTAIN",
                "0:11:00|0:10:50|h:min:s|CERTAIN",
                "660|650|s|CERTAIN",
                "11.0|10.8|min|CERTAIN",
                "11.05|10.50|min:s|OPEN",
                "0.4583|0.4514|share of a day, as h:mm|CERTAIN",
                "0.00764|0.00752|share of a day|CERTAIN"
            })
    void timesSinceTheChargeAreReadAsTheyAreWritten(String one, String two, String form, Confidence confidence) {
        ListColumn drop = first(columns("Batch|Drop time", "1|" + one, "2|" + two, "3|" + one), ListMeaning.DROP);
        assertEquals(form, drop.unit());
        assertEquals(confidence, drop.confidence());
    }

    @Test
    void theDevelopmentTimeIsWhatTheDropHasOverFirstCrack() {
        ListColumns columns = columns(
                "Batch|A|B|C|Share",
                "1|8:55|2:10|11:05|19.5",
                "2|8:45|2:05|10:50|19.2",
                "3|8:40|2:20|11:00|21.2",
                "4|8:50|2:00|10:50|18.5");
        assertEquals(
                "BATCH, FIRST_CRACK_START min:s, DEVELOPMENT_TIME min:s, DROP min:s, DEVELOPMENT_RATIO %",
                meanings(columns));
        assertEquals(
                "is 'C' less 'A' row by row",
                first(columns, ListMeaning.DEVELOPMENT_TIME).reason());
    }

    @Test
    void timesOfDayGoThroughHoursAndTimesSinceTheChargeDoNot() {
        assertEquals(
                "BATCH, TIME_OF_DAY, DROP min:s",
                meanings(columns(
                        "Batch|Time|Total time", "1|8:10|11:05", "2|9:30|10:50", "3|11:20|11:00", "4|13:05|11:10")));
    }

    @Test
    void serialNumbersAreDaysAndHoursOnlyWhereSomethingSaysSo() {
        assertEquals("BATCH, DATE serial number", meanings(columns("Batch|Date", "1|47999", "2|47999", "3|48000")));
        assertEquals(
                "BATCH, ROASTED_AT serial number",
                meanings(columns("Batch|When", "1|47999.25", "2|47999.3", "3|48000.25")));
        assertEquals("BATCH, LOT", meanings(columns("Batch|Coffee", "47999|A", "48001|A", "48002|B")));
    }

    @Test
    void aListWithoutHeadingsIsReadByItsValuesAndAsked() {
        ListColumns columns = columns(
                "H101|2031-06-01 08:00|5|4.2|11:05",
                "H102|2031-06-01 08:20|5|4.25|11:00",
                "H103|2031-06-01 08:40|5|4.3|11:10");
        assertEquals("BATCH, ROASTED_AT, GREEN_MASS kg, ROASTED_MASS kg, DROP min:s", meanings(columns));
        assertTrue(columns.open().size() >= 2);
    }

    @Test
    void anAnswerTakesTheMeaningFromAnotherColumnAndTheUnitAlong() {
        ListColumns columns = columns("Batch|Green|Roasted", "1|11|9.2", "2|11|9.3", "3|11|9.4");
        ListColumns pounds = columns.with(1, ListMeaning.GREEN_MASS, "lb");
        assertEquals("BATCH, GREEN_MASS lb, ROASTED_MASS lb", meanings(pounds));
        ListColumns other = columns.with(2, ListMeaning.BATCH, "");
        assertEquals("EXTRA, GREEN_MASS kg, BATCH", meanings(other));
    }

    @Test
    void whatSaysNothingIsKeptAsItIs() {
        ListColumns columns = columns("Batch|Weather|Mood|", "1|rain|3|", "2|sun|4|", "3|rain|3|");
        assertEquals("BATCH, EXTRA, EXTRA", meanings(columns));
        assertEquals(
                "is kept under its own heading: neither its name nor its values say more",
                columns.columns().get(1).reason());
    }

    @Test
    void theNameOfAGroupGivesItsUnitAndLeavesTheMeaningToTheWordsBelow() {
        ListColumns columns = columns(
                "||Weights (lb)||Temps (°F)||Times|",
                "Roast|Bean|Green|Roasted|Charge|1C|1C|Drop",
                "1|Huila|10|8.5|400|385|8:30|10:45",
                "2|Huila|10|8.55|400|386|8:35|10:40",
                "3|Guji|10|8.6|395|384|8:50|11:00");
        assertEquals(
                "BATCH, LOT, GREEN_MASS lb, ROASTED_MASS lb, CHARGE_TEMPERATURE °F, FIRST_CRACK_TEMPERATURE °F, FIRST_CRACK_START min:s, DROP"
                        + " min:s",
                meanings(columns));
        assertTrue(columns.open().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"7:10,7:20,7:00,7:15,DROP", "8:10,9:30,11:20,13:05,TIME_OF_DAY"})
    void aColumnNamedTimeIsWhatItsValuesDo(String one, String two, String three, String four, ListMeaning meaning) {
        assertEquals(
                meaning,
                columns("Batch|Time", "1|" + one, "2|" + two, "3|" + three, "4|" + four)
                        .columns()
                        .get(1)
                        .meaning());
    }

    @ParameterizedTest
    @CsvSource({"19,MOISTURE", "21,ROOM_HUMIDITY"})
    void oneWordForMoistureAndHumidityIsToldByTheValues(String percent, ListMeaning meaning) {
        assertEquals(
                meaning,
                columns("Batch|Umidità", "1|" + percent, "2|" + percent, "3|" + percent)
                        .columns()
                        .get(1)
                        .meaning());
    }

    @Test
    void bothMassesOfASmallRoasterAreInGrams() {
        ListColumns columns = columns("ID|Lot|In|Out|Loss", "S1|A|100|86|14", "S2|B|100|85.5|14.5", "S3|C|100|87|13");
        assertEquals("BATCH, LOT, GREEN_MASS g, ROASTED_MASS g, MASS_LOSS %", meanings(columns));
    }

    @Test
    void degreesInTheRatioOfMassesStayDegrees() {
        ListColumns columns = columns("No|Charge|Drop|Min", "1|180|210|11:00", "2|182|212|11:10", "3|178|211|10:50");
        assertEquals("BATCH, CHARGE_TEMPERATURE °C, DROP_TEMPERATURE °C, DROP min:s", meanings(columns));
    }

    @Test
    void aMachineHasNumbersInItsNameAndAPersonNone() {
        assertEquals("BATCH, OPERATOR", meanings(columns("No|Tostador", "1|Ana", "2|Luis", "3|Ana")));
        assertEquals("BATCH, MACHINE", meanings(columns("No|Tostador", "1|Drum 5", "2|Drum 15", "3|Drum 5")));
    }
}
