package parchment.jars;

import java.nio.file.Path;

/**
 * One library as it was found in a repository.
 *
 * @param coordinate its name
 * @param file its jar in the local repository
 * @param licence as its makers name it; empty if they do not
 */
record Library(Coordinate coordinate, Path file, String licence) {}
