/**
 * Knows how a table is written down in a file: bytes as text, lines, cells, headings with units, numbers, dates and times, and the words in
 * which a file is spoken of. It knows nothing of roasts.
 */
@NullMarked
package parchment.sheet;

import org.jspecify.annotations.NullMarked;
