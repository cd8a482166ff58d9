/*! SPDX-License-Identifier: GPL-3.0-or-later */

/* The page: what is shown, chosen and pointed at, the filters, the pictures, the table and the code. */

class LinkedPage {
    constructor(root) {
        this.root = root;
        this.live = root.querySelector('.live');
        this.data = JSON.parse(root.querySelector('script.data').textContent);
        this.size = this.data.names.length;
        this.count = this.size;
        this.shown = new Array(this.size).fill(true);
        this.chosen = new Set();
        this.drawn = false;
        this.met = false;
        this.tries = 0;
        this.pointed = -1;
        this.pointedIn = null;
        this.dragging = 'choose';
        this.dates = (this.data.dates ? this.data.dates.values : []).map(day => day === '' ? null : Date.parse(day + 'T00:00:00Z') / 1000);
        this.columns = this.factColumns();
    }

    /** Returns the facts told beside a name: labels, the day, and the numbers that are meant for it. */
    factColumns() {
        const data = this.data;
        const columns = data.groups.map(group => ({
            name: group.name,
            of: i => group.of[i] === null ? '' : group.labels[group.of[i]],
            words: i => group.of[i] === null ? 'missing' : group.labels[group.of[i]]
        }));
        if (data.dates) {
            columns.splice(1, 0, {name: data.dates.name, of: i => data.dates.values[i], words: i => data.dates.values[i] || 'missing'});
        }
        data.numbers.filter(number => number.place === 'beside').forEach(number => columns.push({
            name: number.name, number: number, of: i => number.values[i], words: i => withUnit(number.values[i], number)
        }));
        return columns;
    }

    facts(thing) {
        return this.columns.map(column => ({name: column.name, words: column.words(thing)}));
    }

    /* What is shown, chosen and pointed at. */

    filter() {
        const value = name => this.filters[name] ? this.filters[name].value : '';
        const from = value('from') ? Date.parse(value('from') + 'T00:00:00Z') / 1000 : -Infinity;
        const to = value('to') ? Date.parse(value('to') + 'T00:00:00Z') / 1000 : Infinity;
        const scored = this.filters.scored && this.filters.scored.checked;
        const judged = this.data.numbers.filter(number => number.role === 'judges');
        this.shown = this.data.names.map((name, i) =>
            this.data.groups.every((group, g) => value('group' + g) === '' || group.of[i] === Number(value('group' + g)))
            && (!this.data.dates || (value('from') === '' && value('to') === '')
                || (this.dates[i] !== null && this.dates[i] >= from && this.dates[i] <= to))
            && (!scored || judged.some(number => number.values[i] !== null)));
        this.count = this.shown.filter(Boolean).length;
        this.chosen = new Set(Array.from(this.chosen).filter(thing => this.shown[thing]));
        this.pictures.forEach(picture => picture.plot.redraw(false, true));
        this.changed();
    }

    /** Returns where the things of some names stand. */
    placesOf(names) {
        return new Set(names.map(name => this.data.names.indexOf(name)).filter(place => place >= 0));
    }

    choose(things, how) {
        this.chosen = new Set(how === 'add' ? [...this.chosen, ...things] : things);
        this.changed();
    }

    toggle(thing, from) {
        const next = new Set(this.chosen);
        if (!next.delete(thing)) {
            next.add(thing);
        }
        this.chosen = next;
        this.changed(from);
    }

    changed(from) {
        this.pictures.forEach(picture => picture.changed());
        this.table.changed(from);
        const noun = this.data.noun;
        this.status.textContent = counted(this.count, noun) + (this.count === this.size ? '' : ' of ' + this.size) + ' shown, '
            + this.chosen.size + ' chosen.';
        this.code.value = this.javaCode();
        this.copy.disabled = this.chosen.size === 0;
        this.copied.textContent = '';
        this.bringBack();
    }

