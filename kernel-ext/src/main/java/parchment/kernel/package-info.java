/**
 * The Jupyter kernel itself: takes the requests of a client and answers them, from the first message to the end of the process.
 *
 * <p>What it needs lies by subject in the packages below it, in one order that a test holds ({@code docs/architecture.md}).
 */
@NullMarked
package parchment.kernel;

import org.jspecify.annotations.NullMarked;
