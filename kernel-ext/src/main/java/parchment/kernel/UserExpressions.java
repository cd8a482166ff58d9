package parchment.kernel;

import com.google.gson.JsonObject;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;
import parchment.kernel.words.CellError;
import parchment.kernel.words.CompileErrors;

/**
 * What a client wants to know after a cell that ran to its end: values of expressions under names of its own, which appear nowhere on
 * the page.
 *
 * @see <a href="https://jupyter-client.readthedocs.io/en/stable/messaging.html#execute">Messaging in Jupyter, "execute"</a>
 */
final class UserExpressions {
    private UserExpressions() {}

    /** Returns for each name the value in its forms, or why there is none; one that fails does not keep the others from their value. */
    static JsonObject valuesOf(@Nullable Map<String, String> expressions, int number, Evaluator evaluator) {
        JsonObject values = new JsonObject();
        if (expressions != null) {
            expressions.forEach((name, expression) -> values.add(name, valueOf(expression, number, evaluator)));
        }
        return values;
    }

    private static JsonObject valueOf(String expression, int number, Evaluator evaluator) {
        if (!evaluator.isExpression(expression)) {
            String message = "This is no expression: a client asks for values only, after a cell.";
            return Kernel.error(new CellError(CompileErrors.NAME, message, List.of(message)));
        }
        Asked page = new Asked();
        Optional<CellError> error = evaluator.run(number, expression, page).error();
        if (error.isPresent()) {
            return Kernel.error(error.get());
        }
        JsonObject value = page.value.content();
        value.addProperty("status", "ok");
        return value;
    }

    /** Keeps the value and lets everything else go. */
    private static final class Asked implements CellPage {
        private Shown value = Shown.NOTHING;

        @Override
        public void print(Stream stream, String text) {
            // Nobody asked for it.
        }

        @Override
        public void show(Shown shown) {
            // Nobody asked for it.
        }

        @Override
        public void clear() {
            // There is nothing on this page.
        }

        @Override
        public void result(Shown shown) {
            value = shown;
        }
    }
}
