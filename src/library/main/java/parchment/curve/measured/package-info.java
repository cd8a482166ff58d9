/** What a curve gives when it is asked: a value with its error, a passage of a temperature, a gap, what was left out and why. */
@NullMarked
package parchment.curve.measured;

import org.jspecify.annotations.NullMarked;
