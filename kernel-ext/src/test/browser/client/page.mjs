// SPDX-License-Identifier: GPL-3.0-or-later
// A small client of a kernel for the tests, put together from the packages that JupyterLab and others are made of: it runs cells, draws
// what they show with JupyterLab's own output area, and speaks the widget protocol with the html manager of Jupyter Widgets.
import {HTMLManager} from '@jupyter-widgets/html-manager/lib/htmlmanager';
import {shims} from '@jupyter-widgets/base';
import {KernelManager, ServerConnection} from '@jupyterlab/services';
import {OutputArea, OutputAreaModel} from '@jupyterlab/outputarea';
import {Widget} from '@lumino/widgets';

class Manager extends HTMLManager {
    constructor(kernel) {
        super();
        this.kernel = kernel;
        kernel.registerCommTarget(this.comm_target_name, (comm, message) =>
            this.handle_comm_open(new shims.services.Comm(comm), message));
    }

    async _create_comm(target, id, data, metadata, buffers) {
        const comm = this.kernel.createComm(target, id);
        if (data || metadata) {
            comm.open(data, metadata, buffers);
        }
        return new shims.services.Comm(comm);
    }

    async _get_comm_info() {
        return (await this.kernel.requestCommInfo({target_name: this.comm_target_name})).content.comms;
    }
}

let kernel;
let manager;

/** Starts a kernel, or connects to one that runs; returns its id. */
window.connect = async (token, id) => {
    const serverSettings = ServerConnection.makeSettings({
        baseUrl: location.origin + '/', wsUrl: location.origin.replace(/^http/, 'ws') + '/', token, appendToken: true
    });
    const kernels = new KernelManager({serverSettings});
    // The manager begins by asking which kernels run. A server that is asked while it starts one answers with an error of its own, so
    // the first question is let end; the next comes ten seconds later.
    await kernels.ready;
    kernel = id ? kernels.connectTo({model: {id, name: 'parchment'}}) : await kernels.startNew({name: 'parchment'});
    await kernel.info;
    manager = new Manager(kernel);
    if (id) {
        await manager._loadFromKernel();
    }
    return kernel.id;
};

/** Adds a cell below those there are, runs it, and waits for its end. */
window.run = async code => {
    const cell = document.createElement('section');
    cell.className = 'cell';
    const text = document.createElement('pre');
    text.className = 'code';
    text.textContent = code;
    cell.append(text);
    document.body.append(cell);
    const model = new OutputAreaModel({trusted: true});
    Widget.attach(new OutputArea({model, rendermime: manager.renderMime}), cell);
    const places = new Map();
    const future = kernel.requestExecute({code});
    future.onIOPub = message => {
        const type = message.header.msg_type;
        if (['stream', 'display_data', 'execute_result', 'error'].includes(type)) {
            const place = model.add({output_type: type, ...message.content}) - 1;
            if (message.content.transient?.display_id) {
                places.set(message.content.transient.display_id, place);
            }
        } else if (type === 'update_display_data') {
            model.set(places.get(message.content.transient.display_id), {output_type: 'display_data', ...message.content});
        } else if (type === 'clear_output') {
            model.clear(message.content.wait);
        }
    };
    const reply = await future.done;
    return reply.content.status;
};

/** Draws what a notebook file would still hold of a cell: the view of a model by its id. */
window.draw = view => {
    const place = document.createElement('section');
    place.className = 'cell';
    document.body.append(place);
    const model = new OutputAreaModel({trusted: true});
    Widget.attach(new OutputArea({model, rendermime: manager.renderMime}), place);
    model.add({output_type: 'display_data', data: {'application/vnd.jupyter.widget-view+json': view}, metadata: {}});
};

/** Returns the id of the model of a kind that was made last. */
window.lastModel = async name => {
    const models = await Promise.all(Object.values(manager._models));
    return models.filter(model => model.get('_model_name') === name + 'Model').at(-1)?.model_id;
};

/** Ends the kernel. */
window.end = () => kernel.shutdown();
