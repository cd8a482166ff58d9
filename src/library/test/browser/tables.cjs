// SPDX-License-Identifier: GPL-3.0-or-later
// Works long tables by mouse and keyboard in a real browser. Needs playwright-core (npm) and Chromium:
//   mvn -q -f src test-compile
//   java -cp src/roastery/target/classes:src/roastery/target/test-classes parchment.display.TableGallery /tmp/tables
//   NODE_PATH=... node src/library/test/browser/tables.cjs /tmp/tables
const { chromium } = require('playwright-core');
const assert = require('node:assert');

const folder = process.argv[2];
const browserPath = process.env.CHROMIUM || '/usr/bin/chromium';

const shown = (table, column) => table.locator('tbody tr:not([hidden])').evaluateAll(
    (rows, place) => rows.map((row) => row.cells[place].textContent), column);
const numbers = (texts) => texts.filter((text) => text !== 'missing').map(Number);
const count = (table) => table.locator('[role=status]').innerText();

async function sortsPagesAndFinds(page) {
    const table = page.locator('.parchment-table').nth(0);
    assert.equal(await count(table), 'rows 1 to 10 of 240');
    await table.getByRole('button', { name: 'drop temperature' }).focus();
    await page.keyboard.press('Enter');
    let cells = numbers(await shown(table, 3));
    assert.deepEqual(cells, cells.slice().sort((a, b) => a - b));
    await page.keyboard.press('Enter');
    assert.equal(await table.locator('th').nth(3).getAttribute('aria-sort'), 'descending');
    await table.getByRole('button', { name: 'all rows per page' }).click();
    const all = await shown(table, 3);
    assert.equal(all.length, 240);
    const missing = all.filter((text) => text === 'missing').length;
    assert.ok(all.slice(-missing).every((text) => text === 'missing'), 'missing stands last, descending too');
    cells = numbers(all);
    assert.deepEqual(cells, cells.slice().sort((a, b) => b - a));
    await table.getByRole('button', { name: 'day' }).click();
    const days = await shown(table, 2);
    assert.deepEqual(days, days.slice().sort(), 'days in their order');
    await table.getByRole('button', { name: 'batch' }).click();
    assert.equal((await shown(table, 0))[9], 'H10', 'H9 before H10');
    await table.getByRole('button', { name: '10 rows per page', exact: true }).click();
    await table.getByRole('searchbox').fill('quayside');
    assert.equal(await count(table), 'rows 1 to 10 of 64 found among 240');
    await table.getByRole('button', { name: 'Next rows' }).click();
    assert.equal(await count(table), 'rows 11 to 20 of 64 found among 240');
    await table.getByRole('searchbox').fill('<b>');
    assert.match(await count(table), /found among 240/);
    await table.getByRole('searchbox').fill('no such lot');
    assert.equal(await count(table), 'no rows found among 240');
    await table.getByRole('searchbox').fill('');
    assert.equal(await count(page.locator('.parchment-table').nth(2)), 'rows 1 to 10 of 240', 'the same table below is its own');
}

(async () => {
    const browser = await chromium.launch({ executablePath: browserPath, args: ['--no-sandbox'] });
    for (const look of ['light', 'dark']) {
        for (const width of [800, 1200]) {
            const page = await browser.newPage({ viewport: { width, height: 900 } });
            page.on('pageerror', (error) => { throw error; });
            page.on('request', (request) => assert.ok(request.url().startsWith('file:'), request.url()));
            await page.goto(`file://${folder}/${look}.html`);
            await page.waitForTimeout(500);
            await sortsPagesAndFinds(page);
            await page.locator('.parchment-table').nth(1).evaluate((wide) => { wide.scrollLeft = 300; });
            await page.waitForTimeout(100);
            await page.screenshot({ path: `${folder}/${look}-${width}.png` });
            console.log(`${look}, ${width} px: sorted, paged, searched`);
        }
    }
    const plain = await browser.newContext({ javaScriptEnabled: false });
    const page = await plain.newPage();
    await page.goto(`file://${folder}/light.html`);
    assert.equal(await page.locator('details').first().locator('summary').innerText(), '220 more rows');
    console.log('without a script: the first rows, the rest folded away');
    await browser.close();
})().catch((error) => { console.error(error); process.exit(1); });
