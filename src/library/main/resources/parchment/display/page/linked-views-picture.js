/*! SPDX-License-Identifier: GPL-3.0-or-later */

/* One picture: lines or points on a canvas. uPlot draws the axes; the crowd is drawn once per change of the axes, what is chosen on a
   second canvas, and what is pointed at on a third, so that moving the mouse never draws the crowd again. */

const HEIGHT = 300;
const NEAR = 24;
const FEW = 6;

class Picture {
    /**
     * @param page what is shown, chosen and pointed at, shared by all pictures
     * @param title the picture's heading
     * @param controls elements beside the heading
     */
    constructor(page, title, controls) {
        this.page = page;
        this.title = title;
        this.colours = pageColours(page.root);
        this.pixels = [];
        this.drag = null;
        this.pending = 0;
        this.plotBox = element('div', {
            class: 'plot', tabindex: '0', role: 'application', 'aria-roledescription': 'interactive picture', 'aria-label': title
        });
        this.hint = element('div', {class: 'hint', 'aria-hidden': 'true', hidden: ''});
        this.reading = element('p', {class: 'reading'});
        const zoom = element('span', {class: 'zoom', role: 'group', 'aria-label': 'Zoom of ' + title},
            button('+', () => this.zoom(1 / 1.5), {'aria-label': 'Zoom in', title: 'Zoom in'}),
            button('\u2212', () => this.zoom(1.5), {'aria-label': 'Zoom out', title: 'Zoom out'}),
            button('whole', () => this.whole(), {'aria-label': 'Show the whole picture', title: 'Show the whole picture'}));
        this.section = element('section', {class: 'view', 'aria-label': title},
            element('header', {}, element('h4', {}, title), zoom), element('div', {class: 'axes'}, ...controls), this.plotBox, this.reading);
        this.plotBox.addEventListener('keydown', event => this.key(event));
    }

    /** Puts other numbers into the picture: one list of places and of heights per thing, or null where the thing lacks them. */
    show(setting, coordinates) {
        this.setting = setting;
        this.coordinates = coordinates;
        const x = extent(coordinates, 'x');
        const y = extent(coordinates, 'y');
        this.full = {x: widened(x, setting.kind === 'points' ? 0.04 : 0.01), y: widened(y, 0.05)};
        this.range = {x: this.full.x.slice(), y: this.full.y.slice()};
        this.plotBox.setAttribute('aria-label', this.title + ': ' + axisWords(setting.upwards) + ' over ' + axisWords(setting.across));
        this.build();
    }

    build() {
        if (this.plot) {
            this.plot.destroy();
        }
        const setting = this.setting;
        const axis = (scale, side) => ({
            scale: side,
            label: axisWords(scale),
            stroke: () => this.colours.ink,
            grid: {stroke: () => this.colours.rule, width: 1},
            ticks: {stroke: () => this.colours.rule, width: 1, size: 5},
            values: tickWords(scale),
            incrs: tickSteps(scale),
            font: '12px system-ui, sans-serif',
            labelFont: '12px system-ui, sans-serif',
            labelSize: 20,
            size: side === 'x' ? 30 : 44,
            space: side === 'x' ? 56 : 34
        });
        this.plot = new uPlot({
            width: this.width(),
            height: HEIGHT,
            padding: [10, setting.kind === 'lines' ? 54 : 14, 0, 0],
            legend: {show: false},
            cursor: {show: false},
            select: {show: false},
            scales: {
                x: {time: setting.across.unit === DAY, range: () => this.range.x},
                y: {time: false, range: () => this.range.y}
            },
            tzDate: seconds => uPlot.tzDate(new Date(seconds * 1000), 'Etc/UTC'),
            axes: [axis(setting.across, 'x'), axis(setting.upwards, 'y')],
            series: [{}, {paths: () => null, points: {show: false}}],
            hooks: {draw: [() => this.drawCrowd()]}
        }, [this.range.x.slice(), this.range.y.slice()], this.plotBox);
        this.plot.root.setAttribute('aria-hidden', 'true');
        const base = this.plot.ctx.canvas;
        this.layers = ['chosen', 'pointed'].map(name => {
            const canvas = element('canvas', {class: 'layer', 'data-layer': name});
            base.after(canvas);
            return canvas;
        });
        base.after(this.layers[0], this.layers[1]);
        this.listen(this.plot.over);
        this.plotBox.append(this.hint);
        this.settle();
    }

