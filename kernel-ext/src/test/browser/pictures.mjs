// SPDX-License-Identifier: GPL-3.0-or-later
// Takes pictures of every page of a folder, for the contact sheet, and lists the flaws that can be measured:  node pictures.mjs FOLDER [PART-OF-A-NAME]
import {mkdirSync, readdirSync, writeFileSync} from 'node:fs';
import path from 'node:path';
import {pathToFileURL} from 'node:url';
import {openBrowser} from './support.mjs';

const [folder, only = ''] = process.argv.slice(2);
const TALLEST = 9000;
// A4 without its margins of 14 mm, at 96 dots to the inch.
const PAPER = 688;
const WAYS = [
    {name: '1200', width: 1200, unfolded: false},
    {name: 'dark', width: 1200, unfolded: false, colorScheme: 'dark'},
    {name: 'print', width: PAPER, unfolded: false, media: 'print'},
    {name: '800', width: 800, unfolded: true},
    {name: '400', width: 400, unfolded: true}
];

function pagesIn(place) {
    return readdirSync(place, {withFileTypes: true}).flatMap(each => {
        const file = path.join(place, each.name);
        return each.isDirectory() ? pagesIn(file) : each.name.endsWith('.html') ? [file] : [];
    }).sort();
}

/** Runs in the page: what a reader would stumble over. */
function flaws(print) {
    const found = new Set();
    const seen = element => element.checkVisibility({visibilityProperty: true, opacityProperty: true});
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth + 1) {
        found.add('wider than the page: ' + root.scrollWidth + ' of ' + root.clientWidth);
    }
    const parse = words => (words.match(/[\d.]+/g) || []).map(Number);
    const ground = element => {
        for (let e = element; e; e = e.parentElement) {
            const [r, g, b, a = 1] = parse(getComputedStyle(e).backgroundColor);
            if (a > 0.5) {
                return [r, g, b];
            }
        }
        return matchMedia('(prefers-color-scheme: dark)').matches && !print ? [18, 18, 18] : [255, 255, 255];
    };
    const light = ([r, g, b]) => [r, g, b].map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
        .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
        const node = walker.currentNode;
        const element = node.parentElement;
        const words = node.textContent.trim();
        if (!words || /^(SCRIPT|STYLE|TITLE|DESC)$/i.test(element.tagName) || !seen(element)) {
            continue;
        }
        const style = getComputedStyle(element);
        const range = document.createRange();
        range.selectNodeContents(node);
        const boxes = [...range.getClientRects()].filter(box => box.width > 1 && box.height > 1);
        if (boxes.length === 0) {
            continue;
        }
        const svg = element.closest('svg');
        const matrix = svg && element.getScreenCTM ? element.getScreenCTM() : null;
        const size = parseFloat(style.fontSize) * (matrix ? Math.hypot(matrix.a, matrix.b) : 1);
        if (size < (print ? 9.3 : 10.9)) {
            found.add('small, ' + size.toFixed(1) + ' px' + (svg ? ' in a picture' : '') + ': "' + words.slice(0, 30) + '"');
        }
        if (!svg && element.closest('tbody td, tbody th') && words.length <= 24 && new Set(boxes.map(box => Math.round(box.top))).size > 1) {
            found.add('broken: "' + words + '"');
        }
        const ink = parse(svg ? style.fill : style.color);
        if (ink.length >= 3 && !element.closest('[aria-hidden=true]')) {
            const behind = light(ground(element));
            const own = light(ink);
            const ratio = (Math.max(own, behind) + 0.05) / (Math.min(own, behind) + 0.05);
            if (ratio < 4.5) {
                found.add('faint, ' + ratio.toFixed(1) + ' to 1: "' + words.slice(0, 30) + '"');
            }
        }
        for (let e = element; e && e !== document.body; e = e.parentElement) {
            const overflow = getComputedStyle(e).overflowX;
            if (overflow !== 'visible' && e.scrollWidth > e.clientWidth + 1 && (print || overflow === 'hidden')
                && !(e instanceof SVGElement)) {
                found.add('cut: <' + e.tagName.toLowerCase() + ' class="' + e.className + '"> ' + e.scrollWidth + ' of ' + e.clientWidth);
                break;
            }
        }
    }
    const titles = [...document.querySelectorAll('h1, h2, h3, h4, caption, summary, svg text[font-weight]')].filter(seen)
        .map(each => each.textContent.trim()).filter(words => words.length > 3);
    const words = titles.filter((title, i) => titles.indexOf(title) === i - 1 && i > 0);
    words.forEach(title => found.add('title twice: "' + title + '"'));
    return [...found];
}

const browser = await openBrowser();
const page = await (await browser.newContext()).newPage();
const lines = [];
const began = Date.now();
let count = 0;
const pages = path.join(folder, 'pages');
for (const file of pagesIn(pages).filter(each => each.includes(only))) {
    const name = path.relative(pages, file).replace(/\.html$/, '');
    const target = path.join(folder, 'pictures', name);
    mkdirSync(path.dirname(target), {recursive: true});
    await page.goto(pathToFileURL(file).href);
    for (const way of WAYS) {
        await page.emulateMedia({media: way.media ?? 'screen', colorScheme: way.colorScheme ?? 'light'});
        await page.setViewportSize({width: way.width, height: 800});
        if (way.unfolded) {
            // Rows beyond the first few are more of the same, and very many.
            await page.evaluate(() => document.querySelectorAll('details').forEach(each => {
                each.open = !/more rows?$/.test(each.querySelector('summary')?.textContent ?? '');
            }));
        }
        const height = await page.evaluate(() => Math.ceil(document.body.getBoundingClientRect().bottom) + 8);
        await page.screenshot({
            path: target + '.' + way.name + '.png', fullPage: true,
            clip: {x: 0, y: 0, width: way.width, height: Math.min(TALLEST, Math.max(height, 120))}
        });
        count++;
        for (const flaw of await page.evaluate(flaws, way.media === 'print')) {
            lines.push(name + ' at ' + way.name + ': ' + flaw);
        }
    }
}
await browser.close();
writeFileSync(path.join(folder, only ? 'flaws-' + only.replace(/\W+/g, '-') + '.txt' : 'flaws.txt'), lines.join('\n') + '\n');
console.log(count + ' pictures, ' + lines.length + ' flaws measured, ' + Math.round((Date.now() - began) / 1000) + ' s');
