/**
 * Holds sampled quantities over time: what a probe read, what a control was set to.
 *
 * <p>Time is in seconds since charge, negative before it. A {@link parchment.curve.Curve} is what was logged; cleaning, smoothing
 * and the rate of rise are made from it and know which readings they left out.
 */
@NullMarked
package parchment.curve;

import org.jspecify.annotations.NullMarked;
