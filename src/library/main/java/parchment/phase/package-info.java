/**
 * Finds the marks of a roast and the phases between them, each with its source and its uncertainty.
 *
 * <p>A mark is a named instant. The roaster wrote it, or the logger's clock gives it, or it is found on the bean-probe curve, or it is
 * assumed; the page says which. Drying runs from charge to yellowing, browning from yellowing to the start of first crack, development
 * from there to the drop. A mark that nobody wrote is not made up: what lacks is said, with what can be said without it.
 *
 * <pre>{@code
 * var phases = Phases.of(logbook.batch("2025-03-04-a"));
 * phases.mark(MarkKind.FIRST_CRACK_START)    // 10:10 ± 5 s, written, bean temperature 190.2 °C
 * phases.development()                       // from first crack start to drop, 2:12 ± 6 s
 * phases.missing()                           // what lacks, in sentences
 * PhaseTable.of(logbook)                     // one row per batch
 * }</pre>
 */
@NullMarked
package parchment.phase;

import org.jspecify.annotations.NullMarked;
