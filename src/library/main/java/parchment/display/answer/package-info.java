/** How an answer is put into words: its first three sentences, the report below them, plain sentences, counts and nearest names. */
@NullMarked
package parchment.display.answer;

import org.jspecify.annotations.NullMarked;