    /** Tells Java what is chosen, through the field that a live notebook puts on the page for it. The field may come later than the page. */
    bringBack() {
        const place = this.root.dataset.back;
        if (!place || !this.drawn) {
            return;
        }
        clearTimeout(this.waiting);
        const field = document.querySelector('.' + CSS.escape(place) + ' input');
        if (!field) {
            if (this.tries++ < 200) {
                this.waiting = setTimeout(() => this.bringBack(), 250);
            }
            return;
        }
        const last = toldBefore(field.value);
        if (!this.met) {
            this.met = true;
            if (last.told > 0) {
                // The page was opened again: what was chosen before is still chosen in Java.
                this.chosen = this.placesOf(last.chosen);
                this.changed();
                return;
            }
        }
        const names = Array.from(this.chosen).sort((a, b) => a - b).map(thing => this.data.names[thing]);
        field.value = JSON.stringify({told: last.told + 1, chosen: names});
        for (const type of ['input', 'change']) {
            field.dispatchEvent(new Event(type, {bubbles: true}));
        }
    }

    point(thing, where) {
        if (this.pointed === thing && this.pointedIn === where) {
            if (thing >= 0 && where.showHint) {
                where.showHint(thing);
            }
            return;
        }
        this.pointed = thing;
        this.pointedIn = where;
        this.pictures.forEach(picture => picture.drawPointed());
        this.table.pointed(thing);
        clearTimeout(this.telling);
        if (thing >= 0) {
            // A screen reader is told once the pointer rests, not at every step on the way.
            this.telling = setTimeout(() => {
                this.told.textContent = this.data.noun + ' ' + this.data.names[thing]
                    + (this.chosen.has(thing) ? ', chosen' : '') + ': '
                    + this.facts(thing).map(fact => fact.name + ' ' + fact.words).join(', ') + '.';
            }, 200);
        }
    }

    /** Returns a line of Java that picks the chosen things, in their own order. */
    javaCode() {
        if (this.chosen.size === 0 || this.data.code.length < 2) {
            return '';
        }
        const names = Array.from(this.chosen).sort((a, b) => a - b).map(thing => javaQuoted(this.data.names[thing]));
        const [before, after] = this.data.code;
        let code = before;
        let line = before.length;
        names.forEach((name, i) => {
            const piece = name + (i < names.length - 1 ? ',' : '');
            if (line + piece.length > 100) {
                code += '\n        ';
                line = 8;
            } else if (i > 0) {
                code += ' ';
                line++;
            }
            code += piece;
            line += piece.length;
        });
        return code + after;
    }

    /* Parts of the page. */

    filterBar() {
        this.filters = {};
        const again = {on: {change: () => this.filter()}};
        const bar = element('div', {class: 'bar', role: 'group', 'aria-label': 'Which to show'});
        this.data.groups.filter(group => group.labels.length > 0).forEach(group => {
            const g = this.data.groups.indexOf(group);
            const choice = element('select', Object.assign({'data-filter': group.name}, again), element('option', {value: ''}, 'all'));
            group.labels.forEach((label, i) => choice.append(element('option', {value: i}, label)));
            this.filters['group' + g] = choice;
            bar.append(element('label', {}, group.name + ' ', choice));
        });
        const days = (this.data.dates ? this.data.dates.values : []).filter(day => day !== '').sort();
        if (days.length > 0) {
            for (const side of ['from', 'to']) {
                const input = element('input', Object.assign({
                    type: 'date', min: days[0], max: days[days.length - 1], 'data-filter': side,
                    'aria-label': this.data.dates.name + ' ' + side
                }, again));
                this.filters[side] = input;
                bar.append(element('label', {}, side + ' ', input));
            }
        }
        if (this.data.numbers.some(number => number.role === 'judges')) {
            this.filters.scored = element('input', Object.assign({type: 'checkbox', 'data-filter': 'scored'}, again));
            bar.append(element('label', {class: 'tick'}, this.filters.scored, ' with scores only'));
        }
        bar.append(button('Show all', () => {
            Object.values(this.filters).forEach(filter => {
                filter.value = filter.type === 'checkbox' ? filter.value : '';
                filter.checked = false;
            });
            this.filter();
        }));
        return bar;
    }

