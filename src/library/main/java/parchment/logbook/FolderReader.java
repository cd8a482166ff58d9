package parchment.logbook;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import parchment.logbook.contents.BlendPart;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.contents.LotCheck;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.logbook.written.Machine;
import parchment.logbook.written.Problem;
import parchment.logbook.written.Upkeep;
import parchment.quantity.TemperatureUnit;
import parchment.sheet.ReadableFile;
import parchment.sheet.TextFile;
import parchment.sheet.Words;

/** Opens a logbook folder: settings, tables, curves, and what holds them together. */
final class FolderReader {
    static final String CURVES = "curves";
    static final List<String> TABLES = List.of(
            BatchesFile.FILE,
            LotFiles.LOTS,
            LotFiles.CHECKS,
            LotFiles.BLENDS,
            MachineFiles.MACHINES,
            CuppingFiles.CUPPINGS,
            CuppingFiles.SESSIONS,
            MachineFiles.UPKEEP);

    private final Path folder;
    private final Optional<CurveLayout> stated;
    private final long mostCurveBytes;
    private final List<Problem> problems = new ArrayList<>();

    private FolderReader(Path folder, Optional<CurveLayout> stated, long mostCurveBytes) {
        this.folder = folder;
        this.stated = stated;
        this.mostCurveBytes = mostCurveBytes;
    }

    static Logbook open(Path folder, Optional<CurveLayout> layout) {
        return open(folder, layout, CurveFolder.usualBytes());
    }

    /** Opens a folder, holding no more than the given bytes of curves in memory. */
    static Logbook open(Path folder, Optional<CurveLayout> layout, long mostCurveBytes) {
        checkFolder(folder);
        return new FolderReader(folder, layout, mostCurveBytes).read();
    }

    private static void checkFolder(Path folder) {
        if (Files.isRegularFile(folder)) {
            Path parent = folder.toAbsolutePath().getParent();
            throw new LogbookException("A logbook is a folder; " + Words.quote(folder.toString())
                    + " is a file. Open the folder that it is in"
                    + (parent == null ? "." : ", " + Words.quote(parent.toString()) + "."));
        }
        if (!Files.isDirectory(folder)) {
            throw new LogbookException("There is no folder " + Words.quote(folder.toString()) + ". Check the name"
                    + siblings(folder) + ", or give the full path of the logbook.");
        }
    }

