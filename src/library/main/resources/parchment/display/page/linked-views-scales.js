/*! SPDX-License-Identifier: GPL-3.0-or-later */

/* Numbers in words, and the colours of the page. */

const CLOCK = 'min:s';
const DAY = 'date';
const DAY_SECONDS = 86400;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Prints seconds as minutes and seconds, as in "9:19" or "-0:30". */
function clockWords(seconds) {
    const whole = Math.round(Math.abs(seconds));
    const sign = seconds < 0 && whole > 0 ? '-' : '';
    return sign + Math.floor(whole / 60) + ':' + String(whole % 60).padStart(2, '0');
}

/** Prints a number with its unit; a missing one as the word "missing". */
function withUnit(value, scale) {
    if (value === null || !Number.isFinite(value)) {
        return 'missing';
    }
    if (scale.unit === CLOCK) {
        return clockWords(value);
    }
    if (scale.unit === DAY) {
        return new Date(value * 1000).toISOString().slice(0, 10);
    }
    return value.toFixed(scale.digits) + (scale.unit ? ' ' + scale.unit : '');
}

/** Returns the name of an axis with its unit, as in "bean temperature [°C]". */
function axisWords(scale) {
    return scale.name + (scale.unit && scale.unit !== DAY ? ' [' + scale.unit + ']' : '');
}

/** Returns how the axis prints its ticks. */
function tickWords(scale) {
    if (scale.unit === CLOCK) {
        return (plot, ticks) => ticks.map(clockWords);
    }
    if (scale.unit === DAY) {
        return (plot, ticks) => {
            const months = ticks.length > 1 && ticks[1] - ticks[0] > 20 * DAY_SECONDS;
            return ticks.map(tick => {
                const day = new Date(tick * 1000);
                const month = MONTHS[day.getUTCMonth()];
                return months ? month + ' ' + day.getUTCFullYear() : day.getUTCDate() + ' ' + month;
            });
        };
    }
    return undefined;
}

/** Returns the steps between ticks that read well on a scale, or nothing for the usual ones. */
function tickSteps(scale) {
    return scale.unit === CLOCK ? [5, 10, 15, 30, 60, 120, 300, 600, 1200, 3600] : undefined;
}

/** Returns the middle of some numbers, NaN of none. */
function median(values) {
    const sorted = values.slice().sort((a, b) => a - b);
    const half = sorted.length >> 1;
    if (sorted.length === 0) {
        return NaN;
    }
    return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

/** Returns a count with its noun. */
function counted(number, noun) {
    const many = /(s|x|z|ch|sh)$/.test(noun) ? noun + 'es' : noun + 's';
    return number + ' ' + (number === 1 ? noun : many);
}

/** Quotes a text as Java source does. */
function javaQuoted(text) {
    let quoted = '"';
    for (const unit of text.split('')) {
        const code = unit.charCodeAt(0);
        if (unit === '"' || unit === '\\') {
            quoted += '\\' + unit;
        } else if (code < 0x20 || code === 0x7f || code === 0x2028 || code === 0x2029 || (code >= 0x202a && code <= 0x202e)) {
            quoted += '\\u' + code.toString(16).padStart(4, '0');
        } else {
            quoted += unit;
        }
    }
    return quoted + '"';
}

/**
 * Returns the colours that suit the page: its own text colour, and those of the set by Okabe and Ito (2008) that stand out from its
 * background.
 */
function pageColours(root) {
    const ink = getComputedStyle(root).color;
    const parts = (ink.match(/[\d.]+/g) || ['0', '0', '0']).map(Number);
    const dark = 0.299 * parts[0] + 0.587 * parts[1] + 0.114 * parts[2] > 140;
    return {
        dark: dark,
        ink: ink,
        rule: 'rgba(128, 128, 128, 0.28)',
        chosen: dark ? '#56b4e9' : '#0072b2',
        few: dark
            ? ['#56b4e9', '#e69f00', '#009e73', '#cc79a7', '#d55e00', '#f0e442']
            : ['#0072b2', '#d55e00', '#009e73', '#cc79a7', '#e69f00', '#56b4e9']
    };
}

/** Dashes that tell a few chosen lines apart without their colours. */
const DASHES = [[], [8, 4], [2, 3], [10, 3, 2, 3], [14, 4], [5, 2, 1, 2]];

/** Makes an element with attributes and children; texts are put in as text, never as markup. */
function element(tag, attributes, ...children) {
    const made = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes || {})) {
        if (name === 'on') {
            Object.entries(value).forEach(([event, listener]) => made.addEventListener(event, listener));
        } else if (value !== null && value !== undefined) {
            made.setAttribute(name, value);
        }
    }
    made.append(...children);
    return made;
}

/** Makes a button that says what it does. */
function button(words, pressed, attributes) {
    return element('button', Object.assign({type: 'button', on: {click: pressed}}, attributes), words);
}
