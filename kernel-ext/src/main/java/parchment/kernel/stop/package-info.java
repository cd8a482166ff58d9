/**
 * Stops a running cell and keeps it from ending the session: the checks put into its classes, the thread that it runs on, what is left behind.
 */
@NullMarked
package parchment.kernel.stop;

import org.jspecify.annotations.NullMarked;
