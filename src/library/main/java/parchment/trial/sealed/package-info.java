/** What a trial's folder holds and hands out: the plan, the drawn lines and their seals, the sets as listed, slips and sheets to print. */
@NullMarked
package parchment.trial.sealed;

import org.jspecify.annotations.NullMarked;
