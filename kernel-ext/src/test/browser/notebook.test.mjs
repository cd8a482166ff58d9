// SPDX-License-Identifier: GPL-3.0-or-later
// The explorer inside a live classic notebook, on the server that `parchment open` starts.
import assert from 'node:assert/strict';
import {after, before, test} from 'node:test';
import {keepsTheRules} from './rules.mjs';
import {exploreAll, nothingBadHappened, openBrowser, openServer, picture, pictureOf, smallLogbook, watchedPage} from './support.mjs';

const PATIENCE = 60000;
let browser;
let server;
let address;

before(async () => {
    server = await openServer(smallLogbook(), PATIENCE);
    address = server.address;
    browser = await openBrowser();
});

after(async () => {
    await browser?.close();
    await server?.stop();
});

/** Opens the explorer's notebook with its kernel connected. */
async function openNotebook() {
    const {origin, searchParams} = new URL(address);
    const page = await watchedPage(browser, origin);
    await page.goto(origin + '/notebooks/explorer.ipynb?token=' + searchParams.get('token'));
    await page.waitForFunction(
        () => window.Jupyter?.notebook?.kernel?.is_connected() && Jupyter.notebook.get_cells().length > 1, null, {timeout: PATIENCE});
    // The notebook in the repository stays as it is.
    await page.evaluate(() => Jupyter.notebook.set_autosave_interval(0));
    return page;
}

/** Adds a cell at the end and runs it. */
function runAtTheEnd(page, code) {
    return page.evaluate(text => {
        const cell = Jupyter.notebook.insert_cell_at_bottom('code');
        cell.set_text(text);
        cell.execute();
    }, code);
}

test('the start page comes first, fills in, and its link opens the tour', {timeout: 4 * PATIENCE}, async () => {
    const page = await watchedPage(browser, new URL(address).origin);
    await page.goto(address);
    assert.match(page.url(), /\/kernelspecs\/parchment\/start-[0-9a-f]{8}-[0-9]+\.html\?token=/);
    const tour = page.getByRole('link', {name: 'Start with the tour'});
    assert.ok(await tour.isVisible(), 'the notebooks are there before anything is worked out');
    await page.waitForFunction(() => !document.querySelector('[data-waiting]'), null, {timeout: 2 * PATIENCE});
    assert.match(await page.locator('#the-week').innerText(), /batch(es)? in the week to \d{4}-\d\d-\d\d/);
    assert.match(await page.locator('header').innerText(), /Invented machine: do not roast\./);
    await keepsTheRules(page, 'body', 12);
    await pictureOf(page.locator('body'), 'start-page');

    const [notebook] = await Promise.all([page.context().waitForEvent('page'), tour.click()]);
    await notebook.getByRole('heading', {name: 'A tour of a logbook'}).first().waitFor({timeout: PATIENCE});
    assert.equal(new URL(notebook.url()).pathname, '/notebooks/tour.ipynb');
    assert.match(await notebook.locator('#ipython_notebook a').getAttribute('href'), /\/start-[0-9a-f]{8}-[0-9]+\.html/, 'the way back');
    await notebook.close();
    // The server may hand out the page as it was at first; it fills itself in again.
    await page.reload();
    await page.waitForFunction(() => !document.querySelector('[data-waiting]'), null, {timeout: PATIENCE});
    nothingBadHappened(page);
    await page.context().close();
});

test('without its token nobody reads the start page', {timeout: PATIENCE}, async () => {
    const {origin, pathname} = new URL((await fetch(address)).url);
    assert.match(pathname, /^\/kernelspecs\/parchment\/start-/);
    const refused = await fetch(origin + pathname);
    assert.match(new URL(refused.url).pathname, /\/login$/);
    assert.doesNotMatch(await refused.text(), /What is unsettled/);
});

test('the live notebook explores, and the code it hands out runs in the next cell', {timeout: 3 * PATIENCE}, async () => {
    const page = await openNotebook();
    await page.evaluate(() => Jupyter.notebook.execute_all_cells());
    await page.locator('.parchment-views .u-over').first().waitFor({timeout: PATIENCE});
    await page.getByText('What is chosen below does not come back by itself here.').waitFor({timeout: PATIENCE});
    const cells = await page.evaluate(() => Jupyter.notebook.get_cells().length);
    const {code, names} = await exploreAll(page);
    assert.equal(await page.evaluate(() => Jupyter.notebook.get_cells().length), cells, 'no key reached the notebook');
    await picture(page, 'notebook');

    await runAtTheEnd(page, code + '\nchosen.batches().size() + " batches, " + Explorer.of(chosen).page()');
    await page.waitForFunction(() => {
        const last = Jupyter.notebook.get_cells().at(-1).output_area.outputs;
        return last.length > 0;
    }, null, {timeout: PATIENCE});
    const output = await page.evaluate(() => JSON.stringify(Jupyter.notebook.get_cells().at(-1).output_area.outputs));
    assert.match(output, new RegExp(names.length + ' batches, Explorer of .*: ' + names.length + ' names'));
    nothingBadHappened(page);
    await page.context().close();
});

