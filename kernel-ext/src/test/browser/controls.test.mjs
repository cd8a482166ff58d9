// SPDX-License-Identifier: GPL-3.0-or-later
// Live controls, and the choice made in the explorer, in a client put together from published packages (client/page.mjs): JupyterLab's
// own service client and output area, and the html manager of Jupyter Widgets, on the server that `parchment open` starts.
import assert from 'node:assert/strict';
import {after, before, test} from 'node:test';
import {builtClient, openClient} from './client.mjs';
import {chosenNames, drag, nothingBadHappened, openBrowser, openServer, pictureOf, smallLogbook, watchedPage} from './support.mjs';

const PATIENCE = 60000;
let browser;
let server;
let client;
let logbook;

before(async () => {
    client = await builtClient();
    logbook = smallLogbook();
    server = await openServer(logbook, PATIENCE);
    browser = await openBrowser();
});

after(async () => {
    await browser?.close();
    await server?.stop();
});

async function openPage() {
    const page = await watchedPage(browser, new URL(server.address).origin);
    page.kernel = await openClient(page, server.address, client);
    return page;
}

/** Runs a cell and returns the part of the page that belongs to it. */
async function run(page, code) {
    assert.equal(await page.evaluate(text => window.run(text), code), 'ok', code);
    return page.locator('.cell').nth(await page.locator('.cell').count() - 1);
}

async function close(page) {
    await page.evaluate(() => window.end());
    nothingBadHappened(page);
    await page.context().close();
}

function shows(part, words) {
    return part.getByText(words).first().waitFor({timeout: PATIENCE});
}

test('what a person sets comes to Java, and what Java makes of it to the page', {timeout: 4 * PATIENCE}, async () => {
    const page = await openPage();
    const cell = await run(page, 'var temperature = Slider.of("drop temperature", 196, 212).withUnit("°C")\n'
        + '        .onChange(value -> System.out.println("now " + value + " °C"));\ntemperature');
    await shows(cell, 'drop temperature, °C');
    const handle = cell.getByRole('slider');
    await handle.press('ArrowRight');
    await shows(cell, 'now 204.2 °C');
    await handle.press('ArrowRight');
    await shows(cell, 'now 204.4 °C');
    assert.equal(await cell.getByText('now 204.2 °C').count(), 0, 'the last output took the place of the one before');
    await pictureOf(cell, 'control-slider');

    await run(page, 'temperature.set(210)');
    await page.waitForFunction(() => document.querySelector('.noUi-handle').getAttribute('aria-valuenow') === '210.0');
    await shows(cell, '210.0');
    await shows(await run(page, 'temperature.value()'), '210.0');
    await close(page);
});

test('every kind of control works with mouse and keys', {timeout: 4 * PATIENCE}, async () => {
    const page = await openPage();
    const cell = await run(page, 'var seen = HtmlNote.ofText("nothing yet");\n'
        + 'ControlBox.column(seen,\n'
        + '    CountSlider.of("count", 1, 9).onChange(v -> seen.setText("count " + v)),\n'
        + '    RangeSlider.of("range", 0, 10).onChange(v -> seen.setText("range " + v.from() + " to " + v.to())),\n'
        + '    Choice.of("lot", "Cinder Ridge", "<b>Low Orchard</b>").onChange(v -> seen.setText("lot " + v)),\n'
        + '    Choices.of("several", "p", "q", "r").onChange(v -> seen.setText("several " + v)),\n'
        + '    ControlBox.row(CheckBox.of("cupped only").onChange(v -> seen.setText("box " + v)),\n'
        + '        Button.of("Draw one").onPress(() -> seen.setText("pressed"))),\n'
        + '    TextField.of("batch").onChange(v -> seen.setText("text " + v)))');
    await shows(cell, 'nothing yet');
    const sliders = cell.getByRole('slider');
    await sliders.nth(0).press('ArrowRight');
    await shows(cell, 'count 2');
    await sliders.nth(1).press('ArrowRight');
    await shows(cell, /^range 0\.\d to 10\.0$/);
    await cell.locator('select').first().selectOption({index: 1});
    await shows(cell, 'lot <b>Low Orchard</b>');
    await cell.locator('select[multiple]').selectOption([{label: 'p'}, {label: 'r'}]);
    await shows(cell, 'several [p, r]');
    await cell.getByRole('checkbox').check();
    await shows(cell, 'box true');
    await cell.getByRole('button', {name: 'Draw one'}).click();
    await shows(cell, 'pressed');
    await cell.locator('input[type=text]').last().fill('H012');
    await cell.locator('input[type=text]').last().press('Enter');
    await shows(cell, 'text H012');
    await pictureOf(cell, 'control-kinds');
    await close(page);
});

