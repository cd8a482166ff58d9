package parchment.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects what a roaster is told of a file: a sentence once, and things of one kind with their count and where the first one stands. */
final class Told {
    private static final class Kind {
        private final String first;
        private int count;

        Kind(String first) {
            this.first = first;
        }
    }

    private final List<String> sentences = new ArrayList<>();
    private final Map<String, Kind> kinds = new LinkedHashMap<>();

    void sentence(String sentence) {
        if (!sentences.contains(sentence)) {
            sentences.add(sentence);
        }
    }

    /** Counts a thing; {@code what} goes on from "12 …" as in "cells hold an error". */
    void count(String what, String where) {
        kinds.computeIfAbsent(what, unused -> new Kind(where)).count++;
    }

    List<String> toList() {
        List<String> all = new ArrayList<>(sentences);
        kinds.forEach((what, kind) -> all.add(what + ": " + kind.count + ", the first at " + kind.first + "."));
        return all;
    }

    /** Returns a cell's place as spreadsheets write it, as in B7; rows and columns count from 0. */
    static String place(int row, int column) {
        return column(column) + (row + 1);
    }

    /** Returns the letters of a column that counts from 0. */
    static String column(int column) {
        StringBuilder letters = new StringBuilder();
        for (int rest = column + 1; rest > 0; rest = (rest - 1) / 26) {
            letters.insert(0, (char) ('A' + (rest - 1) % 26));
        }
        return letters.toString();
    }
}