    width() {
        return Math.max(260, Math.floor(this.plotBox.clientWidth || 400));
    }

    resize() {
        if (this.plot && this.width() !== this.plot.width) {
            this.plot.setSize({width: this.width(), height: HEIGHT});
            this.settle();
        }
    }

    /** Draws everything anew, after the axes or the page's colours have changed. */
    settle() {
        this.colours = pageColours(this.page.root);
        this.plot.redraw(false, true);
        this.changed();
    }

    /** Draws anew what is chosen and pointed at, and says in words what the picture shows. */
    changed() {
        this.drawChosen();
        this.drawPointed();
        this.say();
    }

    /* Drawing. */

    place() {
        const box = this.plot.bbox;
        const [x0, x1] = this.range.x;
        const [y0, y1] = this.range.y;
        const across = box.width / (x1 - x0);
        const upwards = box.height / (y1 - y0);
        this.pixels = this.coordinates.map(of => {
            if (of === null) {
                return null;
            }
            const points = new Float32Array(2 * of.x.length);
            for (let i = 0; i < of.x.length; i++) {
                points[2 * i] = of.y[i] === null ? NaN : box.left + (of.x[i] - x0) * across;
                points[2 * i + 1] = of.y[i] === null ? NaN : box.top + box.height - (of.y[i] - y0) * upwards;
            }
            return points;
        });
    }

    inBox(context, draw) {
        const box = this.plot.bbox;
        context.save();
        context.beginPath();
        context.rect(box.left, box.top, box.width, box.height);
        context.clip();
        draw();
        context.restore();
    }

    drawCrowd() {
        this.place();
        const context = this.plot.ctx;
        const drawn = this.drawn();
        const ratio = uPlot.pxRatio;
        // uPlot remembers the style that it set last and does not set it again, so it must find it as it was.
        context.save();
        context.strokeStyle = this.colours.ink;
        context.fillStyle = this.colours.ink;
        context.lineJoin = 'round';
        context.lineWidth = ratio;
        // The more there are, the fainter each, so that a crowd shows as density.
        const lines = this.setting.kind === 'lines';
        context.globalAlpha = lines
            ? Math.max(this.colours.dark ? 0.13 : 0.1, Math.min(0.55, 1.7 / Math.sqrt(drawn.length + 1)))
            : drawn.length > 150 ? 0.34 : 0.5;
        this.inBox(context, () => drawn.forEach(thing => this.trace(context, thing, 3 * ratio)));
        context.restore();
    }

    trace(context, thing, radius) {
        const points = this.pixels[thing];
        context.beginPath();
        if (this.setting.kind === 'points') {
            context.arc(points[0], points[1], radius, 0, 2 * Math.PI);
            context.fill();
            return;
        }
        let pen = false;
        for (let i = 0; i < points.length; i += 2) {
            if (Number.isNaN(points[i])) {
                pen = false;
            } else if (pen) {
                context.lineTo(points[i], points[i + 1]);
            } else {
                context.moveTo(points[i], points[i + 1]);
                pen = true;
            }
        }
        context.stroke();
    }

    cleared(layer) {
        const base = this.plot.ctx.canvas;
        if (layer.width !== base.width || layer.height !== base.height) {
            layer.width = base.width;
            layer.height = base.height;
            layer.style.width = base.style.width || this.plot.width + 'px';
            layer.style.height = base.style.height || HEIGHT + 'px';
        }
        const context = layer.getContext('2d');
        context.clearRect(0, 0, layer.width, layer.height);
        return context;
    }

    drawChosen() {
        const context = this.cleared(this.layers[0]);
        const chosen = this.drawn().filter(thing => this.page.chosen.has(thing));
        const few = this.page.chosen.size <= FEW;
        const ratio = uPlot.pxRatio;
        context.lineJoin = 'round';
        context.lineWidth = (few ? 2.2 : 1.2) * ratio;
        context.globalAlpha = few ? 1 : Math.max(0.35, Math.min(0.9, 3.4 / Math.sqrt(chosen.length + 1)));
        const order = Array.from(this.page.chosen);
        this.inBox(context, () => chosen.forEach(thing => {
            const place = few ? order.indexOf(thing) : -1;
            context.strokeStyle = context.fillStyle = few ? this.colours.few[place] : this.colours.chosen;
            context.setLineDash(few ? DASHES[place].map(part => part * ratio) : []);
            this.trace(context, thing, (few ? 5 : 3.6) * ratio);
        }));
        context.setLineDash([]);
        context.globalAlpha = 1;
    }

