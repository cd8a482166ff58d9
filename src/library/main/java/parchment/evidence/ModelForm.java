package parchment.evidence;

/**
 * Chooses which terms the model of the scores has.
 *
 * <p>The default is the model of the method page: the feature as a line, lots as a random term with their mean beside it, roast days
 * as a random term, a curve over the date, and rest days, batch of the day and green mass beside.
 */
record ModelForm(Shape shape, Lots lots, Days days, Date date, Beside beside) {
    /** How the feature enters. */
    enum Shape {
        /** Not at all. */
        ABSENT,
        /** As a line. */
        LINE,
        /** As a line and a square. */
        BEND
    }

    /** How lots (within probe periods) enter. */
    enum Lots {
        /** The feature is counted from the lot's mean; the mean and a random lot stand beside it. */
        RANDOM,
        /** Each lot within each probe period has its own level. */
        FIXED,
        /** The feature is not counted from the lot's mean. */
        NOT_SPLIT,
        /**
         * The feature is counted from one place for all, as readings on one probe are; each lot has a level of its own, so that only
         * differences inside lots count. From four lots on the levels are a random term with the lots' means beside it.
         */
        OWN_LEVEL
    }

    /** How roast days enter. */
    enum Days {
        /** As a random term. */
        RANDOM,
        /** Each roast day has its own level: only batches of the same day are compared. */
        FIXED
    }

    /** How the calendar enters. */
    enum Date {
        /** As a smooth curve. */
        CURVE,
        /** Not at all. */
        ABSENT
    }

    /** What else is taken into account. */
    enum Beside {
        /** Rest days, batch of the day, green mass. */
        STANDARD,
        /** Nothing. */
        NOTHING,
        /** The standard, and operator and room temperature. */
        MORE
    }

    static final ModelForm STANDARD = new ModelForm(Shape.LINE, Lots.RANDOM, Days.RANDOM, Date.CURVE, Beside.STANDARD);

    ModelForm with(Shape other) {
        return new ModelForm(other, lots, days, date, beside);
    }

    ModelForm with(Lots other) {
        return new ModelForm(shape, other, days, date, beside);
    }

    ModelForm with(Days other) {
        return new ModelForm(shape, lots, other, date, beside);
    }

    ModelForm with(Date other) {
        return new ModelForm(shape, lots, days, other, beside);
    }

    ModelForm with(Beside other) {
        return new ModelForm(shape, lots, days, date, other);
    }
}
