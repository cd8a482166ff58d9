/**
 * Says what changed since last season, when and by how much: the probe, the lot, the season or the roasting.
 *
 * <p>{@link parchment.drift.ProbeShifts} finds dates at which the probe's readings stepped for all lots, and holds them against the
 * upkeep; {@link parchment.drift.LotYear} follows one lot through its months; {@link parchment.drift.VarianceShares} says where
 * differences between batches come from; {@link parchment.drift.Watch} keeps an eye on one feature of one lot, and
 * {@link parchment.drift.Usual} asks of one batch whether it is like its lot's others. {@link parchment.drift.Twins} are repeats of one
 * recipe. {@link parchment.drift.Week} puts the last week on a page.
 *
 * <pre>{@code
 * var logbook = Logbook.open();
 * ProbeShifts.of(logbook)
 * }</pre>
 *
 * <p>Date is arrival plus age: what a lot's ageing does and what a machine's steady drift does cannot be told apart by any number of
 * batches, and this room says so instead of guessing. Methods, formulas, sources and limits are in {@code docs/drift.md}.
 */
@NullMarked
package parchment.drift;

import org.jspecify.annotations.NullMarked;