    drawPointed() {
        const context = this.cleared(this.layers[1]);
        const thing = this.page.pointed;
        this.hint.hidden = true;
        const chosen = Array.from(this.page.chosen);
        const named = chosen.length > FEW ? [] : chosen.filter(one => this.pixels[one]);
        if (thing < 0 || !this.page.shown[thing] || !this.pixels[thing]) {
            this.label(context, named, one => this.colours.few[chosen.indexOf(one)]);
            return;
        }
        this.ring(context, thing);
        this.label(context, named.includes(thing) ? named : named.concat(thing), one => named.includes(one)
            ? this.colours.few[chosen.indexOf(one)] : this.colours.ink);
        if (this.page.pointedIn === this) {
            this.showHint(thing);
        }
    }

    /** Sets off the thing that is pointed at. */
    ring(context, thing) {
        const ratio = uPlot.pxRatio;
        context.lineJoin = 'round';
        this.inBox(context, () => {
            if (this.setting.kind === 'points') {
                context.strokeStyle = this.colours.ink;
                context.lineWidth = 2 * ratio;
                context.beginPath();
                context.arc(this.pixels[thing][0], this.pixels[thing][1], 7.5 * ratio, 0, 2 * Math.PI);
                context.stroke();
                return;
            }
            // A rim in the page's opposite keeps the line apart from the crowd.
            context.strokeStyle = this.colours.dark ? 'rgba(0, 0, 0, 0.75)' : 'rgba(255, 255, 255, 0.85)';
            context.lineWidth = 6 * ratio;
            this.trace(context, thing);
            context.strokeStyle = this.colours.ink;
            context.lineWidth = 2.6 * ratio;
            this.trace(context, thing);
        });
    }

    /** Writes names at the ends of lines or beside points, moved apart where they would lie over each other. */
    label(context, things, colour) {
        const ratio = uPlot.pxRatio;
        const box = this.plot.bbox;
        context.font = '600 ' + 12 * ratio + 'px system-ui, sans-serif';
        context.textBaseline = 'middle';
        context.lineJoin = 'round';
        const ends = things.map(thing => {
            const points = this.pixels[thing];
            let last = points.length - 2;
            while (last > 0 && (Number.isNaN(points[last]) || points[last] > box.left + box.width)) {
                last -= 2;
            }
            return {thing: thing, x: points[last], y: points[last + 1]};
        }).filter(end => end.y >= box.top - 2 && end.y <= box.top + box.height + 2 && end.x >= box.left);
        ends.sort((a, b) => a.y - b.y);
        let lowest = 0;
        for (const end of ends) {
            const name = shortened(this.page.data.names[end.thing]);
            const y = Math.max(end.y, lowest, 8 * ratio);
            lowest = y + 13 * ratio;
            const room = this.layers[0].width - context.measureText(name).width - 2 * ratio;
            // Some of the colours are too pale for letters on white: the name is in ink, and at a line's end a square has the
            // colour. A dot has its name right beside it, where a square would look like one more dot.
            const square = this.setting.kind === 'lines';
            const x = Math.min(end.x + (square ? 16 : 7) * ratio, room);
            context.strokeStyle = this.colours.dark ? 'rgba(0, 0, 0, 0.8)' : 'rgba(255, 255, 255, 0.9)';
            context.lineWidth = 3.5 * ratio;
            context.strokeText(name, x, y);
            if (square) {
                context.strokeRect(x - 10 * ratio, y - 4 * ratio, 7 * ratio, 7 * ratio);
                context.fillStyle = colour(end.thing);
                context.fillRect(x - 10 * ratio, y - 4 * ratio, 7 * ratio, 7 * ratio);
            }
            context.fillStyle = this.colours.ink;
            context.fillText(name, x, y);
        }
    }