    private static String siblings(Path folder) {
        Path parent = folder.toAbsolutePath().getParent();
        Path name = folder.getFileName();
        if (parent == null || name == null || !Files.isDirectory(parent)) {
            return "";
        }
        List<String> names = new ArrayList<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(parent, Files::isDirectory)) {
            stream.forEach(path -> names.add(String.valueOf(path.getFileName())));
        } catch (IOException e) {
            return "";
        }
        String meant = Words.didYouMean(name.toString(), names);
        return meant.isEmpty() ? "" : " (" + meant.strip() + ")";
    }

    /** Returns one path for the folder, however it was named. */
    private Path realPath() {
        try {
            return folder.toRealPath();
        } catch (IOException e) {
            return folder.toAbsolutePath().normalize();
        }
    }

    private Logbook read() {
        ProblemLog settingsLog = new ProblemLog(Settings.FILE);
        Settings settings = Settings.read(folder, settingsLog);
        problems.addAll(settingsLog.toList());
        CurvePlace curves = findCurves();
        // Read first, for what a machine holds says which masses to doubt.
        List<Machine> machines = table(MachineFiles.MACHINES, log -> MachineFiles.machines(folder, settings, log));
        BatchesFile.Result written = table(BatchesFile.FILE, log -> BatchesFile.read(folder, settings, machines, log));
        List<Lot> lots = table(LotFiles.LOTS, log -> LotFiles.lots(folder, settings, log));
        List<LotCheck> checks = table(LotFiles.CHECKS, log -> LotFiles.checks(folder, settings, log));
        List<BlendPart> blends = table(LotFiles.BLENDS, log -> LotFiles.blends(folder, settings, log));
        List<Upkeep> upkeep = table(MachineFiles.UPKEEP, log -> MachineFiles.upkeep(folder, settings, log));
        CuppingFiles.Cups tasted = table(CuppingFiles.CUPPINGS, log -> CuppingFiles.cups(folder, settings, log));
        List<Cupping> sessions = table(CuppingFiles.SESSIONS, log -> CuppingFiles.sessions(folder, settings, log));
        List<CurveFolder.Entry> entries = readCurves(curves, settings);
        Map<String, Batch> batches = joined(written, entries, curves, settings);
        CuppingFiles.Cups cups = tasted.ofBatches(batches.keySet());
        CrossChecks links = new CrossChecks(written, batches, lots, blends, machines);
        problems.addAll(links.batches());
        problems.addAll(links.lotsOf(checks, blends));
        problems.addAll(links.machinesOf(upkeep));
        problems.addAll(links.cups(cups, sessions));
        problems.addAll(links.slips(cups, settings.scales().keySet()));
        TemperatureUnit unit = readerUnit(entries, written.unit());
        List<Batch> ordered = new ArrayList<>();
        batches.values()
                .forEach(batch -> ordered.add(batch.toBuilder().readerUnit(unit).build()));
        // A stable sort: batches of a day without a time of day stay in the order of their rows; those without a date
        // come last.
        ordered.sort(Comparator.comparing(
                batch -> batch.roastedAt().map(at -> at.toInstant()).orElse(null),
                Comparator.nullsLast(Comparator.naturalOrder())));
        return Logbook.of(LogbookContents.ofBatches(settings.name().orElse(nameOf(folder)), ordered).toBuilder()
                .folder(realPath())
                .zone(settings.zone())
                .readerUnit(unit)
                .massUnit(written.mass())
                .lots(lots)
                .lotChecks(checks)
                .blends(blends)
                .machines(machines)
                .cups(cups.cups())
                .cuppings(sessions)
                .upkeep(upkeep)
                .scales(scales(settings, cups.cups()))
                .crackHabit(settings.crackHabit())
                .provenance(settings.provenance())
                .problems(new Problems(ofBatches(written, entries, curves, settings)))
                .build());
    }

    /** Says of each problem with a row of batches.csv or a curve file whose it is. */
    private List<Problem> ofBatches(
            BatchesFile.Result written, List<CurveFolder.Entry> entries, CurvePlace place, Settings settings) {
        Map<Integer, String> rows = new LinkedHashMap<>();
        written.lines().forEach((name, line) -> rows.put(line, name));
        CurveNames names = new CurveNames(
                written.batches().keySet(),
                entries.stream().map(CurveFolder.Entry::batch).toList(),
                settings);
        Map<String, String> files = new LinkedHashMap<>();
        for (CurveFolder.Entry entry : entries) {
            String batch = names.batchOf(entry.batch());
            files.put(place.shown() + entry.batch() + ".csv", batch);
            entry.problems().forEach(problem -> files.put(problem.file(), batch));
        }
        return problems.stream()
                .map(problem -> problem.of(
                        problem.file().equals(BatchesFile.FILE)
                                ? rows.getOrDefault(problem.line(), "")
                                : files.getOrDefault(problem.file(), "")))
                .toList();
    }

    private static String nameOf(Path folder) {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return name == null ? "logbook" : name.toString();
    }

    private <T> T table(String file, Function<ProblemLog, T> reading) {
        ProblemLog log = new ProblemLog(file);
        T result = reading.apply(log);
        problems.addAll(log.toList());
        return result;
    }

    /** Where the curve files are: a folder of their own, or, in a folder without tables, beside each other. */
    private record CurvePlace(Path folder, String shown, Optional<List<Path>> files) {}

    private CurvePlace findCurves() {
        ProblemLog log = new ProblemLog(".");
        TreeSet<String> csv = new TreeSet<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
            stream.forEach(path -> {
                String name = String.valueOf(path.getFileName());
                if (name.toLowerCase(Locale.ROOT).endsWith(".csv") && !name.startsWith(".")) {
                    csv.add(name);
                }
            });
        } catch (IOException e) {
            throw new LogbookException(
                    "The folder " + Words.quote(folder.toString()) + " cannot be listed: " + TextFile.reason(e) + ".",
                    e);
        }
        boolean tables = csv.stream().anyMatch(TABLES::contains);
        Path curves = folder.resolve(CURVES);
        if (Files.isDirectory(curves) || tables) {
            csv.removeAll(TABLES);
            for (String name : csv) {
                log.add(
                        0,
                        "",
                        "a file " + Words.quote(name),
                        "the tables of a logbook." + Words.didYouMean(name, TABLES),
                        "file left out");
            }
            problems.addAll(log.toList());
            return new CurvePlace(curves, CURVES + "/", Optional.empty());
        }
        if (csv.isEmpty()) {
            throw new LogbookException("The folder " + Words.quote(folder.toString())
                    + " holds no logbook: it has neither batches.csv nor a folder 'curves' nor any CSV file."
                    + " Open the folder that holds them.");
        }
        return new CurvePlace(
                folder, "", Optional.of(csv.stream().map(folder::resolve).toList()));
    }

    private List<CurveFolder.Entry> readCurves(CurvePlace place, Settings settings) {
        if (!Files.isDirectory(place.folder())) {
            problems.add(new Problem(
                    CURVES + "/",
                    0,
                    "",
                    "no such folder",
                    "one with a curve file for each batch",
                    "batches kept without curves"));
            return List.of();
        }
        ProblemLog layoutLog = new ProblemLog(place.shown() + CurveLayout.FILE);
        Path layoutFile = place.folder().resolve(CurveLayout.FILE);
        CurveLayout layout = stated.orElseGet(() -> ReadableFile.isThere(layoutFile)
                ? LayoutFile.of(Settings.properties(layoutFile, place.folder(), layoutLog), layoutLog)
                : CurveLayout.standard());
        problems.addAll(layoutLog.toList());
        CurveFolder reader = new CurveFolder(place.folder(), place.shown(), layout, settings, mostCurveBytes);
        ProblemLog folderLog = new ProblemLog(place.shown().isEmpty() ? "." : place.shown());
        List<CurveFolder.Entry> entries = reader.read(place.files().orElseGet(() -> reader.files(folderLog)));
        problems.addAll(folderLog.toList());
        entries.forEach(entry -> problems.addAll(entry.problems()));
        problems.addAll(Duplicates.curves(entries, place.shown()));
        return entries;
    }

    /** Puts curves to batches; a curve without a batch becomes one that is only named. */
    private Map<String, Batch> joined(
            BatchesFile.Result written, List<CurveFolder.Entry> entries, CurvePlace place, Settings settings) {
        CurveNames names = new CurveNames(
                written.batches().keySet(),
                entries.stream().map(CurveFolder.Entry::batch).toList(),
                settings);
        Map<String, Batch> batches = new LinkedHashMap<>(written.batches());
        boolean table = Files.exists(folder.resolve(BatchesFile.FILE))
                && problems.stream()
                        .noneMatch(problem -> problem.file().equals(BatchesFile.FILE) && problem.leavesOutItsFile());
        Map<String, String> taken = new LinkedHashMap<>();
        String only = "kept as a batch of which only the curve is known";
        AlikeProblems second = new AlikeProblems(place.shown(), "", "one file of each batch", "file left out");
        AlikeProblems unknown = new AlikeProblems(place.shown(), "", "a row for each in " + BatchesFile.FILE, only);
        for (CurveFolder.Entry entry : entries) {
            String name = names.batchOf(entry.batch());
            String file = place.shown() + entry.batch() + ".csv";
            String other = taken.putIfAbsent(name, file);
            if (other != null) {
                second.add(() -> new Problem(
                        file,
                        0,
                        "",
                        "a second curve file for " + Words.quote(name),
                        "one; there is " + other,
                        "file left out"));
                continue;
            }
            Batch batch = batches.get(name);
            if (batch == null) {
                batch = Batch.named(name).build();
                if (table) {
                    unknown.add(() -> new Problem(
                            file,
                            0,
                            "",
                            "a curve of no batch in " + BatchesFile.FILE,
                            "a row for " + Words.quote(name) + "." + names.question(name),
                            only));
                }
            }
            batches.put(
                    name,
                    batch.toBuilder().curves(entry.quantities(), entry.curves()).build());
        }
        problems.addAll(second.toList());
        problems.addAll(unknown.toList());
        if (!entries.isEmpty()) {
            AlikeProblems without = new AlikeProblems(
                    BatchesFile.FILE, "batch", "a file for each in " + CURVES + "/", "kept without a curve");
            written.lines().forEach((name, line) -> {
                if (!taken.containsKey(name)) {
                    without.add(() -> new Problem(
                            BatchesFile.FILE,
                            line,
                            "batch",
                            "the batch " + Words.quote(name) + " without a curve",
                            "a file " + Words.quote(CURVES + "/" + CurveNames.fileName(name)),
                            "kept without a curve"));
                }
            });
            problems.addAll(without.toList());
        }
        return batches;
    }

    private static TemperatureUnit readerUnit(List<CurveFolder.Entry> entries, Optional<TemperatureUnit> written) {
        Map<TemperatureUnit, Integer> counts = new LinkedHashMap<>();
        for (CurveFolder.Entry entry : entries) {
            entry.written().ifPresent(unit -> counts.merge(unit, 1, Integer::sum));
        }
        return counts.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .or(() -> written)
                .orElse(TemperatureUnit.CELSIUS);
    }

    private static Map<String, Logbook.Scale> scales(Settings settings, List<CupScores> cups) {
        Map<String, Logbook.Scale> scales = new LinkedHashMap<>();
        for (CupScores cup : cups) {
            for (String attribute : cup.scores().keySet()) {
                Logbook.Scale scale = settings.scales().get(Settings.plain(attribute));
                if (scale != null) {
                    scales.put(attribute, scale);
                }
            }
        }
        return scales;
    }
}
