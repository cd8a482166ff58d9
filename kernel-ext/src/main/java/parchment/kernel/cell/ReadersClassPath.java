package parchment.kernel.cell;

import java.nio.file.Path;
import parchment.jars.SessionJars;

/** Hands a reader's jars to the compiler of the cells and to what loads their classes. */
record ReadersClassPath(Session session) implements SessionJars.ClassPath {
    @Override
    public void add(Path entry) {
        session.compilePath().add(entry, session.shell());
    }

    @Override
    public void programFirst() {
        session.compilePath().widen(session.shell());
    }

    @Override
    public void say(String line) {
        System.out.println(line);
    }
}
