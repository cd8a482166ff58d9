package parchment.gather;

import java.util.Optional;
import parchment.logbook.MarkKind;

/** Names what a column of a list can mean. */
enum ListMeaning {
    BATCH("batch", Kind.NAME),
    RUNNING_NUMBER("running number", Kind.RUNNING),
    DATE("date", Kind.DAY),
    TIME_OF_DAY("time of day", Kind.TIME_OF_DAY),
    ROASTED_AT("roasted at", Kind.DATE_AND_TIME),
    GREEN_MASS("green mass", Kind.MASS),
    ROASTED_MASS("roasted mass", Kind.MASS),
    MASS_LOSS("mass loss", Kind.SHARE),
    CHARGE_TEMPERATURE("charge temperature", Kind.ROAST_TEMPERATURE),
    DROP_TEMPERATURE("drop temperature", Kind.ROAST_TEMPERATURE),
    PLANNED_DROP_TEMPERATURE("planned drop temperature", Kind.ROAST_TEMPERATURE),
    FIRST_CRACK_TEMPERATURE("first crack temperature", Kind.ROAST_TEMPERATURE),
    TURNING_POINT("turning point", Kind.SINCE_CHARGE),
    YELLOWING("yellowing", Kind.SINCE_CHARGE),
    FIRST_CRACK_START("first crack start", Kind.SINCE_CHARGE),
    FIRST_CRACK_END("first crack end", Kind.SINCE_CHARGE),
    SECOND_CRACK_START("second crack start", Kind.SINCE_CHARGE),
    DROP("drop", Kind.SINCE_CHARGE),
    DEVELOPMENT_TIME("development time", Kind.SINCE_CHARGE),
    DEVELOPMENT_RATIO("development ratio", Kind.SHARE),
    LOT("lot", Kind.WORD),
    MACHINE("machine", Kind.WORD),
    OPERATOR("operator", Kind.WORD),
    RECIPE("recipe", Kind.WORD),
    PURPOSE("purpose", Kind.WORD),
    WHOLE_BEAN_COLOUR("whole-bean colour", Kind.NUMBER),
    GROUND_COLOUR("ground colour", Kind.NUMBER),
    ROOM_TEMPERATURE("room temperature", Kind.ROOM_TEMPERATURE),
    ROOM_HUMIDITY("room humidity", Kind.SHARE),
    ROOM_PRESSURE("room pressure", Kind.NUMBER),
    GREEN_TEMPERATURE("green temperature", Kind.ROOM_TEMPERATURE),
    NOTE("note", Kind.TEXT),
    ORIGIN("origin", Kind.WORD),
    PROCESS("process", Kind.WORD),
    VARIETY("variety", Kind.WORD),
    MOISTURE("moisture", Kind.SHARE),
    DENSITY("density", Kind.NUMBER),
    ARRIVED_ON("arrived on", Kind.DAY),
    HARVESTED_ON("harvested on", Kind.DAY),
    STORAGE("storage", Kind.WORD),
    SCREEN_SIZE("screen size", Kind.WORD),
    WORK("work", Kind.TEXT),
    /** Kept under its own heading. */
    EXTRA("extra", Kind.ANY),
    /** Nothing stands in it. */
    BLANK("leave out", Kind.ANY);

    /** Names what kind of values a meaning has. */
    enum Kind {
        NAME,
        RUNNING,
        DAY,
        TIME_OF_DAY,
        DATE_AND_TIME,
        MASS,
        SHARE,
        ROAST_TEMPERATURE,
        ROOM_TEMPERATURE,
        SINCE_CHARGE,
        NUMBER,
        WORD,
        TEXT,
        ANY
    }

    private final String words;
    private final Kind kind;

    ListMeaning(String words, Kind kind) {
        this.words = words;
        this.kind = kind;
    }

    /** Returns the heading of the logbook's table, or a word of a question. */
    String words() {
        return words;
    }

    Kind kind() {
        return kind;
    }

    /** Returns the mark whose time since the charge it is, if the table of batches has a column for it. */
    Optional<MarkKind> mark() {
        return parchment.logbook.LogbookFiles.MARKS.stream()
                .filter(mark -> mark.words().equals(words))
                .findFirst();
    }

    /** Returns whether more than one column of a table may mean it. */
    boolean mayRepeat() {
        return this == EXTRA || this == BLANK;
    }

    /** Returns the meaning that has these words. */
    static Optional<ListMeaning> of(String words) {
        for (ListMeaning meaning : values()) {
            if (meaning.words.equals(words)) {
                return Optional.of(meaning);
            }
        }
        return Optional.empty();
    }
}
