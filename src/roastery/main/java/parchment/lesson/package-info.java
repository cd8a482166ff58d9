/**
 * Holds the lessons of a course: each opens its own saved state by its number and the student's seed, checks answers with hints, takes
 * stated claims, and grades them against the truth once the envelope is opened.
 *
 * <pre>{@code
 * var lesson = Lesson.open(1, 7);                       // lesson one, for the student with number seven
 * lesson.check("drop temperature", "204.5")             // right, or a hint; never the answer
 * }</pre>
 *
 * <p>The logbooks come from the virtual roastery, so that the same numbers give the same lesson on every machine. Every machine in them
 * is invented: nothing here may be roasted from. {@link parchment.lesson.Classroom} is the teacher's side: thirty seeds that the
 * students do not know, folders to hand out, and who found what.
 */
@NullMarked
package parchment.lesson;

import org.jspecify.annotations.NullMarked;
