/*! SPDX-License-Identifier: GPL-3.0-or-later */

/* The table under the pictures: every shown thing with its facts and a box to choose it by; the chosen stand first. */

class ThingsTable {
    constructor(page) {
        this.page = page;
        this.sorting = {column: 0, down: false};
        const data = page.data;
        this.columns = [{name: data.noun, of: i => data.names[i], words: i => data.names[i]}].concat(page.columns);
        this.headings = this.columns.map((column, c) => element('th', {scope: 'col', class: column.number ? 'number' : null},
            button(column.number ? axisWords(column.number) : column.name, () => this.sortBy(c))));
        this.body = element('tbody', {});
        this.rows = data.names.map((name, i) => this.row(i));
        this.caption = element('caption', {});
        this.only = button('Chosen rows only', () => {
            this.only.setAttribute('aria-pressed', String(this.only.getAttribute('aria-pressed') !== 'true'));
            this.changed();
        }, {'aria-pressed': 'false'});
        const scroll = element('div', {class: 'rows', tabindex: '0', role: 'region', 'aria-label': 'Table of ' + counted(2, data.noun).slice(2)},
            element('table', {}, this.caption, element('thead', {}, element('tr', {}, element('td', {}), ...this.headings)), this.body));
        this.section = element('section', {class: 'things', 'aria-label': 'Table'}, this.only, scroll);
    }

    row(i) {
        const page = this.page;
        const tick = element('input', {
            type: 'checkbox', 'aria-label': 'Choose ' + page.data.noun + ' ' + page.data.names[i],
            on: {change: () => page.toggle(i, this)}
        });
        const cells = this.columns.map((column, c) => {
            const words = column.words(i);
            return element(c === 0 ? 'th' : 'td', {
                scope: c === 0 ? 'row' : null, dir: 'auto',
                class: (column.number ? 'number' : '') + (words === 'missing' ? ' missing' : '') || null
            }, column.number && words !== 'missing' ? Number(column.of(i)).toFixed(column.number.digits) : words);
        });
        const row = element('tr', {on: {
            mouseenter: () => page.point(i, this), mouseleave: () => page.point(-1, this), focusin: () => page.point(i, this)
        }}, element('td', {}, tick), ...cells);
        row.tick = tick;
        return row;
    }

    sortBy(c) {
        this.sorting = {column: c, down: this.sorting.column === c && !this.sorting.down};
        this.order();
    }

    /** Puts the rows in order: the chosen first, then by the column; what is missing comes last. */
    order() {
        const {column, down} = this.sorting;
        const of = this.columns[column].of;
        const known = value => value !== null && value !== undefined && value !== '' && !Number.isNaN(value);
        const chosen = this.page.chosen;
        const places = this.rows.map((row, i) => i).sort((a, b) => {
            const x = of(a);
            const y = of(b);
            if (chosen.has(a) !== chosen.has(b)) {
                return chosen.has(a) ? -1 : 1;
            }
            if (!known(x) || !known(y)) {
                return (known(x) ? 0 : 1) - (known(y) ? 0 : 1) || a - b;
            }
            const less = typeof x === 'string' ? x.localeCompare(y, 'en', {numeric: true}) : x - y;
            return (down ? -less : less) || a - b;
        });
        this.body.append(...places.map(i => this.rows[i]));
        this.headings.forEach((heading, c) => {
            heading.removeAttribute('aria-sort');
            if (c === column) {
                heading.setAttribute('aria-sort', down ? 'descending' : 'ascending');
            }
        });
    }

    /** Follows what is shown and chosen; a change made in the table leaves the rows where they are. */
    changed(from) {
        const only = this.only.getAttribute('aria-pressed') === 'true';
        const chosen = this.page.chosen;
        this.rows.forEach((row, i) => {
            row.hidden = !this.page.shown[i] || (only && !chosen.has(i));
            row.tick.checked = chosen.has(i);
            row.classList.toggle('chosen', chosen.has(i));
        });
        const noun = this.page.data.noun;
        this.caption.textContent = only
            ? counted(chosen.size, noun) + ' chosen'
            : counted(this.page.count, noun) + ', ' + chosen.size + ' of them chosen' + (chosen.size > 0 ? ' (they stand first)' : '');
        if (from !== this) {
            this.order();
        }
    }

    pointed(thing) {
        if (this.marked) {
            this.marked.classList.remove('pointed');
        }
        this.marked = this.rows[thing];
        if (this.marked) {
            this.marked.classList.add('pointed');
        }
    }
}