test('a picture follows a slider, and an error in a callback is said under it', {timeout: 4 * PATIENCE}, async () => {
    const page = await openPage();
    const cell = await run(page, 'var logbook = Logbook.open();\n'
        + 'CountSlider.of("batch", 1, 3).showing(n -> n == 3 ? List.of().get(n) : BatchChart.of(logbook.batches().get(n - 1)))');
    await cell.locator('svg').first().waitFor({timeout: PATIENCE});
    const drawn = name => cell.locator('svg title', {hasText: name}).first().waitFor({state: 'attached', timeout: PATIENCE});
    await drawn('H001');
    await cell.getByRole('slider').press('ArrowRight');
    await drawn('H002');
    await cell.getByRole('slider').press('ArrowRight');
    await shows(cell, /What 'batch' was to do ended early:/);
    await shows(await run(page, '6 * 111'), '666');
    await close(page);
});

test('a page that is loaded anew finds the controls where they were', {timeout: 4 * PATIENCE}, async () => {
    const page = await openPage();
    const cell = await run(page, 'Slider.of("drop temperature", 196, 212).onChange(v -> System.out.println("now " + v))');
    await cell.getByRole('slider').press('ArrowRight');
    await shows(cell, 'now 204.2');
    const view = await page.evaluate(() => window.lastModel('VBox'));
    await openClient(page, server.address, client, page.kernel);
    await page.evaluate(id => window.draw({model_id: id, version_major: 2, version_minor: 0}), view);
    const again = page.locator('.cell').last();
    await shows(again, 'now 204.2');
    await again.getByRole('slider').press('ArrowRight');
    await shows(again, 'now 204.4');
    await close(page);
});

test('the choice made in the explorer is a logbook in the next cell', {timeout: 4 * PATIENCE}, async () => {
    const page = await openPage();
    await run(page, 'var logbook = Logbook.open();\nvar explorer = Explorer.of(logbook);\nexplorer');
    await page.waitForFunction(() => document.querySelectorAll('.parchment-views .u-over').length === 4, null, {timeout: PATIENCE});
    const cell = page.locator('.cell').first();
    await shows(cell, 'No batch is chosen below.');
    await drag(page, 2, [0.02, 0.02], [0.6, 0.98]);
    const names = await chosenNames(page);
    assert.ok(names.length > 1, names.length + ' batches were chosen');
    await shows(cell, names.length + ' batches are chosen below: the next cell has them as a logbook, with chosen().');
    await pictureOf(cell, 'choice-made');
    const next = await run(page, 'explorer.chosen().batches().stream().map(b -> b.name()).toList()');
    await shows(next, '[' + names.slice().sort().join(', ') + ']');
    const chart = await run(page, 'PaceChart.of(explorer.chosen())');
    await chart.locator('svg').first().waitFor({timeout: PATIENCE});
    await pictureOf(chart, 'choice-used');

    await page.getByRole('button', {name: 'Choose none'}).click();
    await shows(cell, 'No batch is chosen below.');
    assert.equal(await page.evaluate(() => window.run('explorer.chosen()')), 'error');
    await shows(page.locator('.cell').last(), /No batch is chosen in the explorer\. Choose some in its pictures/);
    await close(page);
});

test('the explorer begins with the batches that Java chose', {timeout: 4 * PATIENCE}, async () => {
    const page = await openPage();
    const cell = await run(page, 'var explorer = Explorer.of(Logbook.open()).withChosen("H002");\nexplorer');
    await shows(cell, '1 batch is chosen below: the next cell has it as a logbook, with chosen().');
    assert.deepEqual(await chosenNames(page), ['H002']);
    await close(page);
});