test('tables in the live notebook sort and page, and shift-tab explains a name', {timeout: 3 * PATIENCE}, async () => {
    const page = await openNotebook();
    await runAtTheEnd(page, 'var logbook = Logbook.open();\nBatchTable.of(logbook, dropTemperature(), dropTime())');
    const table = page.locator('.parchment-table').last();
    await table.getByRole('button', {name: 'drop temperature'}).waitFor({timeout: PATIENCE});
    await table.getByRole('button', {name: 'drop temperature'}).click();
    const shown = (await table.locator('tbody tr:not([hidden])').evaluateAll(
        rows => rows.map(row => row.cells[2].textContent))).map(Number);
    assert.deepEqual(shown, shown.slice().sort((a, b) => a - b));
    assert.match(await table.innerText(), /<script>alert\(1\)<\/script>/, 'the lot with the dangerous name is text');
    await pictureOf(table, 'notebook-table');

    await runAtTheEnd(page, 'BatchTable.of(Logbook.open("../datasets/harbour"), dropTemperature(), dropTime())');
    const long = page.locator('.parchment-table').last();
    await long.locator('[role=status]').waitFor({timeout: PATIENCE});
    const count = () => long.locator('[role=status]').innerText();
    assert.equal(await count(), 'rows 1 to 10 of 240');
    await long.getByRole('button', {name: 'Next rows'}).click();
    assert.equal(await count(), 'rows 11 to 20 of 240');
    await long.getByRole('searchbox').fill('orchard');
    assert.match(await count(), /^rows 1 to 10 of \d+ found among 240$/);

    await page.evaluate(() => {
        const cell = Jupyter.notebook.insert_cell_at_bottom('code');
        cell.set_text('PaceChart.of(logbook)');
        Jupyter.notebook.select(Jupyter.notebook.get_cells().length - 1);
        cell.focus_editor();
        cell.code_mirror.setCursor(0, 11);
    });
    await page.keyboard.press('Shift+Tab');
    const tip = page.locator('#tooltip');
    await page.waitForFunction(() => /Pace/.test(document.querySelector('#tooltip')?.innerText ?? ''), null, {timeout: PATIENCE});
    await pictureOf(tip, 'notebook-shift-tab');
    assert.match(await tip.innerText(), /PaceChart\.of\(Logbook logbook\)/);
    nothingBadHappened(page);
    await page.context().close();
});

test('keys pressed in a table reach the table and not the notebook, and what is shown keeps the rules', {timeout: 3 * PATIENCE}, async () => {
    const page = await openNotebook();
    await page.evaluate(() => Jupyter.notebook.execute_all_cells());
    await page.locator('.parchment-views .u-over').first().waitFor({timeout: PATIENCE});
    await runAtTheEnd(page, 'BatchTable.of(Logbook.open("../datasets/harbour"), dropTemperature(), dropTime())');
    const table = page.locator('.parchment-table[data-lively]', {has: page.locator('input[type=search]')}).last();
    await table.locator('[role=status]').waitFor({timeout: PATIENCE});
    const cells = await page.evaluate(() => Jupyter.notebook.get_cells().length);
    // The notebook's editors keep Tab for themselves, so the way there is not walked here; on our own pages it is.
    const button = table.locator('thead th.number button').first();
    await page.evaluate(() => Jupyter.notebook.command_mode());
    await button.focus();
    assert.equal(await page.evaluate(() => Jupyter.notebook.mode + ' ' + Jupyter.keyboard_manager.mode), 'command command');
    const heading = table.locator('thead th.number').first();
    await page.keyboard.press('Enter');
    assert.equal(await heading.getAttribute('aria-sort'), 'ascending');
    await page.keyboard.press('Space');
    assert.equal(await heading.getAttribute('aria-sort'), 'descending');
    // In a notebook these letters would add a cell, cut one, or change its kind.
    await page.keyboard.type('abxm');
    assert.equal(await page.evaluate(() => Jupyter.notebook.get_cells().length), cells);
    await runAtTheEnd(page, 'Lesson.open(1, 3).logbook()');
    await page.locator('.parchment-report').first().waitFor({timeout: PATIENCE});
    await keepsTheRules(page, '.output_subarea', 12);
    nothingBadHappened(page);
    await page.context().close();
});
