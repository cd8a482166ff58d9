/**
 * The handbook: the Markdown of {@code docs/} as a small set of HTML pages that load nothing.
 *
 * <pre>{@code
 * Handbook handbook = Handbook.of(Path.of("."));
 * handbook.writeTo(Path.of("out/handbook"));
 * }</pre>
 *
 * What the contents, {@code docs/README.md}, link to is a page; its place there is its place in the book.
 */
@NullMarked
package parchment.handbook;

import org.jspecify.annotations.NullMarked;
