// SPDX-License-Identifier: GPL-3.0-or-later
// Takes the three pictures of a choice that comes back to Java (docs/pictures/choice-*.png), in the small client of the tests:
//     node choice.mjs FOLDER
import path from 'node:path';
import {builtClient, openClient} from './client.mjs';
import {HOME, drag, openBrowser, openServer, watchedPage} from './support.mjs';

const folder = process.argv[2] ?? path.join(HOME, 'docs', 'pictures');
const server = await openServer(path.join(HOME, 'datasets', 'harbour'), 120000);
const browser = await openBrowser();
try {
    const page = await watchedPage(browser, new URL(server.address).origin, {viewport: {width: 980, height: 640}});
    await openClient(page, server.address, await builtClient());
    const take = name => page.screenshot({path: path.join(folder, name + '.png')});
    await page.evaluate(() => window.run(
        'var logbook = Logbook.open("../datasets/harbour").ofLot("Cinder Ridge");\nvar explorer = Explorer.of(logbook);\nexplorer'));
    await page.waitForFunction(() => document.querySelectorAll('.parchment-views .u-over').length === 4, null, {timeout: 120000});
    await page.getByText('No batch is chosen below.').waitFor({timeout: 60000});
    await page.evaluate(() => window.scrollTo(0, 0));
    await take('choice-1');
    await drag(page, 2, [0.66, 0.02], [0.99, 0.98]);
    await page.getByText(/batches are chosen below: the next cell has them/).waitFor({timeout: 60000});
    await page.evaluate(() => window.scrollTo(0, 0));
    await take('choice-2');
    await page.evaluate(() => window.run('PaceChart.of(explorer.chosen())'));
    await page.locator('.cell').nth(1).locator('svg').first().waitFor({timeout: 120000});
    await page.locator('.cell').nth(1).scrollIntoViewIfNeeded();
    await page.locator('.cell').nth(1).screenshot({path: path.join(folder, 'choice-3.png')});
    await page.evaluate(() => window.end());
} finally {
    await browser.close();
    await server.stop();
}
