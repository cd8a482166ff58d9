// SPDX-License-Identifier: GPL-3.0-or-later
// What the browser tests share: a small logbook with a dangerous name in it, the browser, and what every explorer must do.
import assert from 'node:assert/strict';
import {execFileSync, spawn} from 'node:child_process';
import {cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import path from 'node:path';
import {fileURLToPath} from 'node:url';
import {chromium} from 'playwright-core';

export const HOME = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../..');
export const EVIL = '<script>alert(1)</script>';
export const BATCHES = 16;
const PROGRAM = process.env.CHROMIUM || '/usr/bin/chromium';
const QUIET = [
    '--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-sync', '--no-first-run',
    '--disable-component-update'
];

/** Makes a folder that goes with the process. */
export function scratch() {
    const folder = mkdtempSync(path.join(tmpdir(), 'parchment-browser-'));
    process.on('exit', () => rmSync(folder, {recursive: true, force: true}));
    return folder;
}

/** Writes a logbook of the first batches of the demo one, in which one lot's name is a script. */
export function smallLogbook() {
    const from = path.join(HOME, 'datasets', 'harbour');
    const to = path.join(scratch(), 'logbook');
    mkdirSync(path.join(to, 'curves'), {recursive: true});
    const lines = readFileSync(path.join(from, 'batches.csv'), 'utf8').split('\n').slice(0, BATCHES + 1);
    const names = lines.slice(1).map(line => line.split(',')[0]);
    for (const file of readdirSync(from).filter(name => /\.(csv|properties)$/.test(name))) {
        let text = readFileSync(path.join(from, file), 'utf8');
        if (file === 'batches.csv') {
            // Every other batch is of the lot with the dangerous name.
            text = lines.map((line, i) => i % 2 === 1 ? line.replace(line.split(',')[2], EVIL) : line).join('\n') + '\n';
        } else if (file === 'cuppings.csv') {
            const rows = text.split('\n');
            text = [rows[0], ...rows.slice(1).filter(row => names.some(name => row.split(',').includes(name)))].join('\n') + '\n';
        }
        writeFileSync(path.join(to, file), text);
    }
    for (const file of readdirSync(path.join(from, 'curves'))) {
        if (names.some(name => file.startsWith(name + '.'))) {
            cpSync(path.join(from, 'curves', file), path.join(to, 'curves', file));
        }
    }
    return to;
}

/** Runs a command of the launcher. */
export function parchment(words, environment) {
    return execFileSync(path.join(HOME, 'parchment'), words, {
        encoding: 'utf8', env: {...process.env, ...environment}, stdio: ['ignore', 'pipe', 'pipe']
    });
}

/**
 * Starts the notebook server that `parchment open` starts; returns its address with the token, and how to stop it. A server that runs
 * already is taken where the environment names its address, to try a test without a build.
 */
export async function openServer(logbook, patience) {
    if (process.env.PARCHMENT_SERVER) {
        return {address: process.env.PARCHMENT_SERVER, stop: () => Promise.resolve()};
    }
    const data = scratch();
    const server = spawn(path.join(HOME, 'parchment'), ['open', '--no-browser', '--logbook', logbook], {
        env: {...process.env, JUPYTER_DATA_DIR: data, JUPYTER_RUNTIME_DIR: path.join(data, 'runtime'), JUPYTER_CONFIG_DIR: data},
        stdio: ['ignore', 'pipe', 'pipe'],
        detached: true
    });
    const address = await new Promise((found, failed) => {
        let said = '';
        const hear = bytes => {
            said += bytes;
            const match = said.match(/http:\/\/127\.0\.0\.1:\d+\/\S*\?token=\w+/);
            if (match) {
                found(match[0]);
            }
        };
        server.stdout.on('data', hear);
        server.stderr.on('data', hear);
        server.on('exit', code => failed(new Error('the server ended with ' + code + ':\n' + said)));
        setTimeout(() => failed(new Error('no address in time:\n' + said)), patience).unref();
    });
    return {address, stop: async () => {
        if (server.exitCode === null) {
            // The launcher, the server and the kernels are one group of processes.
            const ended = new Promise(done => server.once('exit', done));
            process.kill(-server.pid, 'SIGTERM');
            await ended;
        }
    }};
}

export async function openBrowser() {
    assert.ok(existsSync(PROGRAM), 'needs ' + PROGRAM);
    return chromium.launch({executablePath: PROGRAM, args: QUIET});
}

/** Opens a page on which everything that must not happen is written down: errors, dialogs, and requests to anywhere else. */
export async function watchedPage(browser, origin, options) {
    const context = await browser.newContext({viewport: {width: 1200, height: 1000}, ...options});
    const page = await context.newPage();
    page.seen = {errors: [], dialogs: [], strays: []};
    page.on('pageerror', error => page.seen.errors.push(String(error)));
    page.on('console', message => {
        // The notebook server asks for extensions of its own that need not be installed, and the client asks it first for a way of
        // writing messages that only later servers know. A client without widgets writes down that it cannot open their lines.
        const known = /\/nbextensions\/|'Sec-WebSocket-Protocol' header but no response|^Could not open comm .*jupyter\.widget|WrappedError/;
        if (message.type() === 'error' && !known.test(message.text() + message.location().url)) {
            page.seen.errors.push(message.text());
        }
    });
    page.on('dialog', dialog => {
        if (dialog.type() === 'beforeunload') {
            dialog.accept();
        } else {
            page.seen.dialogs.push(dialog.message());
            dialog.dismiss();
        }
    });
    page.on('request', request => {
        const url = request.url();
        if (!url.startsWith(origin) && !url.startsWith('data:') && !url.startsWith('blob:')) {
            page.seen.strays.push(url);
        }
    });
    return page;
}

export function nothingBadHappened(page) {
    assert.deepEqual(page.seen, {errors: [], dialogs: [], strays: []});
}

/** Takes a picture of the explorer where the environment names a folder for it. */
export async function picture(page, name) {
    await pictureOf(page.locator('.parchment-views').first(), name);
}

/** Takes a picture of a part of a page where the environment names a folder for it. */
export async function pictureOf(part, name) {
    if (process.env.PARCHMENT_PICTURES) {
        await part.screenshot({path: path.join(process.env.PARCHMENT_PICTURES, name + '.png')});
    }
}

/** Drags a box over a part of a picture, given in shares of its width and height. */
export async function drag(page, number, [x0, y0], [x1, y1]) {
    const over = page.locator('.parchment-views .u-over').nth(number);
    await over.scrollIntoViewIfNeeded();
    const box = await over.boundingBox();
    await page.mouse.move(box.x + x0 * box.width, box.y + y0 * box.height);
    await page.mouse.down();
    await page.mouse.move(box.x + x1 * box.width, box.y + y1 * box.height, {steps: 4});
    await page.mouse.up();
    await page.mouse.move(2, 2);
}

/** Returns how many dots of a layer of a picture are painted. */
export function painted(page, number, layer) {
    return page.evaluate(([n, name]) => {
        const canvas = document.querySelectorAll('.parchment-views .view')[n].querySelector('canvas[data-layer="' + name + '"]');
        const dots = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data;
        let count = 0;
        for (let i = 3; i < dots.length; i += 4) {
            count += dots[i] > 0 ? 1 : 0;
        }
        return count;
    }, [number, layer]);
}

export function chosenNames(page) {
    return page.locator('.parchment-views tr.chosen th').allTextContents();
}

/** Goes through everything that an explorer of the small logbook must do; returns the code it hands out in the end. */
export async function exploreAll(page) {
    const root = page.locator('.parchment-views').first();
    await root.locator('.view canvas').first().waitFor();
    await page.waitForFunction(() => document.querySelectorAll('.parchment-views .u-over').length === 4);
    const status = root.locator('.status');
    await assertText(status, BATCHES + ' batches shown, 1 chosen.');
    assert.equal((await chosenNames(page)).length, 1, 'the notebook begins with one batch chosen');
    await page.getByRole('button', {name: 'Choose none'}).click();
    await assertText(status, BATCHES + ' batches shown, 0 chosen.');
    assert.deepEqual(
        await root.locator('.view h4').allTextContents(), ['Bean temperature', 'Pace', 'One number over another', 'Scores']);
    assert.equal(await root.locator('.still').isVisible(), false);

    // Pointing at a line tells which batch it is, in sight and to a screen reader, and sets it off in the other pictures.
    const over = root.locator('.u-over').first();
    await over.scrollIntoViewIfNeeded();
    const box = await over.boundingBox();
    await page.mouse.move(box.x + 0.5 * box.width, box.y + 0.42 * box.height, {steps: 3});
    const hint = root.locator('.view').first().locator('.hint');
    await hint.waitFor({state: 'visible'});
    assert.match(await hint.innerText(), /batch H\d+[^]*lot[^]*drop temperature\s+\d+\.\d °C[^]*development time\s+(\d+ s|missing)/);
    assert.ok(await painted(page, 1, 'pointed') > 0, 'the pace of the batch pointed at is set off');
    await page.waitForFunction(() => /^batch H\d+.*drop temperature/.test(document.querySelector('.told').textContent));
    await page.mouse.move(2, 2);
    await hint.waitFor({state: 'hidden'});

    // A box in one picture chooses in all of them, in the table and in the code.
    for (const n of [0, 1, 2]) {
        assert.equal(await painted(page, n, 'chosen'), 0);
    }
    await drag(page, 2, [0.02, 0.02], [0.6, 0.98]);
    const names = await chosenNames(page);
    assert.ok(names.length > 0 && names.length < BATCHES, names.length + ' batches were chosen');
    for (const n of [0, 1, 2]) {
        assert.ok(await painted(page, n, 'chosen') > 0, 'picture ' + n + ' sets the chosen off');
    }
    await assertText(status, BATCHES + ' batches shown, ' + names.length + ' chosen.');
    assert.equal(await codeOf(root), expectedCode(names));
    await picture(page, 'chosen');

    // The keyboard walks, chooses and forgets.
    await root.locator('.plot').nth(2).focus();
    await page.keyboard.press('Escape');
    await assertText(status, BATCHES + ' batches shown, 0 chosen.');
    await page.keyboard.press('Home');
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    const walked = await chosenNames(page);
    assert.equal(walked.length, 2);
    await page.keyboard.press('+');
    await page.keyboard.press('0');
    const tick = root.locator('tr.chosen input[type=checkbox]').first();
    await tick.focus();
    await page.keyboard.press('Space');
    assert.equal((await chosenNames(page)).length, 1);

    // Every clock can be laid on; the picture says how many batches it draws.
    const clock = root.locator('.view').first().locator('select');
    for (const words of await clock.locator('option').allTextContents()) {
        await clock.selectOption({label: words});
        assert.match(await root.locator('.reading').first().textContent(), /^\d+ batch(es)? drawn/, words);
    }

    // The lot whose name is a script is text wherever it shows.
    const lots = root.locator('select[data-filter=lot]');
    assert.ok((await lots.locator('option').allTextContents()).includes(EVIL));
    await lots.selectOption({label: EVIL});
    await root.locator('td', {hasText: EVIL}).first().waitFor();
    const shown = Number((await status.textContent()).split(' ')[0]);
    assert.ok(shown > 0 && shown < BATCHES, shown + ' batches of the lot');
    assert.equal(await root.locator('tbody tr:not([hidden])').count(), shown);
    await page.getByRole('button', {name: 'Show all'}).click();
    await root.locator('input[data-filter=from]').fill('2199-01-01');
    await assertText(status, '0 batches of ' + BATCHES + ' shown, 0 chosen.');
    await page.getByRole('button', {name: 'Show all'}).click();
    await root.locator('input[data-filter=scored]').check();
    assert.match(await status.textContent(), /^\d+ batch/);
    await page.getByRole('button', {name: 'Show all'}).click();

    // The longest roasts end in the last tenth of the time.
    await clock.selectOption('0');
    await drag(page, 0, [0.92, 0.01], [0.995, 0.4]);
    const last = await chosenNames(page);
    assert.ok(last.length > 0 && last.length < BATCHES, 'a box over lines chooses ' + last.length + ' batches');
    const code = await codeOf(root);
    assert.equal(code, expectedCode(last));
    return {code, names: last};
}

function codeOf(root) {
    return root.locator('textarea').inputValue().then(code => code.replace(/\s+/g, ' '));
}

function expectedCode(names) {
    return 'var chosen = logbook.only(' + names.slice().sort().map(name => '"' + name + '"').join(', ') + ');';
}

async function assertText(locator, text) {
    await locator.page().waitForFunction(
        ([element, words]) => element.textContent === words, [await locator.elementHandle(), text], {timeout: 10000});
}
