package parchment.gather.corpus.unseen;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.dhatim.fastexcel.Worksheet;
import parchment.gather.corpus.Roastery;
import parchment.gather.corpus.Roastery.Roast;
import parchment.gather.corpus.Roastery.Tasting;
import parchment.gather.corpus.StrangeKind;

/**
 * Cups blind: a workbook for every cupping with a tab for every cupper and one more with the key, in half and quarter points; the roasts themselves are a short
 * list.
 */
final class ScoreTabACupper implements StrangeKind {
    @Override
    public String name() {
        return "a workbook a cupping, a tab a cupper, blind codes with a key";
    }

    @Override
    public Set<Fact> facts() {
        return EnumSet.of(Fact.BATCHES, Fact.DAYS, Fact.TIMES, Fact.LOTS, Fact.SCORES);
    }

    @Override
    public void write(Roastery roastery, Path folder, Random random) throws IOException {
        List<String> attributes = Pen.attributes(roastery);
        String comment = Pen.pick(random, "a little flat when cold", "clean", "like toast, \"in a good way\"");
        for (Map.Entry<Integer, List<Tasting>> cupping :
                Pen.byCupping(roastery.tastings()).entrySet()) {
            LocalDate day = cupping.getValue().get(0).tastedOn();
            Map<String, List<Tasting>> cuppers = Pen.byCupper(cupping.getValue());
            boolean keyFirst = random.nextBoolean();
            Path file = Pen.file(folder, "Cuppings", "cupping " + cupping.getKey() + " " + day + ".xlsx");
            Pen.workbook(file, book -> {
                if (keyFirst) {
                    key(book.newWorksheet("Key"), cupping.getValue());
                }
                for (Map.Entry<String, List<Tasting>> cupper : cuppers.entrySet()) {
                    Worksheet sheet = book.newWorksheet(cupper.getKey());
                    sheet.value(0, 0, "Cupping " + cupping.getKey());
                    Pen.row(sheet, 1, "Date", day);
                    Pen.row(sheet, 2, "Cupper", cupper.getKey());
                    sheet.value(4, 0, "Code");
                    for (int a = 0; a < attributes.size(); a++) {
                        sheet.value(4, a + 1, attributes.get(a));
                    }
                    sheet.value(4, attributes.size() + 1, "Comments");
                    int row = 5;
                    for (Tasting tasting : cupper.getValue()) {
                        sheet.value(row, 0, tasting.code());
                        for (int a = 0; a < attributes.size(); a++) {
                            Pen.cell(sheet, row, a + 1, tasting.scores().get(attributes.get(a)), "");
                        }
                        if (row % 3 == 0) {
                            sheet.value(row, attributes.size() + 1, comment);
                        }
                        row++;
                    }
                }
                if (!keyFirst) {
                    key(book.newWorksheet("Key"), cupping.getValue());
                }
            });
        }
        List<String> list = new ArrayList<>();
        list.add("Batch,Date,Time,Coffee,Remarks");
        for (Roast roast : roastery.batches()) {
            list.add(Pen.line(',', roast.number(), Pen.day(roast), Pen.time(roast), roast.lot(), roast.note()));
        }
        Pen.save(Pen.file(folder, "Roasts.csv"), Pen.UTF_8, Pen.CRLF, list);
        Leftovers.words(folder.resolve("how we cup.txt"), "Grind, smell, pour, wait four minutes, break, skim, slurp.");
    }

    private static void key(Worksheet sheet, List<Tasting> tastings) {
        Map<String, Integer> key = new TreeMap<>();
        tastings.forEach(tasting -> key.put(tasting.code(), tasting.batch()));
        Pen.row(sheet, 0, "Code", "Batch");
        int row = 1;
        for (Map.Entry<String, Integer> entry : key.entrySet()) {
            Pen.row(sheet, row++, entry.getKey(), entry.getValue());
        }
    }
}
