package parchment.virtual.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RungeKuttaTest {
    @Test
    @Tag("agrees-with")
    void agreesWithDeSolveOnAWarmingDryingBody() throws IOException {
        RungeKutta rule = (state, seconds, rates) -> {
            rates[1] = -5e4 * Math.exp(-7e4 / (8.314 * (state[0] + 273.15))) * state[1];
            rates[0] = 0.004 * (220 - state[0]) + 300 * rates[1];
        };
        double[] state = {25, 0.1};
        int at = 0;
        for (String line : lines()) {
            String[] fields = line.split(",");
            for (int until = Integer.parseInt(fields[0]); at < until; at++) {
                state = RungeKutta.step(rule, state, at, 1);
            }
            assertEquals(Double.parseDouble(fields[1]), state[0], 1e-8 * 200, "temperature after " + at + " s");
            assertEquals(Double.parseDouble(fields[2]), state[1], 1e-8 * 0.1, "moisture after " + at + " s");
        }
        assertEquals(600, at);
    }

    private static List<String> lines() throws IOException {
        try (var stream = RungeKuttaTest.class.getResourceAsStream("/reference/desolve/ode_heat_moisture.csv")) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .toList();
        }
    }
}
