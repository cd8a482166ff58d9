// SPDX-License-Identifier: GPL-3.0-or-later
// Puts the small client for the tests together and opens it at the notebook server's own address.
import {build} from 'esbuild';
import {readFileSync} from 'node:fs';
import path from 'node:path';
import {fileURLToPath} from 'node:url';
import {scratch} from './support.mjs';

const HERE = path.dirname(fileURLToPath(import.meta.url));

/** Returns the client's script and style. */
export async function builtClient() {
    const out = scratch();
    await build({
        entryPoints: [path.join(HERE, 'client', 'page.mjs')], outdir: out, bundle: true, format: 'iife', logLevel: 'error',
        // The packages are written for a bundler that fills this in; the page they are put on has a loader of modules of its own.
        define: {define: 'undefined', 'process.env': '{}', global: 'window', 'process.cwd': 'String'},
        loader: {'.svg': 'text', '.woff': 'empty', '.woff2': 'empty', '.ttf': 'empty', '.eot': 'empty'},
        mainFields: ['browser', 'module', 'main']
    });
    return {script: readFileSync(path.join(out, 'page.js'), 'utf8'), style: readFileSync(path.join(out, 'page.css'), 'utf8')};
}

const LOOK = 'body{font:15px/1.4 sans-serif;margin:1em;max-width:76em;background:#fff;color:#111}'
    + '.code{background:#f4f4f4;padding:.5em;margin:1em 0 .3em;white-space:pre-wrap}.lm-Widget{overflow:visible}'
    + '.jp-OutputArea-prompt,.jp-OutputPrompt{display:none}.jp-OutputArea-output pre{margin:0}';

/** Opens the client on a page of its own, connected to a new kernel or to one that runs. */
export async function openClient(page, address, client, kernel) {
    const {origin, searchParams} = new URL(address);
    // A page that the server itself has sent may speak to the server; what it holds gives way to the client.
    // Whoever is known to the server already would be sent on to the start page, which lets no script in.
    await page.context().clearCookies();
    await page.goto(origin + '/login');
    await page.setContent('<!DOCTYPE html><html lang="en"><head><title>client</title></head><body></body></html>');
    await page.addStyleTag({content: client.style + LOOK});
    await page.addScriptTag({content: client.script});
    return page.evaluate(([token, id]) => window.connect(token, id), [searchParams.get('token'), kernel]);
}
