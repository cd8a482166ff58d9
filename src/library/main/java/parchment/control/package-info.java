/**
 * Holds the controls of a page: what a person moves, presses or chooses from while they look at their batches.
 *
 * <p>A control is a label, a value and what is to happen when a person changes the value. It is the one kind of object here that changes
 * while it is looked at. Nothing in this room knows how a page draws a control; where a page is still, the control says in words what it
 * is and where it stands.
 *
 * <pre>{@code
 * Slider.of("drop temperature", 196, 212)
 *         .withUnit("°C")
 *         .onChange(limit -> System.out.println("now " + limit + " °C"))
 * }</pre>
 *
 * <p>A method that says how a control is made ({@code of}, {@code with...}, {@code startingAt}, {@code ticked}) returns another control with the
 * same callbacks. One that says what is to happen ({@code onChange}, {@code onPress}, {@code showing}) changes the control itself and
 * returns it, so the first kind comes first. What moves it from Java ({@code set}, {@code tick}, {@code clear}) changes it too.
 *
 * <p>Controls are for looking. None of them moves a machine, and none may be made to: nothing here reads a probe or answers in time.
 */
@NullMarked
package parchment.control;

import org.jspecify.annotations.NullMarked;
