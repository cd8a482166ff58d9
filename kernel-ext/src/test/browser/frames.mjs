// SPDX-License-Identifier: GPL-3.0-or-later
// Measures how long frames take while somebody points, chooses and zooms in an explorer of many batches.
// Usage: node frames.mjs LOGBOOK-FOLDER
import {statSync} from 'node:fs';
import path from 'node:path';
import {pathToFileURL} from 'node:url';
import {HOME, drag, openBrowser, parchment, scratch} from './support.mjs';

const out = scratch();
parchment(['run', path.join(HOME, 'notebooks', 'explorer.ipynb'), '--logbook', path.resolve(process.argv[2]), '--out', out]);
const file = path.join(out, 'explorer.html');
const browser = await openBrowser();
const page = await browser.newPage({viewport: {width: 1200, height: 1000}});
await page.goto(pathToFileURL(file).href);
await page.locator('.parchment-views .u-over').nth(3).waitFor();
await page.evaluate(() => {
    window.tasks = [];
    new PerformanceObserver(list => list.getEntries().forEach(entry => window.tasks.push(entry.duration))).observe({entryTypes: ['longtask']});
});

const html = await page.locator('.parchment-views').evaluate(root => root.outerHTML.length);
const data = await page.locator('.parchment-views script.data').evaluate(block => block.textContent.length);
console.log('page ' + Math.round(statSync(file).size / 1024) + ' KB; data of the explorer ' + Math.round(data / 1024) + ' KB; all its markup, alive, '
    + Math.round(html / 1024) + ' KB; ' + await page.locator('.status').textContent());
console.log('| while | frames | median ms | 95th percentile ms | worst ms | tasks over 50 ms |');
console.log('| --- | --- | --- | --- | --- | --- |');

/** Collects the times between frames while something is done. */
async function measured(words, work) {
    await page.evaluate(() => {
        window.tasks.length = 0;
        // Each measurement has its own list, so that the last frame of the one before cannot go on counting here.
        const frames = [];
        window.framesNow = frames;
        const tick = now => {
            if (window.framesNow === frames) {
                frames.push(now);
                requestAnimationFrame(tick);
            }
        };
        requestAnimationFrame(tick);
    });
    await work();
    const {frames, tasks} = await page.evaluate(() => {
        const frames = window.framesNow;
        window.framesNow = null;
        return {frames, tasks: window.tasks.slice()};
    });
    const times = frames.slice(1).map((at, i) => at - frames[i]).sort((a, b) => a - b);
    const at = share => times[Math.min(times.length - 1, Math.floor(share * times.length))].toFixed(1);
    console.log('| ' + [words, times.length, at(0.5), at(0.95), at(1), tasks.length].join(' | ') + ' |');
}

async function wander(number, steps) {
    const over = page.locator('.parchment-views .u-over').nth(number);
    await over.scrollIntoViewIfNeeded();
    const box = await over.boundingBox();
    for (let i = 0; i < steps; i++) {
        const turn = i / steps;
        await page.mouse.move(
            box.x + box.width * (0.5 + 0.45 * Math.sin(7 * Math.PI * turn)), box.y + box.height * (0.5 + 0.4 * Math.cos(11 * Math.PI * turn)));
    }
}

async function press(number, keys) {
    await page.locator('.parchment-views .plot').nth(number).focus();
    for (const key of keys) {
        await page.keyboard.press(key);
        await page.waitForTimeout(30);
    }
}

const zooms = ['+', '+', '+', 'Shift+ArrowRight', 'Shift+ArrowUp', 'Shift+ArrowLeft', '-', '-', '-', '+', '+', '0'];
await measured('nothing is done', () => page.waitForTimeout(1500));
await measured('pointing at lines over time', () => wander(0, 300));
await measured('pointing at the pace', () => wander(1, 300));
await measured('pointing at dots', () => wander(2, 200));
await measured('zooming and moving lines by keys', () => press(0, [...zooms, ...zooms]));
await measured('choosing by a box', () => drag(page, 0, [0.5, 0.05], [0.9, 0.5]));
await measured('pointing with many chosen', () => wander(0, 200));
await browser.close();
