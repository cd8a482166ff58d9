/**
 * The sockets of a kernel, the frames of a message, and the lines between things of the kernel and things of its clients.
 */
@NullMarked
package parchment.kernel.protocol;

import org.jspecify.annotations.NullMarked;