    showHint(thing) {
        const data = this.page.data;
        if (this.hinted !== thing) {
            const list = element('dl', {});
            this.page.facts(thing).forEach(fact => list.append(element('dt', {}, fact.name), element('dd', {}, fact.words)));
            this.hint.replaceChildren(element('strong', {}, data.noun + ' ' + data.names[thing]), list);
            this.hinted = thing;
        }
        this.hint.hidden = false;
        // The sides are anchored, so that the size of the hint, which the browser would have to lay out for, is not asked for.
        const at = this.mouse || this.anchor(thing);
        const ratio = uPlot.pxRatio;
        const box = this.plot.bbox;
        const x = box.left / ratio + at.x;
        const y = box.top / ratio + at.y;
        const right = at.x > box.width / ratio / 2;
        const low = at.y > box.height / ratio / 2;
        const side = this.hint.style;
        side.left = right ? 'auto' : x + 18 + 'px';
        side.right = right ? this.plot.width - x + 18 + 'px' : 'auto';
        side.top = low ? 'auto' : y + 14 + 'px';
        side.bottom = low ? HEIGHT - y + 10 + 'px' : 'auto';
    }

    anchor(thing) {
        const ratio = uPlot.pxRatio;
        const box = this.plot.bbox;
        const points = this.pixels[thing];
        const middle = 2 * Math.floor(points.length / 4);
        return {x: (points[middle] - box.left) / ratio, y: (points[middle + 1] - box.top) / ratio};
    }

    /* Words. */

    /** Returns the things that are shown and that this picture has numbers of. */
    drawn() {
        const list = [];
        for (let i = 0; i < this.coordinates.length; i++) {
            if (this.page.shown[i] && this.coordinates[i] !== null) {
                list.push(i);
            }
        }
        return list;
    }

    say() {
        const drawn = this.drawn();
        const noun = this.page.data.noun;
        const left = this.page.count - drawn.length;
        const chosen = drawn.filter(thing => this.page.chosen.has(thing));
        let words = counted(drawn.length, noun) + ' drawn'
            + (left === 0 ? '' : ', ' + left + (left === 1 ? ' lacks' : ' lack') + ' the numbers') + '. ';
        if (drawn.length > 0) {
            words += (this.setting.kind === 'lines' ? 'Lines end, at the median, at ' : 'Medians: ') + this.middle(drawn);
            words += chosen.length === 0 ? '.' : '; the chosen ' + (chosen.length === 1 ? 'one' : chosen.length) + ': ' + this.middle(chosen) + '.';
        }
        if (this.reading.textContent !== words) {
            this.reading.textContent = words;
        }
    }

    middle(things) {
        const end = (of, values) => {
            let last = values.length - 1;
            while (last > 0 && of.y[last] === null) {
                last--;
            }
            return values[last];
        };
        const y = withUnit(median(things.map(i => end(this.coordinates[i], this.coordinates[i].y))), this.setting.upwards);
        const x = withUnit(median(things.map(i => end(this.coordinates[i], this.coordinates[i].x))), this.setting.across);
        return this.setting.kind === 'lines'
            ? y + ' and ' + x
            : this.setting.across.name + ' ' + x + ', ' + this.setting.upwards.name + ' ' + y;
    }

    /* Mouse. */

    listen(over) {
        over.addEventListener('pointermove', event => {
            this.mouse = this.inside(event);
            if (!this.pending) {
                this.pending = requestAnimationFrame(() => this.moved());
            }
        });
        over.addEventListener('pointerleave', () => {
            if (!this.drag) {
                this.mouse = null;
                this.page.point(-1, this);
            }
        });
        over.addEventListener('pointerdown', event => {
            if (event.button !== 0) {
                return;
            }
            this.mouse = this.inside(event);
            this.drag = {from: this.mouse, moved: false, adds: event.shiftKey};
            over.setPointerCapture(event.pointerId);
            this.plotBox.classList.add('by-mouse');
            this.plotBox.focus({preventScroll: true});
            event.preventDefault();
        });
        over.addEventListener('pointerup', event => {
            this.mouse = this.inside(event);
            this.released();
        });
        over.addEventListener('pointercancel', () => {
            this.drag = null;
            this.box(null);
        });
        over.addEventListener('dblclick', () => this.whole());
    }

    inside(event) {
        const bounds = this.plot.over.getBoundingClientRect();
        return {x: event.clientX - bounds.left, y: event.clientY - bounds.top};
    }

    moved() {
        this.pending = 0;
        if (!this.mouse) {
            return;
        }
        if (this.drag) {
            const from = this.drag.from;
            this.drag.moved = this.drag.moved || Math.hypot(this.mouse.x - from.x, this.mouse.y - from.y) > 4;
            if (this.drag.moved) {
                this.page.point(-1, this);
                this.box(from, this.mouse);
            }
        } else {
            this.page.point(this.nearest(this.mouse), this);
        }
    }

