// SPDX-License-Identifier: GPL-3.0-or-later
// Holds pages against rules made elsewhere: those of WCAG 2.1, levels A and AA, that axe-core can decide by itself, and, for text in
// pictures, which axe-core leaves open, the contrast that WCAG asks for, measured here.
import assert from 'node:assert/strict';
import {readFileSync} from 'node:fs';
import {createRequire} from 'node:module';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'];

/** What SC 1.4.3 asks of text that is not large. */
const CONTRAST = 4.5;

/**
 * Returns what breaks a rule, one line per place, and how many rules had something to look at and held.
 *
 * @param scope the parts that are looked at, as a selector; null for the whole document
 */
export async function axe(page, scope) {
    await page.evaluate(AXE);
    const found = await page.evaluate(async ([tags, selector]) => {
        const parts = selector === null ? document : {include: Array.from(document.querySelectorAll(selector))};
        const {violations, passes} = await window.axe.run(parts, {runOnly: tags});
        return {
            faults: violations.flatMap(rule => rule.nodes.map(node => rule.id + ': ' + node.html.slice(0, 200) + ' at ' + node.target.join(' '))),
            held: passes.length
        };
    }, [TAGS, scope]);
    return {...found, faults: found.faults.concat(await faintWordsInPictures(page, scope))};
}

/** Fails with the list of faults if a part of a page breaks a rule, or if there was next to nothing to look at. */
export async function keepsTheRules(page, scope, atLeast) {
    const {faults, held} = await axe(page, scope);
    assert.deepEqual(faults, []);
    assert.ok(held >= atLeast, 'only ' + held + ' rules had something to look at');
}

/** Returns the words of pictures that stand out too little from what is painted below their middle. */
function faintWordsInPictures(page, scope) {
    return page.evaluate(([selector, least]) => {
        const parse = words => {
            const numbers = (words.match(/[\d.]+/g) ?? ['0', '0', '0', '0']).map(Number);
            return {rgb: numbers.slice(0, 3), alpha: numbers.length > 3 ? numbers[3] : 1};
        };
        const over = (top, alpha, ground) => top.map((part, i) => alpha * part + (1 - alpha) * ground[i]);
        const light = rgb => rgb.map(part => part / 255).map(part => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
            .reduce((sum, part, i) => sum + part * [0.2126, 0.7152, 0.0722][i], 0);
        const contrast = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
        const fill = element => {
            const style = getComputedStyle(element);
            if (!(element instanceof SVGElement) || element instanceof SVGSVGElement) {
                return parse(style.backgroundColor);
            }
            if (style.fill === 'none' || element instanceof SVGTextElement) {
                return {rgb: [0, 0, 0], alpha: 0};
            }
            const {rgb, alpha} = parse(style.fill);
            return {rgb, alpha: alpha * Number(style.fillOpacity) * Number(style.opacity)};
        };
        // The page's own ground shows where nothing paints; in a dark page that says so, it is dark.
        const probe = document.body.appendChild(document.createElement('div'));
        probe.style.backgroundColor = 'Canvas';
        const canvas = parse(getComputedStyle(probe).backgroundColor).rgb;
        probe.remove();

        const faint = [];
        const roots = selector === null ? [document.body] : Array.from(document.querySelectorAll(selector));
        // Words printed across a sheet are decoration that no reader hears: the sheet says the same above, in words.
        const words = new Set(roots.flatMap(root => Array.from(root.querySelectorAll('svg:not([aria-hidden="true"]) text'))));
        for (const text of words) {
            if (!text.checkVisibility()) {
                continue;
            }
            text.scrollIntoView({block: 'center', inline: 'center', behavior: 'instant'});
            const box = text.getBoundingClientRect();
            const below = document.elementsFromPoint(box.x + box.width / 2, box.y + box.height / 2).filter(one => one !== text);
            if (!below.includes(text.ownerSVGElement)) {
                faint.push('out of sight in a picture: "' + text.textContent + '"');
                continue;
            }
            const ground = below.reverse().map(fill).reduce((so, one) => over(one.rgb, one.alpha, so), canvas);
            const style = getComputedStyle(text);
            const ink = parse(style.fill);
            const seen = over(ink.rgb, ink.alpha * Number(style.fillOpacity) * Number(style.opacity), ground);
            const ratio = contrast(seen, ground);
            if (ratio < least) {
                faint.push('contrast in a picture: ' + ratio.toFixed(1) + ' of "' + text.textContent + '"');
            }
        }
        return faint;
    }, [scope, CONTRAST]);
}
