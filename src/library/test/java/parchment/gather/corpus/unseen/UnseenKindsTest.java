package parchment.gather.corpus.unseen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Reading;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind;
import parchment.logbook.MarkKind;

class UnseenKindsTest {
    @TempDir
    Path scratch;

    @Test
    void everyKindWritesTheSameFolderFromTheSameSeed() throws IOException {
        assertEquals(20, UnseenKinds.all().size());
        assertEquals(
                20, UnseenKinds.all().stream().map(StrangeKind::name).distinct().count());
        for (StrangeKind kind : UnseenKinds.all()) {
            assertFalse(kind.facts().isEmpty(), kind.name());
            for (int seed = 1; seed <= 3; seed++) {
                Map<String, String> once = written(kind, seed, "once");
                assertFalse(once.isEmpty(), kind.name());
                assertEquals(once, written(kind, seed, "again"), kind.name());
            }
        }
    }

    private Map<String, String> written(StrangeKind kind, int seed, String turn) throws IOException {
        Path folder = Files.createDirectories(
                scratch.resolve(turn).resolve(seed + " " + kind.getClass().getSimpleName()));
        kind.write(roastery(new Random(seed)), folder, new Random(seed));
        Map<String, String> contents = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                contents.put(folder.relativize(file).toString(), contents(file));
            }
        }
        return contents;
    }

    /** Returns the bytes as text; of a workbook its parts, but not the hour it was saved. */
    private static String contents(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        if (bytes.length < 2 || bytes[0] != 'P' || bytes[1] != 'K') {
            return new String(bytes, StandardCharsets.ISO_8859_1);
        }
        StringBuilder text = new StringBuilder();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry entry : Collections.list(zip.entries())) {
                if (!entry.getName().startsWith("docProps") && !entry.getName().equals("meta.xml")) {
                    text.append(entry.getName())
                            .append(new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.ISO_8859_1));
                }
            }
        }
        return text.toString();
    }

    static Roastery roastery(Random random) {
        List<String> lots = List.of("Hill farm washed", "Río Azul natural", "Hillside, \"late\" pick");
        List<Roast> roasts = new ArrayList<>();
        LocalDateTime clock = LocalDateTime.of(2023, 2, 27, 8, 40, 12);
        for (int i = 0; i < 10; i++) {
            clock = i % 3 == 2 ? clock.toLocalDate().plusDays(2).atTime(9, 5, 31) : clock.plusMinutes(19);
            double green = 4 + random.nextInt(5) / 2.0;
            Map<MarkKind, Double> marks = new EnumMap<>(MarkKind.class);
            marks.put(MarkKind.YELLOWING, 260.0 + random.nextInt(40));
            marks.put(MarkKind.FIRST_CRACK_START, 480.0 + random.nextInt(40));
            double drop = 590.0 + random.nextInt(60);
            marks.put(MarkKind.DROP, drop);
            List<Reading> readings = new ArrayList<>();
            for (int s = -40; s <= drop + 40; s++) {
                double bean = s < 0 || s > drop
                        ? 190 - s / 40.0
                        : 215 - 125 * Math.exp(-s / 300.0) + 100 * Math.exp(-s / 25.0);
                double air = 230 + 10 * Math.sin(s / 200.0) + random.nextInt(5) / 10.0;
                readings.add(new Reading(s, bean, air, s < 200 ? 80 : 55));
            }
            roasts.add(new Roast(
                    101 + i,
                    clock,
                    lots.get(random.nextInt(lots.size())),
                    green,
                    green * (0.83 + random.nextInt(30) / 1000.0),
                    marks,
                    readings,
                    i == 4 ? "windy; door open, \"again\"" : ""));
        }
        List<Tasting> tastings = new ArrayList<>();
        for (int cupping = 1; cupping <= 2; cupping++) {
            for (String cupper : List.of("Ada", "Bo", "Cyl")) {
                for (int i = 0; i < 5; i++) {
                    Map<String, Double> scores = new TreeMap<>();
                    for (String attribute : List.of("acidity", "sweetness", "body", "overall")) {
                        scores.put(attribute, 5 + random.nextInt(17) / 4.0);
                    }
                    tastings.add(new Tasting(
                            cupping,
                            LocalDate.of(2023, 3, 5 + 9 * cupping),
                            cupper,
                            96 + 5 * cupping + i,
                            String.valueOf((char) ('K' + i)),
                            scores));
                }
            }
        }
        return new Roastery(roasts, tastings);
    }
}