    released() {
        const drag = this.drag;
        this.drag = null;
        this.box(null);
        if (!drag) {
            return;
        }
        const moved = drag.moved || Math.hypot(this.mouse.x - drag.from.x, this.mouse.y - drag.from.y) > 4;
        if (!moved) {
            const thing = this.nearest(this.mouse);
            if (thing >= 0) {
                this.page.toggle(thing);
            }
        } else if (this.page.dragging === 'zoom') {
            this.zoomTo(drag.from, this.mouse);
        } else {
            this.page.choose(this.boxed(drag.from, this.mouse), drag.adds ? 'add' : 'replace');
        }
    }

    box(from, to) {
        if (!this.boxElement || this.boxElement.parentNode !== this.plot.over) {
            this.boxElement = element('div', {class: 'box'});
            this.plot.over.append(this.boxElement);
        }
        this.boxElement.hidden = from === null;
        if (from !== null) {
            const over = this.plot.over;
            const x0 = Math.max(0, Math.min(from.x, to.x));
            const y0 = Math.max(0, Math.min(from.y, to.y));
            this.boxElement.style.left = x0 + 'px';
            this.boxElement.style.top = y0 + 'px';
            this.boxElement.style.width = Math.min(over.clientWidth, Math.max(from.x, to.x)) - x0 + 'px';
            this.boxElement.style.height = Math.min(over.clientHeight, Math.max(from.y, to.y)) - y0 + 'px';
        }
    }

    canvasPoint(point) {
        const ratio = uPlot.pxRatio;
        return {x: this.plot.bbox.left + point.x * ratio, y: this.plot.bbox.top + point.y * ratio};
    }

    /** Returns the thing drawn nearest to a place, -1 if none is near. */
    nearest(point) {
        const at = this.canvasPoint(point);
        const reach = NEAR * uPlot.pxRatio;
        let least = reach ** 2;
        let found = -1;
        for (const thing of this.drawn()) {
            const points = this.pixels[thing];
            if (points.length === 2) {
                const distance = (points[0] - at.x) ** 2 + (points[1] - at.y) ** 2;
                if (distance < least) {
                    least = distance;
                    found = thing;
                }
            }
            // Lines run from left to right, so that most of each lies out of reach.
            for (let i = 2; i < points.length && !(points[i - 2] > at.x + reach); i += 2) {
                if (points[i] < at.x - reach) {
                    continue;
                }
                const distance = toSegment(at, points[i - 2], points[i - 1], points[i], points[i + 1]);
                if (distance < least) {
                    least = distance;
                    found = thing;
                }
            }
        }
        return found;
    }

