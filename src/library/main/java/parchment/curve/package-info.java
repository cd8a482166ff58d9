/**
 * Holds what was sampled over time, and turns it into numbers that can be relied on: cleaned readings, a smooth value, a rate of
 * rise, the steps of a control.
 *
 * <p>Cleaning only ever leaves readings out, and says which and why. Smoothing gives a standard error with every number and gives
 * nothing inside a gap:
 *
 * <pre>{@code
 * CleanCurve clean = CleanCurve.of(curve);          // what was left out, gaps, the logger's step
 * SmoothCurve smooth = SmoothCurve.of(clean);       // local quadratic, 20 seconds to either side
 * smooth.valueAt(372).value();                      // in the curve's unit
 * smooth.slopeAt(372).value();                      // per minute: the rate of rise of a bean-temperature curve
 * ControlSteps.of(gas).list();                      // when the gas was moved, from what to what
 * }</pre>
 */
@NullMarked
package parchment.curve;

import org.jspecify.annotations.NullMarked;
