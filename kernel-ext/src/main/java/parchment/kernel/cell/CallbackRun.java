package parchment.kernel.cell;

import parchment.kernel.page.Outcome;
import parchment.kernel.source.CellText;
import parchment.kernel.stop.CellGuard;
import parchment.kernel.stop.CellStop;
import parchment.kernel.words.CellExceptions;
import parchment.kernel.words.TablesawWords;

/** One run of what a control is to do when a person has set it. */
final class CallbackRun {
    private final Session session;
    private final CellText none;
    private final Runnable work;

    /** @param none stands for the cell that the work is not part of */
    CallbackRun(Session session, CellText none, Runnable work) {
        this.session = session;
        this.none = none;
        this.work = work;
    }

    Outcome run() {
        try {
            session.control().thread().call(() -> {
                work.run();
                return null;
            });
            CellStop.Reason reason = CellGuard.stopping();
            return reason == null ? Outcome.FINE : Outcome.stopped(reason);
        } catch (CellStop stop) {
            return Outcome.stopped(stop.reason());
        } catch (ThreadDeath death) {
            CellStop.Reason reason = CellGuard.stopping();
            return Outcome.stopped(reason == null ? CellStop.Reason.INTERRUPTED : reason);
        } catch (Exception | Error e) {
            CellStop.Reason reason = CellGuard.stopping();
            return reason == null
                    ? Outcome.failed(session.inWords(() -> CellExceptions.explain(
                            TablesawWords.inOurs(e, session.control().values()), null, session.places(), none)))
                    : Outcome.stopped(reason);
        }
    }
}
