package parchment.feature;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.kind.Role;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.MarkKind;
import parchment.quantity.MassUnit;
import parchment.quantity.Unit;

/** A built-in feature: data about the number, and how it is read off a path whose marks are taken as exact. */
final class NamedFeature implements Feature {
    private final String name;
    private final Unit unit;
    private final Family family;
    private final Role role;
    private final String definition;
    private final Set<Need> needs;
    private final Set<MarkKind> marks;
    private final Function<BatchPath, Measured> read;
    private final Function<Batch, OptionalDouble> plan;
    private final OnProbe onProbe;

    private NamedFeature(
            String name,
            Unit unit,
            Family family,
            Role role,
            String definition,
            Set<Need> needs,
            Set<MarkKind> marks,
            Function<BatchPath, Measured> read,
            Function<Batch, OptionalDouble> plan,
            OnProbe onProbe) {
        this.name = name;
        this.unit = unit;
        this.family = family;
        this.role = role;
        this.definition = definition;
        this.needs = Collections.unmodifiableSet(needs);
        this.marks = Collections.unmodifiableSet(marks);
        this.read = read;
        this.plan = plan;
        this.onProbe = onProbe;
    }

    static NamedFeature of(
            String name, Unit unit, Family family, String definition, Function<BatchPath, Measured> read) {
        return new NamedFeature(
                name,
                unit,
                family,
                family.role(),
                definition,
                EnumSet.noneOf(Need.class),
                EnumSet.noneOf(MarkKind.class),
                read,
                batch -> OptionalDouble.empty(),
                OnProbe.FREE_OF_IT);
    }

    /** Says where a plan of it is written. */
    NamedFeature planned(Function<Batch, OptionalDouble> where) {
        return new NamedFeature(name, unit, family, role, definition, needs, marks, read, where, onProbe);
    }

    /** Says what it is in the making of a roast, where its family says otherwise. */
    NamedFeature as(Role other) {
        return new NamedFeature(name, unit, family, other, definition, needs, marks, read, plan, onProbe);
    }

    NamedFeature needing(Need... what) {
        Set<Need> more = copy(needs, Need.class);
        more.addAll(List.of(what));
        return new NamedFeature(name, unit, family, role, definition, more, marks, read, plan, onProbe);
    }

    /** Declares the marks it reads; what a mark needs to be there is declared with it. */
    NamedFeature using(MarkKind... kinds) {
        Set<MarkKind> more = copy(marks, MarkKind.class);
        Set<Need> need = copy(needs, Need.class);
        for (MarkKind kind : kinds) {
            more.add(kind);
            switch (kind) {
                case TURNING_POINT -> need.add(Need.TURNING_POINT);
                case YELLOWING -> need.add(Need.YELLOWING);
                case FIRST_CRACK_START -> need.add(Need.FIRST_CRACK_START);
                case FIRST_CRACK_END -> need.add(Need.FIRST_CRACK_END);
                case DROP -> need.add(Need.DROP);
                case CHARGE, SECOND_CRACK_START -> {
                    // Charge is always there: the clock starts with it. No built-in feature reads second crack.
                }
            }
        }
        return new NamedFeature(name, unit, family, role, definition, need, more, read, plan, onProbe);
    }

    /** Declares that it hangs on where the bean probe reads certain temperatures. */
    NamedFeature hangingOnTheBeanProbe() {
        return new NamedFeature(name, unit, family, role, definition, needs, marks, read, plan, OnProbe.HANGS_ON_IT);
    }

    /** Declares that it is a reading of the bean probe. */
    NamedFeature readOffTheBeanProbe() {
        return new NamedFeature(name, unit, family, role, definition, needs, marks, read, plan, OnProbe.READING);
    }

    /** Returns the same with its masses shown in a unit. */
    NamedFeature withMassesIn(MassUnit shown) {
        Unit in = unit.withMassesIn(shown);
        return in.equals(unit)
                ? this
                : new NamedFeature(name, in, family, role, definition, needs, marks, read, plan, onProbe);
    }

    private static <E extends Enum<E>> Set<E> copy(Set<E> set, Class<E> of) {
        Set<E> copy = EnumSet.noneOf(of);
        copy.addAll(set);
        return copy;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Unit unit() {
        return unit;
    }

    @Override
    public String definition() {
        return definition;
    }

    @Override
    public Set<Need> needs() {
        return needs;
    }

    @Override
    public Family family() {
        return family;
    }

    @Override
    public Role role() {
        return role;
    }

    @Override
    public OptionalDouble planned(Batch batch) {
        return plan.apply(batch);
    }

    @Override
    public OnProbe onProbe() {
        return onProbe;
    }

    @Override
    public Set<MarkKind> marksUsed() {
        return marks;
    }

    @Override
    public Measured measureWithMarksExact(BatchPath path) {
        return read.apply(path);
    }

    @Override
    public Measured measure(BatchPath path) {
        Measured own = read.apply(path);
        if (own.isMissing() || marks.isEmpty()) {
            return own;
        }
        double variance = own.standardError() * own.standardError();
        for (MarkKind kind : marks) {
            double moved = MarkShift.of(path, kind).effectOn(this, own.value());
            variance += moved * moved;
        }
        return own.withStandardError(Math.sqrt(variance));
    }

    @Override
    public String toString() {
        return name + (unit.toString().isEmpty() ? "" : " [" + unit + "]") + ": " + definition;
    }
}
