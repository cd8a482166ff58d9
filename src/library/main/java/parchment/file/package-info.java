/**
 * Writes files and folders whole, and puts what goes wrong with files into words.
 *
 * <p>Whatever this library writes is written aside, in the same folder under a name that begins with {@code .parchment-}, and moved into its
 * place when all of it is there. Whoever looks meanwhile, and whoever comes after a full disk or a killed command, finds what was there
 * before or the whole of the new, never a piece. For example {@code WholeFile.at(Path.of("week.html")).write(page)}.
 *
 * <p>What this does not promise: that a file has reached the disk when the power fails in the same second.
 */
@NullMarked
package parchment.file;

import org.jspecify.annotations.NullMarked;
