/** What a student hands in and gets back: the answers given, the claim stated, the grade, the reply. */
@NullMarked
package parchment.lesson.sheet;

import org.jspecify.annotations.NullMarked;
