package parchment.kernel.widget;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.control.CheckBox;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.protocol.Comms;

/** What a page can change of a control, and what is said when controls give way. */
class WidgetModelTest {
    private static JsonObject json(String text) {
        return JsonParser.parseString(text).getAsJsonObject();
    }

    @Test
    @SuppressWarnings("NullAway") // Nothing is sent on a line that is not open.
    void aPageSetsTheValueAndNothingElse() {
        WidgetModel model = new WidgetModel(
                new Comms(null), "a", json("{'_model_name':'IntSliderModel','min':0,'value':1}"), () -> {});
        List<String> heard = new ArrayList<>();
        model.listen(state -> heard.add(state.toString()));
        model.said(
                json("{'method':'update','state':{'value':5,'min':-5,'_model_name':'Other','more':1}}"),
                Comms.Haste.NEWEST);
        assertEquals(List.of("{\"value\":5}"), heard);
        assertEquals(
                json("{'_model_name':'IntSliderModel','min':0,'value':5}"),
                model.described().get("state"));
    }

    @Test
    void manyControlsThatGiveWayInOneCellAreToldOnceAndThenTenfold() {
        ControlsClosed closed = new ControlsClosed();
        RecordingPage page = new RecordingPage();
        List<String> told = new ArrayList<>();
        for (int i = 0; i < 150; i++) {
            closed.told(page, List.of(CheckBox.of("tick"))).ifPresent(told::add);
        }
        String first = "More than 200 controls are alive on these pages, so the oldest no longer answers ("
                + CheckBox.of("tick").toString().replaceFirst("\\.$", "")
                + "). Run its cell again to bring it back.\n";
        assertEquals(
                List.of(
                        first,
                        "By now 10 of the oldest controls no longer answer.\n",
                        "By now 100 of the oldest controls no longer answer.\n"),
                told);
        assertEquals(
                first,
                closed.told(new RecordingPage(), List.of(CheckBox.of("tick"))).orElseThrow());
    }
}
