/** A batch seen as the path that its features are measured on, with its place in the day, and which features one probe reads. */
@NullMarked
package parchment.feature.path;

import org.jspecify.annotations.NullMarked;