    choiceBar() {
        const bar = element('div', {class: 'bar', role: 'group', 'aria-label': 'Choosing'});
        const drag = element('span', {class: 'drag', role: 'radiogroup', 'aria-label': 'What dragging a box does'}, 'Drag a box to ');
        const name = 'drag-' + Math.random().toString(36).slice(2);
        for (const [value, words] of [['choose', 'choose'], ['zoom', 'zoom in']]) {
            const radio = element('input', {type: 'radio', name: name, value: value, on: {change: () => {
                this.dragging = value;
                this.live.dataset.drag = value;
            }}});
            radio.checked = value === 'choose';
            drag.append(element('label', {class: 'tick'}, radio, ' ' + words));
        }
        this.status = element('strong', {class: 'status', role: 'status'});
        bar.append(drag,
            button('Choose all shown', () => this.choose(this.data.names.map((n, i) => i).filter(i => this.shown[i]), 'replace')),
            button('Choose the others', () => this.choose(
                this.data.names.map((n, i) => i).filter(i => this.shown[i] && !this.chosen.has(i)), 'replace')),
            button('Choose none', () => this.choose([], 'replace')),
            this.status);
        return bar;
    }

    codeBox() {
        this.code = element('textarea', {
            readonly: '', rows: '3', spellcheck: 'false', 'aria-label': 'Java code for the chosen',
            placeholder: 'Choose some, and the code for them appears here.'
        });
        this.copied = element('span', {role: 'status'});
        this.copy = button('Copy', () => this.copyCode());
        return element('section', {class: 'code-box', 'aria-label': 'Code'},
            element('p', {}, 'The chosen, as code for the next cell: ', this.copy, ' ', this.copied), this.code);
    }

    copyCode() {
        const done = () => {
            this.copied.textContent = 'Copied.';
        };
        const byHand = () => {
            this.code.focus();
            this.code.select();
            this.copied.textContent = document.execCommand('copy') ? 'Copied.' : 'Press Ctrl-C to copy the marked text.';
        };
        if (navigator.clipboard && window.isSecureContext) {
            navigator.clipboard.writeText(this.code.value).then(done, byHand);
        } else {
            byHand();
        }
    }

    pathPicture(paths) {
        const settings = paths.settings;
        const choice = element('select', {'aria-label': paths.title + ' along the clock', on: {change: () => show()}});
        settings.forEach((setting, i) => choice.append(element('option', {value: i}, setting.name)));
        const picture = new Picture(this, paths.title, settings.length > 1 ? [element('label', {}, 'along ', choice)] : []);
        const show = () => {
            const setting = settings[Number(choice.value)];
            picture.show(
                {kind: 'lines', across: setting.across, upwards: setting.upwards},
                paths.paths.map((path, i) => laidOn(path, setting, i)));
        };
        picture.start = show;
        return picture;
    }

    /** A picture of one number over another; the numbers are chosen from the lists given. */
    scatterPicture(title, acrossList, upwardsList, across, upwards) {
        const choice = (list, first, words) => {
            const select = element('select', {'aria-label': title + ', ' + words, on: {change: () => show()}});
            list.forEach((number, i) => select.append(element('option', {value: i}, number.name)));
            select.value = String(Math.max(0, list.indexOf(first)));
            return select;
        };
        const x = choice(acrossList, across, 'over (across)');
        const y = choice(upwardsList, upwards, 'number upwards');
        const picture = new Picture(this, title, [element('label', {}, y), element('label', {}, 'over ', x)]);
        const show = () => {
            const a = acrossList[Number(x.value)];
            const u = upwardsList[Number(y.value)];
            picture.show({kind: 'points', across: a, upwards: u}, this.data.names.map((name, i) =>
                a.values[i] === null || u.values[i] === null ? null : {x: [a.values[i]], y: [u.values[i]]}));
        };
        picture.start = show;
        return picture;
    }

