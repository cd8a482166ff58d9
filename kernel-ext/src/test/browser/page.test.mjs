// SPDX-License-Identifier: GPL-3.0-or-later
// The explorer in the executed page that `parchment run` writes.
import assert from 'node:assert/strict';
import path from 'node:path';
import {after, before, test} from 'node:test';
import {pathToFileURL} from 'node:url';
import {EVIL, HOME, exploreAll, nothingBadHappened, openBrowser, parchment, scratch, smallLogbook, watchedPage} from './support.mjs';

let browser;
let address;

before(async () => {
    const out = scratch();
    parchment(['run', path.join(HOME, 'notebooks', 'explorer.ipynb'), '--logbook', smallLogbook(), '--out', out]);
    address = pathToFileURL(path.join(out, 'explorer.html')).href;
    browser = await openBrowser();
});
after(() => browser.close());

test('the executed page explores with mouse and keyboard, and loads nothing', async () => {
    const page = await watchedPage(browser, address);
    await page.goto(address);
    await exploreAll(page);
    nothingBadHappened(page);
    await page.context().close();
});

for (const width of [800, 1200]) {
    for (const colorScheme of ['light', 'dark']) {
        test('fits a ' + colorScheme + ' page ' + width + ' dots wide', async () => {
            const page = await watchedPage(browser, address, {viewport: {width, height: 1000}, colorScheme});
            await page.goto(address);
            const root = page.locator('.parchment-views');
            await root.locator('canvas').first().waitFor();
            assert.equal(await root.evaluate(r => r.classList.contains('dark')), colorScheme === 'dark');
            const beyond = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
            assert.equal(beyond, 0);
            nothingBadHappened(page);
            await page.context().close();
        });
    }
}

test('without scripts there is the still picture and a sentence', async () => {
    const page = await watchedPage(browser, address, {javaScriptEnabled: false});
    await page.goto(address);
    const still = page.locator('.parchment-views .still');
    assert.ok(await still.locator('svg').first().isVisible());
    assert.match(await still.innerText(), /Trust the notebook or run the cell again for the explorer/);
    assert.ok(!(await page.locator('.live').isVisible()));
    await page.context().close();
});

test('in print the still picture takes the place of the explorer', async () => {
    const page = await watchedPage(browser, address);
    await page.goto(address);
    await page.locator('.parchment-views canvas').first().waitFor();
    await page.emulateMedia({media: 'print'});
    assert.ok(await page.locator('.parchment-views .still svg').first().isVisible());
    assert.ok(!(await page.locator('.live').isVisible()));
    assert.ok((await page.content()).includes('alert(1)') && !(await page.content()).includes('<td>' + EVIL));
    await page.context().close();
});
