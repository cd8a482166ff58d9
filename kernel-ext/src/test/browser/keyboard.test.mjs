// SPDX-License-Identifier: GPL-3.0-or-later
// Works the pages that we write by the keyboard alone: nothing here may be clicked or given the focus by a script.
import assert from 'node:assert/strict';
import path from 'node:path';
import {after, before, test} from 'node:test';
import {pathToFileURL} from 'node:url';
import {focused, sortsByKeys, tabTo} from './keys.mjs';
import {BATCHES, EVIL, HOME, chosenNames, openBrowser, painted, parchment, scratch, smallLogbook} from './support.mjs';

const PATIENCE = 240000;
const out = scratch();
let browser;

before(async () => {
    parchment(['run', path.join(HOME, 'notebooks', 'tour.ipynb'), '--out', out]);
    parchment(['run', path.join(HOME, 'notebooks', 'explorer.ipynb'), '--logbook', smallLogbook(), '--out', out]);
    browser = await openBrowser();
}, {timeout: PATIENCE});
after(() => browser?.close());

async function opened(name, options) {
    const context = await browser.newContext({viewport: {width: 1000, height: 900}, ...options});
    const page = await context.newPage();
    await page.goto(pathToFileURL(path.join(out, name)).href);
    return page;
}

test('Tab reaches a long table, Enter and Space sort it, and it says its order', {timeout: PATIENCE}, async () => {
    const page = await opened('tour.html');
    const table = page.locator('.parchment-table[data-lively]:visible', {has: page.locator('[role=searchbox], input[type=search]')}).first();
    await table.waitFor();
    await sortsByKeys(page, table);
    await page.context().close();
});

test('the rows of a long table are turned and found by keys', {timeout: PATIENCE}, async () => {
    const page = await opened('tour.html');
    const table = page.locator('.parchment-table[data-lively]:visible', {has: page.locator('input[type=search]')}).first();
    await table.waitFor();
    const status = () => table.locator('[role=status]').innerText();
    const all = Number((await status()).match(/ of (\d+)$/)[1]);
    await tabTo(page, one => one.matches('.parchment-table input[type=search]'));
    await page.keyboard.type('no such row anywhere');
    assert.equal(await status(), 'no rows found among ' + all);
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Delete');
    await tabTo(page, one => one.getAttribute('aria-label') === 'Next rows');
    await page.keyboard.press('Enter');
    assert.equal(await status(), 'rows 11 to 20 of ' + all);
    await page.keyboard.press('Shift+Tab');
    assert.equal((await focused(page)).name, 'Previous rows');
    await page.keyboard.press('Space');
    assert.equal(await status(), 'rows 1 to 10 of ' + all);
    await page.context().close();
});

test('a table wider than the window is moved sideways by keys', {timeout: PATIENCE}, async () => {
    const page = await opened('tour.html', {viewport: {width: 420, height: 900}});
    const wide = await page.evaluate(() => Array.from(document.querySelectorAll('.parchment-table'))
        .filter(one => one.checkVisibility() && one.scrollWidth > one.clientWidth + 20).map(one => one.getAttribute('aria-label')));
    assert.ok(wide.length > 0, 'a table of the tour is wider than 420 dots');
    await tabTo(page, (one, name) => one.matches('.parchment-table') && one.getAttribute('aria-label') === name, wide[0]);
    assert.ok((await focused(page)).outlined, 'it shows that it has the focus');
    await page.keyboard.press('ArrowRight');
    await page.waitForFunction(() => document.activeElement.scrollLeft > 0);
    await page.context().close();
});

test('without scripts the folded rows open by a key', {timeout: PATIENCE}, async () => {
    const page = await opened('tour.html', {javaScriptEnabled: false});
    await tabTo(page, one => one.matches('.parchment-table summary'));
    const folded = page.locator('.parchment-table:visible details').first();
    assert.equal(await folded.getAttribute('open'), null);
    await page.keyboard.press('Enter');
    assert.equal(await folded.getAttribute('open'), '');
    assert.ok(await folded.locator('tbody tr').first().isVisible());
    await page.keyboard.press('Space');
    assert.equal(await folded.getAttribute('open'), null);
    await page.context().close();
});