    /** Returns the things whose point lies in a box, or whose line passes through it. */
    boxed(from, to) {
        const a = this.canvasPoint(from);
        const b = this.canvasPoint(to);
        const box = [Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y)];
        return this.drawn().filter(thing => {
            const points = this.pixels[thing];
            if (points.length === 2) {
                return segmentMeets(box, points[0], points[1], points[0], points[1]);
            }
            for (let i = 2; i < points.length; i += 2) {
                if (segmentMeets(box, points[i - 2], points[i - 1], points[i], points[i + 1])) {
                    return true;
                }
            }
            return false;
        });
    }

    /* Zoom. */

    setRange(x, y) {
        this.range = {x: x, y: y};
        this.plot.batch(() => {
            this.plot.setScale('x', {min: x[0], max: x[1]});
            this.plot.setScale('y', {min: y[0], max: y[1]});
        });
        this.drawChosen();
        this.drawPointed();
    }

    zoom(factor) {
        const scaled = ([low, high], [least, most]) => {
            const middle = (low + high) / 2;
            const half = factor * (high - low) / 2;
            return [Math.max(least, middle - half), Math.min(most, middle + half)];
        };
        this.setRange(scaled(this.range.x, this.full.x), scaled(this.range.y, this.full.y));
    }

    zoomTo(from, to) {
        const over = this.plot.over;
        const part = (a, b, size, [low, high], upwards) => {
            const first = Math.max(0, Math.min(a, b)) / size;
            const last = Math.min(size, Math.max(a, b)) / size;
            return upwards
                ? [high - last * (high - low), high - first * (high - low)]
                : [low + first * (high - low), low + last * (high - low)];
        };
        this.setRange(
            part(from.x, to.x, over.clientWidth, this.range.x, false),
            part(from.y, to.y, over.clientHeight, this.range.y, true));
    }

    pan(across, upwards) {
        const moved = ([low, high], [least, most], share) => {
            const step = Math.max(least - low, Math.min(most - high, share * (high - low)));
            return [low + step, high + step];
        };
        this.setRange(moved(this.range.x, this.full.x, across), moved(this.range.y, this.full.y, upwards));
    }

    whole() {
        this.setRange(this.full.x.slice(), this.full.y.slice());
    }

    /* Keys. */

    key(event) {
        this.plotBox.classList.remove('by-mouse');
        if (event.ctrlKey || event.altKey || event.metaKey) {
            return;
        }
        const pans = {ArrowLeft: [-0.2, 0], ArrowRight: [0.2, 0], ArrowUp: [0, 0.2], ArrowDown: [0, -0.2]};
        const steps = {ArrowLeft: -1, ArrowRight: 1, ArrowUp: 1, ArrowDown: -1};
        if (event.shiftKey && pans[event.key]) {
            this.pan(...pans[event.key]);
        } else if (steps[event.key]) {
            this.step(steps[event.key], event.key === 'ArrowUp' || event.key === 'ArrowDown' ? 'y' : 'x');
        } else if (event.key === 'Home' || event.key === 'End') {
            this.step(event.key === 'Home' ? -Infinity : Infinity, 'x');
        } else if (event.key === 'Enter' || event.key === ' ') {
            if (this.page.pointed >= 0) {
                this.page.toggle(this.page.pointed);
            }
        } else if (event.key === 'Escape') {
            this.page.choose([], 'replace');
        } else if (event.key === '+' || event.key === '=') {
            this.zoom(1 / 1.5);
        } else if (event.key === '-') {
            this.zoom(1.5);
        } else if (event.key === '0') {
            this.whole();
        } else {
            return;
        }
        event.preventDefault();
    }

    /** Moves on to the next thing: by the place of points, and by the end of lines. */
    step(by, along) {
        const last = thing => {
            const values = this.coordinates[thing][along].filter(value => value !== null);
            return values[values.length - 1];
        };
        const ordered = this.drawn().sort((a, b) => last(a) - last(b) || a - b);
        if (ordered.length === 0) {
            return;
        }
        const now = ordered.indexOf(this.page.pointed);
        const next = now < 0 ? (by < 0 && Number.isFinite(by) ? ordered.length - 1 : by > 1 ? ordered.length - 1 : 0) : now + by;
        this.mouse = null;
        this.page.point(ordered[Math.max(0, Math.min(ordered.length - 1, next))], this);
    }
}

function shortened(name) {
    return name.length > 18 ? name.slice(0, 17) + '\u2026' : name;
}

function extent(coordinates, side) {
    let low = Infinity;
    let high = -Infinity;
    for (const of of coordinates) {
        for (const value of of === null ? [] : of[side]) {
            if (value !== null) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
    }
    return low <= high ? [low, high] : [0, 1];
}

function widened([low, high], share) {
    const room = high > low ? share * (high - low) : Math.max(1, Math.abs(low) * 0.05);
    return [low - room, high + room];
}

/** Returns the squared distance from a place to a piece of a line; Infinity across a gap. */
function toSegment(at, x0, y0, x1, y1) {
    const dx = x1 - x0;
    const dy = y1 - y0;
    const length = dx * dx + dy * dy;
    const share = length > 0 ? Math.max(0, Math.min(1, ((at.x - x0) * dx + (at.y - y0) * dy) / length)) : 0;
    const distance = (x0 + share * dx - at.x) ** 2 + (y0 + share * dy - at.y) ** 2;
    return Number.isNaN(distance) ? Infinity : distance;
}

/** Returns whether a piece of a line meets a box (Liang and Barsky 1984). */
function segmentMeets([left, top, right, bottom], x0, y0, x1, y1) {
    let enter = 0;
    let leave = 1;
    const sides = [[x0 - x1, x0 - left], [x1 - x0, right - x0], [y0 - y1, y0 - top], [y1 - y0, bottom - y0]];
    for (const [towards, distance] of sides) {
        if (Number.isNaN(towards) || (towards === 0 && distance < 0)) {
            return false;
        }
        if (towards < 0) {
            enter = Math.max(enter, distance / towards);
        } else if (towards > 0) {
            leave = Math.min(leave, distance / towards);
        }
    }
    return enter <= leave;
}
