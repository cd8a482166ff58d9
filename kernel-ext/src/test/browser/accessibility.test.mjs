// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of page that we write, held against the rules of WCAG 2.1 A and AA that a program can decide.
import assert from 'node:assert/strict';
import {execFileSync} from 'node:child_process';
import {mkdirSync, writeFileSync} from 'node:fs';
import path from 'node:path';
import {after, before, test} from 'node:test';
import {pathToFileURL} from 'node:url';
import {axe, keepsTheRules} from './rules.mjs';
import {HOME, openBrowser, parchment, scratch, smallLogbook} from './support.mjs';

/** The outputs of cells in a page by nbconvert. Its own frame is not ours to mend: it was written by somebody else. */
const OUTPUTS = '.jp-OutputArea-output';
const PATIENCE = 240000;
const LESSON = path.join(HOME, 'notebooks', 'lessons', '6-two-things-that-moved-together.ipynb');
const TEACHER = path.join(HOME, 'notebooks', 'lessons', 'teacher', '6-two-things-that-moved-together-teacher.ipynb');

const out = scratch();
let browser;

before(async () => {
    parchment(['run', path.join(HOME, 'notebooks', 'tour.ipynb'), path.join(HOME, 'notebooks', 'lessons', '0-start-here.ipynb'), LESSON, TEACHER,
        classOfTwo(), '--out', out]);
    parchment(['run', path.join(HOME, 'notebooks', 'explorer.ipynb'), '--logbook', smallLogbook(), '--out', out]);
    parchment(['class', 'collect', path.join(out, 'answers'), '--page', path.join(out, 'results.html')]);
    browser = await openBrowser();
}, {timeout: PATIENCE});
after(() => browser?.close());

/** Writes a notebook in which two students answer, one of them wrongly, and hand in. */
function classOfTwo() {
    const folder = JSON.stringify(path.join(out, 'answers'));
    const code = ['java.nio.file.Path answers = java.nio.file.Path.of(' + folder + ');'];
    for (const [seed, verdict, claim] of [[1, 'suggestive', 'lesson.claim("per degree", "-0.2", "-0.1")'],
        [2, 'cannot tell', 'lesson.cannotTell("per degree")']]) {
        code.push('lesson = Lesson.open(5, ' + seed + '); lesson.check("verdict", "' + verdict + '"); ' + claim + '; lesson.handIn("' + seed
            + '", answers);');
    }
    code[1] = 'var ' + code[1];
    mkdirSync(path.join(out, 'answers'), {recursive: true});
    const file = path.join(scratch(), 'class.ipynb');
    writeFileSync(file, JSON.stringify({
        nbformat: 4, nbformat_minor: 5, metadata: {kernelspec: {name: 'parchment', display_name: 'Parchment', language: 'java'}},
        cells: [{cell_type: 'code', id: 'a', execution_count: null, metadata: {}, outputs: [], source: code.join('\n')}]
    }));
    return file;
}

/** Opens a page that we wrote; what it asks for elsewhere is refused: a page by nbconvert wants scripts for formulas, ours want nothing. */
async function opened(file, options) {
    const context = await browser.newContext({viewport: {width: 1000, height: 900}, ...options});
    const page = await context.newPage();
    await page.route(/^https?:/, route => route.abort());
    await page.goto(pathToFileURL(path.join(out, file)).href);
    // Tables and the explorer come to life a moment after the page is read.
    await page.waitForFunction(() => Array.from(document.querySelectorAll('.parchment-table[data-lively]')).every(table => table.parchmentTable)
        && Array.from(document.querySelectorAll('.parchment-views')).every(root => root.querySelectorAll('canvas').length > 0));
    return page;
}

/** Holds a page against the rules in both colour schemes, in a wide and in a narrow window. */
function keeps(what, file, scope, atLeast) {
    for (const colorScheme of ['light', 'dark']) {
        for (const width of [1000, 420]) {
            test(what + ' keeps the rules, ' + colorScheme + ' and ' + width + ' dots wide', {timeout: PATIENCE}, async () => {
                const page = await opened(file, {viewport: {width, height: 900}, colorScheme});
                await keepsTheRules(page, scope, atLeast);
                await page.context().close();
            });
        }
    }
}

// These pages are ours from the first word to the last, so that they are looked at whole.
keeps('the page of the tour', 'tour.html', null, 15);
keeps('the page of a lesson', path.basename(LESSON, '.ipynb') + '.html', null, 15);
keeps('the page of a lesson in the teacher\'s edition', path.basename(TEACHER, '.ipynb') + '.html', null, 15);
keeps('the page of the first lesson', '0-start-here.html', null, 12);
keeps('the explorer', 'explorer.html', null, 15);
keeps('the results of a class', 'results.html', null, 10);

/** The exporter that Jupyter brings; where it is not there, the tests of its pages say so. */
function exported(name) {
    execFileSync('jupyter', ['nbconvert', '--to', 'html', '--output-dir', path.join(out, 'exported'), path.join(out, name + '.ipynb')],
        {stdio: 'pipe'});
    return path.join('exported', name + '.html');
}

function lacksExporter() {
    try {
        execFileSync('jupyter', ['nbconvert', '--version'], {stdio: 'pipe'});
        return false;
    } catch {
        return 'jupyter nbconvert is not there (Debian: sudo apt-get install jupyter-nbconvert)';
    }
}

const skip = lacksExporter();
for (const name of ['tour', path.basename(LESSON, '.ipynb'), path.basename(TEACHER, '.ipynb')]) {
    for (const colorScheme of ['light', 'dark']) {
        test('the outputs of ' + name + ' keep the rules in an exported page, ' + colorScheme, {timeout: PATIENCE, skip}, async () => {
            const page = await opened(exported(name), {colorScheme});
            await keepsTheRules(page, OUTPUTS, 12);
            await page.context().close();
        });
    }
}

test('every picture has a name, and a description that says more', {timeout: PATIENCE}, async () => {
    for (const file of ['tour.html', path.basename(LESSON, '.ipynb') + '.html', '0-start-here.html']) {
        const page = await opened(file, {});
        const client = await page.context().newCDPSession(page);
        const {nodes} = await client.send('Accessibility.getFullAXTree');
        const pictures = nodes.filter(node => !node.ignored && node.role?.value === 'image');
        assert.ok(pictures.length > 0, file + ' has pictures');
        for (const picture of pictures) {
            assert.ok(picture.name.value.length > 0, 'a picture of ' + file + ' has a name');
            assert.match(picture.description?.value ?? '', /Across: .*Upwards: /, picture.name.value);
        }
        await page.context().close();
    }
});

test('the rules find a fault that is put in', {timeout: PATIENCE}, async () => {
    const page = await opened('tour.html', {});
    await page.evaluate(() => {
        document.querySelector('.output').insertAdjacentHTML('beforeend', '<img src="data:," width="9" height="9"><p style="color:#bbb">faint</p>');
        document.querySelector('svg text').setAttribute('fill', '#cccccc');
    });
    const {faults} = await axe(page, null);
    assert.equal(faults.length, 3, faults.join('\n'));
    await page.context().close();
});