test('every stop of the explorer has a name and shows the focus, and Tab comes out again', {timeout: PATIENCE}, async () => {
    for (const colorScheme of ['light', 'dark']) {
        const page = await opened('explorer.html', {colorScheme});
        await page.locator('.parchment-views .u-over').nth(3).waitFor();
        await tabTo(page, one => one.closest('.parchment-views') !== null);
        let stops = 0;
        for (let stop = await focused(page); stop.inside; stop = await focused(page)) {
            assert.notEqual(stop.name, '', stop.html);
            assert.ok(stop.outlined, 'no sign of the focus at ' + stop.html);
            stops++;
            assert.ok(stops < 400, 'Tab never comes out');
            await page.keyboard.press('Tab');
        }
        assert.ok(stops > 4 + BATCHES, stops + ' stops');
        await page.context().close();
    }
});

test('the explorer filters, walks, chooses, zooms, moves, sorts and forgets by keys', {timeout: PATIENCE}, async () => {
    const page = await opened('explorer.html');
    const root = page.locator('.parchment-views');
    await root.locator('.u-over').nth(3).waitFor();
    const status = () => root.locator('.status').textContent();

    await tabTo(page, one => one.textContent === 'Choose none');
    await page.keyboard.press('Enter');
    await tabTo(page, one => one.matches('[data-filter=lot]'));
    await page.keyboard.type(EVIL.slice(0, 4));
    const shown = Number((await status()).split(' ')[0]);
    assert.ok(shown > 0 && shown < BATCHES, await status());
    await tabTo(page, one => one.textContent === 'Show all');
    await page.keyboard.press('Enter');
    assert.equal(await status(), BATCHES + ' batches shown, 0 chosen.');

    await tabTo(page, one => one.textContent === 'Choose all shown');
    await page.keyboard.press('Space');
    assert.equal(await status(), BATCHES + ' batches shown, ' + BATCHES + ' chosen.');

    await tabTo(page, one => one.matches('.plot'));
    await page.keyboard.press('Escape');
    assert.equal(await status(), BATCHES + ' batches shown, 0 chosen.');
    await page.keyboard.press('Home');
    await page.waitForFunction(() => /^batch H\d+.*drop temperature/.test(document.querySelector('.told').textContent));
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    assert.equal((await chosenNames(page)).length, 2);
    await page.keyboard.press('Enter');
    assert.equal((await chosenNames(page)).length, 1, 'Enter once more takes the choice back');

    const ink = () => painted(page, 0, 'chosen');
    const whole = await ink();
    await page.keyboard.press('+');
    await page.keyboard.press('+');
    const near = await ink();
    assert.notEqual(near, whole, 'plus zooms');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    assert.notEqual(await ink(), near, 'Shift with an arrow moves the picture');
    await page.keyboard.press('0');
    assert.equal(await ink(), whole, '0 shows the whole again');

    await tabTo(page, one => one.matches('.rows thead button') && one.textContent.startsWith('drop temperature'));
    await page.keyboard.press('Enter');
    const heading = root.locator('.rows th[aria-sort]');
    assert.match(await heading.textContent(), /^drop temperature/);
    assert.equal(await heading.getAttribute('aria-sort'), 'ascending');
    await page.keyboard.press('Space');
    assert.equal(await heading.getAttribute('aria-sort'), 'descending');
    await tabTo(page, one => one.matches('.rows tbody input'));
    const chosen = (await chosenNames(page)).length;
    await page.keyboard.press('Space');
    assert.equal(Math.abs((await chosenNames(page)).length - chosen), 1);
    await page.context().close();
});
