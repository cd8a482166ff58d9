package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;

/** What a reader is told while a cell is compiled for long. */
@Timeout(60)
class CompileNoticeTest {
    private final BlockingQueue<String> printed = new LinkedBlockingQueue<>();
    private final CompileNotice soon = new CompileNotice(Duration.ofMillis(20));

    private final CellPage page = new CellPage() {
        @Override
        public void print(Stream stream, String text) {
            printed.add(stream + " " + text);
        }

        @Override
        public void show(Shown shown) {}

        @Override
        public void result(Shown shown) {}
    };

    @AfterEach
    void close() {
        soon.close();
    }

    private static final String TOLD = "STDERR Java is still compiling this cell. It can be stopped only when that is"
            + " done. A shorter method, or data read from a file, compiles sooner.\n";

    @Test
    void isToldAfterTheSecondsThatThePageOnCellsStates() throws IOException {
        String cells = Files.readString(Path.of("..", "docs", "cells.md"));
        String stated = "A cell that Java compiles for more than " + CompileNotice.AFTER.toSeconds() + " seconds";
        assertTrue(cells.contains(stated), stated);
    }

    @Test
    void isToldOnceACell() throws InterruptedException {
        soon.begin(page);
        assertEquals(TOLD, printed.poll(20, TimeUnit.SECONDS));
        soon.pause();
        soon.resume();
        Thread.sleep(100);
        soon.end();
        assertEquals(List.of(), List.copyOf(printed));
        soon.begin(page);
        assertEquals(TOLD, printed.poll(20, TimeUnit.SECONDS), "the next cell is another");
    }

    @Test
    void theTimeInWhichTheCellRunsDoesNotCount() throws InterruptedException {
        CompileNotice late = new CompileNotice(Duration.ofMillis(400));
        late.begin(page);
        late.pause();
        Thread.sleep(600);
        assertEquals(List.of(), List.copyOf(printed));
        late.resume();
        late.end();
        Thread.sleep(600);
        assertEquals(List.of(), List.copyOf(printed), "the cell has ended");
        late.close();
    }

    @Test
    void aCellThatRunsLongIsNotTakenForOne() {
        try (Evaluator evaluator = Evaluator.open()) {
            RecordingPage quick = new RecordingPage();
            assertTrue(evaluator.run("Thread.sleep(5_500); 42", quick).fine());
            assertFalse(quick.err().contains("compiling"), quick.err());
        }
    }
}
