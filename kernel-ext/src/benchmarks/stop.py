#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Measures how soon an interrupted cell is answered, and whether the next cell runs.

    mkdir -p /tmp/k && ./parchment install --prefix /tmp/k
    JUPYTER_PATH=/tmp/k/share/jupyter /usr/bin/python3 kernel-ext/src/benchmarks/stop.py

Each cell runs for a while in one session, is interrupted by a message, and the time from there to its reply is taken; then 1 + 1 is run.
"""
import time

from jupyter_client.manager import start_new_kernel

PATIENCE = 60
RUNS_S = 1.5
GIVEN = """int fib(int n) { return n < 2 ? n : fib(n - 1) + fib(n - 2); }
int swallowing(int n) { try { return swallowing(n + 1); } catch (Throwable t) { return swallowing(n); } }
import java.util.concurrent.*;"""
CELLS = [
    "while (true) { }",
    "while (true) { try { Thread.sleep(5); } catch (Throwable t) { } }",
    "double s = 0; while (true) { for (int i = 0; i < Integer.MAX_VALUE; i++) s += Math.sqrt(i); }",
    "fib(60)",
    "swallowing(1)",
    "Stream.iterate(1, i -> i + 1).mapToLong(i -> i).sum()",
    "IntStream.iterate(0, i -> i + 1).forEach(i -> {})",
    "IntStream.iterate(0, i -> i + 1).parallel().forEach(i -> {})",
    "new Random(1).doubles().map(d -> d * d).filter(d -> d > 2_000).findFirst()",
    "Stream.generate(Math::random).mapToDouble(Double::doubleValue).sum()",
    "Executors.newFixedThreadPool(2).submit(() -> { while (true) { } }).get()",
    "new LinkedBlockingQueue<Integer>().take()",
    "Thread.sleep(60_000)",
    "new Random(1).doubles(20_000_000_000L).sum()",
    "java.math.BigInteger.TWO.pow(3_000_000).pow(30).toString().length()",
]


def main():
    manager, client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)

    def reply_to(message):
        while True:
            reply = client.get_shell_msg(timeout=PATIENCE)
            if reply["parent_header"].get("msg_id") == message:
                return reply["content"]

    def value(code):
        reply = client.execute_interactive(code, timeout=PATIENCE, output_hook=lambda m: None)
        return reply["content"]["status"]

    if value(GIVEN) != "ok":
        raise SystemExit("The first cell failed.")
    print("| cell | reply after, s | work | next cell |")
    print("| --- | ---: | --- | --- |")
    for cell in CELLS:
        message = client.execute(cell)
        time.sleep(RUNS_S)
        asked = time.perf_counter()
        manager.interrupt_kernel()
        content = reply_to(message)
        took = time.perf_counter() - asked
        time.sleep(0.3)
        work = "goes on, as told" if len(content.get("traceback", [])) > 1 else "ended"
        print(f"| `{cell}` | {took:.2f} | {work} | {value('1 + 1')} |", flush=True)
    client.stop_channels()
    manager.shutdown_kernel(now=True)


if __name__ == "__main__":
    main()
