// SPDX-License-Identifier: GPL-3.0-or-later
// What the tests by keyboard share: going with Tab to where one wants to be, and what has the focus.
import assert from 'node:assert/strict';

/** Presses Tab until what has the focus is what is looked for; fails if it is not reached. */
export async function tabTo(page, wanted, detail, most = 400) {
    for (let pressed = 0; pressed < most; pressed++) {
        await page.keyboard.press('Tab');
        if (await page.evaluate(
            ([is, words]) => document.activeElement !== document.body && new Function('return ' + is)()(document.activeElement, words),
            [wanted.toString(), detail])) {
            return;
        }
    }
    assert.fail('Tab does not reach ' + wanted);
}

/** Returns what has the focus: its name, whether it shows that, and whether it is inside an explorer. */
export function focused(page) {
    return page.evaluate(() => {
        const one = document.activeElement;
        const style = getComputedStyle(one);
        const label = one.closest('label') ?? (one.id ? document.querySelector('label[for="' + CSS.escape(one.id) + '"]') : null);
        return {
            name: (one.getAttribute('aria-label') ?? one.textContent.trim()) || (label?.textContent.trim() ?? ''),
            outlined: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 1,
            inside: one.closest('.parchment-views') !== null,
            html: one.outerHTML.slice(0, 160)
        };
    });
}

/** Sorts a long table by a column of numbers with the keyboard alone. */
export async function sortsByKeys(page, table) {
    const heading = table.locator('thead th.number').first();
    const words = await heading.textContent();
    const place = await heading.evaluate(cell => cell.cellIndex);
    const name = await table.getAttribute('aria-label');
    const here = [name, words];
    await tabTo(page, (one, [label, text]) => one.matches('.parchment-table thead button') && one.textContent === text
        && one.closest('.parchment-table').getAttribute('aria-label') === label, here);
    assert.ok((await focused(page)).outlined, 'the heading shows that it has the focus');
    const numbers = async () => (await table.locator('tbody tr:not([hidden])').evaluateAll(
        (rows, column) => rows.map(row => row.cells[column]).filter(cell => !cell.classList.contains('missing'))
            .map(cell => Number(cell.dataset.key ?? cell.textContent)), place));
    await page.keyboard.press('Enter');
    assert.equal(await heading.getAttribute('aria-sort'), 'ascending');
    const up = await numbers();
    assert.deepEqual(up, up.slice().sort((a, b) => a - b));
    await page.keyboard.press('Space');
    assert.equal(await heading.getAttribute('aria-sort'), 'descending');
    const down = await numbers();
    assert.deepEqual(down, down.slice().sort((a, b) => b - a));
    assert.notDeepEqual(down, up);
    await page.keyboard.press('Enter');
    assert.equal(await heading.getAttribute('aria-sort'), null, 'the third time gives the order back in which it was written');
    assert.equal((await focused(page)).name, words.trim(), 'the focus stays on the heading');
}
