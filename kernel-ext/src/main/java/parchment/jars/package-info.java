/**
 * Jars that a reader brings along: files of their own, or libraries of a Maven repository with all that these need.
 *
 * <pre>{@code
 * Jars.add("org.apache.commons:commons-math3:3.6.1");
 * Jars.add(Path.of("tools/blends.jar"));
 * }</pre>
 *
 * <p>Nothing is fetched unless a cell asks for it, and only over https with checksums that fit. What Parchment itself runs on stays as it
 * is: a library that it brings in another version is named, and Parchment's is used.
 */
@NullMarked
package parchment.jars;

import org.jspecify.annotations.NullMarked;
