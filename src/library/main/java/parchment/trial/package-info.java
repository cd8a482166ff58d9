/**
 * Asks what one control <em>did</em> to a score, by letting chance choose its targets: the coin flip.
 *
 * <p>What was only watched "went with" a score; whatever else moved that day may stand behind both. Where chance drew the target of each
 * batch inside its set (one lot on one roast day), nothing else can stand behind it. What was wanted is fixed beforehand and sealed, and
 * the finished trial is answered by {@link parchment.trial.TrialAnswer}: "did", "did nothing larger than" the smallest difference that
 * was stated, or "cannot tell".
 *
 * <p>A finished trial is answered by its own rules, as assigned and by shuffles inside its sets; the verdicts of
 * {@link parchment.evidence.Evidence} stay for everything else. Formulas and sources are in {@code docs/methods.md}.
 */
@NullMarked
package parchment.trial;

import org.jspecify.annotations.NullMarked;