    build() {
        const numbers = this.data.numbers;
        const dates = this.data.dates && this.dates.some(day => day !== null)
            ? [{name: this.data.dates.name, unit: DAY, digits: 0, values: this.dates}] : [];
        const all = numbers.concat(dates);
        const judged = numbers.filter(number => number.role === 'judges');
        const described = numbers.filter(number => number.role !== 'judges');
        this.pictures = this.data.paths.map(paths => this.pathPicture(paths));
        if (described.length > 0) {
            this.pictures.push(this.scatterPicture(
                'One number over another', all, all, described[0], described[Math.min(1, described.length - 1)]));
        }
        if (judged.length > 0) {
            this.pictures.push(this.scatterPicture('Scores', described.concat(dates, judged), judged, described[0], judged[0]));
        }
        this.table = new ThingsTable(this);
        this.told = element('div', {class: 'told', 'aria-live': 'polite'});
        this.live.append(
            element('h3', {}, this.data.title),
            this.filterBar(),
            this.choiceBar(),
            element('div', {class: 'views'}, ...this.pictures.map(picture => picture.section)),
            element('p', {class: 'how'}, 'Point at a line or a dot to see what it is; click to choose it; drag a box to choose many, with'
                + ' Shift to add them. With the keyboard: Tab to a picture, arrows to walk, Enter to choose, plus and minus to zoom, 0 for'
                + ' the whole, Shift with arrows to move, Escape to choose none.'),
            this.codeBox(),
            this.table.section,
            this.told);
        this.live.hidden = false;
        this.root.classList.add('alive');
        this.colour();
        this.pictures.forEach(picture => picture.start());
        this.changed();
        // The pictures are drawn a moment after they are made, and only what is drawn can be set off.
        requestAnimationFrame(() => {
            this.drawn = true;
            this.chosen = this.placesOf(this.data.chosen);
            this.changed();
        });
        this.watch();
    }

    colour() {
        this.root.classList.toggle('dark', pageColours(this.root).dark);
    }

    /** Follows the page: its width, its colours, and its own keyboard commands, which must not hear keys that are meant for here. */
    watch() {
        const settle = () => {
            this.colour();
            this.pictures.forEach(picture => picture.settle());
        };
        new ResizeObserver(() => requestAnimationFrame(() => this.pictures.forEach(picture => picture.resize()))).observe(this.live);
        matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => setTimeout(settle, 50));
        ['keydown', 'keypress', 'keyup'].forEach(type => this.root.addEventListener(type, event => event.stopPropagation()));
        this.root.dataset.lmSuppressShortcuts = 'true';
    }
}

/** Returns what a field for the choice holds: how often the page has told of it, and the names. */
function toldBefore(text) {
    try {
        const held = JSON.parse(text);
        return {told: Number(held.told) || 0, chosen: Array.isArray(held.chosen) ? held.chosen : []};
    } catch (e) {
        return {told: 0, chosen: []};
    }
}

/** Returns a path on one of the ways to lay paths over each other, or null if it lacks what that needs. */
function laidOn(path, setting, thing) {
    if (path.x.length === 0) {
        return null;
    }
    if (setting.turn === 'turned') {
        return turned(path);
    }
    const zero = setting.zeros.length > 0 ? setting.zeros[thing] : 0;
    return zero === null ? null : {x: path.x.map(place => place - zero), y: path.y};
}

/** Returns when each value was first reached after the lowest one. */
function turned(path) {
    let lowest = -1;
    path.y.forEach((value, i) => {
        if (value !== null && (lowest < 0 || value < path.y[lowest])) {
            lowest = i;
        }
    });
    const x = [];
    const y = [];
    let reached = -Infinity;
    for (let i = Math.max(0, lowest); i < path.y.length; i++) {
        if (path.y[i] === null) {
            x.push(reached);
            y.push(null);
        } else if (path.y[i] > reached) {
            reached = path.y[i];
            x.push(reached);
            y.push(path.x[i]);
        }
    }
    return {x: x, y: y};
}

/** Brings the first page of a name to life that is not alive yet. */
function start(name) {
    const root = Array.from(document.querySelectorAll('.parchment-views[data-page="' + name + '"]'))
        .find(candidate => !candidate.dataset.alive);
    if (root) {
        root.dataset.alive = 'yes';
        // The page may not be laid out yet while its parts are being put in.
        requestAnimationFrame(() => new LinkedPage(root).build());
    }
}
